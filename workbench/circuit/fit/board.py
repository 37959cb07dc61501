"""All channels of a board drawing on one drawer."""

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from workbench.circuit.fit.channel import Effort, OpenChannel
from workbench.circuit.fit.search import IntArray, Pool
from workbench.circuit.fit.shares import best_together
from workbench.errors import NetworkError
from workbench.progress import Progress

__all__ = ["Board", "Choice"]

_KEEP = (48, 512, 4096)
"""Sets kept of each channel, first try to last. [1]"""
_WIDEST = 3.0
"""Sets with a level error above the best one's by this factor are not kept. [1]"""
_STARTS = 24
"""Sets of the first channel that are tried as a start. [1]"""
_BUDGET = 20_000_000
"""Partial sets of one channel looked at before giving up on the proof. [1]"""
_ROUNDING = 1.0 + 1e-9


@dataclass(frozen=True, slots=True, eq=False)
class Choice:
    """One set of options for every channel."""

    sets: tuple[IntArray, ...]
    worst_error_volts: float
    bound_volts: float
    """No other choice has a smaller worst error than this. [V]"""


@dataclass(slots=True, eq=False)
class Board:
    """Channels whose values are open, and the parts there are for all of them."""

    channels: Sequence[OpenChannel]
    """Alike channels may be the same object."""
    counts: IntArray
    most_parts: int
    progress: Progress
    _known: dict[tuple[OpenChannel, bytes, int, int], Pool | None] = field(default_factory=dict)

    def best(self) -> Choice:
        """Return the choice with the smallest worst level error.

        Raises
        ------
        NetworkError
            If the drawer does not suffice.

        Notes
        -----
        No choice is better than the best set of each channel alone. Where there are not enough parts
        for these, more and more of each channel's sets are compared; a choice with a set that is not
        among them is worse than all of those.
        """
        bound = max(min(float(pool.errors[0]), pool.complete_volts) for pool in self.pools())
        best = self._one_after_the_other(())
        if best is None or best.worst_error_volts > bound * _ROUNDING:
            best = self._from_other_starts(best)
        for keep in _KEEP:
            if best is not None and best.worst_error_volts <= bound * _ROUNDING:
                break
            pools = self.pools(keep)
            uses = [channel.uses(pool.sets) for channel, pool in zip(self.channels, pools, strict=True)]
            places, reached = best_together(pools, uses, self.counts)
            bound = max(bound, min(reached, *(pool.complete_volts for pool in pools)))
            if places is not None and (best is None or reached < best.worst_error_volts):
                sets = tuple(pool.sets[place] for pool, place in zip(pools, places, strict=True))
                best = Choice(sets, reached, 0.0)
        if best is None:
            needs = "; ".join(channel.needs for channel in self.channels)
            raise NetworkError(f"The drawer suffices for one channel, not for all together: {needs}.")
        return Choice(best.sets, best.worst_error_volts, min(bound, best.worst_error_volts))

    def pools(self, keep: int = _KEEP[0]) -> list[Pool]:
        """Return the best sets of each channel, as if it had the drawer to itself.

        Raises
        ------
        NetworkError
            If one channel alone cannot be made.
        """
        pools = []
        for channel in self.channels:
            if (pool := self.pool(channel, keep)) is None:
                raise NetworkError(f"The drawer does not suffice for one channel: {channel.needs}.")
            pools.append(pool)
        return pools

    def pool(self, channel: OpenChannel, keep: int = _KEEP[0], most_parts: int | None = None) -> Pool | None:
        """Return the best sets of one channel, with fewer parts a leg if asked; none if there is none."""
        return self._pool(channel, self.counts, keep, most_parts or self.most_parts)

    def _from_other_starts(self, best: Choice | None) -> Choice | None:
        """Return a better choice, if one is found that leaves more to the channels after the first."""
        first = self.pools(_KEEP[1])[0]
        for place in np.linspace(0, len(first.sets) - 1, min(_STARTS, len(first.sets))).astype(int):
            if best is not None and first.errors[place] >= best.worst_error_volts:
                break
            other = self._one_after_the_other((first.sets[place],))
            if other is not None and (best is None or other.worst_error_volts < best.worst_error_volts):
                best = other
        return best

    def _one_after_the_other(self, given: tuple[IntArray, ...]) -> Choice | None:
        """Return a choice in which each channel takes the best that the ones before have left.

        The first channels have the sets that are ``given``.
        """
        left, sets = self.counts.copy(), list(given)
        for place, channel in enumerate(self.channels):
            if place >= len(given):
                pool = self._pool(channel, left, 1, self.most_parts)
                if pool is None:
                    return None
                sets.append(pool.sets[0])
            left = left - channel.uses(sets[place][None])[0]
        errors = [
            channel.errors(chosen[None])[0] for channel, chosen in zip(self.channels, sets, strict=True)
        ]
        return Choice(tuple(sets), float(max(errors)), 0.0)

    def _pool(self, channel: OpenChannel, counts: IntArray, keep: int, most_parts: int) -> Pool | None:
        key = (channel, counts.tobytes(), keep, most_parts)
        if key not in self._known:
            effort = Effort(keep, _WIDEST, _BUDGET)
            self._known[key] = channel.pool(effort, counts, most_parts, self.progress)
        return self._known[key]
