"""Text placed by its cap height, so that the two faces share one line."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter

__all__ = ["draw_text"]

LEFT = Qt.AlignmentFlag.AlignLeft


def draw_text(
    painter: QPainter,
    box: QRectF,
    text: str,
    font: QFont,
    color: QColor,
    *,
    align: Qt.AlignmentFlag = LEFT,
    elide: bool = False,
) -> float:
    """Draw one line of text, its capitals centred in the height of a box; return its width. [px]"""
    metrics = QFontMetricsF(font)
    if elide:
        text = metrics.elidedText(text, Qt.TextElideMode.ElideRight, box.width())
    width = metrics.horizontalAdvance(text)
    x = box.left()
    if align is not LEFT:
        if align & Qt.AlignmentFlag.AlignRight:
            x = box.right() - width
        elif align & Qt.AlignmentFlag.AlignHCenter:
            x = box.center().x() - width / 2
    painter.setFont(font)
    painter.setPen(color)
    painter.drawText(QPointF(x, round(box.center().y() + metrics.capHeight() / 2)), text)
    return width
