"""The best sets of legs for one channel, by branch and bound.

With ``u = 1 / (sum of all conductances at the bus)``, leg ``i`` adds ``K g_i u`` volts and is off by
``e_i = K g_i u - w_i``. The level of a code is off by the sum of its bits' ``e_i``, so the worst
distance over all codes is the larger of ``P``, the sum of the positive ones, and ``N``, that of the
negative ones. What ties the legs together is ``u`` alone: known within bounds, it bounds each ``e_i``.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from workbench.circuit.ports import FloatArray
from workbench.progress import Progress

__all__ = ["Pool", "Task", "best_sets"]

IntArray = npt.NDArray[np.intp]


@dataclass(frozen=True, slots=True, eq=False)
class Task:
    """What one channel's legs are to reach."""

    wanted_volts: FloatArray
    """What each leg should add, most significant first, shape (n_legs,). [V]"""
    gain_volts: float
    """Output if the legs conducted ever so well, ``K``. [V]"""
    rest_siemens: float
    """Everything else from the bus to ground, ``0 < rest_siemens``. [S]"""
    siemens: FloatArray
    """Conductance of each option with the pin's on-resistance, falling, shape (n_options,). [S]"""
    counts: IntArray
    """How many there are of each counted part, shape (n_counted,). [1]"""
    uses: npt.NDArray[np.int16]
    """How many each option takes of them, shape (n_options, n_counted). [1]"""

    def errors(self, sets: IntArray) -> FloatArray:
        """Return the worst distance over all codes of sets of options, shape (n_sets,). [V]"""
        siemens = self.siemens[sets]
        u = 1.0 / (siemens.sum(axis=1, keepdims=True) + self.rest_siemens)
        off = self.gain_volts * siemens * u - self.wanted_volts
        return np.asarray(np.maximum(off.clip(min=0.0).sum(axis=1), -off.clip(max=0.0).sum(axis=1)))

    def makeable(self, sets: IntArray) -> npt.NDArray[np.bool_]:
        """Return which sets do not take more of a part than there are, shape (n_sets,)."""
        return np.asarray((self.uses[sets].sum(axis=1) <= self.counts).all(axis=1))


@dataclass(frozen=True, slots=True, eq=False)
class Pool:
    """The best sets found, best first."""

    sets: IntArray
    """Indices of options, most significant leg first, shape (n_sets, n_legs). [1]"""
    errors: FloatArray
    """Worst distance of each, shape (n_sets,). [V]"""
    complete_volts: float
    """Every set with a smaller error is in the pool. [V]"""


_MOST_CHILDREN = 100_000
"""Partial sets looked at in one go. [1]"""
_STARTS = 48
_WIDEN = 1.5
"""By how much the error allowed grows until there are enough sets. [1]"""
_SLACK = 1e-12
_REACH = 24
"""Options to each side that a leg may move to when a first set is improved. [1]"""


def best_sets(
    task: Task, *, keep: int, widest: float, budget: int, progress: Progress, worst_volts: float = np.inf
) -> Pool | None:
    """Return the best sets of legs, proved complete up to an error.

    Parameters
    ----------
    task : Task
        What to reach and with what.
    keep : int
        So many sets are wanted, ``1 <= keep``. [1]
    widest : float
        Sets worse than the best by this factor are not wanted, ``1 <= widest``. [1]
    budget : int
        Partial sets to look at before giving up on the proof, ``1 <= budget``. [1]
    progress : Progress
        Is told the partial sets looked at of the budget.
    worst_volts : float
        Sets with a larger error are not wanted, ``0 < worst_volts``; but the best is, whatever it
        is. [V]

    Returns
    -------
    Pool or None
        None where no set can be made.
    """
    # No level is farther off than all the supply gives, or all that is wanted.
    most = min(worst_volts, task.gain_volts + float(task.wanted_volts.sum()))
    start = _first_set(task)
    first = np.inf if start is None else float(task.errors(start[None])[0])
    limit = min(first * (1.0 + 1e-9) + _SLACK, most)
    search = _Search(task, keep, budget, progress)
    pool = search.run(limit)
    while len(pool.errors) < keep and limit < most and pool.complete_volts == limit:
        best = max(float(pool.errors[0]), _SLACK) if len(pool.errors) else np.inf
        if limit >= widest * best:
            break
        limit = min(limit * _WIDEN, widest * best, most)
        pool = search.run(limit)
    if not len(pool.errors) and start is not None:
        pool = Pool(start[None], task.errors(start[None]), pool.complete_volts)
    return pool if len(pool.errors) else None


