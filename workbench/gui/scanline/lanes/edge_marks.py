"""Marks beside an edge: how long after it its ghost comes, and when it has settled."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QRectF
from PySide6.QtGui import QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.cards.edge_card import GHOST_DASH
from workbench.gui.scanline.cards.pointer_card import calmest
from workbench.gui.scanline.content.edge_marks import EdgeMark
from workbench.gui.scanline.content.scales import TimeScale
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.places import Places, arrange
from workbench.gui.widgets import draw_text

__all__ = ["EdgeMarks", "PlacedMark", "place_words"]

PITCH = 19
"""Distance of two marks. [design px]"""
GAP = 7
"""Between a mark's line and its words. [design px]"""
MARGIN = 10
"""Between the marks and the ends of the lane. [design px]"""
ROWS = 9
"""Heights that are tried for the calmest. [1]"""
APART = 12
"""An end farther than this from its edge is drawn all over the lane. [design px]"""

Span = tuple[float, float]
FloatArray = NDArray[np.floating]
Heights = Callable[[float, float], FloatArray]


@dataclass(frozen=True, slots=True)
class PlacedMark:
    """A mark, where its line ends, and where which of its words stand. [px]"""

    mark: EdgeMark
    end: float
    figures: str
    words_left: float
    words_right: float


def place_words(
    span: Span,
    widths: Sequence[float],
    lane: tuple[float, float],
    taken: FloatArray,
    gap: float,
) -> tuple[int, float] | None:
    """Return which wording stands where: within a line, right of it, or left of it.

    Parameters
    ----------
    span : (float, float)
        Ends of the line that is seen. [px]
    widths : sequence of float
        Of each wording, widest first; the last one says next to nothing. [px]
    lane : (float, float)
        Ends of the lane. [px]
    taken : float array
        Upright lines that words are not to cover. [px]
    gap : float
        Between the line and its words. [px]

    Returns
    -------
    (int, float) or None
        Number of the wording and its left end: the widest that covers nothing, on the left only where
        the right has room for the last one alone; none where nothing fits.
    """
    left, right = span
    *telling, last = range(len(widths))
    spots = [(number, (left + right - widths[number]) / 2) for number in telling]
    spots = [(number, start) for number, start in spots if start - left >= 2 * gap]
    spots += [(number, right + gap) for number in telling]
    spots += [(number, left - gap - widths[number]) for number in telling]
    for number, start in (*spots, (last, right + gap), (last, left - gap - widths[last])):
        end = start + widths[number]
        covered = ((start - gap / 2 < taken) & (taken < end + gap / 2)).any()
        if lane[0] <= start and end <= lane[1] and not covered:
            return number, start
    return None


