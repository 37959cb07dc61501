"""One pixel as a monitor meets it: by the same clock, clamp and amplifier as the whole picture."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.timing.mode import Mode
from workbench.waveform.clamp import Clamp, blanking_volts, clamp_share, lines_remembered
from workbench.waveform.frame import frame_slices
from workbench.waveform.kernel import Kernel
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.sampling import Adjustment, black_samples, column_on, instants
from workbench.waveform.seen import amplified

__all__ = ["PixelSeen", "seen_pixel"]

ByteArray = NDArray[np.uint8]
FloatArray = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class PixelSeen:
    """What reaches the screen of one pixel of the line."""

    screen: Screen
    instants_s: FloatArray
    """When it is looked at, from the start of the front porch: once by a panel, while the spot passes
    by a tube, shape (n_spots,). [s]"""
    volts: FloatArray
    """Red, green, blue at these instants, shape (3, n_spots). [V]"""
    black_volts: FloatArray
    """What is taken for black in this line, shape (3,). [V]"""
    full_volts: float
    """Voltage above black that is shown as white. [V]"""
    on_screen: bool
    """Whether a dot of the screen shows it; otherwise it is cut off, or blanking."""


def seen_pixel(
    sent: Mode,
    codes_of: Callable[[NDArray[np.intp]], ByteArray],
    blanking: tuple[int, int, int],
    kernels: tuple[Kernel, Kernel, Kernel],
    monitor: Monitor,
    adjustment: Adjustment,
    *,
    pixel: int,
    line: int,
) -> PixelSeen:
    """Return what a monitor meets at one pixel of one line.

    Parameters
    ----------
    sent : Mode
        The signal's true counts.
    codes_of : callable
        Returns the codes of some rows of the picture, shape (3, n_rows, h.active). [1]
    blanking : tuple of 3 int
        Code outside the picture. [1]
    kernels : tuple of 3 Kernel
        Red, green and blue, all with the same ``samples_per_pixel``.
    monitor, adjustment
        What looks, and how it is set.
    pixel : int
        Counted from the start of the front porch, ``0 <= pixel < h.total``. [1]
    line : int
        Counted from 0 at the first line of the picture, ``0 <= line < v.total``. [1]

    Notes
    -----
    Black is followed from as many lines before as still move it, those that the screen shows.
    """
    kernels = amplified(kernels, sent, monitor)
    samples = kernels[0].samples_per_pixel
    shown = monitor.mode(sent)
    column = column_on(sent, monitor, adjustment, pixel)
    row = line + sent.v.sync + sent.v.back_porch - adjustment.top
    early = kernels[0].early(sent.h.total, sent.h.front_porch)
    at = instants(sent, monitor, adjustment, np.array([column]), early=early)[0]
    places = np.floor(at * samples + 1e-6).astype(np.intp) % (sent.h.total * samples)
    share = clamp_share(sent, monitor, adjustment)
    # The clamp starts anew above the first row shown, as in the whole picture.
    above = max(0, adjustment.top - sent.v.sync - sent.v.back_porch)
    first = max(min(above, line), line + 1 - lines_remembered(share))
    rows = np.arange(first, max(first, min(line + 1, sent.v.active)))
    codes = codes_of(rows) if rows.size else np.zeros((3, 0, sent.h.active), np.uint8)
    clamp = Clamp(blanking_volts(kernels, blanking), share)
    window = black_samples(sent, monitor, adjustment, samples)
    blank, numbers = line + 1 - first - len(rows), np.arange(first, line + 1)
    for lines in frame_slices(sent, codes, blanking, kernels, blank_lines=blank, numbers=numbers):
        black = clamp.follow(lines.volts[:, :, window].mean(axis=2).T)[-1]
        volts = lines.volts[:, -1, places].astype(np.float64)
    return PixelSeen(
        monitor.screen,
        at * sent.pixel_s,
        volts,
        black.astype(np.float64),
        monitor.full_volts,
        0 <= column < shown.h.active and 0 <= row < shown.v.active,
    )
