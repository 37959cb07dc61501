"""Boards of one design, each with its own resistors: what they show."""

from dataclasses import dataclass
from typing import Any

import numpy as np

from workbench.circuit.codes import pin_states
from workbench.circuit.linearity import ROUNDING_LSB
from workbench.circuit.network import Driver, Load, Network, Zeros
from workbench.circuit.tolerance.elimination import BoardArray, PinState, elimination

__all__ = ["Boards", "Design"]


@dataclass(frozen=True, slots=True, eq=False)
class Boards:
    """Figures of many boards, each of shape (n_boards,)."""

    full_scale_volts: BoardArray
    max_inl_lsb: BoardArray
    max_dnl_lsb: BoardArray
    monotonic: np.ndarray[Any, np.dtype[np.bool_]]


@dataclass(frozen=True, slots=True)
class Design:
    """A channel whose values vary from board to board.

    What varies are *factors* on the nominal values: one row for each resistor, then one each for the
    supply, the load and the pins' on-resistance, which is the same for all pins of a board.
    """

    network: Network
    driver: Driver
    load: Load

    @property
    def n_factors(self) -> int:
        """Return the number of rows of the factors. [1]"""
        return len(self.network.resistors) + 3

    @property
    def linear(self) -> bool:
        """Return whether pins drive 1 and 0 through the same resistance."""
        return self.driver.zeros is Zeros.DRIVEN and self.driver.high_ohms == self.driver.low_ohms

    def levels(self, factors: BoardArray) -> BoardArray:
        """Return the loaded level of every code, shape (n_codes, n_boards). [V]

        Parameters
        ----------
        factors : float array, shape (n_resistors + 3, n_boards)
            Values over nominal values; the result has their precision. [1]
        """
        states = pin_states(self.network).astype(factors.dtype)
        if self.linear:
            return np.asarray(states @ self._weights(factors, states[-1]))
        return np.stack([np.asarray(code @ self._weights(factors, code)) for code in states])

    def figures(self, factors: BoardArray) -> Boards:
        """Return the figures of each board; ``factors`` as for :meth:`levels`."""
        if self.linear:
            weights = self._weights(factors, np.ones(self.network.n_pins))
            return _by_weights(weights, self.network.n_thermometer_pins)
        return _by_levels(self.levels(factors))

    def _weights(self, factors: BoardArray, code: BoardArray) -> BoardArray:
        """Return the volts of each pin in the network as it is for a code, shape (n_pins, n_boards)."""
        n_resistors = len(self.network.resistors)
        supply, load, on = factors[n_resistors:]
        ohms = np.array([[resistor.ohms] for resistor in self.network.resistors], factors.dtype)
        pins = [self._pin(bool(bit)) for bit in code]
        plan = elimination(self.network, tuple(state for state, _ in pins))
        return plan.weights(
            1.0 / (ohms * factors[:n_resistors]),
            [1.0 / (on * factors.dtype.type(value)) if value else 0.0 for _, value in pins],
            factors.dtype.type(self.load.siemens) / load,
            factors.dtype.type(self.driver.supply_volts) * supply,
        )

    def _pin(self, high: bool) -> tuple[PinState, float]:
        if not high and self.driver.zeros is Zeros.FLOATING:
            return PinState.FLOATING, 0.0
        ohms = self.driver.high_ohms if high else self.driver.low_ohms
        return (PinState.RESISTIVE if ohms else PinState.IDEAL), ohms


def _by_weights(weights: BoardArray, n_thermometer: int) -> Boards:
    """Return the figures of linear boards without working out their levels.

    Notes
    -----
    Where bit ``k`` takes over from all lower ones the step is its weight less theirs, at every such
    place in the staircase, and where a thermometer pin takes over from all bits, its weight less theirs;
    there are no other steps. The INL of a code is the sum of its pins' errors ``w / LSB - 2**k``. All
    errors add up to 0; so without thermometer pins the largest INL is half the sum of their magnitudes.
    """
    tail = weights[n_thermometer:]
    whole = 1 << len(tail)
    below = np.zeros_like(weights[0])
    lowest, highest = weights[-1].copy(), weights[-1].copy()
    for weight in tail[::-1]:
        step = weight - below
        np.minimum(lowest, step, out=lowest)
        np.maximum(highest, step, out=highest)
        below += weight
    full_scale = weights[:n_thermometer].sum(axis=0) + below if n_thermometer else below
    per_lsb = (whole * (n_thermometer + 1) - 1) / full_scale
    errors = np.zeros_like(below)
    for k, weight in enumerate(tail[::-1]):
        error = weight * per_lsb
        error -= 2**k
        errors += np.abs(error, out=error)
    inl = 0.5 * errors
    if n_thermometer:
        climbed = np.cumsum(weights[:n_thermometer] * per_lsb - whole, axis=0)
        steps = weights[:n_thermometer] - below
        np.minimum(lowest, steps.min(axis=0), out=lowest)
        np.maximum(highest, steps.max(axis=0), out=highest)
        middle = 0.5 * (below * per_lsb - (whole - 1))
        inl += np.maximum(climbed.max(axis=0).clip(min=0) + middle, -climbed.min(axis=0).clip(max=0) - middle)
    lowest *= per_lsb
    dnl = np.maximum(highest * per_lsb - 1.0, 1.0 - lowest)
    return Boards(full_scale, inl, dnl, lowest >= -ROUNDING_LSB)


def _by_levels(volts: BoardArray) -> Boards:
    full_scale = volts[-1] - volts[0]
    per_lsb = (len(volts) - 1) / full_scale
    steps = np.diff(volts, axis=0) * per_lsb
    inl = (volts - volts[0]) * per_lsb - np.arange(len(volts), dtype=volts.dtype)[:, None]
    return Boards(
        volts[-1],
        np.abs(inl).max(axis=0),
        np.abs(steps - 1.0).max(axis=0),
        steps.min(axis=0) >= -ROUNDING_LSB,
    )
