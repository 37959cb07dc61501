"""Stretches of time that one press brings into sight."""

from enum import Enum

from workbench.timing.mode import Axis

__all__ = ["Preset", "preset_span", "zoomed_span"]

PIXELS_SHOWN = 24
"""Pixels in sight at once when single ones are looked at. [1]"""
FEWEST_COUNTS = 2
"""Closer than this nothing new is seen: two pixels fill the plot. [1]"""


class Preset(Enum):
    """What the plot shows."""

    LINE = "Line"
    BLANKING = "Blanking"
    PIXELS = "Pixels"
    FRAME = "Frame"


def preset_span(preset: Preset, axis: Axis, around: float) -> tuple[float, float]:
    """Return the first and last count in sight.

    Parameters
    ----------
    preset : Preset
        The blanking is shown with as much of the picture after it.
    axis : Axis
        Pixels of the line, or lines of the frame.
    around : float
        Where single pixels are looked at, from the start of the front porch. [1]
    """
    total = float(axis.total)
    if preset is Preset.BLANKING:
        return 0.0, min(2.0 * axis.blanking, total) if axis.blanking else total
    if preset is Preset.PIXELS:
        width = min(float(PIXELS_SHOWN), total)
        first = min(max(float(int(around)) - width / 2, 0.0), total - width)
        return first, first + width
    return 0.0, total


def zoomed_span(span: tuple[float, float], total: float, factor: float, around: float) -> tuple[float, float]:
    """Return a stretch ``factor`` times as long that keeps a place where it is on the screen.

    It stays within ``0 … total`` and shows at least two counts.
    """
    first, last = span
    width = min(max((last - first) * factor, min(FEWEST_COUNTS, total)), total)
    around = min(max(around, first), last)
    part = (around - first) / (last - first)
    first = min(max(around - part * width, 0.0), total - width)
    return first, first + width
