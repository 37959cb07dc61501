"""What stands under the pointer: where it is in words, and each colour's volts."""

from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.lanes.overlay import Overlay, draw_card
from workbench.gui.scanline.lanes.places import Places
from workbench.gui.widgets import draw_text, trace_pen
from workbench.project.document import Channel

__all__ = ["PointerCard", "calmest"]

SAMPLE = 22
FloatArray = NDArray[np.floating]


def nothing(_left: float, _right: float) -> FloatArray:
    """Return that nothing lies between two places."""
    return np.empty(0)


def calmest(heights: FloatArray, tops: Sequence[float], height: float) -> float:
    """Return the top at which a box covers fewest of some heights, the first of equals. [px]"""
    hits = [int(((heights >= top) & (heights <= top + height)).sum()) for top in tops]
    return tops[hits.index(min(hits))]


class PointerCard(Overlay):
    """A small card beside the pointer that never lies under it."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=40)
        self._words = ""
        self._values: tuple[str, ...] = ()

    def say(
        self,
        places: Places,
        x: float | None,
        words: str,
        values: tuple[str, ...],
        taken: Callable[[float, float], FloatArray] = nothing,
    ) -> None:
        """Show words and one value a channel beside a place of the screen, or nothing.

        ``taken`` returns the heights of the traces between two places, which the card leaves free
        as well as it can. [px]
        """
        self._words, self._values = words, values
        if x is None:
            self.set_box(QRectF())
            return
        px, type_ = self.bench.px, self.bench.type
        digits = QFontMetricsF(type_.mono(0.90, 500))
        value_width = max((digits.horizontalAdvance(value) for value in values), default=0.0)
        row = len(values) * (px(SAMPLE + 5) + value_width) + max(len(values) - 1, 0) * px(14) + px(18)
        width = max(QFontMetricsF(type_.sans(0.86)).horizontalAdvance(words), row) + px(22)
        height = px(26 + 19 * bool(values))
        # With large text it may lie over the margins, where the lane alone has no room for it.
        wide = width > places.colour.width()
        first = px(4) if wide else places.colour.left()
        last = places.margin.right() - px(8) if wide else places.colour.right()
        if width > last - first:
            self.set_box(QRectF())
            return
        left = x + px(14)
        if left + width > last:
            left = min(x - px(14), last) - width
        left = max(left, first)
        lane = places.colour
        tops = (lane.top() + px(8), lane.center().y() - height / 2, lane.bottom() - px(34) - height)
        top = calmest(taken(left, left + width), tops, height)
        self.set_box(QRectF(round(left), round(top), width, height))

    def boundingRect(self) -> QRectF:
        return super().boundingRect().adjusted(-1, -1, 6, 8)

    def draw(self, painter: QPainter) -> None:
        px, type_, theme = self.bench.px, self.bench.type, self.bench.theme
        draw_card(painter, self.bench, self.box)
        left, top = self.box.left() + px(11), self.box.top()
        line = QRectF(left, top + px(4), self.box.width() - px(20), px(18))
        draw_text(painter, line, self._words, type_.sans(0.86), theme.color("text"))
        line = QRectF(left, top + px(22), self.box.width() - px(20), px(18))
        font = type_.mono(0.90, 500)
        for channel, value in zip(Channel, self._values, strict=False):
            painter.setPen(trace_pen(self.bench, channel))
            middle = line.center().y()
            painter.drawLine(QPointF(line.left(), middle), QPointF(line.left() + px(SAMPLE), middle))
            line.setLeft(line.left() + px(SAMPLE + 5))
            line.setLeft(line.left() + draw_text(painter, line, value, font, theme.color("text")) + px(14))
        if self._values:
            line.setLeft(line.left() - px(8))
            draw_text(painter, line, "V", type_.sans(0.86), theme.color("dim"))
        painter.setPen(QPen())