class EdgeMarks(Overlay):
    """Draws a line from the edge to each mark, with words where they cover no trace."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=12)
        self._places = arrange(0, 0, bench.px)
        self._edge = 0.0
        self._top = 0.0
        self.placed: tuple[PlacedMark, ...] = ()

    def clear(self) -> None:
        """Mark nothing."""
        if self.placed:
            self.placed = ()
            self.set_box(QRectF())

    def mark(
        self,
        places: Places,
        time: TimeScale,
        edge_s: float,
        marks: Sequence[EdgeMark],
        taken: FloatArray,
        heights: Heights,
    ) -> None:
        """Mark what follows an edge.

        ``taken`` are upright lines that words are not to cover, and ``heights`` returns those of the
        traces between two places. [px]
        """
        lane = places.colour
        marks = marks[: int((lane.height() - self.bench.px(2 * MARGIN)) / self.bench.px(PITCH))]
        was = self._places, self._edge
        self._places, self._edge = places, time.x(edge_s)
        found = (self._placed(mark, time.x(edge_s + mark.after_s), taken) for mark in marks)
        placed = tuple(mark for mark in found if mark is not None)
        if not placed:
            self.clear()
            return
        top = self._calm_top(placed, heights)
        if (placed, top, self._places, self._edge) != (self.placed, self._top, *was):
            self.placed, self._top = placed, top
            left, right = self._ends(placed)
            self.set_box(QRectF(left - 2, lane.top(), right - left + 4, lane.height()))

    def _ends(self, placed: tuple[PlacedMark, ...]) -> tuple[float, float]:
        """Return how far the marks reach to the left and to the right. [px]"""
        right = max(max(mark.end, mark.words_right) for mark in placed)
        return min(self._edge, *(mark.words_left for mark in placed)), min(right, self._places.colour.right())

    def _calm_top(self, placed: tuple[PlacedMark, ...], heights: Heights) -> float:
        """Return where the traces are calmest, as near to the middle of the lane as can be. [px]"""
        lane, tall = self._places.colour, self.bench.px(PITCH) * len(placed)
        margin = self.bench.px(MARGIN)
        first, last = lane.top() + margin, lane.bottom() - margin - tall
        tops = [first + (last - first) * row / (ROWS - 1) for row in range(ROWS)]
        tops.sort(key=lambda top: abs(top + tall / 2 - lane.center().y()))
        first_word, last_word = min(p.words_left for p in placed), max(p.words_right for p in placed)
        return round(calmest(heights(first_word, last_word), tops, tall))

    def _placed(self, mark: EdgeMark, end: float, taken: FloatArray) -> PlacedMark | None:
        lane, gap = self._places.colour, self.bench.px(GAP)
        widths = self._widths(mark)
        seen = self._edge, min(end, lane.right())
        others = taken[(taken < seen[0] - 1) | (seen[1] + 1 < taken)]
        place = place_words(seen, widths, (lane.left() + gap, lane.right() - gap), others, gap)
        if place is None:
            return None
        number, left = place
        return PlacedMark(mark, end, mark.figures[number], left, left + widths[number])

    def _widths(self, mark: EdgeMark) -> list[float]:
        """Return the width of each wording; all digits and letters of the figures are alike. [px]"""
        type_ = self.bench.type
        name, digit = type_.width(mark.name, type_.sans(0.86)), type_.width("0", type_.mono(0.86, 500))
        return [name + bool(said) * self.bench.px(7) + digit * len(said) for said in mark.figures]

    def draw(self, painter: QPainter) -> None:
        painter.setClipRect(self._places.colour)
        pitch = self.bench.px(PITCH)
        for row, placed in enumerate(self.placed):
            self._draw_mark(painter, placed, self._top + pitch * (row + 0.5))

    def _draw_mark(self, painter: QPainter, placed: PlacedMark, y: float) -> None:
        px, theme, lane = self.bench.px, self.bench.theme, self._places.colour
        middle, end, half = round(y) + 0.5, round(placed.end) + 0.5, px(5)
        painter.setPen(QPen(theme.color("dim"), px(1)))
        inside = self._edge < placed.words_left and placed.words_right < placed.end
        stop = placed.words_left - px(GAP) if inside else end
        painter.drawLine(QLineF(self._edge, middle, stop, middle))
        if inside:
            painter.drawLine(QLineF(placed.words_right + px(GAP), middle, end, middle))
        painter.drawLine(QLineF(end, middle - half, end, middle + half))
        if not placed.mark.settled and placed.end - self._edge > px(APART):
            pen = QPen(theme.color("dim"), px(1))
            pen.setDashPattern(list(GHOST_DASH))
            painter.setPen(pen)
            painter.drawLine(QLineF(end, lane.top(), end, lane.bottom()))
        self._draw_words(painter, placed, y)

    def _draw_words(self, painter: QPainter, placed: PlacedMark, y: float) -> None:
        px, type_, theme = self.bench.px, self.bench.type, self.bench.theme
        box = QRectF(placed.words_left, y - px(9), placed.words_right - placed.words_left, px(18))
        painter.fillRect(box.adjusted(-px(3), 0, px(3), 0), theme.color("plot", 0.9))
        used = draw_text(painter, box, placed.mark.name, type_.sans(0.86), theme.color("dim"))
        box.setLeft(box.left() + used + px(7))
        draw_text(painter, box, placed.figures, type_.mono(0.86, 500), theme.color("text"))
