"""Levels, currents and powers of one channel, for every code it can show.

Nodal analysis [1]_. Where pins drive 1 and 0 through the same on-resistance the network is linear,
so the answer to one volt on each pin gives every code by a matrix product. Where the two differ, or where a
0 lets go of its node, each code is a network of its own; all are solved together.

References
----------
.. [1] C.-W. Ho, A. E. Ruehli, P. A. Brennan, "The modified nodal approach to network analysis",
   IEEE Transactions on Circuits and Systems 22, 1975.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, fields

import numpy as np
import numpy.typing as npt

from workbench.circuit.codes import first_codes, pin_states, pin_steps
from workbench.circuit.graph import Problem, ProblemKind, Wiring, wiring
from workbench.circuit.network import Driver, Load, Network, NodeId, Zeros
from workbench.circuit.ports import FloatArray, Ports, reduce_to_ports

__all__ = ["Levels", "Problem", "ProblemKind", "find_problems", "solve_levels"]

BoolArray = npt.NDArray[np.bool_]

_WIDEST_RATIO = 1e12
"""Largest over smallest resistance of a channel; beyond it, rounding could be seen in the levels. [1]"""
_CANCELLED = 1e-13
"""Part of its terms that a sum may differ from 0 by rounding alone. [1]"""
_TOO_FAR_APART = "The resistances lie too far apart to be solved together: check for a slipped unit."


@dataclass(frozen=True, slots=True, eq=False)
class Levels:
    """What one channel does for every code; read-only arrays in code order.

    A network with a fatal problem, and a node that nothing holds, reads 0 everywhere; the
    problem says why. With no pins, or with more pins than are solved, there is one code.
    """

    states: FloatArray
    """What each pin is told, 0 or 1, shape (n_codes, n_pins). [1]"""
    volts_by_code: FloatArray
    """Output with the monitor connected, shape (n_codes,). [V]"""
    open_by_code: FloatArray
    """Output with nothing connected, shape (n_codes,). [V]"""
    pin_amps: FloatArray
    """Current out of each pin, negative where it sinks, loaded, shape (n_codes, n_pins). [A]"""
    load_amps: FloatArray
    """Current into the monitor, shape (n_codes,). [A]"""
    nodes: tuple[NodeId, ...]
    """Names of the columns of ``node_volts``; ground, always 0 V, is left out."""
    node_volts: FloatArray
    """Node voltages, loaded, shape (n_codes, n_nodes). [V]"""
    resistor_amps: FloatArray
    """Current from end a to end b, loaded, shape (n_codes, n_resistors). [A]"""
    resistor_watts: FloatArray
    """Power turned into heat, loaded, shape (n_codes, n_resistors). [W]"""
    weights_volts: FloatArray
    """What each pin adds, loaded, to the level of code 0; a thermometer pin to the ones before it,
    shape (n_pins,). [V]"""
    source_ohms_by_code: FloatArray
    """Resistance seen from the connector into the output, shape (n_codes,); infinite where nothing holds
    the output. [Ω]"""
    problems: tuple[Problem, ...]

    def __post_init__(self) -> None:
        for field in fields(self):
            value = getattr(self, field.name)
            if isinstance(value, np.ndarray):
                value.setflags(write=False)

    @property
    def source_ohms(self) -> float:
        """Return the resistance seen from the connector into the output at white: every pin at 1. [Ω]

        It is what white loses under a load, ``open / loaded = 1 + source_ohms / load``.
        """
        return float(self.source_ohms_by_code[-1])

    @property
    def supply_amps(self) -> FloatArray:
        """Return what the pins that are 1 draw from the supply, shape (n_codes,). [A]"""
        return np.asarray(np.sum(self.pin_amps * self.states, axis=1))


def solve_levels(network: Network, driver: Driver, load: Load) -> Levels:
    """Solve one channel for every code.

    Parameters
    ----------
    network : Network
        Pins, resistors and output; capacitors are open.
    driver : Driver
        Supply and on-resistances of the pins.
    load : Load
        What the monitor puts between the output and ground.

    Returns
    -------
    Levels
        Finite figures always; what is wrong with the network is in its ``problems``.
    """
    structure, problems = wiring(network), find_problems(network, driver, load)
    if not any(problem.kind.fatal for problem in problems):
        try:
            with np.errstate(all="ignore"):
                levels = _solve(network, driver, load, structure, problems)
            if _finite(levels):
                return levels
        except np.linalg.LinAlgError:
            pass
        problems = (*problems, Problem(ProblemKind.UNSOLVABLE, _TOO_FAR_APART))
    return _nothing(network, structure, problems)


def find_problems(network: Network, driver: Driver, load: Load) -> tuple[Problem, ...]:
    """Return what is wrong with a channel, in its structure and in its values."""
    return (*wiring(network).problems, *_value_problems(network, driver, load))


def _value_problems(network: Network, driver: Driver, load: Load) -> Iterator[Problem]:
    for resistor in network.resistors:
        if not 0.0 < resistor.ohms < math.inf:
            sentence = f"{resistor.id} cannot be {resistor.ohms:g} Ω: give it a resistance above 0 Ω."
            yield Problem(ProblemKind.BAD_VALUE, sentence, (resistor.id,))
    values = [resistor.ohms for resistor in network.resistors]
    if max(values, default=1.0) > _WIDEST_RATIO * min(values, default=1.0):
        yield Problem(ProblemKind.UNSOLVABLE, _TOO_FAR_APART)
    ohms = (driver.high_ohms, driver.low_ohms)
    if not (math.isfinite(driver.supply_volts) and all(0.0 <= value < math.inf for value in ohms)):
        sentence = "The pins' supply and on-resistances must be numbers, the latter not below 0 Ω."
        yield Problem(ProblemKind.BAD_VALUE, sentence)
    if not 0.0 <= load.siemens < math.inf:
        yield Problem(ProblemKind.BAD_VALUE, "The monitor's load must be a resistance above 0 Ω.")


def _finite(levels: Levels) -> bool:
    arrays = (levels.open_by_code, levels.node_volts, levels.pin_amps, levels.resistor_watts)
    known = all(np.isfinite(array).all() for array in arrays)
    return known and not np.isnan(levels.source_ohms_by_code).any()


def _solve(
    network: Network, driver: Driver, load: Load, structure: Wiring, problems: tuple[Problem, ...]
) -> Levels:
    siemens = 1.0 / np.array([resistor.ohms for resistor in network.resistors])
    states = pin_states(network)
    opened = reduce_to_ports(structure, siemens, network.n_pins, (structure.output,))
    loaded = opened.loaded(load.siemens)
    open_pin_volts = _pin_volts(opened, states, driver, structure)
    pin_volts = _pin_volts(loaded, states, driver, structure)
    node_volts = pin_volts @ loaded.transfer.T
    across = _sums(node_volts, structure.incidence.T)
    amps = across * siemens
    volts = np.ascontiguousarray(node_volts[:, structure.output])
    raised = np.array(first_codes(network))
    return Levels(
        states=states,
        volts_by_code=volts,
        open_by_code=open_pin_volts @ opened.transfer[structure.output],
        pin_amps=_sums(pin_volts, loaded.admittance),
        load_amps=volts * load.siemens,
        nodes=structure.nodes,
        node_volts=node_volts,
        resistor_amps=amps,
        resistor_watts=across * amps,
        weights_volts=volts[raised] - volts[raised - pin_steps(network.bits, network.thermometer)],
        source_ohms_by_code=_source_ohms(opened, states, driver, structure),
        problems=problems,
    )


def _sums(values: FloatArray, factors: FloatArray) -> FloatArray:
    """Return ``values @ factors``, with 0 where the terms cancel but for rounding."""
    sums = np.asarray(values @ factors)
    sums[np.abs(sums) <= _CANCELLED * (np.abs(values) @ np.abs(factors))] = 0.0
    return sums


def _pin_volts(ports: Ports, states: FloatArray, driver: Driver, structure: Wiring) -> FloatArray:
    """Return the voltage at each pin's node for every code, shape (n_codes, n_pins). [V]"""
    if _alike(driver):
        if driver.high_ohms == 0.0:
            return states * driver.supply_volts
        gain = ports.behind(np.full(states.shape[1], driver.high_ohms)).gain
        return states @ (driver.supply_volts * gain[: states.shape[1]].T)
    pins = _pins_by_code(states, driver, structure)
    return pins.solve(ports.admittance, states * driver.supply_volts)


