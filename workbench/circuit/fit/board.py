"""All channels of a board drawing on one drawer."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from itertools import combinations

import numpy as np

from workbench.circuit.fit.channel import Effort, OpenChannel
from workbench.circuit.fit.shares import best_together
from workbench.circuit.fit.task import IntArray, Pool
from workbench.errors import NetworkError
from workbench.progress import Progress

__all__ = ["Board", "Choice"]

_KEEP = (48, 512, 4096)
"""Sets kept of each channel, first try to last. [1]"""
_WIDEST = 3.0
"""Sets worse than the best by this factor are not kept in the first try. [1]"""
_ANY = 1e12
"""Nor are those by this factor in any other. [1]"""
_STARTS = 8
"""Sets of the first channel that are tried as a start. [1]"""
_BUDGET = 20_000_000
"""Partial sets of one channel looked at before giving up on the proof. [1]"""
_ROUNDING = 1.0 + 1e-9


@dataclass(frozen=True, slots=True, eq=False)
class Choice:
    """One set of options for every channel."""

    sets: tuple[IntArray, ...]
    errors: tuple[float, ...]
    """Worst error of each channel. [V]"""
    bound_volts: float
    """No other choice has a smaller worst error than this. [V]"""

    @property
    def worst_error_volts(self) -> float:
        """Return the worst error of all channels. [V]"""
        return max(self.errors)

    def beats(self, other: "Choice | None") -> bool:
        """Return whether the worst channel is better, or if it is alike the second worst, and so on."""
        if other is None:
            return True
        for own, its in zip(sorted(self.errors)[::-1], sorted(other.errors)[::-1], strict=True):
            if own * _ROUNDING < its or its * _ROUNDING < own:
                return own < its
        return False


@dataclass(slots=True, eq=False)
class Board:
    """Channels whose values are open, and the parts there are for all of them."""

    channels: Sequence[OpenChannel]
    """Alike channels may be the same object."""
    counts: IntArray
    progress: Progress
    _known: dict[tuple[OpenChannel, bytes, int, int, float], Pool | None] = field(default_factory=dict)

    def best(self, most_parts: int, fewer: Choice | None = None) -> Choice:
        """Return the choice with the smallest worst level error.

        Parameters
        ----------
        most_parts : int
            Parts of one leg at most. [1]
        fewer : Choice, optional
            The best with fewer parts a leg; what is returned is no worse.

        Raises
        ------
        NetworkError
            If the drawer does not suffice for one part a leg. Otherwise it suffices for any number:
            a leg of several parts needs one of them and more.

        Notes
        -----
        No choice is better than the best set of each channel alone. Where there are not enough parts
        for these, more and more of each channel's sets are compared, up to the worst error of the best
        choice so far; a choice with a set that is not among them is worse than all of those.
        """
        bound = max(min(float(pool.errors[0]), pool.complete_volts) for pool in self._pools(most_parts))
        best = self._start(most_parts) if fewer is None else fewer
        for given in ({}, *self._other_starts(most_parts)):
            if best.worst_error_volts <= bound * _ROUNDING:
                break
            other = self._one_after_the_other(given, most_parts)
            best = other if other is not None and other.beats(best) else best
        best = self._improved(best, bound, most_parts)
        for keep in _KEEP:
            if best.worst_error_volts <= bound * _ROUNDING:
                break
            best, reached = self._compared(best, keep, most_parts)
            bound = max(bound, reached)
        return replace(best, bound_volts=min(bound, best.worst_error_volts))

    def pool(self, channel: OpenChannel, most_parts: int) -> Pool | None:
        """Return the best sets of one channel, as if it had the drawer to itself; none if there is none."""
        return self._pool(channel, self.counts, _KEEP[0], most_parts)

    def _pools(self, most_parts: int) -> list[Pool]:
        pools = []
        for channel in self.channels:
            if (pool := self.pool(channel, most_parts)) is None:
                raise NetworkError(f"The drawer does not suffice for one channel: {channel.needs}.")
            pools.append(pool)
        return pools

    def _start(self, most_parts: int) -> Choice:
        """Return some choice: first the channels that need parts alike, together, then the others."""
        needy = [i for i, channel in enumerate(self.channels) if not channel.takes_any_part]
        together = self._together(needy, self.counts, _KEEP[-1], 1) if needy else {}
        choice = None if together is None else self._one_after_the_other(together, most_parts)
        if choice is None:
            needs = "; ".join(channel.needs for channel in self.channels)
            raise NetworkError(f"The drawer suffices for one channel, not for all together: {needs}.")
        return choice

    def _other_starts(self, most_parts: int) -> Iterable[dict[int, IntArray]]:
        """Yield sets of the first channel that may leave more to the others than its best does."""
        pool = self._pool(self.channels[0], self.counts, _KEEP[1], most_parts)
        if pool is not None:
            for place in np.linspace(0, len(pool.sets) - 1, min(_STARTS, len(pool.sets))).astype(int):
                yield {0: pool.sets[place]}

    def _one_after_the_other(self, given: dict[int, IntArray], most_parts: int) -> Choice | None:
        """Return a choice in which each channel takes the best that the ones before have left.

        Some channels have the sets that are ``given``, before all others.
        """
        sets = dict(given)
        left = self._left(sets)
        for place, channel in enumerate(self.channels):
            if place not in sets:
                pool = self._pool(channel, left, 1, most_parts)
                if pool is None:
                    return None
                sets[place] = pool.sets[0]
                left = left - channel.uses(sets[place][None])[0]
        return self._choice(sets)

    def _improved(self, best: Choice, bound: float, most_parts: int) -> Choice:
        """Return a choice in which no channel, and no two, can do better while the others stay."""
        places = range(len(self.channels))
        improved = True
        while improved and best.worst_error_volts > bound * _ROUNDING:
            improved = False
            worst = int(np.argmax(best.errors))
            groups = [pair for pair in combinations(places, 2) if worst in pair]
            for group in ((worst,), *groups):
                rest = {place: best.sets[place] for place in places if place not in group}
                found = self._together(group, self._left(rest), _KEEP[1], most_parts)
                if found is not None and (other := self._choice(rest | found)).beats(best):
                    best, improved = other, True
                    break
        return best

    def _together(
        self, group: Sequence[int], left: IntArray, keep: int, most_parts: int
    ) -> dict[int, IntArray] | None:
        """Return the best sets of some channels that can be made together of what is left."""
        keep = keep if len(group) > 1 else 1
        pools = [self._pool(self.channels[place], left, keep, most_parts) for place in group]
        found = [pool for pool in pools if pool is not None]
        if len(found) < len(pools):
            return None
        uses = [self.channels[place].uses(pool.sets) for place, pool in zip(group, found, strict=True)]
        chosen, _ = best_together(found, uses, left)
        if chosen is None:
            return None
        return {place: pool.sets[i] for place, pool, i in zip(group, found, chosen, strict=True)}

    def _compared(self, best: Choice, keep: int, most_parts: int) -> tuple[Choice, float]:
        """Return the best choice of so many sets of each channel, and what no choice goes below. [V]"""
        worst = best.worst_error_volts
        pools = [self._pool(channel, self.counts, keep, most_parts, worst) for channel in self.channels]
        found = [pool for pool in pools if pool is not None]
        if len(found) < len(pools):
            return best, worst
        uses = [channel.uses(pool.sets) for channel, pool in zip(self.channels, found, strict=True)]
        places, reached = best_together(found, uses, self.counts)
        if places is not None and reached < worst:
            best = self._choice({i: found[i].sets[place] for i, place in enumerate(places)})
        return best, min(reached, *(pool.complete_volts for pool in found))

    def _left(self, sets: dict[int, IntArray]) -> IntArray:
        left = self.counts.copy()
        for place, chosen in sets.items():
            left -= self.channels[place].uses(chosen[None])[0]
        return left

    def _choice(self, sets: dict[int, IntArray]) -> Choice:
        ordered = tuple(sets[place] for place in range(len(self.channels)))
        errors = tuple(
            float(channel.errors(chosen[None])[0])
            for channel, chosen in zip(self.channels, ordered, strict=True)
        )
        return Choice(ordered, errors, 0.0)

    def _pool(
        self, channel: OpenChannel, counts: IntArray, keep: int, most_parts: int, worst_volts: float = np.inf
    ) -> Pool | None:
        key = (channel, counts.tobytes(), keep, most_parts, worst_volts)
        if key not in self._known:
            widest = _WIDEST if keep <= _KEEP[0] else _ANY
            effort = Effort(keep, widest, worst_volts, _BUDGET)
            self._known[key] = channel.pool(effort, counts, most_parts, self.progress)
        return self._known[key]
