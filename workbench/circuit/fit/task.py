"""What one channel's legs are to reach, and how far off a set of them is.

With ``u = 1 / (sum of all conductances at the bus)``, leg ``i`` adds ``K g_i u`` volts and is off by
``e_i = K g_i u - w_i``. In a weighted ladder the level of a code is off by the sum of its bits' ``e_i``,
so the worst distance over all codes is the larger of ``P``, the sum of the positive ones, and ``N``, that
of the negative ones. In a segmented ladder some legs rise one after another: :mod:`.rising`.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from workbench.circuit.fit.rising import best_order, least_worst
from workbench.circuit.ports import FloatArray

__all__ = ["IntArray", "Pool", "Task"]

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
    n_rising: int = 0
    """How many legs, the first ones, rise one after another and are wanted alike. A set holds them in
    falling order of conductance; they rise in the order that is best. [1]"""

    @property
    def n_legs(self) -> int:
        """Return the number of legs. [1]"""
        return len(self.wanted_volts)

    def errors(self, sets: IntArray) -> FloatArray:
        """Return the worst distance over all codes of sets of options, shape (n_sets,). [V]"""
        rising, above, below = self._apart(sets)
        return least_worst(rising, above, below) if self.n_rising else np.maximum(above, below)

    def in_order(self, chosen: IntArray) -> IntArray:
        """Return one set with its rising legs in the order in which they should rise, shape (n_legs,)."""
        rising, above, below = (each[0] for each in self._apart(chosen[None]))
        order = best_order(rising, float(above), float(below))
        return np.concatenate((chosen[list(order)], chosen[self.n_rising :]))

    def _apart(self, sets: IntArray) -> tuple[FloatArray, FloatArray, FloatArray]:
        """Return what each rising leg is off by, and the others together, upwards and downwards. [V]"""
        siemens = self.siemens[sets]
        u = 1.0 / (siemens.sum(axis=1, keepdims=True) + self.rest_siemens)
        off = self.gain_volts * siemens * u - self.wanted_volts
        tail = off[:, self.n_rising :]
        return off[:, : self.n_rising], tail.clip(min=0.0).sum(axis=1), -tail.clip(max=0.0).sum(axis=1)

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
