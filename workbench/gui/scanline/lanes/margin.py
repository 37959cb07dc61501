"""The margin right of the lanes: names at the ends of the traces, levels with a name, units."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.places import Places, arrange, spread
from workbench.gui.widgets import Sign, draw_sign, draw_text

__all__ = ["EndName", "Margin", "NamedLevel"]


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
    warns: bool = False


class Margin(Overlay):
    """Draws names spread so that none covers another, with a leader to what each names."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=10)
        self._places = arrange(0, 0, bench.px)
        self._traces: tuple[EndName, ...] = ()
        self._syncs: tuple[EndName, ...] = ()
        self._levels: tuple[NamedLevel, ...] = ()
        self._unit = ""
        self._moves = ""
        self.setCacheMode(self.CacheMode.DeviceCoordinateCache)

    def show_names(
        self,
        places: Places,
        traces: Sequence[EndName],
        syncs: Sequence[EndName],
        levels: Sequence[NamedLevel],
        *,
        unit: str,
        moves: str,
    ) -> None:
        """Show other names; ``moves`` stands beside the line under the strip."""
        shown = (places, tuple(traces), tuple(syncs), tuple(levels), unit, moves)
        if shown == (self._places, self._traces, self._syncs, self._levels, self._unit, self._moves):
            return
        self._places, self._traces, self._syncs, self._levels, self._unit, self._moves = shown
        self.set_box(places.margin.adjusted(0, 0, 0, places.axis.height()))

    def draw(self, painter: QPainter) -> None:
        px, places = self.bench.px, self._places
        ends = (*self._traces, *self._syncs)
        wanted = [end.y for end in ends] + [level.y for level in self._levels]
        sizes = [float(px(18))] * len(ends) + [float(px(36))] * len(self._levels)
        middles = spread(wanted, sizes, places.colour.top(), places.sync.bottom() + px(8))
        for end, y in zip(ends, middles, strict=False):
            leader = end in self._traces or abs(y - end.y) > px(2)
            self._draw_end(painter, end, y, leader=leader)
        for level, y in zip(self._levels, middles[len(ends) :], strict=True):
            self._draw_level(painter, level, y)
        self._draw_unit(painter)
        if self._moves:
            y = places.strip.bottom() + px(4.5)
            box = QRectF(places.colour.right() + px(8), y - px(9), places.margin.width() - px(9), px(18))
            font, ink = self.bench.type.sans(0.80), self.bench.theme.color("accent")
            fits = self.bench.type.width(self._moves, font) <= box.width()
            draw_text(painter, box, self._moves if fits else self._moves.split()[0], font, ink, elide=True)

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
        top = QRectF(left, y - px(17), self._places.margin.width() - px(9), px(17))
        if level.warns:
            draw_sign(painter, QRectF(left, y - px(15), px(13), px(13)), Sign.WARNS, theme)
            top.setLeft(left + px(17))
        weight = 600 if level.role != "dim" else 400
        draw_text(painter, top, level.name, type_.sans(0.90, weight), theme.color(level.role), elide=True)
        ink = theme.color("dim" if level.role == "dim" else "text")
        draw_text(painter, QRectF(left, y, top.width(), px(17)), level.value, type_.mono(0.86), ink)

    def _draw_unit(self, painter: QPainter) -> None:
        px, axis = self.bench.px, self._places.axis
        box = QRectF(axis.right() + px(22), axis.top() + px(6), px(40), px(16))
        draw_text(painter, box, self._unit, self.bench.type.sans(0.86), self.bench.theme.color("dim"))
