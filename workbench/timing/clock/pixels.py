"""The uneven pixels of a fractional divider: where each of them really starts.

The divider adds up its fraction from pixel to pixel and starts each pixel at the last system clock that
is not later than an even pixel would start: never late, early by less than one system clock. The sum runs
on over the ends of lines, so where a line is no whole number of system clocks the next one starts
elsewhere within a clock. Here it is 0 at the start of the front porch of the picture's first line; a
chip may start anywhere, which moves the same pattern along the line.
"""

from fractions import Fraction
from math import gcd

import numpy as np
import numpy.typing as npt

__all__ = ["edge_clocks", "edge_phases", "line_clocks", "mean_early", "pixel_clocks", "pixel_starts"]


def pixel_clocks(divider: Fraction, count: int, *, first: int = 0) -> npt.NDArray[np.int64]:
    """Return how many system clocks each pixel lasts.

    Parameters
    ----------
    divider : Fraction
        System clocks a pixel, ``1 <= divider``. [1]
    count : int
        Pixels. [1]
    first : int
        Pixels that went before, as the fraction's remainder runs on from line to line. [1]

    Returns
    -------
    clocks : int array, shape (count,)
        The divider cut to a whole number, or one more. [1]

    Examples
    --------
    >>> pixel_clocks(Fraction(9, 4), 5).tolist()
    [2, 2, 2, 3, 2]
    """
    return np.diff(edge_clocks(divider, np.arange(first, first + count + 1)))


def edge_clocks(divider: Fraction, pixels: npt.NDArray[np.int64]) -> npt.NDArray[np.int64]:
    """Return the system clock at which each pixel starts, by pixels counted from a common start. [1]"""
    return np.asarray(pixels * divider.numerator // divider.denominator)


def edge_phases(divider: Fraction, pixels: npt.NDArray[np.integer]) -> npt.NDArray[np.int64]:
    """Return by which part of a system clock pixels start early.

    Parameters
    ----------
    pixels : int array, any shape
        Pixels, counted from the common start. [1]

    Returns
    -------
    phases : int array, same shape, ``0 <= phases < divider.denominator``
        In parts ``1 / divider.denominator`` of a system clock. [1]
    """
    parts = divider.denominator
    # Cut down first: the product of a frame's pixels and a fine divider's numerator is past 64 bits.
    return (pixels % parts).astype(np.int64) * (divider.numerator % parts) % parts


def pixel_starts(divider: Fraction, first: int, count: int) -> npt.NDArray[np.float64]:
    """Return where each of some pixels starts, and the last one ends.

    Parameters
    ----------
    first : int
        The first of them, counted from the common start: a line's number times its total. [1]
    count : int
        Pixels. [1]

    Returns
    -------
    starts : float array, shape (count + 1,)
        In pixels of the mean length, 0 where the first would start if all were even: each in its even
        place, or earlier by less than a system clock. [1]

    Examples
    --------
    >>> (pixel_starts(Fraction(9, 4), 0, 5) * 9 / 4).round().astype(int).tolist()
    [0, 2, 4, 6, 9, 11]
    """
    counts = np.arange(count + 1, dtype=np.int64)
    starts: npt.NDArray[np.float64] = counts - edge_phases(divider, first + counts) / divider.numerator
    return starts


def mean_early(divider: Fraction, h_total: int, pixel: int) -> float:
    """Return how early one pixel of the line starts, on average over many lines, in pixels. [1]

    Where lines are steady it is the same in each; else its phase walks from line to line.

    Examples
    --------
    >>> mean_early(Fraction(9, 4), 800, 3)
    0.3333333333333333
    """
    parts = divider.denominator
    stride = gcd(h_total * divider.numerator, parts)
    return (pixel * divider.numerator % stride + (parts - stride) / 2) / divider.numerator


def line_clocks(divider: Fraction, h_total: int, count: int) -> npt.NDArray[np.int64]:
    """Return how many system clocks each of some lines lasts; all alike where lines are steady.

    Parameters
    ----------
    h_total : int
        Pixels of a line. [1]
    count : int
        Lines. [1]

    Returns
    -------
    clocks : int array, shape (count,)
        System clocks of each line. [1]
    """
    return pixel_clocks(divider * h_total, count)
