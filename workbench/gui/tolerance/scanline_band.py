"""The band of boards behind the scanline's chosen trace, while somebody looks at boards."""

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from workbench.gui.bench import Bench
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.view import LanesView
from workbench.project.document import Channel

__all__ = ["ScanlineBand", "runs"]

_ALPHA = 0.30
_UNDER_TRACES = -5.0


class ScanlineBand(Overlay):
    """Draws between which levels boards lie, pixel by pixel; what a band shows has settled."""

    def __init__(self, bench: Bench, plot: LanesView) -> None:
        super().__init__(bench, z=_UNDER_TRACES)
        self._plot = plot
        plot.scene().addItem(self)
        plot.range_changed.connect(self._place)
        bench.view.changed.connect(self._on_view)
        bench.theme_changed.connect(self._place)
        self._drawn: object = None
        self._place()

    def rects(self) -> list[QRectF]:
        """Return the boxes of the band that are in sight; none while there is no band."""
        result, view, plot = self.bench.live.result, self.bench.view, self._plot
        band = view.bands.get(view.channel)
        if band is None or result.scanline is None or plot.shown.whole_frame:
            return []
        codes = result.scanline.codes[tuple(Channel).index(view.channel)]
        if codes.max(initial=0) >= len(band.low_volts):
            return []
        time, pixel_s = plot.time, plot.shown.count_s
        first = max(0, int(time.first_s / pixel_s))
        # An uneven pixel out of sight may start early, and be in sight.
        last = min(len(codes), int(np.ceil(time.last_s / pixel_s)) + 1)
        starts, ends = runs(codes[first:last])
        boxes = []
        for start, end in zip((starts + first).tolist(), (ends + first).tolist(), strict=True):
            left, right = (time.clipped_x(plot.shown.start_s(pixel)) for pixel in (start, end))
            code = codes[start]
            top, foot = (plot.volts_y(float(v[code])) for v in (band.high_volts, band.low_volts))
            boxes.append(QRectF(left, top, right - left, foot - top))
        return boxes

    def draw(self, painter: QPainter) -> None:
        rects = self.rects()
        if rects:
            painter.setClipRect(self._plot.places.colour)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(self.bench.theme.channel(self.bench.view.channel, _ALPHA))
            painter.drawRects(rects)

    def _place(self) -> None:
        self.set_box(QRectF(self._plot.places.colour))

    def _on_view(self) -> None:
        """Repaint if the band is another one, and not for every move of the pointer."""
        band = self.bench.view.bands.get(self.bench.view.channel)
        if band is not self._drawn:
            self._drawn = band
            self.update()


def runs(codes: NDArray[np.integer]) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return where stretches of equal codes start and end.

    >>> runs(np.array([0, 0, 3, 3, 1]))
    (array([0, 2, 4]), array([2, 4, 5]))
    """
    edges = np.flatnonzero(np.diff(codes)) + 1
    if not len(codes):
        return edges, edges
    return np.concatenate(([0], edges)), np.concatenate((edges, [len(codes)]))
