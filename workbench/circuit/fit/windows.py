"""What a leg may be at all, and what a set that is begun will be off by at least.

``u``, the voltage that each siemens of a leg brings about over ``K``, ties the legs together: known within
bounds, it bounds every leg's error.
"""

from dataclasses import dataclass

import numpy as np

from workbench.circuit.fit.task import IntArray, Task
from workbench.circuit.ports import FloatArray

__all__ = ["Windows"]

_ROUNDING = 1e-12


@dataclass(frozen=True, slots=True, eq=False)
class Windows:
    """The options that each leg may have at all, if no code is to be off by more than a limit."""

    low_u: float
    high_u: float
    options: tuple[IntArray, ...]
    least_rest: FloatArray
    """What the legs after the first k conduct at least, shape (n_legs + 1,). [S]"""
    most_rest: FloatArray

    @classmethod
    def of(cls, task: Task, limit: float) -> "Windows | None":
        """Return the windows, none where nothing stays within the limit.

        Notes
        -----
        The white level is off by ``K (1 - u G) - sum(w)``, which alone bounds ``u``. A leg that is a bit
        by itself is off by the limit at most; one that rises after others lifts the level from the
        limit below to the limit above at most.
        """
        wanted = float(task.wanted_volts.sum())
        low_u = max((1.0 - (wanted + limit) / task.gain_volts) / task.rest_siemens, 1e-9 / task.rest_siemens)
        high_u = min(1.0, 1.0 - (wanted - limit) / task.gain_volts) / task.rest_siemens
        if high_u < low_u:
            return None
        spans = np.where(np.arange(task.n_legs) < task.n_rising, 2.0, 1.0) * limit
        low = (task.wanted_volts - spans) / (task.gain_volts * high_u) * (1.0 - _ROUNDING)
        high = (task.wanted_volts + spans) / (task.gain_volts * low_u) * (1.0 + _ROUNDING)
        options = tuple(
            np.flatnonzero((task.siemens >= a) & (task.siemens <= b)) for a, b in zip(low, high, strict=True)
        )
        if not all(len(choice) for choice in options):
            return None
        least = [task.siemens[choice].min() for choice in options]
        most = [task.siemens[choice].max() for choice in options]
        return cls(low_u, high_u, options, _rest(least), _rest(most))

    def bounds(self, task: Task, sets: IntArray) -> FloatArray:
        """Return what every completion of each set that is begun is off by at least, shape (n_sets,). [V]

        For whole sets it is their error, unless some legs rise one after another.

        Notes
        -----
        With ``S`` the sum of the errors of the rising legs, white is off by ``W = S + P - N``, known from
        ``u``. The worst distance is at least ``P``, ``S + P = W + N``, ``N`` and ``N - S = P - W``; and,
        where a rising leg lifts the level by ``e`` too much, half of ``|e| + P + N``.
        """
        n_legs, n_rising = sets.shape[1], task.n_rising
        siemens = task.siemens[sets]
        most_rest = self._most_rest(task, siemens)
        total = siemens.sum(axis=1) + task.rest_siemens
        low_u = np.maximum(1.0 / (total + most_rest), self.low_u)
        high_u = np.minimum(1.0 / (total + self.least_rest[n_legs]), self.high_u)
        if n_legs == task.n_legs:
            low_u = high_u = 1.0 / total
        volts, wanted = task.gain_volts * siemens, task.wanted_volts[:n_legs]
        least_off, most_off = volts * low_u[:, None] - wanted, volts * high_u[:, None] - wanted
        above = least_off[:, n_rising:].clip(min=0.0).sum(axis=1)
        below = -most_off[:, n_rising:].clip(max=0.0).sum(axis=1)
        white_off = task.gain_volts - float(task.wanted_volts.sum())
        slope = task.gain_volts * task.rest_siemens
        too_high, too_low = white_off - slope * high_u, slope * low_u - white_off
        bounds = np.maximum(np.maximum(above, below + too_high), np.maximum(below, above + too_low))
        if n_rising and n_legs:
            np.maximum(bounds, _risen(least_off, most_off, n_rising, above, below), out=bounds)
        return np.asarray(np.where(low_u <= high_u * (1.0 + _ROUNDING), bounds, np.inf))

    def _most_rest(self, task: Task, siemens: FloatArray) -> FloatArray:
        """Return what the other legs conduct at most, shape (n_sets,) or (1,). [S]

        A rising leg conducts no more than the one before it in the set.
        """
        n_legs = siemens.shape[1]
        if not 0 < n_legs < task.n_rising:
            return self.most_rest[n_legs : n_legs + 1]
        return np.asarray(self.most_rest[task.n_rising] + (task.n_rising - n_legs) * siemens[:, -1])


def _risen(
    least_off: FloatArray, most_off: FloatArray, n_rising: int, above: FloatArray, below: FloatArray
) -> FloatArray:
    """Return what the rising legs so far add to the bounds, shape (n_sets,). [V]"""
    least, most = least_off[:, :n_rising], most_off[:, :n_rising]
    leap = np.maximum(least.max(axis=1), -most.min(axis=1))
    bounds = (leap + above + below) / 2.0
    if least_off.shape[1] < n_rising:
        # Those to come are no stronger than the last.
        short = -(most.sum(axis=1) + (n_rising - least.shape[1]) * most[:, -1])
        return np.asarray(np.maximum(bounds, short))
    risen, fallen = least.sum(axis=1) + above, below - most.sum(axis=1)
    return np.asarray(np.maximum(bounds, np.maximum(risen, fallen)))


def _rest(of_legs: list[FloatArray]) -> FloatArray:
    return np.concatenate((np.cumsum(of_legs[::-1])[::-1], [0.0]))
