"""Colours to codes, by the levels that the network really makes.

Each channel is on its own: an input byte asks for a voltage (or for light), the channel offers
the levels of its codes, even or not, in order or not. A value between two levels is given the
nearer one, or the two are mixed over neighbouring pixels so that their mean is right.

References
----------
.. [1] B. E. Bayer, "An optimum method for two-level rendition of continuous-tone pictures", IEEE
       International Conference on Communications (1973): the ordered matrix. From memory.
.. [2] R. W. Floyd, L. Steinberg, "An adaptive algorithm for spatial greyscale", Proceedings of the
       Society for Information Display 17 (1976): 7, 3, 5 and 1 sixteenths. From memory.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.picture.light import (
    FULL_SCALE_VOLTS,
    light_from_srgb,
    light_from_volts,
    lightness_from_light,
)
from workbench.picture.scene import Dither, Measure

__all__ = ["Levels3", "bayer", "codes_from_image"]

FloatArray = NDArray[np.floating]
ByteArray = NDArray[np.uint8]
Levels3 = tuple[FloatArray, FloatArray, FloatArray]
"""Settled level of every code of red, green and blue; each of shape (n_codes,). [V]"""

_FINE = 4096
"""Steps into which a diffused value is cut to look up its nearest code. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class _Scale:
    """One channel in the measure in which distances and means are taken."""

    wanted: FloatArray
    """What each input byte asks for, inside what the channel can make, shape (256,). [1]"""
    levels: FloatArray
    """The channel's levels, rising, shape (n_levels,). [1]"""
    codes: ByteArray
    """A code that makes each of those levels, shape (n_levels,). [1]"""


def codes_from_image(
    image: ByteArray,
    levels: Levels3,
    *,
    dither: Dither = Dither.NEAREST,
    measure: Measure = Measure.VOLTS,
    transfer: tuple[float, ...] = (),
    rows: NDArray[np.integer] | None = None,
) -> ByteArray:
    """Return the codes that show an image best.

    Parameters
    ----------
    image : uint8 array, shape (height, width, 3)
        Red, green and blue as sRGB bytes. [1]
    levels : tuple of 3 float arrays
        What the three channels really make, loaded. [V]
    dither : Dither
        How a value between two levels is shown.
    measure : Measure
        Whether distances and means are taken in volts or in what the eye gets from them.
    transfer : tuple of float
        A curve over input values from 0 to 1, evenly spaced, each ``0 … 1``; empty leaves them. [1]
    rows : int array, shape (height,)
        Which rows of the picture these are, for an ordered matrix; those from the top if left out. [1]

    Returns
    -------
    codes : uint8 array, shape (3, height, width)
        Red, green and blue. [1]

    Notes
    -----
    A value outside what the channel can make takes the end level; its error is not passed on. In
    light, the nearest level is the one nearest in lightness, as the eye compares; mixing is done
    in linear light, as the eye adds.
    """
    scales = [_scale(volts, dither, measure, transfer) for volts in levels]
    if dither is Dither.DIFFUSED:
        return _diffused(image, scales)
    codes = np.empty((3, *image.shape[:2]), np.uint8)
    rows = np.arange(len(image)) if rows is None else rows
    for channel, scale in enumerate(scales):
        if dither is Dither.NEAREST:
            codes[channel] = _nearest(scale)[image[:, :, channel]]
        else:
            _ordered(image[:, :, channel], rows, scale, bayer(dither.side), codes[channel])
    return codes


def bayer(side: int) -> FloatArray:
    """Return the ordered matrix of thresholds between 0 and 1, shape (side, side), side a power of 2. [1]_

    >>> bayer(2) * 4
    array([[0.5, 2.5],
           [3.5, 1.5]])
    """
    ranks = np.zeros((1, 1))
    while len(ranks) < side:
        ranks = np.block([[4 * ranks, 4 * ranks + 2], [4 * ranks + 3, 4 * ranks + 1]])
    return (ranks + 0.5) / ranks.size


