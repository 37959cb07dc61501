"""One drawer for several channels: which of their sets can be made together."""

from collections.abc import Iterator, Sequence
from itertools import count

import numpy as np
import numpy.typing as npt

from workbench.circuit.fit.task import IntArray, Pool

__all__ = ["best_together"]

UsesArray = npt.NDArray[np.int16]
_MOST_LOOKS = 100_000
"""Questions to a shelf before giving up. [1]"""


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
    worst error, and no choice without it can be better. A set is not let in where one of its channel
    is in already that takes no more of any part: that one is no worse, and does wherever it would.
    """
    order = sorted(
        (
            (float(error), channel, place)
            for channel, pool in enumerate(pools)
            for place, error in enumerate(pool.errors)
        )
    )
    taken = [rows.tolist() for rows in uses]
    shelves = [_Shelf(counts.tolist()) for _ in pools]
    looks = count()
    for error, channel, place in order:
        own = taken[channel][place]
        if shelves[channel].within(own):
            continue
        shelves[channel].add(place, own)
        others = [i for i in range(len(pools)) if i != channel]
        found = _fill(others, shelves, taken, _less(counts.tolist(), own), looks)
        if found is not None:
            chosen = found | {channel: place}
            return tuple(chosen[i] for i in range(len(pools))), error
        if next(looks) > _MOST_LOOKS:
            return None, error
    return None, np.inf


class _Shelf:
    """Sets of one channel, found by what they take: bit ``k`` of a number stands for the k-th set."""

    def __init__(self, counts: list[int]) -> None:
        self._places: list[int] = []
        self._counts = counts
        self._taking_at_most: list[list[int]] = [[0] for _ in counts]
        """For each part and each number of it, the sets that take no more."""

    def add(self, place: int, taken: list[int]) -> None:
        """Put a set on the shelf, unless it takes more than there are."""
        if any(n > most for n, most in zip(taken, self._counts, strict=True)):
            return
        bit = 1 << len(self._places)
        for n, masks in zip(taken, self._taking_at_most, strict=True):
            masks.extend(masks[-1:] * (n + 1 - len(masks)))
            masks[n:] = [mask | bit for mask in masks[n:]]
        self._places.append(place)

    def within(self, left: list[int]) -> int:
        """Return the sets that take no more than is left, as a number with a bit for each."""
        found = (1 << len(self._places)) - 1
        for n, masks in zip(left, self._taking_at_most, strict=True):
            if n < len(masks) - 1:
                found &= masks[n] if n >= 0 else 0
                if not found:
                    break
        return found

    def places(self, found: int) -> Iterator[int]:
        """Yield the places of sets, best first."""
        while found:
            lowest = found & -found
            yield self._places[lowest.bit_length() - 1]
            found ^= lowest


def _fill(
    channels: list[int],
    shelves: Sequence[_Shelf],
    taken: Sequence[list[list[int]]],
    left: list[int],
    looks: "count[int]",
) -> dict[int, int] | None:
    """Return a place for each of some channels that together take no more than is left."""
    if not channels:
        return {}
    able = [shelves[channel].within(left) for channel in channels]
    if not all(able):
        return None
    first, *others = channels
    for place in shelves[first].places(able[0]):
        if next(looks) > _MOST_LOOKS:
            return None
        found = _fill(others, shelves, taken, _less(left, taken[first][place]), looks)
        if found is not None:
            return found | {first: place}
    return None


def _less(counts: list[int], taken: list[int]) -> list[int]:
    return [there - n for there, n in zip(counts, taken, strict=True)]
