"""Volts, light and lightness: what a display makes of a voltage, and what the eye makes of that.

A display turns 0 … 0.700 V into light with a power of 2.2; what lies above or below is clipped.
That is a model of a display, not a measurement of one.

References
----------
.. [1] Peak white 0.700 V into 75 ohm: DAC table of a graphics-controller data sheet, measured to the
       VESA test procedure of 1 Dec 2000. The power of 2.2 is common practice, no source.
.. [2] IEC 61966-2-1:1999, sRGB: 0.0031308, 12.92, 1.055, 0.055, 2.4. From memory.
.. [3] CIE 15:2004, Colorimetry: L* = 116 f(Y) - 16, with f linear below (6 / 29) ** 3. From memory.
.. [4] ITU-R BT.709: weights of red, green and blue in luminance. From memory.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

__all__ = [
    "FULL_SCALE_VOLTS",
    "GAMMA",
    "LUMINANCE_WEIGHTS",
    "light_from_srgb",
    "light_from_volts",
    "lightness_from_light",
    "srgb_bytes",
    "srgb_from_light",
    "volts_from_light",
]

FloatArray = NDArray[np.floating]

FULL_SCALE_VOLTS = 0.700
"""Peak white at the monitor. [V] [1]_"""
GAMMA = 2.2
"""Exponent of the display. [1] [1]_"""
LUMINANCE_WEIGHTS = (0.2126, 0.7152, 0.0722)
"""Red, green and blue in luminance. [1] [4]_"""


def light_from_volts(volts: ArrayLike) -> FloatArray:
    """Return the light of a channel, 0 for black to 1 for 0.700 V and above, same shape. [1]

    >>> float(light_from_volts(0.35).round(3))
    0.218
    """
    light: FloatArray = np.clip(np.asarray(volts) / FULL_SCALE_VOLTS, 0.0, 1.0) ** GAMMA
    return light


def volts_from_light(light: ArrayLike) -> FloatArray:
    """Return the voltage that makes this light, 0 … 0.700 V, same shape. [V]"""
    volts: FloatArray = FULL_SCALE_VOLTS * np.clip(light, 0.0, 1.0) ** (1.0 / GAMMA)
    return volts


def lightness_from_light(luminance: ArrayLike) -> FloatArray:
    """Return L* of a luminance relative to white, 0 … 100, same shape. [1] [3]_"""
    y = np.asarray(luminance)
    small = y * (29.0 / 3.0) ** 3
    return np.where(y > (6.0 / 29.0) ** 3, 116.0 * np.cbrt(y) - 16.0, small)


def srgb_from_light(light: ArrayLike) -> FloatArray:
    """Return sRGB values 0 … 1 of linear light 0 … 1, same shape. [1] [2]_"""
    linear = np.asarray(light)
    curved = 1.055 * np.maximum(linear, 0.0) ** (1.0 / 2.4) - 0.055
    return np.where(linear <= 0.0031308, 12.92 * linear, curved)


def light_from_srgb(values: ArrayLike) -> FloatArray:
    """Return linear light 0 … 1 of sRGB values 0 … 1, same shape. [1] [2]_"""
    encoded = np.asarray(values)
    return np.where(encoded <= 0.04045, encoded / 12.92, ((encoded + 0.055) / 1.055) ** 2.4)


def srgb_bytes(light: ArrayLike) -> NDArray[np.uint8]:
    """Return sRGB bytes of linear light 0 … 1, same shape. [1]"""
    encoded: NDArray[np.uint8] = np.rint(srgb_from_light(light) * 255.0).astype(np.uint8)
    return encoded
