"""The way from the pins to the monitor: network, cable and load as one transfer.

The network is linear here: where high and low on-resistance differ, every pin has the mean of
the two conductances; where a 0 lets go of its pin, every pin has its high on-resistance. (Levels
need no such simplification and stay exact, see :mod:`workbench.circuit.solution`.)

The cable's own delay, which colour and sync share, is left out: time 0 is where an edge begins
to arrive.
"""

import math
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from workbench.circuit.graph import wiring
from workbench.circuit.network import (
    GROUND,
    Cable,
    Capacitor,
    Driver,
    Load,
    Network,
    PartId,
    Resistor,
    Zeros,
)
from workbench.circuit.ports import FloatArray
from workbench.circuit.response.line import Line, Passages
from workbench.circuit.response.poles import Poles, find_poles
from workbench.circuit.response.transform import ComplexArray, Frequencies, mix
from workbench.circuit.solution import find_problems

__all__ = ["LAGS", "Path", "find_path"]

LAGS = 16.0
"""Time constants after which a lag has settled. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class Path:
    """The way from the pins to the monitor."""

    poles: Poles
    """Network and pins, ended by the monitor, or by the cable's characteristic impedance."""
    line: Line | None
    supply_volts: float
    rise_s: float

    @property
    def weights_volts(self) -> FloatArray:
        """Return the settled level of each pin alone, shape (n_pins,). [V]"""
        return np.asarray(self.poles.shares.sum(axis=1) * (self.supply_volts * self.settled_line))

    @property
    def settled_line(self) -> float:
        """Return volts at the monitor for each volt at the network's end, at rest. [1]"""
        if self.line is None:
            return 1.0
        load = float(self.line.load_reflection(np.zeros(1))[0].real)
        source = 2.0 * float(self.poles.impedance.sum()) / self.line.cable.ohms - 1.0
        left = 1.0 - source * load
        return (1.0 + load) / left if left > 1e-9 else 0.0

    def waves(
        self, omega: Frequencies, lagging: ComplexArray, passages: Passages | None = None
    ) -> tuple[ComplexArray, ComplexArray]:
        """Return the first arrival at the monitor, and the part of it that comes again. [1]

        ``passages`` are those of the line at these frequencies, where they are known already.
        """
        if self.line is None:
            return np.ones(len(omega), np.complex128), np.zeros(len(omega), np.complex128)
        known = self.line.passages(omega) if passages is None else passages
        return self.line.waves(known, mix(self.poles.impedance, lagging))

    def transfer(self, omega: FloatArray) -> ComplexArray:
        """Return volts at the monitor for each volt of each pin, shape (n_pins, n_frequencies). [1]

        Parameters
        ----------
        omega : float array, shape (n_frequencies,)
            Angular frequency, ``0 <= omega``. [rad/s]
        """
        lagging = self.poles.lagging(omega)
        first, again = self.waves(omega, lagging)
        return mix(self.poles.shares, lagging * (first / (1.0 - again)))

    @property
    def shortest_s(self) -> float:
        """Return the shortest time over which an edge changes as a whole. [s]"""
        behind = 0.0 if self.line is None else self.line.lag_s
        return max(self.rise_s, float(self.poles.lags_s.sum()) + behind, _SHORTEST_S)

    @property
    def first_arrival(self) -> Poles:
        """Return the answer of the monitor to the pins before any echo, but for the cable's loss."""
        if self.line is None:
            return self.poles
        return self.poles.through(self.line.lag_s, self.line.passed_on)

    @property
    def arrival_lags_s(self) -> FloatArray:
        """Return the time constants of the first arrival, shape (n_lags,). [s]"""
        behind = 0.0 if self.line is None else self.line.lag_s
        return np.append(self.poles.lags_s, behind) if behind else self.poles.lags_s

    @property
    def echoes(self) -> bool:
        """Return whether anything comes back from the near end once the monitor has sent it there."""
        if self.line is None:
            return False
        ends = self.line.lag_s > 0.0 or abs(self.line.passed_on - 1.0) > _MATCHED
        source = 2.0 * self.poles.impedance / self.line.cable.ohms
        source[0] -= 1.0
        return ends and float(np.abs(source).max()) > _MATCHED

    @property
    def longest_lag_s(self) -> float:
        """Return the longest time constant, with that of the monitor behind the cable. [s]"""
        behind = 0.0 if self.line is None else self.line.lag_s
        return float(self.poles.lags_s.max(initial=0.0)) + behind

    @property
    def lags_settled_s(self) -> float:
        """Return the time from the start of an edge until its lags have settled, echoes left aside. [s]"""
        return self.rise_s + LAGS * self.longest_lag_s

    @property
    def settling_s(self) -> float:
        """Return the time from the start of an edge until next to nothing moves. [s]"""
        lag = -math.log(_NOTHING) * self.longest_lag_s
        if self.line is None:
            return self.rise_s + lag
        trips = self.line.trip_s * (1 + _round_trips(self))
        return self.rise_s + 2.0 * lag + trips + self.line.creep_s


