"""A good set of legs to begin with: the better it is, the more the search may leave out."""

import numpy as np

from workbench.circuit.fit.task import IntArray, Task
from workbench.circuit.ports import FloatArray

__all__ = ["first_set"]

_STARTS = 48
_REACH = 24
"""Options to each side that a leg may move to when a first set is improved. [1]"""


def first_set(task: Task) -> IntArray | None:
    """Return a good set: legs near their share of several totals, then one leg after the other improved."""
    starts = [start for u in _likely_u(task) if (start := _nearest(task, u)) is not None]
    if not starts:
        return None
    sets = np.array(starts)
    best = [_improved(task, sets[i]) for i in np.argsort(task.errors(sets), kind="stable")[:8]]
    first = best[int(np.argmin(task.errors(np.array(best))))]
    first[: task.n_rising].sort()
    return first


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
