"""The picture on a monitor's screen, and the picture that was sent.

Each slice of a frame is read while it is in the cache: black from the back porch, the columns at the
instants of the monitor's clock, then light.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.picture.light import FULL_SCALE_VOLTS, light_from_volts, srgb_bytes
from workbench.progress import SILENT, Progress
from workbench.timing.mode import Mode
from workbench.waveform.adjustment import adjust, from_table
from workbench.waveform.clamp import Clamp, blanking_volts, clamp_share
from workbench.waveform.frame import frame_slices
from workbench.waveform.kernel import Kernel
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.sampling import Adjustment, sampling_of

__all__ = ["SeenPicture", "adjustment_of", "amplified", "seen_picture", "seen_rows", "sent_picture"]

ByteArray = NDArray[np.uint8]
Float32Array = NDArray[np.float32]
Kernels = tuple[Kernel, Kernel, Kernel]

_STEPS = 4096
"""Steps between black and white that are told apart: sixteen to an 8-bit code. [1]"""
_LIGHT = light_from_volts(np.linspace(0.0, FULL_SCALE_VOLTS, _STEPS)).astype(np.float32)
_SRGB_FROM_VOLTS = srgb_bytes(_LIGHT)
_SRGB_FROM_LIGHT = srgb_bytes(np.linspace(0.0, 1.0, _STEPS))


@dataclass(frozen=True, slots=True, eq=False)
class SeenPicture:
    """What stands on the screen."""

    rgb: ByteArray
    """sRGB bytes, shape (n_rows, n_columns, 3). [1]"""
    adjustment: Adjustment
    """How the monitor was set."""
    black_volts: Float32Array
    """What it took for black in each row shown, shape (n_rows, 3). [V]"""


def sent_picture(codes: ByteArray, levels: tuple[NDArray[np.floating], ...]) -> ByteArray:
    """Return the picture as sent: settled levels on a perfect display.

    Parameters
    ----------
    codes : uint8 array, shape (3, height, width)
        The picture. [1]
    levels : tuple of 3 float arrays
        Level of each code, loaded. [V]

    Returns
    -------
    rgb : uint8 array, shape (height, width, 3)
        sRGB bytes. [1]
    """
    rgb = np.empty((*codes.shape[1:], 3), np.uint8)
    for channel, (plane, volts) in enumerate(zip(codes, levels, strict=True)):
        rgb[:, :, channel] = srgb_bytes(light_from_volts(volts)).take(plane, mode="clip")
    return rgb


def seen_picture(
    sent: Mode,
    codes: ByteArray,
    blanking: tuple[int, int, int],
    kernels: Kernels,
    monitor: Monitor,
    *,
    every: int = 1,
    progress: Progress = SILENT,
) -> SeenPicture:
    """Return the picture as a monitor shows it.

    Parameters
    ----------
    sent : Mode
        The signal's true counts.
    codes : uint8 array, shape (3, v.active, h.active)
        The picture. [1]
    blanking : tuple of 3 int
        Code outside the picture. [1]
    kernels : tuple of 3 Kernel
        Red, green and blue, all with the same ``samples_per_pixel``.
    monitor : Monitor
        What looks at the signal.
    every : int
        Show only each n-th column and row, for a preview, ``1 <= every``. [1]
    progress : Progress
        Told the rows done after each slice; may stop the work.

    """
    adjustment = adjustment_of(sent, codes, blanking, kernels, monitor)
    return seen_rows(
        sent,
        lambda rows: codes[:, rows],
        blanking,
        kernels,
        monitor,
        adjustment,
        every=every,
        progress=progress,
    )


def seen_rows(
    sent: Mode,
    codes_of: Callable[[NDArray[np.intp]], ByteArray],
    blanking: tuple[int, int, int],
    kernels: Kernels,
    monitor: Monitor,
    adjustment: Adjustment,
    *,
    every: int = 1,
    progress: Progress = SILENT,
) -> SeenPicture:
    """Return the picture as a monitor shows it that was adjusted before.

    Parameters
    ----------
    codes_of : callable
        Returns the codes of some rows of the picture, shape (3, n_rows, h.active); asked only for
        those that are shown. [1]
    adjustment : Adjustment
        How the monitor is set.

    The others are those of :func:`seen_picture`.
    """
    kernels = amplified(kernels, sent, monitor)
    samples, early = kernels[0].samples_per_pixel, kernels[0].early(sent.h.total, sent.h.front_porch)
    sampling = sampling_of(sent, monitor, adjustment, samples, every=every, early=early)
    shape = len(sampling.rows), len(sampling.columns)
    rgb, black = np.zeros((*shape, 3), np.uint8), np.zeros((shape[0], 3), np.float32)
    clamp = Clamp(blanking_volts(kernels, blanking), clamp_share(sent, monitor, adjustment, every))
    inside = np.flatnonzero((sampling.rows >= 0) & (sampling.rows < sent.v.active))
    if not inside.size:
        return SeenPicture(rgb, adjustment, black)
    shown_rows = sampling.rows[inside]
    for lines in frame_slices(sent, codes_of(shown_rows), blanking, kernels, numbers=shown_rows):
        rows = inside[lines.first : lines.first + lines.volts.shape[1]]
        black[rows] = clamp.follow(lines.volts[:, :, sampling.black].mean(axis=2).T)
        shown = (lines.volts[:, :, sampling.columns] - black[rows].T[:, :, None, None]) / monitor.full_volts
        rgb[rows] = np.moveaxis(_srgb(shown), 0, 2)
        progress.step(int(rows[-1]) + 1, len(rgb))
    return SeenPicture(rgb, adjustment, black)


def amplified(kernels: Kernels, sent: Mode, monitor: Monitor) -> Kernels:
    """Return the kernels as they are at the screen: a tube's amplifier slows them."""
    if monitor.screen is not Screen.TUBE:
        return kernels
    red, green, blue = (kernel.slowed(monitor.rise_s, sent.pixel_s) for kernel in kernels)
    return red, green, blue


def adjustment_of(
    sent: Mode, codes: ByteArray, blanking: tuple[int, int, int], kernels: Kernels, monitor: Monitor
) -> Adjustment:
    """Return how a monitor is set for a picture: by its own search, or by its table."""
    if monitor.auto_adjust:
        return adjust(sent, monitor, codes, blanking, kernels)
    return from_table(sent, monitor)


def _srgb(shown: Float32Array) -> ByteArray:
    """Return sRGB bytes of parts of white, (3, n_rows, n_columns, n_spots) to (3, n_rows, n_columns)."""
    steps = np.clip(shown * (_STEPS - 1) + 0.5, 0, _STEPS - 1).astype(np.int16)
    if steps.shape[3] == 1:
        return np.asarray(_SRGB_FROM_VOLTS.take(steps[..., 0]))
    light = _LIGHT.take(steps).mean(axis=3)
    return np.asarray(_SRGB_FROM_LIGHT.take((light * (_STEPS - 1) + 0.5).astype(np.int16)))