@lru_cache(maxsize=16)
def _round_trips(path: Path) -> int:
    """Return after how many round trips next to nothing of an edge is left. [1]

    Notes
    -----
    A frequency that both ends reflect well goes to and fro for long, but little of it may get
    onto the cable in the first place: what counts is what of the first arrival is still there.
    """
    omega = np.concatenate(([0.0], np.geomspace(1e5, 1e12, 57)))
    lagging = path.poles.lagging(omega)
    first, again = path.waves(omega, lagging)
    sent = np.abs(mix(path.poles.shares.sum(axis=0), lagging) * first)
    ramp = 1.0 / np.maximum(1.0, 0.5 * omega * path.shortest_s)
    above = np.maximum(0.0, np.log(sent * ramp / (sent.max() + _TINY) / _NO_ECHO + _TINY))
    left = np.clip(np.abs(again), _TINY, 0.999)
    return math.ceil(float((above / -np.log(left)).max()))


_NOTHING = 1e-5
"""Share of an edge below which it has settled. [1]"""
_MATCHED = 1e-9
"""Part of a wave below which nothing is reflected. [1]"""
_UNREACHED = 1e-12
"""Volts at the output for each volt of a pin below which the pin does not reach it. [1]"""
_TINY = 1e-300
_NO_ECHO = 1e-3
"""Share of an edge below which an echo is not followed any further. [1]"""
_SHORTEST_S = 1e-10
"""Edges shorter than this are not resolved on a cable. [s]"""


@lru_cache(maxsize=16)
def find_path(network: Network, driver: Driver, load: Load, cable: Cable | None) -> Path | None:
    """Return the way from the pins to the monitor, none where no pin reaches it.

    Parameters
    ----------
    network : Network
        Pins, resistors and capacitors of one channel.
    driver : Driver
        Supply, on-resistances and rise time of the pins.
    load : Load
        The monitor's termination and capacitance.
    cable : Cable or None
        Line between them; none where the monitor hangs on the network directly.
    """
    if any(problem.kind.fatal for problem in find_problems(network, driver, load)):
        return None
    line = Line(cable, load) if cable is not None and cable.metres > 0.0 else None
    ended = _ended(network, load) if line is None else _ended(network, Load(ohms=line.cable.ohms))
    poles = find_poles(ended, wiring(ended), _mean_ohms(driver))
    if np.abs(poles.shares).max() < _UNREACHED:
        return None
    return Path(poles, line, driver.supply_volts, driver.rise_s)


def _ended(network: Network, load: Load) -> Network:
    resistors, capacitors = network.resistors, network.capacitors
    if load.siemens > 0.0:
        end = Resistor(PartId("load"), network.output, GROUND, 1.0 / load.siemens)
        resistors = (*resistors, end)
    if load.farads > 0.0:
        farads = load.farads * load.monitors
        capacitors = (*capacitors, Capacitor(PartId("load"), network.output, GROUND, farads))
    return replace(network, resistors=resistors, capacitors=capacitors)


def _mean_ohms(driver: Driver) -> float:
    """Return the on-resistance of the mean conductance. [Ω]"""
    if driver.zeros is Zeros.FLOATING:
        return driver.high_ohms
    total = driver.high_ohms + driver.low_ohms
    return 2.0 * driver.high_ohms * driver.low_ohms / total if total > 0.0 else 0.0
