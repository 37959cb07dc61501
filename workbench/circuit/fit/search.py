"""The best sets of legs for one channel, by branch and bound.

Legs are chosen one after another, the most significant first. What cannot become a set within the error
allowed is cut (:mod:`.windows`), so what is left at the end is proved complete.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from workbench.circuit.fit.start import first_set
from workbench.circuit.fit.task import IntArray, Pool, Task
from workbench.circuit.fit.windows import Windows
from workbench.circuit.ports import FloatArray
from workbench.progress import Progress

__all__ = ["best_sets"]

_MOST_CHILDREN = 100_000
"""Partial sets looked at in one go. [1]"""
_WIDEN = 1.5
"""By how much the error allowed grows until there are enough sets. [1]"""
_SLACK = 1e-12


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
    start = first_set(task)
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
        found = Pool(np.zeros((0, task.n_legs), np.intp), np.zeros(0), limit)
        windows = Windows.of(task, limit)
        if windows is None:
            return found
        counted = np.zeros((1, len(task.counts)), np.int16)
        stack = [_Block(np.zeros((1, 0), np.intp), counted, np.zeros(1))]
        while stack and not self.exhausted:
            self._progress.step(min(self._spent, self._budget), self._budget)
            children = self._expand(stack, windows, found.complete_volts)
            if children.sets.shape[1] == task.n_legs:
                found = _merged(found, children, self._keep)
            elif len(children.sets):
                stack.append(children)
        left = min((float(block.bounds.min()) for block in stack), default=np.inf)
        return Pool(found.sets, found.errors, min(found.complete_volts, left))

    def _expand(self, stack: list[_Block], windows: Windows, limit: float) -> _Block:
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
        able = (taken <= task.counts).all(axis=1)
        if 0 < leg < task.n_rising:
            able &= sets[:, leg - 1] <= sets[:, leg]
        if not able.all():
            sets, taken = sets[able], taken[able]
        return _within(task, _Block(sets, taken, windows.bounds(task, sets)), limit)


def _within(task: Task, block: _Block, limit: float) -> _Block:
    """Return what may stay within a limit, the most promising first; of whole sets the error is known."""
    kept = np.flatnonzero(block.bounds <= limit)
    bounds = block.bounds[kept]
    if task.n_rising and block.sets.shape[1] == task.n_legs:
        bounds = task.errors(block.sets[kept])
        kept, bounds = kept[bounds <= limit], bounds[bounds <= limit]
    order = np.argsort(bounds, kind="stable")
    return _Block(block.sets[kept[order]], block.taken[kept[order]], bounds[order])


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
