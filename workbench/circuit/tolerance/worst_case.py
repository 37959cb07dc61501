"""The worst board that values within their bands can make."""

import numpy as np
import numpy.typing as npt
from numpy.random import SFC64, Generator

from workbench.circuit.codes import bits_by_code
from workbench.circuit.ports import FloatArray
from workbench.circuit.tolerance.boards import Boards, Design

__all__ = ["worst_case"]

_ALL_CORNERS = 12
"""Factors of which every corner is tried; with more, corners are climbed from many starts. [1]"""
_STARTS = 64


def worst_case(design: Design, half_widths: FloatArray) -> tuple[float, float, float, float]:
    """Return the least and the most full scale, the largest INL and the largest DNL of any corner.

    Parameters
    ----------
    design : Design
        The channel.
    half_widths : float array, shape (n_factors,)
        Band of each factor, ``0 <= half_widths < 1``. [1]

    Notes
    -----
    Where pins drive 1 and 0 through the same resistance every figure is a ratio of expressions linear in
    each value, so in each value it is monotonic, and its extremes lie where all values are at an edge of
    their bands. (The pins' on-resistance, one factor for many pins, and pins that are not alike come close
    to that.) With many values not every corner is tried but corners are climbed, one value at a time,
    from many starts.
    """
    varying = np.flatnonzero(half_widths)
    climbed = len(varying) > _ALL_CORNERS
    signs = _some_corners(half_widths, varying) if climbed else _all_corners(half_widths, varying)
    if climbed:
        found = _climb(design, half_widths, signs, varying)
    else:
        found = _wanted(design.figures(1.0 + half_widths[:, None] * signs))
    least, most, inl, dnl = found.max(axis=1).tolist()
    return -least, most, inl, dnl


def _wanted(figures: Boards) -> FloatArray:
    """Return what is to be as large as can be, shape (4, n_boards)."""
    volts = figures.full_scale_volts
    return np.stack((-volts, volts, figures.max_inl_lsb, figures.max_dnl_lsb))


def _climb(
    design: Design, half_widths: FloatArray, starts: FloatArray, varying: npt.NDArray[np.intp]
) -> FloatArray:
    """Return where climbing from each start ends, shape (4, n_starts); each figure climbs by itself."""
    signs = np.tile(starts, 4)

    def at(signs: FloatArray) -> FloatArray:
        figures = _wanted(design.figures(1.0 + half_widths[:, None] * signs)).reshape(4, 4, -1)
        return np.concatenate([figures[k, k] for k in range(4)])

    best, improved = at(signs), True
    while improved:
        improved = False
        for row in varying:
            signs[row] *= -1.0
            flipped = at(signs)
            better = flipped > best * (1.0 + np.sign(best) * 1e-12)
            signs[row, ~better] *= -1.0
            best = np.where(better, flipped, best)
            improved |= bool(better.any())
    return best.reshape(4, -1)


def _all_corners(half_widths: FloatArray, varying: npt.NDArray[np.intp]) -> FloatArray:
    """Return every corner of the bands as signs, shape (n_factors, n_corners). [1]"""
    signs = np.ones((len(half_widths), 1 << len(varying)))
    signs[varying] = 1.0 - 2.0 * bits_by_code(len(varying)).T
    return signs


def _some_corners(half_widths: FloatArray, varying: npt.NDArray[np.intp]) -> FloatArray:
    """Return corners of the bands from which to climb, shape (n_factors, n_starts). [1]"""
    signs = np.ones((len(half_widths), _STARTS))
    signs[varying] = Generator(SFC64(0)).choice((-1.0, 1.0), (len(varying), _STARTS))
    return signs
