"""What the eye sees of a line: the colour of each pixel, and the lightness of voltages.

The model of the display (0 … 0.700 V, a power of 2.2, clipped) is that of
:mod:`workbench.picture.light`.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from workbench.picture.light import (
    FULL_SCALE_VOLTS,
    GAMMA,
    LUMINANCE_WEIGHTS,
    light_from_volts,
    lightness_from_light,
    srgb_bytes,
)
from workbench.waveform.scanline import Scanline

__all__ = [
    "GAMMA",
    "light_from_volts",
    "lightness",
    "lightness_of_colour",
    "srgb_from_volts",
    "strip_colours",
]

FloatArray = NDArray[np.floating]
Float32Array = NDArray[np.float32]

_SAMPLES_SEEN = 4
"""Samples of a pixel that make its light: more would change a colour by less than it can show. [1]"""


def lightness(volts: ArrayLike) -> FloatArray:
    """Return L* of a grey whose three channels have this voltage, 0 … 100, same shape. [1]

    Examples
    --------
    >>> [round(float(value)) for value in lightness([0, 0.7 / 3, 1.4 / 3, 0.7])]
    [0, 36, 70, 100]
    """
    return lightness_from_light(light_from_volts(volts))


def lightness_of_colour(volts: ArrayLike) -> FloatArray:
    """Return L* of colours, volts of shape (3, ...), result of shape (...). [1]"""
    return lightness_from_light(np.tensordot(LUMINANCE_WEIGHTS, light_from_volts(volts), axes=1))


def srgb_from_volts(volts: ArrayLike) -> NDArray[np.uint8]:
    """Return the sRGB bytes that show a channel's light on this screen, same shape. [1]"""
    return srgb_bytes(light_from_volts(volts))


def strip_colours(
    scanline: Scanline,
    black_volts: Sequence[float] = (0.0, 0.0, 0.0),
    full_volts: float = FULL_SCALE_VOLTS,
) -> NDArray[np.uint8]:
    """Return what each pixel of a line looks like, sRGB bytes, shape (h.total, 3). [1]

    Parameters
    ----------
    scanline : Scanline
        The line.
    black_volts : sequence of 3 float
        What is taken for black, red, green and blue. [V]
    full_volts : float
        Voltage above black that is shown as white, ``0 < full_volts``. [V]

    Notes
    -----
    The eye adds up light, so the light of a pixel's samples is averaged, not their voltage.
    """
    black = np.array(black_volts, np.float32).reshape(3, 1, 1)
    shown = (_samples_seen(scanline) - black) * np.float32(FULL_SCALE_VOLTS / full_volts)
    return np.ascontiguousarray(srgb_bytes(light_from_volts(shown).mean(axis=2)).T)


def _samples_seen(scanline: Scanline) -> Float32Array:
    """Return some evenly spaced samples of each pixel, wherever it starts, shape (3, h.total, n_seen). [V]"""
    samples = scanline.samples_per_pixel
    stride = max(1, samples // _SAMPLES_SEEN)
    if scanline.starts is None:
        return scanline.volts[:3].reshape(3, -1, samples)[:, :, stride // 2 :: stride]
    parts = np.arange(stride // 2, samples, stride) / samples
    at = scanline.starts[:-1, None] + np.diff(scanline.starts)[:, None] * parts
    return scanline.volts[:3, np.rint(at * samples).astype(np.intp).clip(0)]
