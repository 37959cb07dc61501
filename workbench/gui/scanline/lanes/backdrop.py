"""What lies under the traces: the ground of the lanes, tints, grid, the white window, held levels."""

from dataclasses import dataclass

from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.areas import region_spans
from workbench.gui.scanline.content.scales import TimeScale
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.places import Places
from workbench.gui.widgets.caption import draw_caption
from workbench.timing.mode import Axis, Region

__all__ = ["WHITE_WINDOW_VOLTS", "Backdrop", "Ground"]

WHITE_WINDOW_VOLTS = (0.665, 0.770)
"""Limits of peak white, 0.700 V less 5 % and more 10 %. [V]

DAC table of a graphics-controller data sheet, measured to the VESA test procedure of 1 Dec 2000.
"""


@dataclass(frozen=True, slots=True)
class Ground:
    """Everything the backdrop shows."""

    places: Places
    time: TimeScale
    axis: Axis
    count_s: float
    time_ticks_x: tuple[float, ...]
    volt_ticks_y: tuple[float, ...]
    window_y: tuple[float, float] | None
    """Top and bottom of the white window on the screen. [px]"""
    held_y: tuple[float, ...]
    uneven_x: tuple[float, ...]
    """Where uneven pixels start, if they are wide enough to be told apart. [px]"""
    sentence: tuple[str, ...]
    """Said in the sync lane, where V sync does not change, longest wording first."""
    sentence_y: float
    """Middle of its line, beside the V sync trace. [px]"""


class Backdrop(Overlay):
    """Draws the ground of both lanes once; it changes with the view, not with the traces."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=-10)
        self._ground: Ground | None = None
        self.setCacheMode(self.CacheMode.DeviceCoordinateCache)

    def show_ground(self, ground: Ground) -> None:
        """Show another ground."""
        if ground != self._ground:
            self._ground = ground
            self.set_box(ground.places.colour.united(ground.places.sync))

    def draw(self, painter: QPainter) -> None:
        ground = self._ground
        if ground is None:
            return
        places = ground.places
        for lane in (places.colour, places.sync):
            painter.fillRect(lane, self.bench.theme.color("plot"))
            painter.save()
            painter.setClipRect(lane)
            self._draw_tints(painter, lane, ground)
            self._draw_time_grid(painter, lane, ground)
            painter.restore()
        painter.setClipRect(places.colour)
        self._draw_levels(painter, places.colour, ground)
        self._draw_uneven(painter, places.colour, ground)
        painter.setClipRect(places.sync)
        self._draw_sentence(painter, places.sync, ground)

    def _draw_tints(self, painter: QPainter, lane: QRectF, ground: Ground) -> None:
        theme = self.bench.theme
        for region, first, after in region_spans(ground.axis):
            if region is Region.ACTIVE:
                continue
            left = ground.time.clipped_x(first * ground.count_s)
            right = ground.time.clipped_x(after * ground.count_s)
            tint = theme.color("h_sync", 0.08) if region is Region.SYNC else theme.color("accent", 0.11)
            painter.fillRect(QRectF(left, lane.top(), right - left, lane.height()), tint)

    def _draw_time_grid(self, painter: QPainter, lane: QRectF, ground: Ground) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        painter.setPen(QPen(self.bench.theme.color("hairline", 0.65), 1))
        painter.drawLines([QLineF(x, lane.top(), x, lane.bottom()) for x in ground.time_ticks_x])

    def _draw_levels(self, painter: QPainter, lane: QRectF, ground: Ground) -> None:
        theme = self.bench.theme
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        painter.setPen(QPen(theme.color("hairline"), 1))
        painter.drawLines([QLineF(lane.left(), y, lane.right(), y) for y in ground.volt_ticks_y])
        if ground.window_y is not None:
            top, bottom = ground.window_y
            painter.fillRect(
                QRectF(lane.left(), top, lane.width(), bottom - top), theme.color("passes", 0.07)
            )
            bar = QRectF(lane.left(), top, self.bench.px(4), bottom - top)
            painter.fillRect(bar, theme.mixed("plot", "passes", 0.75))
        pen = QPen(theme.color("accent"), 1.2, Qt.PenStyle.CustomDashLine)
        pen.setDashPattern([1.6, 3.2])
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen)
        painter.drawLines([QLineF(lane.left(), y, lane.right(), y) for y in ground.held_y])

    def _draw_uneven(self, painter: QPainter, lane: QRectF, ground: Ground) -> None:
        """Draw a tick where each pixel starts, and fill every second one, so that their widths are seen."""
        if len(ground.uneven_x) < 2:
            return
        px, theme = self.bench.px, self.bench.theme
        top, height = lane.top(), px(5)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for left, right in zip(ground.uneven_x[::2], ground.uneven_x[1::2], strict=False):
            painter.fillRect(QRectF(left, top, right - left, height), theme.color("dim", 0.55))
        box = QRectF(lane.left(), top + height, lane.width() - px(8), px(16))
        font, ink = self.bench.type.sans(0.80), theme.color("dim")
        words = ("uneven pixels, to scale", "uneven pixels")
        draw_caption(painter, box, words, font, ink, align=Qt.AlignmentFlag.AlignRight)

    def _draw_sentence(self, painter: QPainter, lane: QRectF, ground: Ground) -> None:
        px = self.bench.px
        box = QRectF(lane.left(), ground.sentence_y - px(9), lane.width() - px(8), px(18))
        if not ground.places.low:
            right = Qt.AlignmentFlag.AlignRight
            font, ink = self.bench.type.sans(0.80), self.bench.theme.color("dim")
            draw_caption(painter, box, ground.sentence, font, ink, align=right)
