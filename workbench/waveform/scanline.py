"""One scanline at the monitor: five voltages over time, from the start of the front porch.

The colours are the codes of the row of pixels through the kernels of their channels; what the
line before left in the network and the cable flows on into the front porch. The syncs follow
the mode's polarity.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.errors import TimingError
from workbench.picture.light import FULL_SCALE_VOLTS
from workbench.picture.source import PictureCodes
from workbench.timing.clock.pixels import pixel_starts
from workbench.timing.figures import simulable
from workbench.timing.mode import Mode
from workbench.waveform.kernel import Kernel
from workbench.waveform.sync import SyncDrive, write_h_sync, write_v_sync

__all__ = [
    "FULL_SCALE_VOLTS",
    "TRACES",
    "Scanline",
    "line_codes",
    "render_scanline",
    "samples_per_pixel",
]

IntArray = NDArray[np.intp]
Float32Array = NDArray[np.float32]
Kernels = tuple[Kernel, Kernel, Kernel]

TRACES = ("red", "green", "blue", "hsync", "vsync")
"""The rows of :attr:`Scanline.volts`, in order."""

_SAMPLES = 32
_FEWEST_SAMPLES = 16
_LONG_LINE = 4096
"""Lines of more pixels than this are sampled at the lower rate, so that a line stays a few megabytes. [1]"""

_ON_EDGE = 1e-9
"""A place this near before an edge is on it: it is only rounding. [pixels]"""


@dataclass(frozen=True, slots=True, eq=False)
class Scanline:
    """The line shown, as it arrives at the monitor; arrays are read-only."""

    mode: Mode
    number: int
    """Line of the frame, counted from 1 at the first line of the active picture. [1]"""
    samples_per_pixel: int
    volts: Float32Array
    """Red, green, blue, H sync, V sync, shape (5, n_samples), n_samples = h.total * samples_per_pixel. [V]"""
    codes: IntArray
    """Codes of red, green, blue, shape (3, h.total), from the start of the front porch. [1]"""
    ideal_volts: Float32Array
    """The even staircase 0 … 0.700 V of the codes, one value a pixel, shape (3, h.total). [V]"""
    starts: NDArray[np.float64] | None = None
    """Where uneven pixels start and the last ends, shape (h.total + 1,); none where all are even. [pixels]"""

    @property
    def step_s(self) -> float:
        """Return the time between two samples. [s]"""
        return self.mode.pixel_s / self.samples_per_pixel

    @property
    def ideal_trace(self) -> Float32Array:
        """Return the even staircase at every sample, shape (3, n_samples). [V]"""
        if self.starts is None:
            return np.repeat(self.ideal_volts, self.samples_per_pixel, axis=1)
        return self.ideal_volts[:, self.sample_pixels]

    @property
    def sample_pixels(self) -> IntArray:
        """Return the pixel that each sample lies in, shape (n_samples,). [1]"""
        pixels = np.arange(self.mode.h.total)
        if self.starts is None:
            return np.repeat(pixels, self.samples_per_pixel)
        at = np.arange(self.volts.shape[1]) / self.samples_per_pixel
        return self._started(at)

    def pixel_at(self, place: float) -> int:
        """Return the pixel at a place of the line; an edge belongs to the pixel that starts there.

        Parameters
        ----------
        place : float
            From the start of an even line's front porch, in pixels. [1]
        """
        if self.starts is None:
            return min(int(place + _ON_EDGE), self.mode.h.total - 1)
        return int(self._started(np.array([place]))[0])

    def _started(self, places: NDArray[np.float64]) -> IntArray:
        """Return the uneven pixel that started last before each place; the first before the first."""
        assert self.starts is not None
        started = np.searchsorted(self.starts, places + _ON_EDGE, side="right") - 1
        return started.clip(0, self.mode.h.total - 1)

    @property
    def times_s(self) -> NDArray[np.float64]:
        """Return the time of every sample, 0 at the start of the front porch, shape (n_samples,). [s]"""
        rate_hz = self.mode.pixel_clock_hz * self.samples_per_pixel
        return np.arange(self.volts.shape[1]) / rate_hz


def samples_per_pixel(mode: Mode) -> int:
    """Return how many samples of a pixel a scanline of this mode has, never under 16. [1]"""
    return _SAMPLES if mode.h.total <= _LONG_LINE else _FEWEST_SAMPLES


def line_codes(mode: Mode, codes: PictureCodes, number: int) -> IntArray:
    """Return the codes of a whole line, blanking first.

    Parameters
    ----------
    mode : Mode
        Counts of the line and the frame.
    codes : PictureCodes
        What the active part shows, and the code outside it.
    number : int
        Line, from 1 at the first line of the picture; counts round the frame. [1]

    Returns
    -------
    codes : int array, shape (3, h.total)
        From the start of the front porch; all blanking on a line outside the picture. [1]
    """
    line = np.empty((3, mode.h.total), np.intp)
    line[:] = np.array(codes.picture.blanking, np.intp)[:, None]
    row = (number - 1) % mode.v.total
    if row < mode.v.active:
        active = mode.h.edges[2]
        line[:, active:] = codes.row(row)
    return line


def render_scanline(
    mode: Mode,
    number: int,
    codes: IntArray,
    before: IntArray,
    *,
    kernels: Kernels,
    sync: SyncDrive,
) -> Scanline:
    """Return the voltages of one line at the monitor.

    Parameters
    ----------
    mode : Mode
        Counts, pixel clock and polarities; progressive.
    number : int
        Line, ``1 … v.total``. [1]
    codes : int array, shape (3, h.total)
        Codes of this line, see :func:`line_codes`. [1]
    before : int array, shape (3, h.total)
        Codes of the line before, whose tail reaches into this one. [1]
    kernels : tuple of 3 Kernel
        Red, green and blue, all with the same ``samples_per_pixel``.
    sync : SyncDrive
        Levels and ramp of the sync lines.

    Raises
    ------
    TimingError
        If the mode is interlaced.

    Notes
    -----
    Where pixels are uneven the divider starts with the frame's line 1, and the time axis stays even: edges
    lie before their even places by up to a system clock.
    """
    refuse_interlaced(mode)
    samples, first = kernels[0].samples_per_pixel, (number - 1) * mode.h.total
    volts = np.empty((5, mode.h.total * samples), np.float32)
    for kernel, line, tail, out in zip(kernels, codes, before, volts[:3], strict=True):
        kernel.volts(_with_history(line, tail, kernel), out.reshape(-1, samples), first)
    divider = kernels[0].divider
    starts = None if divider is None else pixel_starts(divider, first, mode.h.total)
    leading, trailing = (0.0 if starts is None else edge - float(starts[edge]) for edge in mode.h.edges[:2])
    write_h_sync(mode, sync, samples, volts[3], early=(leading, trailing))
    write_v_sync(mode, number, sync, samples, volts[4], early=leading)
    ideal = _ideal_volts(codes, kernels)
    for array in (volts, ideal):
        array.setflags(write=False)
    return Scanline(mode, number, samples, volts, codes, ideal, starts)


def refuse_interlaced(mode: Mode) -> None:
    """Raise :class:`TimingError` for a mode whose lines are not simulated."""
    reason = simulable(mode)
    if reason is not None:
        raise TimingError(reason)


def _with_history(codes: IntArray, before: IntArray, kernel: Kernel) -> IntArray:
    """Return the codes with the last of the line before in front, and the next line's blanking behind."""
    history = kernel.history
    if history > len(before):  # a line shorter than the trail of a pixel: it was the same before
        before = np.concatenate([np.full(history - len(before), before[0]), before])
    return np.concatenate([before[len(before) - history :], codes, codes[: kernel.ahead]])


def _ideal_volts(codes: IntArray, kernels: Kernels) -> Float32Array:
    """Return the even staircase of the codes, shape (3, h.total). [V]"""
    full = np.array([max(1, len(kernel.drive_by_code) - 1) for kernel in kernels])
    return (codes * (FULL_SCALE_VOLTS / full)[:, None]).astype(np.float32)
