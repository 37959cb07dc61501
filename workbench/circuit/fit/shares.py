"""One drawer for several channels: which of their sets can be made together."""

from collections.abc import Sequence
from itertools import count

import numpy as np
import numpy.typing as npt

from workbench.circuit.fit.search import IntArray, Pool

__all__ = ["best_together"]

UsesArray = npt.NDArray[np.int16]
_MOST_LOOKS = 20_000
"""Comparisons with a whole pool before giving up. [1]"""


def best_together(
    pools: Sequence[Pool], uses: Sequence[UsesArray], counts: IntArray
) -> tuple[tuple[int, ...] | None, float]:
    """Return one set of each pool that can be made together, with the smallest worst error.

    Parameters
    ----------
    pools : sequence of Pool
        Sets of each channel, best first.
    uses : sequence of int array, shape (n_sets, n_counted)
        What each set takes of the counted parts. [1]
    counts : int array, shape (n_counted,)
        How many there are. [1]

    Returns
    -------
    chosen : tuple of int or None
        Place in each pool; none where no sets go together, or none was found in the time allowed.
    bound : float
        No choice from these pools has a smaller worst error. [V]

    Notes
    -----
    Sets are let in one at a time, by rising error: the first one that completes a choice sets its
    worst error, and no choice without it can be better.
    """
    order = sorted(
        (
            (float(error), channel, place)
            for channel, pool in enumerate(pools)
            for place, error in enumerate(pool.errors)
        )
    )
    let_in = [0] * len(pools)
    looks = count()
    for error, channel, place in order:
        let_in[channel] = place + 1
        others = [i for i in range(len(pools)) if i != channel]
        found = _fill(others, let_in, uses, counts - uses[channel][place], looks)
        if found is not None:
            chosen = found | {channel: place}
            return tuple(chosen[i] for i in range(len(pools))), error
        if next(looks) > _MOST_LOOKS:
            return None, error
    return None, np.inf


def _fill(
    channels: list[int], let_in: list[int], uses: Sequence[UsesArray], left: IntArray, looks: "count[int]"
) -> dict[int, int] | None:
    """Return a place for each of some channels that together take no more than is left."""
    if not channels:
        return {}
    first, *others = channels
    for place in np.flatnonzero((uses[first][: let_in[first]] <= left).all(axis=1)):
        if next(looks) > _MOST_LOOKS:
            return None
        found = _fill(others, let_in, uses, left - uses[first][place], looks)
        if found is not None:
            return found | {first: int(place)}
    return None