def _source_ohms(opened: Ports, states: FloatArray, driver: Driver, structure: Wiring) -> FloatArray:
    """Return what the output is like from outside for every code, shape (n_codes,). [Ω]

    Notes
    -----
    Of one ampere into the output a pin whose node were at 0 V would take ``share``, by reciprocity
    the volts at the output for each volt at the pin. So with sources at 0 V ``i = Y v - share``.
    """
    output = structure.output
    share, inside = opened.transfer[output], opened.impedance[output, 0]
    if _alike(driver):
        behind = opened.behind(np.full(states.shape[1], driver.high_ohms))
        return np.full(len(states), behind.impedance[output, 0])
    pins = _pins_by_code(states, driver, structure)
    volts = pins.solve(opened.admittance, np.where(pins.let_go, share, pins.ohms * share))
    alone = (pins.left_alone & (share != 0.0)).any(axis=1)
    return np.where(alone, math.inf, inside + volts @ share)


def _alike(driver: Driver) -> bool:
    """Return whether the network is the same for every code."""
    return driver.zeros is Zeros.DRIVEN and driver.high_ohms == driver.low_ohms


@dataclass(frozen=True, slots=True, eq=False)
class _PinsByCode:
    """How each pin holds its node for every code, each of shape (n_codes, n_pins)."""

    ohms: FloatArray
    let_go: BoolArray
    left_alone: BoolArray
    """Whether a pin is in an island without ground whose pins have all let go."""

    def solve(self, admittance: FloatArray, given: FloatArray) -> FloatArray:
        """Solve ``(1 + R Y) v = given`` for the on-resistances ``R`` of each code. [V]

        Notes
        -----
        A pin that lets go carries no current but what is given: its row is ``Y v = given``. An island
        that is left alone has no voltage; its pins are put at 0 V, where no current flows either.
        """
        identity = np.eye(len(admittance))
        matrix = identity + self.ohms[:, :, None] * admittance
        matrix = np.where(self.let_go[:, :, None], admittance, matrix)
        matrix = np.where(self.left_alone[:, :, None], identity, matrix)
        given = np.where(self.left_alone, 0.0, given)
        return np.asarray(np.linalg.solve(matrix, given[:, :, None])[:, :, 0], dtype=np.float64)