def _first_set(task: Task) -> IntArray | None:
    """Return a good set: legs near their share of several totals, then one leg after the other improved."""
    starts = [start for u in _likely_u(task) if (start := _nearest(task, u)) is not None]
    if not starts:
        return None
    sets = np.array(starts)
    best = [_improved(task, sets[i]) for i in np.argsort(task.errors(sets), kind="stable")[:8]]
    return best[int(np.argmin(task.errors(np.array(best))))]


def _likely_u(task: Task) -> FloatArray:
    share = 1.0 - float(task.wanted_volts.sum()) / task.gain_volts
    return max(share, 0.01) / task.rest_siemens * np.linspace(0.9, 1.1, _STARTS)


def _nearest(task: Task, u: float) -> IntArray | None:
    """Return for each leg the nearest option that is still to be had."""
    left, chosen = task.counts.copy(), []
    for volts in task.wanted_volts:
        off = np.abs(task.siemens * (task.gain_volts * u) - volts)
        if len(left):
            off[(task.uses > left).any(axis=1)] = np.inf
        chosen.append(int(np.argmin(off)))
        if off[chosen[-1]] == np.inf:
            return None
        left -= task.uses[chosen[-1]]
    return np.array(chosen)


def _improved(task: Task, chosen: IntArray) -> IntArray:
    least, improved = float(task.errors(chosen[None])[0]), True
    while improved:
        improved = False
        for leg in range(len(chosen)):
            low, high = max(chosen[leg] - _REACH, 0), min(chosen[leg] + _REACH + 1, len(task.siemens))
            trials = np.tile(chosen, (high - low, 1))
            trials[:, leg] = np.arange(low, high)
            errors = np.where(task.makeable(trials), task.errors(trials), np.inf)
            if errors.min() < least * (1.0 - 1e-9):
                chosen, least, improved = trials[int(np.argmin(errors))], float(errors.min()), True
    return chosen


@dataclass(slots=True, eq=False)
class _Block:
    """Partial sets of the same length, the most promising first."""

    sets: IntArray
    taken: npt.NDArray[np.int16]
    bounds: FloatArray


