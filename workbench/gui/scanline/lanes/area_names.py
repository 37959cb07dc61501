"""Porches, sync and picture named over the plot, for a room that sees it from afar."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFont, QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.areas import region_spans
from workbench.gui.scanline.content.scales import TimeScale
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.places import Places, spread
from workbench.gui.widgets import draw_text
from workbench.timing.mode import Axis, Region

__all__ = ["AreaName", "AreaNames"]

GAP = 5
"""Least distance of two names. [design px]"""


@dataclass(frozen=True, slots=True)
class AreaName:
    """A name, where it stands, and the part of the plot it names. [px]"""

    name: str
    box: QRectF
    left: float
    right: float
    active: bool


class AreaNames(Overlay):
    """Names the regions in sight: a leader to each part of the blanking, a bracket over the picture."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=11)
        self._shown: tuple[Places, TimeScale, Axis, float, str] | None = None
        self.names: tuple[AreaName, ...] = ()

    def name_areas(self, places: Places, time: TimeScale, axis: Axis, count_s: float, picture: str) -> None:
        """Name the regions of a line or frame that are in sight; ``picture`` is the active one's name."""
        shown = (places, time, axis, count_s, picture)
        if shown == self._shown and not self.box.isEmpty():
            return
        self._shown = shown
        spans = [
            (region, time.clipped_x(first * count_s), time.clipped_x(after * count_s))
            for region, first, after in region_spans(axis)
        ]
        self.names = self._placed(places, [span for span in spans if span[2] > span[1]], picture)
        row = places.names
        self.set_box(QRectF(0, row.top(), places.margin.right(), places.strip.top() - row.top()))

    @property
    def font(self) -> QFont:
        """The face of the names."""
        return self.bench.type.sans(1.0, 600)

    def _placed(
        self, places: Places, spans: list[tuple[Region, float, float]], picture: str
    ) -> tuple[AreaName, ...]:
        gap, row = self.bench.px(GAP), places.names
        texts = [picture if region is Region.ACTIVE else region.value for region, _, _ in spans]
        widths = [self.bench.type.width(text, self.font) for text in texts]
        wanted = [(left + right) / 2 for _, left, right in spans]
        sizes = [width + gap for width in widths]
        middles = spread(wanted, sizes, gap / 2, places.margin.right())
        return tuple(
            AreaName(
                text,
                QRectF(middle - width / 2, row.top(), width, row.height()),
                left,
                right,
                region is Region.ACTIVE,
            )
            for (region, left, right), text, width, middle in zip(spans, texts, widths, middles, strict=True)
        )

    def draw(self, painter: QPainter) -> None:
        theme, px = self.bench.theme, self.bench.px
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        foot = self.box.bottom()
        for named in self.names:
            draw_text(painter, named.box, named.name, self.font, theme.color("text"))
            painter.setPen(QPen(theme.color("text"), px(0.9)))
            if named.active:
                bar = foot - px(5)
                painter.drawPolyline([QPointF(named.left + 1, foot), QPointF(named.left + 1, bar)])
                painter.drawPolyline([QPointF(named.left + 1, bar), QPointF(named.right - 1, bar)])
                painter.drawPolyline([QPointF(named.right - 1, bar), QPointF(named.right - 1, foot)])
                continue
            middle = (named.left + named.right) / 2
            inset = px(4)
            start = min(max(middle, named.box.left() + inset), named.box.right() - inset)
            painter.drawLine(QPointF(start, named.box.bottom()), QPointF(middle, foot))
