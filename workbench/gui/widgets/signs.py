"""The signs of pass and fail: each a shape of its own, never colour alone."""

from enum import Enum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from workbench.gui.theme import Theme

__all__ = ["Sign", "draw_sign"]


class Sign(Enum):
    """What a sign says; the value is the theme's role for it."""

    FAILS = "fails"
    WARNS = "warns"
    NOTE = "note"
    PASSES = "passes"


def draw_sign(painter: QPainter, box: QRectF, sign: Sign, theme: Theme) -> None:
    """Draw a sign in a square box: filled square with a cross, triangle, ring with an i, or tick."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pen = QPen(theme.color(sign.value), box.width() / 10)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    {Sign.FAILS: _fails, Sign.WARNS: _warns, Sign.NOTE: _note, Sign.PASSES: _passes}[sign](
        painter, box, theme
    )
    painter.restore()


def _at(box: QRectF, x: float, y: float) -> QPointF:
    return QPointF(box.x() + x * box.width(), box.y() + y * box.height())


def _fails(painter: QPainter, box: QRectF, theme: Theme) -> None:
    square = QRectF(_at(box, 0.06, 0.06), _at(box, 0.94, 0.94))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.color("fails"))
    painter.drawRoundedRect(square, box.width() / 8, box.width() / 8)
    pen = QPen(theme.color("panel"), box.width() / 8)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    painter.setPen(pen)
    painter.drawLine(_at(box, 0.32, 0.32), _at(box, 0.68, 0.68))
    painter.drawLine(_at(box, 0.68, 0.32), _at(box, 0.32, 0.68))


def _warns(painter: QPainter, box: QRectF, _theme: Theme) -> None:
    painter.drawPolygon(QPolygonF([_at(box, 0.5, 0.08), _at(box, 0.97, 0.9), _at(box, 0.03, 0.9)]))
    painter.drawLine(_at(box, 0.5, 0.38), _at(box, 0.5, 0.6))
    painter.drawPoint(_at(box, 0.5, 0.76))


def _note(painter: QPainter, box: QRectF, _theme: Theme) -> None:
    painter.drawEllipse(box.center(), box.width() * 0.44, box.height() * 0.44)
    painter.drawLine(_at(box, 0.5, 0.48), _at(box, 0.5, 0.72))
    painter.drawPoint(_at(box, 0.5, 0.3))


def _passes(painter: QPainter, box: QRectF, _theme: Theme) -> None:
    pen = painter.pen()
    pen.setWidthF(box.width() / 8)
    painter.setPen(pen)
    painter.drawPolyline(QPolygonF([_at(box, 0.08, 0.54), _at(box, 0.36, 0.82), _at(box, 0.94, 0.18)]))
