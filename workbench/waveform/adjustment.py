"""How a monitor sets itself: by its table, or by looking for the picture.

Auto-adjustment searches for the first and last bright column and row and takes them for the
picture's edges, then moves the sampling instant to where the pixels have settled. It does
well on a white border with fine detail and badly on a picture with dark edges or without detail:
so does the model.
"""

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from workbench.timing.mode import Mode
from workbench.waveform.frame import frame_slices
from workbench.waveform.kernel import Kernel
from workbench.waveform.monitor import Monitor
from workbench.waveform.sampling import Adjustment

__all__ = ["adjust", "from_table"]

ByteArray = NDArray[np.uint8]
Kernels = tuple[Kernel, Kernel, Kernel]

_LEAST_STRETCH, _MOST_STRETCH = 0.005, 0.05
"""How far off a line's total must seem, and may be, to be moved; assumptions, no source. [1]"""
_ROWS_SEARCHED = 12
"""Rows in which the best phase is looked for. [1]"""
_AS_GOOD_VOLTS = 1e-3
"""Instants whose mean error is this near to the best are as good; the middle one of them is taken. [V]"""


def from_table(sent: Mode, monitor: Monitor) -> Adjustment:
    """Return the adjustment a monitor takes from its table of modes."""
    shown = monitor.mode(sent)
    return Adjustment(
        total=shown.h.total,
        left=shown.h.sync + shown.h.back_porch,
        top=shown.v.sync + shown.v.back_porch,
        phase=monitor.phase,
    )


def adjust(
    sent: Mode, monitor: Monitor, codes: ByteArray, blanking: tuple[int, int, int], kernels: Kernels
) -> Adjustment:
    """Return the adjustment a monitor finds from the picture it is sent.

    Parameters
    ----------
    sent : Mode
        The signal's true counts.
    monitor : Monitor
        Its table's idea of the mode.
    codes : uint8 array, shape (3, v.active, h.active)
        The picture. [1]
    blanking : tuple of 3 int
        Code outside the picture. [1]
    kernels : tuple of 3 Kernel
        Red, green and blue.
    """
    found = from_table(sent, monitor)
    bright = _bright(codes, kernels, monitor.full_volts / 2.0)
    columns, rows = np.flatnonzero(bright.any(axis=0)), np.flatnonzero(bright.any(axis=1))
    if not columns.size:
        return found
    total = round(monitor.mode(sent).h.active * sent.h.total / (columns[-1] - columns[0] + 1))
    if _LEAST_STRETCH < abs(total / found.total - 1.0) <= _MOST_STRETCH:
        found = replace(found, total=total)
    first_pixel = sent.h.sync + sent.h.back_porch + int(columns[0])
    found = replace(
        found,
        left=round(first_pixel * found.total / sent.h.total),
        top=sent.v.sync + sent.v.back_porch + int(rows[0]),
    )
    return replace(found, phase=_best_phase(sent, found.phase, codes, blanking, kernels))


def _bright(codes: ByteArray, kernels: Kernels, volts: float) -> NDArray[np.bool_]:
    """Return where any channel is above a voltage, shape (v.active, h.active)."""
    bright = np.zeros(codes.shape[1:], bool)
    for kernel, channel in zip(kernels, codes, strict=True):
        bright |= (kernel.settled_volts > volts).take(channel, mode="clip")
    return bright


def _best_phase(
    sent: Mode, phase: float, codes: ByteArray, blanking: tuple[int, int, int], kernels: Kernels
) -> float:
    """Return the instant at which pixels are nearest to settled; ``phase`` where nothing tells them apart."""
    detail = (codes[:, :, 1:] != codes[:, :, :-1]).sum(axis=(0, 2))
    if not detail.any():
        return phase
    rows = np.sort(np.argsort(detail, kind="stable")[-_ROWS_SEARCHED:])
    picked = codes[:, rows]
    settled = [
        kernel.settled_volts.take(plane, mode="clip") for kernel, plane in zip(kernels, picked, strict=True)
    ]
    samples = kernels[0].samples_per_pixel
    error_volts = np.zeros(samples)
    for lines in frame_slices(sent, picked, blanking, kernels, numbers=rows):
        n_lines = lines.volts.shape[1]
        volts = lines.volts.reshape(3, n_lines, -1, samples)[:, :, sent.h.blanking :]
        wanted = np.stack(settled)[:, lines.first : lines.first + n_lines, :, None]
        error_volts += np.abs(volts - wanted).mean(axis=(0, 1, 2))
    good = np.flatnonzero(error_volts <= error_volts.min() + _AS_GOOD_VOLTS)
    # It counts from the edge of H sync, which comes early where pixels are uneven.
    phase = (good.mean() + 0.5) / samples + kernels[0].early(sent.h.total, sent.h.front_porch)
    return float(min(phase, 1.0 - 0.5 / samples))
