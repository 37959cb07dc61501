"""The margin right of the lanes: names at the ends of the traces, levels with a name, units."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QFont, QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.places import Places, arrange, spread
from workbench.gui.widgets import Sign, draw_sign, draw_text
from workbench.gui.widgets.caption import that_fits

__all__ = ["EndName", "Margin", "NamedLevel"]

LANES_GAP = 10
"""Least room between the names of the colours and those of the syncs. [design px]"""


@dataclass(frozen=True, slots=True)
class EndName:
    """The name of a trace and where the trace ends. [px]"""

    name: str
    color: QColor
    y: float


@dataclass(frozen=True, slots=True)
class NamedLevel:
    """A level with a name and a value beside it. [px]"""

    name: str
    value: str
    role: str
    y: float
    note: str = ""
    """A line between the two."""
    sign: Sign | None = None

    @property
    def lines(self) -> int:
        """How many lines of text it is. [1]"""
        return 3 if self.note else 2


class Margin(Overlay):
    """Draws names spread so that none covers another, with a leader to what each names."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=10)
        self._places = arrange(0, 0, bench.px)
        self._traces: tuple[EndName, ...] = ()
        self._syncs: tuple[EndName, ...] = ()
        self._levels: tuple[NamedLevel, ...] = ()
        self._unit = ""
        self._moves: tuple[str, ...] = ()
        self.setCacheMode(self.CacheMode.DeviceCoordinateCache)

    def show_names(
        self,
        places: Places,
        traces: Sequence[EndName],
        syncs: Sequence[EndName],
        levels: Sequence[NamedLevel],
        *,
        unit: str,
        moves: tuple[str, ...],
    ) -> None:
        """Show other names; ``moves``, longest wording first, stands beside the line under the strip."""
        shown = (places, tuple(traces), tuple(syncs), tuple(levels), unit, moves)
        if shown == (self._places, self._traces, self._syncs, self._levels, self._unit, self._moves):
            return
        self._places, self._traces, self._syncs, self._levels, self._unit, self._moves = shown
        self.set_box(places.margin.adjusted(0, 0, 0, places.axis.height()))

    def draw(self, painter: QPainter) -> None:
        px, ends = self.bench.px, (*self._traces, *self._syncs)
        for end, y in zip(ends, self.end_middles, strict=True):
            leader = end in self._traces or abs(y - end.y) > px(2)
            self._draw_end(painter, end, y, leader=leader)
        for level, y in zip(self._levels, self._middles()[len(ends) + 1 :], strict=True):
            self._draw_level(painter, level, y)
        self._draw_unit(painter)
        ink = self.bench.theme.color("accent")
        draw_text(painter, self._beside_strip, self.moved_words, self._small, ink)

    @property
    def levels(self) -> tuple[NamedLevel, ...]:
        """The levels that have a name."""
        return self._levels

    @property
    def moved_words(self) -> str:
        """What is said beside the line under the strip, as long as there is room."""
        return that_fits(self._moves, self._small, self._beside_strip.width())

    @property
    def _small(self) -> QFont:
        return self.bench.type.sans(0.80)

    @property
    def _beside_strip(self) -> QRectF:
        px, places = self.bench.px, self._places
        left, y = places.colour.right() + px(8), places.strip.bottom() + px(4.5)
        return QRectF(left, y - px(9), places.margin.right() - left - px(1), px(18))

    @property
    def end_middles(self) -> list[float]:
        """Where the names of the traces stand, colours before syncs. [px]"""
        return self._middles()[: len(self._traces) + len(self._syncs)]

    def _middles(self) -> list[float]:
        """Return where the names stand, the gap between the lanes, and the levels. [px]"""
        px, places = self.bench.px, self._places
        ends = (*self._traces, *self._syncs)
        gap = (places.colour.bottom() + places.sync.top()) / 2
        wanted = [end.y for end in ends] + [gap] + [level.y for level in self._levels]
        heights = [18] * len(ends) + [LANES_GAP] + [18 * level.lines for level in self._levels]
        sizes = [float(px(height)) for height in heights]
        return spread(wanted, sizes, places.colour.top(), places.sync.bottom() + px(8))

    def _draw_end(self, painter: QPainter, end: EndName, y: float, *, leader: bool) -> None:
        px, left = self.bench.px, self._places.colour.right()
        if leader:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(end.color, 1.2))
            painter.drawPolyline(
                [QPointF(left, end.y), QPointF(left + px(2), end.y), QPointF(left + px(9), y)]
            )
        box = QRectF(left + px(12), y - px(9), self._places.margin.width() - px(12), px(18))
        draw_text(painter, box, end.name, self.bench.type.sans(0.93, 600), end.color)

    def _draw_level(self, painter: QPainter, level: NamedLevel, y: float) -> None:
        px, type_, theme = self.bench.px, self.bench.type, self.bench.theme
        left = self._places.colour.right() + px(8)
        line = QRectF(left, y - px(17) * level.lines / 2, self._places.margin.width() - px(9), px(17))
        name = QRectF(line)
        if level.sign is not None:
            draw_sign(painter, QRectF(left, line.top() + px(2), px(13), px(13)), level.sign, theme)
            name.setLeft(left + px(17))
        weight = 600 if level.role != "dim" else 400
        draw_text(painter, name, level.name, type_.sans(0.90, weight), theme.color(level.role), elide=True)
        ink = theme.color("dim" if level.role == "dim" else "text")
        if level.note:
            line.translate(0, px(17))
            draw_text(painter, line, level.note, type_.sans(0.90), ink)
        line.translate(0, px(17))
        draw_text(painter, line, level.value, type_.mono(0.86), ink)

    def _draw_unit(self, painter: QPainter) -> None:
        px, axis = self.bench.px, self._places.axis
        box = QRectF(axis.right() + px(22), axis.top() + px(6), px(40), px(16))
        draw_text(painter, box, self._unit, self.bench.type.sans(0.86), self.bench.theme.color("dim"))
