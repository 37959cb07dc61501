"""Legs that rise one after another: how far off they are at worst, and the best order for them.

The codes of a segmented ladder raise the first leg, then the second as well, and so on, each time with
every code of the bits below. With the legs' errors ``e_1, e_2 ...`` in that order, and ``P`` and ``N`` what
the bits below are off by upwards and downwards, the worst distance over all codes is the largest of
``s + P`` and ``N - s`` over the sums ``s = 0, e_1, e_1 + e_2 ...``. Legs that are too strong and too weak in
turn make up for each other, so it matters which rises first.
"""

from functools import lru_cache

import numpy as np
import numpy.typing as npt

from workbench.circuit.ports import FloatArray

__all__ = ["best_order", "least_worst"]

IntArray = npt.NDArray[np.intp]

_ROWS = 512
"""Sets worked on at a time: their sums stay in the cache. [1]"""


def least_worst(off: FloatArray, above: FloatArray, below: FloatArray) -> FloatArray:
    """Return the worst distance over all codes, with the legs in their best order, shape (n_sets,). [V]

    Parameters
    ----------
    off : float array, shape (n_sets, n_rising)
        What each leg is off by, in any order. [V]
    above, below : float array, shape (n_sets,)
        What the bits below are off by at most, upwards and downwards, both ``0 <=``. [V]

    Notes
    -----
    Exact, without trying every order: what has been reached when some legs have risen depends on
    which these are, not on how they came. So the least worst distance of a group of legs is that of
    the group without one of them, for the best one to rise last, or the group's own if that is
    larger. Seven legs have 128 groups, but 5040 orders.
    """
    chunks = (slice(start, start + _ROWS) for start in range(0, len(off), _ROWS))
    worst = [_reached(off[rows], above[rows], below[rows])[-1] for rows in chunks]
    return np.concatenate(worst) if worst else np.zeros(0)


def best_order(off: FloatArray, above: float, below: float) -> tuple[int, ...]:
    """Return the order in which legs should rise, as indices into ``off``.

    Parameters
    ----------
    off : float array, shape (n_rising,)
        What each leg is off by. [V]
    above, below : float
        What the bits below are off by at most, upwards and downwards. [V]
    """
    reached = _reached(off[None], np.array([above]), np.array([below]))[:, 0]
    group, last_first = len(reached) - 1, []
    while group:
        members = [leg for leg in range(len(off)) if group >> leg & 1]
        last = min(members, key=lambda leg: (reached[group & ~(1 << leg)], -leg))
        last_first.append(last)
        group &= ~(1 << last)
    return tuple(reversed(last_first))


def _reached(off: FloatArray, above: FloatArray, below: FloatArray) -> FloatArray:
    """Return the least worst distance for every group of legs that have risen, shape (n_groups, n_sets).

    Bit ``k`` of a group's number stands for leg ``k``.
    """
    n_rising = off.shape[1]
    sums = np.zeros((1 << n_rising, len(off)))
    for leg in range(n_rising):
        np.add(sums[: 1 << leg], off[:, leg], out=sums[1 << leg : 2 << leg])
    reached = np.maximum(sums + above, below - sums)
    for groups, before in _levels(n_rising):
        reached[groups] = np.maximum(reached[groups], reached[before].min(axis=1))
    return reached


@lru_cache
def _levels(n_rising: int) -> tuple[tuple[IntArray, IntArray], ...]:
    """Return the groups of 1, 2 ... legs, and for each of them the groups without one of its legs."""
    levels = []
    for size in range(1, n_rising + 1):
        groups = [group for group in range(1 << n_rising) if group.bit_count() == size]
        before = [[group & ~(1 << leg) for leg in range(n_rising) if group >> leg & 1] for group in groups]
        levels.append((np.array(groups), np.array(before)))
    return tuple(levels)
