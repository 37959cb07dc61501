"""The uneven pixels of a fractional divider."""

from fractions import Fraction

import numpy as np
import numpy.typing as npt

__all__ = ["edge_clocks", "line_clocks", "pixel_clocks"]


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
