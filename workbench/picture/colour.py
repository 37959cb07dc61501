"""Distances between colours as the eye judges them: CIELAB and CIEDE2000.

References
----------
.. [1] IEC 61966-2-1:1999: sRGB primaries and white D65; CIE 15:2004: CIELAB. From memory.
.. [2] G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000 color-difference formula: implementation notes,
       supplementary test data, and mathematical observations", Color Research and Application 30
       (2005) 21-30.
"""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from workbench.picture.light import light_from_srgb

__all__ = ["delta_e_2000", "lab_from_light", "lab_from_srgb"]

FloatArray = NDArray[np.float64]

# Linear sRGB to XYZ, white D65. [1]
_XYZ_FROM_LIGHT = np.array(
    [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]], np.float64
)
_WHITE = _XYZ_FROM_LIGHT.sum(axis=1)
_25_TO_7 = 25.0**7


def lab_from_light(light: ArrayLike) -> FloatArray:
    """Return CIELAB of linear sRGB light, shape (..., 3) in and out. [1] [1]_"""
    ratio = np.asarray(light, np.float64) @ _XYZ_FROM_LIGHT.T / _WHITE
    small = ratio / (3.0 * (6.0 / 29.0) ** 2) + 4.0 / 29.0
    f = np.where(ratio > (6.0 / 29.0) ** 3, np.cbrt(ratio), small)
    x, y, z = f[..., 0], f[..., 1], f[..., 2]
    return np.stack([116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)], axis=-1)


def lab_from_srgb(values: ArrayLike) -> FloatArray:
    """Return CIELAB of sRGB bytes, shape (..., 3) in and out. [1]"""
    return lab_from_light(light_from_srgb(np.asarray(values, np.float64) / 255.0))


def delta_e_2000(first: ArrayLike, second: ArrayLike) -> FloatArray:
    """Return the CIEDE2000 difference of two colours in CIELAB.

    Parameters
    ----------
    first, second : float array, shape (..., 3)
        L*, a*, b*; shapes are broadcast. [1]

    Returns
    -------
    difference : float array, shape (...)
        About 1 is just noticeable side by side. [1]

    Notes
    -----
    Names follow the paper [2]_: primed quantities after the change of a*, barred ones are means.
    Parametric factors are 1.
    """
    l1, a1, b1 = np.moveaxis(np.asarray(first, np.float64), -1, 0)
    l2, a2, b2 = np.moveaxis(np.asarray(second, np.float64), -1, 0)
    c_bar_7 = ((np.hypot(a1, b1) + np.hypot(a2, b2)) / 2.0) ** 7
    grey = 1.5 - 0.5 * np.sqrt(c_bar_7 / (c_bar_7 + _25_TO_7))
    a1, a2 = a1 * grey, a2 * grey
    c1, c2 = np.hypot(a1, b1), np.hypot(a2, b2)
    h1, h2 = np.degrees(np.arctan2(b1, a1)) % 360.0, np.degrees(np.arctan2(b2, a2)) % 360.0
    grey_pair = c1 * c2 == 0.0

    turn = (h2 - h1 + 180.0) % 360.0 - 180.0
    # Opposite hues: the paper turns by +180 where the difference is exactly that, not by -180.
    turn = np.where((turn == -180.0) & (h2 > h1), 180.0, turn)
    d_l, d_c = l2 - l1, c2 - c1
    d_h = np.where(grey_pair, 0.0, 2.0 * np.sqrt(c1 * c2) * np.sin(np.radians(turn) / 2.0))

    l_bar, c_bar = (l1 + l2) / 2.0, (c1 + c2) / 2.0
    h_bar = np.where(grey_pair, h1 + h2, _mean_hue(h1, h2))
    s_l, s_c, s_h = _weights(l_bar, c_bar, h_bar)
    around_blue = np.radians(60.0 * np.exp(-(((h_bar - 275.0) / 25.0) ** 2)))
    rotation = -2.0 * np.sqrt(c_bar**7 / (c_bar**7 + _25_TO_7)) * np.sin(around_blue)
    l_part, c_part, h_part = d_l / s_l, d_c / s_c, d_h / s_h
    square: FloatArray = l_part**2 + c_part**2 + h_part**2 + rotation * c_part * h_part
    return np.sqrt(square)


def _mean_hue(h1: FloatArray, h2: FloatArray) -> FloatArray:
    """Return the hue half way between two, the short way round. [degree]"""
    total = h1 + h2
    across = np.where(total < 360.0, total + 360.0, total - 360.0)
    return np.where(np.abs(h1 - h2) <= 180.0, total, across) / 2.0


def _weights(
    l_bar: FloatArray, c_bar: FloatArray, h_bar: FloatArray
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return the weights of lightness, chroma and hue."""
    h = np.radians(h_bar)
    t = (
        1.0
        - 0.17 * np.cos(h - np.radians(30.0))
        + 0.24 * np.cos(2.0 * h)
        + 0.32 * np.cos(3.0 * h + np.radians(6.0))
        - 0.20 * np.cos(4.0 * h - np.radians(63.0))
    )
    off_middle = (l_bar - 50.0) ** 2
    s_l = 1.0 + 0.015 * off_middle / np.sqrt(20.0 + off_middle)
    return s_l, 1.0 + 0.045 * c_bar, 1.0 + 0.015 * c_bar * t
