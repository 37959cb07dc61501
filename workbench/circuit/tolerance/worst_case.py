"""The worst board that values within their bands can make."""

from collections.abc import Callable

import numpy as np
import numpy.typing as npt
from numpy.random import SFC64, Generator

from workbench.circuit.codes import bits_by_code
from workbench.circuit.ports import FloatArray
from workbench.circuit.tolerance.boards import Boards, Design
from workbench.circuit.tolerance.elimination import BoardArray

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
    Every figure is a ratio of expressions linear in each value, so in each value it is monotonic,
    and its extremes lie where all values are at an edge of their bands. With many values not every
    corner is tried but corners are climbed, one value at a time, from many starts.
    """
    extremes = (
        _climb(design, half_widths, lambda figures: -figures.full_scale_volts),
        _climb(design, half_widths, lambda figures: figures.full_scale_volts),
        _climb(design, half_widths, lambda figures: figures.max_inl_lsb),
        _climb(design, half_widths, lambda figures: figures.max_dnl_lsb),
    )
    return -extremes[0], *extremes[1:]


def _climb(design: Design, half_widths: FloatArray, figure: Callable[[Boards], BoardArray]) -> float:
    """Return the largest figure of any corner of the bands."""

    def at(signs: FloatArray) -> BoardArray:
        return figure(design.figures(1.0 + half_widths[:, None] * signs))

    varying = np.flatnonzero(half_widths)
    signs = _starting_corners(len(half_widths), varying)
    best, improved = at(signs), len(varying) > _ALL_CORNERS
    while improved:
        improved = False
        for row in varying:
            signs[row] *= -1.0
            flipped = at(signs)
            better = flipped > best * (1.0 + np.sign(best) * 1e-12)
            signs[row, ~better] *= -1.0
            best = np.where(better, flipped, best)
            improved |= bool(better.any())
    return float(best.max())


def _starting_corners(n_factors: int, varying: npt.NDArray[np.intp]) -> FloatArray:
    signs = np.ones((n_factors, _STARTS))
    if len(varying) <= _ALL_CORNERS:
        signs = np.ones((n_factors, 1 << len(varying)))
        signs[varying] = 1.0 - 2.0 * bits_by_code(len(varying)).T
    else:
        signs[varying] = Generator(SFC64(0)).choice((-1.0, 1.0), (len(varying), _STARTS))
    return signs
