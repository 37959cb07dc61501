"""Which stretch of time the plot has in sight, as presets and zooms."""

from workbench.gui.scanline.content.presets import Preset, preset_span, zoomed_span
from workbench.gui.scanline.lanes.view import LanesView

__all__ = ["Sight"]

SAME = 1e-3
"""Stretches whose ends differ by less of their length are the same. [1]"""


class Sight:
    """Keeps the preset that holds, if one does, and brings stretches of time into sight."""

    def __init__(self, plot: LanesView) -> None:
        self._plot = plot
        self._kept: tuple[float, str] | None = None
        self.preset: Preset | None = Preset.LINE
        """The preset in sight; none after zooming by hand."""
        self.last = Preset.LINE
        """The preset that was chosen last."""

    def show(self, preset: Preset, *, around: float) -> None:
        """Bring a preset's stretch into sight; single pixels around one, in counts."""
        shown = self._plot.shown
        self.last = preset
        self.preset = preset
        first, last = preset_span(preset, shown.axis, around)
        self._plot.show_span(first * shown.count_s, last * shown.count_s)

    def keep(self, *, around: float) -> None:
        """Show the last preset again where the line or frame became another length."""
        shown = self._plot.shown
        now = (shown.span_s, shown.unit.symbol)
        if now != self._kept:
            self._kept = now
            self.show(self.last, around=around)

    def zoom(self, factor: float, *, around_s: float) -> None:
        """Show a stretch this many times as long, around a time or the middle if that is out of sight."""
        shown, time = self._plot.shown, self._plot.time
        if not time.first_s <= around_s <= time.last_s:
            around_s = (time.first_s + time.last_s) / 2
        span = (time.first_s / shown.count_s, time.last_s / shown.count_s)
        first, last = zoomed_span(span, shown.axis.total, factor, around_s / shown.count_s)
        self._plot.show_span(first * shown.count_s, last * shown.count_s)

    def centre(self, time_s: float) -> None:
        """Bring a time into the middle, as far as the line goes."""
        time, span_s = self._plot.time, self._plot.shown.span_s
        length_s = time.last_s - time.first_s
        first_s = min(max(time_s - length_s / 2, 0.0), span_s - length_s)
        self._plot.show_span(first_s, first_s + length_s)

    def look(self) -> None:
        """See which preset holds after the plot was moved or zoomed."""
        shown, time = self._plot.shown, self._plot.time
        if shown.whole_frame:
            self.preset = Preset.FRAME
            return
        span = (time.first_s / shown.count_s, time.last_s / shown.count_s)
        for preset in (Preset.LINE, Preset.BLANKING):
            if _same(span, preset_span(preset, shown.axis, 0.0)):
                self.preset = preset
                return
        width = preset_span(Preset.PIXELS, shown.axis, 0.0)[1]
        self.preset = Preset.PIXELS if abs(span[1] - span[0] - width) < SAME * width else None


def _same(one: tuple[float, float], other: tuple[float, float]) -> bool:
    length = other[1] - other[0]
    return all(abs(a - b) < SAME * length for a, b in zip(one, other, strict=True))