def _pins_by_code(states: FloatArray, driver: Driver, structure: Wiring) -> _PinsByCode:
    ohms = np.where(states == 1.0, driver.high_ohms, driver.low_ohms)
    if driver.zeros is Zeros.DRIVEN:
        nowhere = np.zeros(states.shape, dtype=np.bool_)
        return _PinsByCode(ohms, nowhere, nowhere)
    idle = (states @ structure.afloat.T) == 0.0
    return _PinsByCode(ohms, states == 0.0, (idle @ structure.afloat).astype(np.bool_))


def _nothing(network: Network, structure: Wiring, problems: tuple[Problem, ...]) -> Levels:
    solvable = not any(problem.kind in (ProblemKind.NO_PINS, ProblemKind.TOO_BIG) for problem in problems)
    n_pins, n_resistors = network.n_pins, len(network.resistors)
    states = pin_states(network) if solvable else np.zeros((1, n_pins))
    n_codes = len(states)
    return Levels(
        states=states,
        volts_by_code=np.zeros(n_codes),
        open_by_code=np.zeros(n_codes),
        pin_amps=np.zeros((n_codes, n_pins)),
        load_amps=np.zeros(n_codes),
        nodes=structure.nodes,
        node_volts=np.zeros((n_codes, len(structure.nodes))),
        resistor_amps=np.zeros((n_codes, n_resistors)),
        resistor_watts=np.zeros((n_codes, n_resistors)),
        weights_volts=np.zeros(n_pins),
        source_ohms_by_code=np.zeros(n_codes),
        problems=problems,
    )
