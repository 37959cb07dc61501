"""An axis of a lane: pyqtgraph's, with our ticks, faces and placing."""

from collections.abc import Callable

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen

from workbench.gui.bench import Bench

__all__ = ["LaneAxis", "Tick"]

Tick = tuple[float, str]
"""A place on the axis and what stands there."""


class LaneAxis(pg.AxisItem):
    """Ticks come from a function of the visible range and the axis's length."""

    def __init__(self, bench: Bench, orientation: str, ticks: Callable[[float, float, float], list[Tick]]):
        pg.AxisItem.__init__(self, orientation)
        self._bench = bench
        self._ticks = ticks
        self.restyle()

    def restyle(self) -> None:
        """Take colours and sizes again."""
        theme, type_ = self._bench.theme, self._bench.type
        self.setPen(QPen(Qt.PenStyle.NoPen))
        self.setTickPen(QPen(theme.color("outline"), 1))
        self.setTextPen(QPen(theme.color("dim")))
        self.setTickFont(type_.mono(0.86))
        self.picture = None
        self.update()

    def shown_ticks(self) -> list[Tick]:
        """Return the ticks in sight."""
        low, high = self.range
        return self._ticks(low, high, self._length())

    def _length(self) -> float:
        size = self.size()
        return max(1.0, size.height() if self.orientation == "left" else size.width())

    def generateDrawSpecs(self, _painter: QPainter):
        bounds = self.mapRectFromParent(self.geometry())
        metrics = QFontMetricsF(self._face())
        low, high = self.range
        per_unit = self._length() / ((high - low) or 1.0)
        lines, texts = [], []
        for value, text in self.shown_ticks():
            along = (value - low) * per_unit
            if not -0.5 <= along <= self._length() + 0.5:
                continue
            width = metrics.horizontalAdvance(text) + 2
            if self.orientation == "left":
                y = bounds.bottom() - along
                box = QRectF(bounds.right() - self._bench.px(9) - width, y - 20, width, 40)
                texts.append((box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, text))
            else:
                x = round(bounds.left() + along)
                lines.append((self.tickPen(), QPointF(x, bounds.top()), QPointF(x, bounds.top() + 4)))
                box = QRectF(x - width / 2, bounds.top() + self._bench.px(6), width, metrics.height())
                texts.append((box, Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignVCenter, text))
        return None, lines, texts

    def drawPicture(self, painter: QPainter, _line, tick_lines, texts) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        for pen, start, end in tick_lines:
            painter.setPen(pen)
            painter.drawLine(start, end)
        painter.setFont(self._face())
        painter.setPen(self.textPen())
        for box, flags, text in texts:
            painter.drawText(box, int(flags), text)

    def _face(self) -> QFont:
        return self.style["tickFont"]

    def boundingRect(self) -> QRectF:
        # Labels at the ends hang over by half their width, or height.
        over = (0, 20) if self.orientation == "left" else (30, 0)
        return super().boundingRect().adjusted(-over[0], -over[1], *over)

    def wheelEvent(self, event) -> None:
        event.ignore()

    def mouseDragEvent(self, event) -> None:
        event.ignore()

    def mouseClickEvent(self, event) -> None:
        event.ignore()
