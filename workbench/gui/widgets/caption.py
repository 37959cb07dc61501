"""Captions that are said shorter where room is short, rather than cut off."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter

from workbench.gui.widgets.text import draw_text

__all__ = ["draw_caption", "that_fits"]


def that_fits(wordings: tuple[str, ...], font: QFont, room: float) -> str:
    """Return the first of some wordings, longest first, that fits a width; nothing where none does.

    Parameters
    ----------
    wordings : tuple of str
    font : QFont
    room : float
        Width there is. [px]
    """
    metrics = QFontMetricsF(font)
    return next((words for words in wordings if metrics.horizontalAdvance(words) <= room), "")


def draw_caption(
    painter: QPainter,
    box: QRectF,
    wordings: tuple[str, ...],
    font: QFont,
    color: QColor,
    *,
    align: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignLeft,
) -> float:
    """Draw the wording that fits a box; return its width, 0 where none fits. [px]"""
    words = that_fits(wordings, font, box.width())
    return draw_text(painter, box, words, font, color, align=align) if words else 0.0