def _scale(volts: FloatArray, dither: Dither, measure: Measure, transfer: tuple[float, ...]) -> _Scale:
    values: FloatArray = np.arange(256) / 255.0
    if transfer:
        values = np.interp(values, np.linspace(0.0, 1.0, len(transfer)), transfer)
    if measure is Measure.VOLTS:
        wanted, made = values, np.asarray(volts / FULL_SCALE_VOLTS)
    else:
        wanted, made = light_from_srgb(values), light_from_volts(volts)
        if dither is Dither.NEAREST:
            wanted, made = lightness_from_light(wanted), lightness_from_light(made)
    levels, codes = np.unique(made, return_index=True)
    return _Scale(np.clip(wanted, levels[0], levels[-1]), levels, codes.astype(np.uint8))


def _nearest(scale: _Scale) -> ByteArray:
    """Return the code of the level nearest to what each byte asks for, shape (256,)."""
    return scale.codes[_nearest_level(scale.wanted, scale.levels)]


def _nearest_level(wanted: FloatArray, levels: FloatArray) -> NDArray[np.intp]:
    return np.searchsorted((levels[1:] + levels[:-1]) / 2.0, wanted, side="right")


def _ordered(
    values: ByteArray, rows: NDArray[np.integer], scale: _Scale, thresholds: FloatArray, out: ByteArray
) -> None:
    """Give each place of the matrix its own table from byte to code."""
    above = np.clip(np.searchsorted(scale.levels, scale.wanted), 1, max(1, len(scale.levels) - 1))
    above = np.minimum(above, len(scale.levels) - 1)
    below = np.maximum(above - 1, 0)
    step = scale.levels[above] - scale.levels[below]
    part = (scale.wanted - scale.levels[below]) / np.where(step > 0.0, step, 1.0)
    side = len(thresholds)
    for row in range(side):
        here = np.flatnonzero(rows % side == row)
        if not here.size:
            continue
        for column in range(side):
            table = scale.codes[np.where(part > thresholds[row, column], above, below)]
            out[here, column::side] = table[values[here, column::side]]


def _diffused(image: ByteArray, scales: list[_Scale]) -> ByteArray:
    """Pass the error of every pixel on to its neighbours, right and below. [2]_

    A pixel waits for its left neighbour and for three of the row above, so all pixels with the
    same ``x + 2 y`` can be done at once: the picture is worked through in slanting fronts.
    """
    height, width, _ = image.shape
    y, x = np.mgrid[:height, :width]
    front = x + 2 * y
    wanted = np.zeros((width + 2 * height + 2, 3, height + 1), np.float32)
    codes = np.zeros(wanted.shape, np.uint8)
    for channel, scale in enumerate(scales):
        wanted[front, channel, y] = scale.wanted.astype(np.float32)[image[:, :, channel]]
    low = min(float(scale.levels[0]) for scale in scales)
    high = max(float(scale.levels[-1]) for scale in scales)
    per_unit = (_FINE - 1) / max(high - low, 1e-9)
    level_table, code_table = _fine_tables(scales, low, high)
    offsets = (np.arange(3) * _FINE)[:, None]
    for t in range(width + 2 * (height - 1)):
        first, last = max(0, (t - width) // 2 + 1), min(height - 1, t // 2)
        rows, below = slice(first, last + 1), slice(first + 1, last + 2)
        value = wanted[t, :, rows]
        index = np.clip((value - low) * per_unit + 0.5, 0, _FINE - 1).astype(np.intp) + offsets
        codes[t, :, rows] = code_table.take(index)
        error = (value - level_table.take(index)) * (1 / 16)
        wanted[t + 1, :, rows] += 7 * error
        wanted[t + 1, :, below] += 3 * error
        wanted[t + 2, :, below] += 5 * error
        wanted[t + 3, :, below] += error
    return np.ascontiguousarray(np.moveaxis(codes[front, :, y], 2, 0))


def _fine_tables(scales: list[_Scale], low: float, high: float) -> tuple[NDArray[np.float32], ByteArray]:
    """Return the nearest level, and its code, of finely cut values; shape (3 * _FINE,)."""
    values = np.linspace(low, high, _FINE)
    nearest = [_nearest_level(values, scale.levels) for scale in scales]
    made = [scale.levels[at].astype(np.float32) for scale, at in zip(scales, nearest, strict=True)]
    codes = [scale.codes[at] for scale, at in zip(scales, nearest, strict=True)]
    return np.concatenate(made), np.concatenate(codes)
