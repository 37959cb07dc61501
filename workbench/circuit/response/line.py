"""A lossy line with a load at its far end."""

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from workbench.circuit.network import Cable, Load
from workbench.circuit.response.transform import ComplexArray, Frequencies, Grid

__all__ = ["SPEED_OF_LIGHT", "Line", "Passages", "passages_on"]

SPEED_OF_LIGHT = 299_792_458.0
"""Exact by the definition of the metre, BIPM, The International System of Units, 9th edition. [m/s]"""

_NEPER_DB = 20.0 / math.log(10.0)
_MOST_RETURNED = 0.999
"""A round trip returns at most this share of a wave: nothing rings for ever. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class Passages:
    """What becomes of a wave on a cable, each of shape (n_frequencies,); read-only."""

    first: ComplexArray
    """Volts at the monitor for each volt sent, before any echo and without the delay. [1]"""
    back: ComplexArray
    """Part of what is sent that comes back to the sender and starts again, with its delay. [1]"""

    def __post_init__(self) -> None:
        self.first.setflags(write=False)
        self.back.setflags(write=False)


@dataclass(frozen=True, slots=True)
class Line:
    """A cable and the monitor behind it, as a wave on the cable meets them.

    Notes
    -----
    The loss is that of the skin effect: the conductor's surface impedance grows with the root of
    ``j omega``, so that ``exp(-loss)`` has as much phase as attenuation and nothing arrives before the
    wave front [1]_. The characteristic impedance is taken as the same at all frequencies.

    References
    ----------
    .. [1] R. L. Wigington, N. S. Nahman, "Transient analysis of coaxial cables considering skin
       effect", Proceedings of the IRE 45, 1957. From memory.
    """

    cable: Cable
    load: Load

    @property
    def delay_s(self) -> float:
        """Return the time from one end to the other. [s]"""
        return self.cable.metres / (self.cable.velocity * SPEED_OF_LIGHT)

    @property
    def trip_s(self) -> float:
        """Return the time from one end to the other and back. [s]"""
        return 2.0 * self.delay_s

    @property
    def lossy(self) -> bool:
        """Return whether the cable takes anything from a wave."""
        return self.cable.loss_db_per_m > 0.0

    def loss(self, omega: Frequencies) -> ComplexArray:
        """Return the factor of one passage without its delay. [1]"""
        if not self.lossy:
            return np.ones(len(omega), np.complex128)
        nepers = self.cable.metres * self.cable.loss_db_per_m / _NEPER_DB
        root = np.sqrt(omega / (2.0 * math.pi * self.cable.loss_at_hz))
        return np.asarray(np.exp(-(1.0 + 1.0j) * nepers * root))

    @property
    def skin_s(self) -> float:
        """Return the time of the skin effect on one passage. [s]

        Notes
        -----
        ``exp(-sqrt(k s))`` answers a step with ``erfc(sqrt(k / t) / 2)``, which late lacks
        ``sqrt(k / (pi t))`` (M. Abramowitz, I. A. Stegun, "Handbook of Mathematical Functions", 29.3.83).
        """
        nepers = self.cable.metres * self.cable.loss_db_per_m / _NEPER_DB
        return nepers**2 / (math.pi * self.cable.loss_at_hz)

    @property
    def creep_s(self) -> float:
        """Return the time after which one passage of a step lacks a hundredth of its height. [s]"""
        return self.skin_s / (math.pi * 0.01**2)

    @property
    def crept_s(self) -> float:
        """Return the time after which one passage of a step lacks a ten-thousandth of its height. [s]"""
        return 1e4 * self.creep_s

    @property
    def lag_s(self) -> float:
        """Return the time constant of the monitor's capacitance with load and cable in parallel. [s]"""
        return self.load.farads * self.load.monitors / (self.load.siemens + 1.0 / self.cable.ohms)

    @property
    def passed_on(self) -> float:
        """Return the volts at the monitor for each volt of a wave that arrives, at rest. [1]"""
        return 2.0 / (1.0 + self.cable.ohms * self.load.siemens)

    def load_reflection(self, omega: Frequencies) -> ComplexArray:
        """Return the part of a wave that the monitor reflects. [1]"""
        return self.passed_on * self._lagging(omega) - 1.0

    def _lagging(self, omega: Frequencies) -> ComplexArray:
        return np.asarray(1.0 / (1.0 + 1j * omega * self.lag_s), np.complex128)

    def first_passage(self, omega: Frequencies) -> ComplexArray:
        """Return volts at the monitor for each volt sent, before any echo and without the delay. [1]"""
        return self.loss(omega) * self._lagging(omega) * self.passed_on

    def passages(self, omega: Frequencies, *, trip_s: float | None = None) -> Passages:
        """Return what the cable and the monitor do to a wave, whatever sends it.

        ``trip_s`` is how long a wave is thought to be away, where that is not as long as it really is.
        """
        away_s = self.trip_s if trip_s is None else trip_s
        away = np.asarray(np.exp(-1j * away_s * omega), np.complex128)
        return self.joined(self.loss(omega), self._lagging(omega), away)

    def joined(self, loss: ComplexArray, lagging: ComplexArray, away: ComplexArray) -> Passages:
        """Return the passages made of the loss of one, the monitor's own lag, and the delay of two."""
        passed_on = self.passed_on * lagging
        return Passages(loss * passed_on, (passed_on - 1.0) * (loss * loss * away))

    def waves(self, passages: Passages, source_impedance: ComplexArray) -> tuple[ComplexArray, ComplexArray]:
        """Return the first arrival at the monitor, and what is left of a wave there a round trip later.

        Parameters
        ----------
        passages : Passages
            Of this line.
        source_impedance : complex array, shape (n_frequencies,)
            Impedance at the near end with the cable's own in parallel to it. [Ω]

        Returns
        -------
        first : complex array, shape (n_frequencies,)
            Volts at the monitor for each volt sent, before any echo and without the delay. [1]
        again : complex array, shape (n_frequencies,)
            Part of the first arrival that comes again, with its delay. [1]
        """
        again = ((2.0 / self.cable.ohms) * source_impedance - 1.0) * passages.back
        again *= _MOST_RETURNED / np.maximum(np.abs(again), _MOST_RETURNED)
        return passages.first, again


@lru_cache(maxsize=8)
def passages_on(line: Line, grid: Grid) -> Passages:
    """Return the passages on the samples of a transform; an edit of the network needs no new ones."""
    loss = grid.sampled(line.loss) if line.lossy else line.loss(grid.omega)
    return line.joined(loss, grid.lagging(np.array([line.lag_s]))[1], np.exp(-1j * line.trip_s * grid.omega))
