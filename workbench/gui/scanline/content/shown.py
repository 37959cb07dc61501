"""What the lanes show, a line or a whole frame, in one shape: traces over one stretch of time."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.timing.mode import Axis, Mode
from workbench.waveform.scanline import Scanline

__all__ = ["Shown", "Unit", "blank_line", "shown_line"]

Float32Array = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Unit:
    """The unit of the time axis and what is counted along it."""

    seconds: float
    """Length of one unit. [s]"""
    symbol: str
    count: str
    """Short name of what the axis counts: pixels, or lines."""


MICROSECONDS = Unit(1e-6, "µs", "px")
MILLISECONDS = Unit(1e-3, "ms", "lines")


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """Traces from the start of the front porch, evenly sampled."""

    axis: Axis
    """Counts along the time axis: pixels of the line, or lines of the frame."""
    count_s: float
    """Length of a pixel, or of a line. [s]"""
    unit: Unit
    step_s: float
    """Time between two samples. [s]"""
    colour_volts: Float32Array
    """Red, green, blue, shape (3, n_samples); of a frame, the highest of each line. [V]"""
    lowest_volts: Float32Array | None
    """The lowest of each line, shape (3, n_samples); none for a line, where it is the trace itself. [V]"""
    ideal_volts: Float32Array | None
    """The even staircase, shape (3, n_samples); none for a frame. [V]"""
    sync_volts: Float32Array
    """H and V sync, shape (2, n_samples). [V]"""
    sync_high_volts: tuple[float, float]
    """Level of a high H and V sync line. [V]"""
    strip: NDArray[np.uint8]
    """sRGB of every count, as the monitor shows it, shape (axis.total, 3)."""
    unseen: int
    """How many counts at the start the eye does not see: blanking. [1]"""
    dark: bool = False
    """Whether the monitor shows nothing: the strip is then as sent."""
    starts: NDArray[np.float64] | None = None
    """Where uneven pixels start, shape (axis.total + 1,); none where all are even. [counts]"""

    def start_s(self, count: int) -> float:
        """Return when a count really starts, ``0 <= count <= axis.total``. [s]"""
        return self.count_s * (count if self.starts is None else float(self.starts[count]))

    @property
    def span_s(self) -> float:
        """Return the length of the line or frame. [s]"""
        return self.axis.total * self.count_s

    @property
    def reached_volts(self) -> tuple[Float32Array, Float32Array]:
        """Return the lowest and highest of red, green and blue at every sample. [V]"""
        lowest = self.colour_volts if self.lowest_volts is None else self.lowest_volts
        return lowest, self.colour_volts

    @property
    def seen(self) -> bool:
        """Return whether any of it belongs to the picture."""
        return self.whole_frame or self.unseen < self.axis.total

    @property
    def whole_frame(self) -> bool:
        """Return whether this is a frame."""
        return self.lowest_volts is not None


def shown_line(
    scanline: Scanline,
    sync_high_volts: tuple[float, float],
    strip: NDArray[np.uint8],
    *,
    seen: bool = True,
    dark: bool = False,
) -> Shown:
    """Return the traces of one line; ``seen`` if it belongs to the picture, ``dark`` if the screen is."""
    mode: Mode = scanline.mode
    return Shown(
        axis=mode.h,
        count_s=mode.pixel_s,
        unit=MICROSECONDS,
        step_s=scanline.step_s,
        colour_volts=scanline.volts[:3],
        lowest_volts=None,
        ideal_volts=scanline.ideal_trace,
        sync_volts=scanline.volts[3:],
        sync_high_volts=sync_high_volts,
        strip=strip,
        unseen=mode.h.blanking if seen else mode.h.total,
        dark=dark,
        starts=scanline.starts,
    )


def blank_line(mode: Mode) -> Shown:
    """Return a line on which nothing happens yet."""
    flat = np.zeros((3, 2), np.float32)
    return Shown(
        axis=mode.h,
        count_s=mode.pixel_s,
        unit=MICROSECONDS,
        step_s=mode.line_s,
        colour_volts=flat,
        lowest_volts=None,
        ideal_volts=None,
        sync_volts=flat[:2],
        sync_high_volts=(0.0, 0.0),
        strip=np.zeros((mode.h.total, 3), np.uint8),
        unseen=mode.h.total,
    )