class _Search:
    """Depth first over blocks of partial sets; whatever cannot stay within the limit is cut."""

    def __init__(self, task: Task, keep: int, budget: int, progress: Progress) -> None:
        self._task, self._keep = task, keep
        self._budget, self._progress, self._spent = budget, progress, 0

    @property
    def exhausted(self) -> bool:
        return self._spent >= self._budget

    def run(self, limit: float) -> Pool:
        """Return the best sets with at most this error."""
        task = self._task
        found = Pool(np.zeros((0, len(task.wanted_volts)), np.intp), np.zeros(0), limit)
        windows = _Windows.of(task, limit)
        if windows is None:
            return found
        counted = np.zeros((1, len(task.counts)), np.int16)
        stack = [_Block(np.zeros((1, 0), np.intp), counted, np.zeros(1))]
        while stack and not self.exhausted:
            self._progress.step(min(self._spent, self._budget), self._budget)
            children = self._expand(stack, windows, found.complete_volts)
            if children.sets.shape[1] == len(task.wanted_volts):
                found = _merged(found, children, self._keep)
            elif len(children.sets):
                stack.append(children)
        left = min((float(block.bounds.min()) for block in stack), default=np.inf)
        return Pool(found.sets, found.errors, min(found.complete_volts, left))

    def _expand(self, stack: list[_Block], windows: "_Windows", limit: float) -> _Block:
        """Take the first partial sets of the last block, add every option of the next leg, and cut."""
        block, task = stack.pop(), self._task
        leg = block.sets.shape[1]
        options = windows.options[leg]
        n_rows = max(1, _MOST_CHILDREN // len(options))
        if n_rows < len(block.sets):
            stack.append(_Block(block.sets[n_rows:], block.taken[n_rows:], block.bounds[n_rows:]))
        rows, columns = np.divmod(
            np.arange(min(n_rows, len(block.sets)) * len(options)), max(1, len(options))
        )
        self._spent += len(rows)
        sets = np.column_stack((block.sets[rows], options[columns]))
        taken = block.taken[rows] + task.uses[options[columns]]
        bounds = windows.bounds(task, sets)
        kept = np.flatnonzero((bounds <= limit) & (taken <= task.counts).all(axis=1))
        kept = kept[np.argsort(bounds[kept], kind="stable")]
        return _Block(sets[kept], taken[kept], bounds[kept])


def _merged(found: Pool, more: _Block, keep: int) -> Pool:
    """Add whole sets; with more than are wanted the limit falls to the worst one kept."""
    errors = np.concatenate((found.errors, more.bounds))
    order = np.argsort(errors, kind="stable")
    limit = (
        found.complete_volts
        if len(order) < keep
        else min(found.complete_volts, float(errors[order[keep - 1]]))
    )
    order = order[:keep]
    return Pool(np.concatenate((found.sets, more.sets))[order], errors[order], limit)


@dataclass(frozen=True, slots=True, eq=False)
class _Windows:
    """The options that each leg may have at all, if no code is to be off by more than a limit."""

    low_u: float
    high_u: float
    options: tuple[IntArray, ...]
    least_rest: FloatArray
    """What the legs after the first k conduct at least, shape (n_legs + 1,). [S]"""
    most_rest: FloatArray

    @classmethod
    def of(cls, task: Task, limit: float) -> "_Windows | None":
        """Return the windows, none where nothing stays within the limit.

        Notes
        -----
        The white level is off by ``K (1 - u G) - sum(w)``, which alone bounds ``u``.
        """
        wanted = float(task.wanted_volts.sum())
        low_u = max((1.0 - (wanted + limit) / task.gain_volts) / task.rest_siemens, 1e-9 / task.rest_siemens)
        high_u = min(1.0, 1.0 - (wanted - limit) / task.gain_volts) / task.rest_siemens
        if high_u < low_u:
            return None
        low = (task.wanted_volts - limit) / (task.gain_volts * high_u)
        high = (task.wanted_volts + limit) / (task.gain_volts * low_u)
        options = tuple(
            np.flatnonzero((task.siemens >= a * (1.0 - 1e-12)) & (task.siemens <= b * (1.0 + 1e-12)))
            for a, b in zip(low, high, strict=True)
        )
        if not all(len(choice) for choice in options):
            return None
        least = [task.siemens[choice].min() for choice in options]
        most = [task.siemens[choice].max() for choice in options]
        return cls(low_u, high_u, options, _rest(least), _rest(most))

    def bounds(self, task: Task, sets: IntArray) -> FloatArray:
        """Return what every completion of each partial set is off by at least, shape (n_sets,). [V]

        For whole sets it is their error.
        """
        legs = sets.shape[1]
        siemens = task.siemens[sets]
        total = siemens.sum(axis=1) + task.rest_siemens
        low_u = np.maximum(1.0 / (total + self.most_rest[legs]), self.low_u)
        high_u = np.minimum(1.0 / (total + self.least_rest[legs]), self.high_u)
        if legs == len(task.wanted_volts):
            low_u = high_u = 1.0 / total
        volts, wanted = task.gain_volts * siemens, task.wanted_volts[:legs]
        above = (volts * low_u[:, None] - wanted).clip(min=0.0).sum(axis=1)
        below = (wanted - volts * high_u[:, None]).clip(min=0.0).sum(axis=1)
        white_off = task.gain_volts - float(task.wanted_volts.sum())
        slope = task.gain_volts * task.rest_siemens
        too_high, too_low = white_off - slope * high_u, slope * low_u - white_off
        bounds = np.maximum(np.maximum(above, below + too_high), np.maximum(below, above + too_low))
        return np.asarray(np.where(low_u <= high_u * (1.0 + 1e-12), bounds, np.inf))


def _rest(of_legs: list[FloatArray]) -> FloatArray:
    return np.concatenate((np.cumsum(of_legs[::-1])[::-1], [0.0]))
