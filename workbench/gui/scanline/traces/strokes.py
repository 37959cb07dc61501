"""A trace as a line of points, for views so close that each sample is many columns wide.

There a stroked line is smoother than spans, and few points are left once those on a straight
run are dropped. Dashes break only its level parts.
"""

import numpy as np
from numpy.typing import NDArray

__all__ = ["broken_line", "corners", "thinned"]

FloatArray = NDArray[np.floating]
BoolArray = NDArray[np.bool_]
IntArray = NDArray[np.intp]

_FLAT = 2e-6
"""A bend of less, against the range of the samples, comes from their rounding. [1]"""
_BEND = 0.02
"""A bend of less is not seen. [px]"""
_THIN = 4
"""On a gentle curve every fourth point is enough. [1]"""
_CELL = 0.75
"""Corners of one edge that are nearer than this need not all be drawn. [px]"""
_STEEP = 1.0
"""A line that rises by more than this for each pixel to the right is an edge. [1]"""


def corners(samples: FloatArray) -> list[IntArray]:
    """Return where each trace bends, its ends included: all that is needed to draw it exactly.

    Parameters
    ----------
    samples : float array, shape (n_traces, n_samples)
        ``2 <= n_samples``.
    """
    last = samples.shape[1] - 1
    bends = np.abs(np.diff(samples, 2, axis=1)) > _FLAT * np.ptp(samples)
    return [np.concatenate(([0], np.flatnonzero(row) + 1, [last])) for row in bends]


def thinned(places: IntArray, heights: FloatArray, step: float) -> BoolArray:
    """Return which corners must be kept at a size of the screen.

    Parameters
    ----------
    places : int array, shape (n_points,)
        Sample number of each corner, rising. [1]
    heights : float array, shape (n_points,)
        Its height on the screen. [px]
    step : float
        Distance of two samples on the screen. [px]
    """
    keep = np.ones(len(places), np.bool_)
    if len(places) > 2:
        bends = np.abs(np.diff(np.diff(heights) / np.diff(places))) > _BEND
        keep[1:-1] = bends | (places[1:-1] % _THIN == 0)
        bent = np.flatnonzero(keep)
        keep[bent] = _apart(places[bent] * step, heights[bent])
    return keep


def _apart(x: FloatArray, y: FloatArray) -> BoolArray:
    """Return which points are seen apart; of those within a pixel, where the line turns or rests."""
    keep = np.ones(len(x), np.bool_)
    runs, rises = np.diff(x) > _CELL, np.diff(y)
    another = np.diff(np.floor(x / _CELL))[1:] > 0
    keep[1:-1] = another | runs[:-1] | runs[1:] | (rises[:-1] * rises[1:] <= 0)
    return keep


def broken_line(
    x: FloatArray, y: FloatArray, pattern: tuple[float, ...], origin: float
) -> tuple[FloatArray, FloatArray, BoolArray]:
    """Return a line cut into dashes where it is level; edges stay whole.

    Parameters
    ----------
    x, y : float array, shape (n_points,)
        Points on the screen, x rising. [px]
    pattern : tuple of float
        Lengths of dash, gap, dash, gap ...; empty for a solid line. [px]
    origin : float
        Where the pattern begins: it stays with the signal when the view moves. [px]

    Returns
    -------
    x, y : float array, shape (n_more_points,)
        The points, those where a dash begins or ends among them. [px]
    joined : bool array, shape (n_more_points,)
        Whether a point is joined to the next.
    """
    if not pattern or len(x) < 2:
        return x, y, np.ones(len(x), np.bool_)
    period = sum(pattern)
    first = np.floor((x[0] - origin) / period)
    count = int(np.ceil((x[-1] - x[0]) / period)) + 2
    turns = origin + (first + np.arange(count))[:, None] * period
    cuts = (turns + np.cumsum((0.0, *pattern[:-1]))).ravel()
    cuts = cuts[(cuts > x[0]) & (cuts < x[-1])]
    steep = np.abs(np.diff(y)) > _STEEP * np.diff(x)
    cuts = cuts[~steep[np.searchsorted(x, cuts, side="right") - 1]]
    all_x = np.concatenate((x, cuts))
    order = np.argsort(all_x, kind="stable")
    all_x = all_x[order]
    all_y = np.concatenate((y, np.interp(cuts, x, y)))[order]
    middle = (all_x[:-1] + all_x[1:]) / 2
    place = (middle - origin) % period
    gap = np.searchsorted(np.cumsum(pattern), place, side="right") % 2 == 1
    edge = np.abs(np.diff(all_y)) > _STEEP * np.diff(all_x)
    joined = np.append(~gap | edge, False)
    return all_x, all_y, joined
