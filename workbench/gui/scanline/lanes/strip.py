"""The line as the monitor shows it, what its areas show, and which pixels a part moves."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QImage, QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.areas import Area
from workbench.gui.scanline.content.scales import TimeScale
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.places import Places, arrange, spread
from workbench.gui.widgets import draw_text

__all__ = ["Strip"]

CELL = 12
"""Counts wider than this are shown apart. [px]"""
ROOMY_PART = 0.3
"""The blanking's areas are named from this part of the strip on; else the strip is. [1]"""
CAPTION, DARK_CAPTION = "as the eye sees it", "as sent: no picture"


class Strip(Overlay):
    """Draws the colours of the line on the plot's own time axis."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=10)
        self._places = arrange(0, 0, bench.px)
        self._time = TimeScale(0.0, 1.0, 0.0, 1.0)
        self._count_s = 1.0
        self._blanking = 0
        self._starts = np.arange(2.0)
        self._colours = np.zeros((1, 4), np.uint8)
        self._image = QImage()
        self._areas: tuple[Area, ...] = ()
        self._moved: tuple[tuple[int, int], ...] = ()
        self.named = True
        """Whether the areas are named over the strip."""
        self.caption = CAPTION
        """What the colours are: on the screen, or as sent where the monitor shows nothing."""
        self.setCacheMode(self.CacheMode.DeviceCoordinateCache)

    def show_colours(
        self,
        colours: NDArray[np.uint8],
        count_s: float,
        blanking: int,
        *,
        dark: bool = False,
        starts: NDArray[np.float64] | None = None,
    ) -> None:
        """Show the colour of every count, shape (n, 3); the first ``blanking`` are not seen.

        ``dark`` if the monitor shows nothing, and the colours are those that are sent. ``starts`` tells
        where uneven counts start and the last ends, shape (n + 1,). [counts]
        """
        starts = np.arange(len(colours) + 1.0) if starts is None else starts
        if not np.array_equal(starts, self._starts):
            self._starts = starts
            self.update()
        padded = np.full((len(colours), 4), 255, np.uint8)
        padded[:, :3] = colours
        caption, before = (DARK_CAPTION if dark else CAPTION), (self._count_s, self._blanking, self.caption)
        if np.array_equal(padded, self._colours) and (count_s, blanking, caption) == before:
            return
        self.caption = caption
        # The image does not own its memory: keep the array beside it.
        self._colours = np.ascontiguousarray(padded)
        self._image = QImage(self._colours.data, len(colours), 1, QImage.Format.Format_RGBX8888)
        self._count_s, self._blanking = count_s, blanking
        self.update()

    @property
    def moved(self) -> tuple[tuple[int, int], ...]:
        """The lit stretches."""
        return self._moved

    def show_areas(self, areas: Sequence[Area]) -> None:
        """Name stretches of the line."""
        if tuple(areas) != self._areas:
            self._areas = tuple(areas)
            self.update()

    def show_names(self, *, shown: bool) -> None:
        """Name the areas or not: on a low, folded plot the readout stands there."""
        if shown != self.named:
            self.named = shown
            self.update()

    def show_moved(self, moved: Sequence[tuple[int, int]]) -> None:
        """Light the stretches that a part moves."""
        if tuple(moved) != self._moved:
            self._moved = tuple(moved)
            self.update()

    def place(self, places: Places, time: TimeScale) -> None:
        """Lie above the colour lane."""
        if (places, time) != (self._places, self._time):
            self._places, self._time = places, time
            self.set_box(QRectF(places.names.topLeft(), places.colour.topRight()))

    def draw(self, painter: QPainter) -> None:
        strip = self._places.strip
        self._draw_colours(painter, strip)
        if not self.bench.theme.dark:
            # White would melt into a white panel.
            painter.setPen(QPen(self.bench.theme.color("outline"), 1))
            painter.drawRect(strip.adjusted(0.5, -0.5, -0.5, 0.5))
        self._draw_moved(painter, strip)
        if self.named:
            self._draw_names(painter, self._places.names)

    def _draw_colours(self, painter: QPainter, strip: QRectF) -> None:
        time, theme = self._time, self.bench.theme
        painter.fillRect(strip, theme.mixed("plot", "text", 0.0 if theme.dark else 0.92))
        first, last = time.first_s / self._count_s, time.last_s / self._count_s
        first = max(first, self._blanking)
        if first >= last:
            return
        left = time.x(first * self._count_s)
        target = QRectF(left, strip.top(), strip.right() - left, strip.height())
        if target.width() > CELL * (last - first):
            self._draw_cells(painter, target)
            return
        shrunk = (last - first) > target.width()
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, shrunk)
        painter.drawImage(target, self._image, QRectF(first, 0, last - first, 1))

    def _draw_cells(self, painter: QPainter, target: QRectF) -> None:
        """Draw the counts in sight one by one, each where it starts, with a line between two."""
        starts, to_count = self._starts, 1 / self._count_s
        first, last = (self._time.time_s(x) * to_count for x in (target.left(), target.right()))
        cells = range(
            max(self._blanking, int(np.searchsorted(starts, first + 1e-6, side="right")) - 1),
            min(len(self._colours), int(np.searchsorted(starts, last))),
        )
        edges = [self._time.x(float(starts[cell]) * self._count_s) for cell in (*cells, cells.stop)]
        for cell, left, right in zip(cells, edges, edges[1:], strict=False):
            box = QRectF(left, target.top(), right - left, target.height())
            painter.fillRect(box.intersected(target), QColor(*self._colours[cell, :3].tolist()))
        painter.setPen(QPen(self.bench.theme.color("plot"), 1))
        lines = [round(x) + 0.5 for x in edges if target.left() - 1 <= x <= target.right()]
        painter.drawLines([QLineF(x, target.top(), x, target.bottom()) for x in lines])

    def _draw_moved(self, painter: QPainter, strip: QRectF) -> None:
        pen = QPen(self.bench.theme.color("accent"), self.bench.px(3))
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        y = strip.bottom() + self.bench.px(4.5)
        for first, after in self._moved:
            left = self._time.clipped_x(first * self._count_s)
            right = self._time.clipped_x(after * self._count_s)
            if right > left:
                painter.drawLine(QPointF(left, y), QPointF(max(right, left + 1), y))

    def names(self) -> list[tuple[float, float, str]]:
        """Return middle, width and text of what is named of blanking and picture. [px]"""
        return self._porch_names() + self._picture_names()

    @property
    def _picture_left(self) -> float:
        return self._time.clipped_x(self._blanking * self._count_s)

    def _porch_names(self) -> list[tuple[float, float, str]]:
        row, right = self._places.names, self._picture_left
        if right - row.left() <= ROOMY_PART * row.width():
            return []
        porches = [area for area in self._areas if area.blanking and self._width(area) > 0]
        return self._placed(porches, row.left(), right)

    def _picture_names(self) -> list[tuple[float, float, str]]:
        least = self.bench.px(8)
        pictures = [area for area in self._areas if not area.blanking and self._width(area) > least]
        return self._placed(pictures, self._picture_left, self._places.names.right())

    def _draw_names(self, painter: QPainter, row: QRectF) -> None:
        theme, px = self.bench.theme, self.bench.px
        font, centre = self.bench.type.sans(0.86), Qt.AlignmentFlag.AlignHCenter
        for middle, width, name in self.names():
            box = QRectF(middle - width / 2, row.top(), width, row.height())
            draw_text(painter, box, name, font, theme.color("dim"), align=centre, elide=True)
        caption = QRectF(row.left(), row.top(), self._picture_left - row.left() - px(6), row.height())
        small = self.bench.type.sans(0.80)
        words = QFontMetricsF(small).horizontalAdvance(self.caption)
        if not self._porch_names() and words <= caption.width():
            draw_text(painter, caption, self.caption, small, theme.color("dim"))

    def _placed(self, areas: list[Area], left: float, right: float) -> list[tuple[float, float, str]]:
        """Return middle, width and text of names: spread where all have room, else those that fit.

        The sentence over a single area is shortened: it still says something.
        """
        measure, gap = QFontMetricsF(self.bench.type.sans(0.86)).horizontalAdvance, self.bench.px(8)
        widths = [measure(area.name) + 1 for area in areas]
        middles = [self._middle(area) for area in areas]
        if sum(widths) + gap * len(areas) <= right - left:
            middles = spread(middles, [width + gap for width in widths], left, right)
        elif len(areas) == 1:
            widths = [min(widths[0], self._width(areas[0]) - gap)]
        else:
            fits = [w + gap <= self._width(area) for w, area in zip(widths, areas, strict=True)]
            widths = [width if fit else 0.0 for width, fit in zip(widths, fits, strict=True)]
        named = zip(middles, widths, areas, strict=True)
        return [(middle, width, area.name) for middle, width, area in named if width > gap]

    def _width(self, area: Area) -> float:
        time = self._time
        return time.clipped_x(area.after * self._count_s) - time.clipped_x(area.first * self._count_s)

    def _middle(self, area: Area) -> float:
        time = self._time
        return (time.clipped_x(area.after * self._count_s) + time.clipped_x(area.first * self._count_s)) / 2
