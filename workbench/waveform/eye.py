"""Volts as the eye sees them: light, lightness, and the colour to paint it with.

A display turns 0 … 0.700 V into light with a power of 2.2, whatever is above or below is
clipped. That is a model of a display, not a measurement of one.

References
----------
.. [1] The power 2.2 of a display and the clip at full scale: common practice, no source.
.. [2] IEC 61966-2-1:1999, sRGB: the encoding of light for the screen this program runs on, and
       the weights of red, green and blue in luminance (from ITU-R BT.709), from memory.
.. [3] CIE 15: lightness L* from relative luminance, 116 f(Y) - 16, from memory.
"""

import numpy as np
from numpy.typing import NDArray

from workbench.waveform.scanline import FULL_SCALE_VOLTS, Scanline

__all__ = [
    "GAMMA",
    "light_from_volts",
    "lightness",
    "lightness_of_colour",
    "srgb_from_volts",
    "strip_colours",
]

FloatArray = NDArray[np.floating]

GAMMA = 2.2
"""Exponent of the display. [1]"""
LUMINANCE_WEIGHTS = (0.2126, 0.7152, 0.0722)
"""Red, green and blue in luminance. [1] [2]_"""

_SAMPLES_SEEN = 4
"""Samples of a pixel that make its light: more would change a colour by less than it can show. [1]"""


def light_from_volts(volts: FloatArray) -> FloatArray:
    """Return the light of a channel, 0 for black to 1 for 0.700 V and above, same shape. [1]"""
    light: FloatArray = np.clip(volts / FULL_SCALE_VOLTS, 0.0, 1.0) ** GAMMA
    return light


def lightness(volts: FloatArray) -> FloatArray:
    """Return L* of a grey whose three channels have this voltage, 0 … 100, same shape. [1]

    Examples
    --------
    >>> [round(float(value)) for value in lightness(np.array([0, 0.7 / 3, 1.4 / 3, 0.7]))]
    [0, 36, 70, 100]
    """
    return _l_star(light_from_volts(volts))


def lightness_of_colour(volts: FloatArray) -> FloatArray:
    """Return L* of colours, volts of shape (3, ...), result of shape (...). [1]"""
    return _l_star(np.tensordot(LUMINANCE_WEIGHTS, light_from_volts(volts), axes=1))


def srgb_from_volts(volts: FloatArray) -> NDArray[np.uint8]:
    """Return the sRGB bytes that show a channel's light on this screen, same shape. [1] [2]_"""
    return _encode(light_from_volts(volts))


def strip_colours(scanline: Scanline) -> NDArray[np.uint8]:
    """Return what each pixel of a line looks like, sRGB bytes, shape (h.total, 3). [1]

    The eye adds up light, so the light of a pixel's samples is averaged, not their voltage.
    """
    stride = max(1, scanline.samples_per_pixel // _SAMPLES_SEEN)
    samples = scanline.volts[:3].reshape(3, -1, scanline.samples_per_pixel)[:, :, stride // 2 :: stride]
    return np.ascontiguousarray(_encode(light_from_volts(samples).mean(axis=2)).T)


def _l_star(luminance: FloatArray) -> FloatArray:
    small = luminance * (29.0 / 3.0) ** 3
    return np.where(luminance > (6.0 / 29.0) ** 3, 116.0 * np.cbrt(luminance) - 16.0, small)


def _encode(light: FloatArray) -> NDArray[np.uint8]:
    """Return sRGB bytes of linear light 0 … 1."""
    curved = 1.055 * light ** (1.0 / 2.4) - 0.055
    encoded = np.where(light <= 0.0031308, 12.92 * light, curved)
    rounded: NDArray[np.uint8] = np.rint(encoded * 255.0).astype(np.uint8)
    return rounded
