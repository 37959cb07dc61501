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

from workbench.circuit.codes import first_codes, pin_states, pin_steps
from workbench.circuit.graph import Problem, ProblemKind, Wiring, wiring
from workbench.circuit.network import Driver, Load, Network, NodeId, Zeros
from workbench.circuit.ports import FloatArray, Ports, reduce_to_ports

__all__ = ["Levels", "Problem", "ProblemKind", "find_problems", "solve_levels"]

_WIDEST_RATIO = 1e12
"""Largest over smallest resistance of a channel; beyond it, rounding could be seen in the levels. [1]"""
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
    source_ohms: float
    """Resistance seen from the connector into the output: every pin at 0, or at 1 where a 0 floats. [Ω]"""
    problems: tuple[Problem, ...]

    def __post_init__(self) -> None:
        for field in fields(self):
            value = getattr(self, field.name)
            if isinstance(value, np.ndarray):
                value.setflags(write=False)

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
    return all(np.isfinite(array).all() for array in arrays)


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
    across = node_volts @ structure.incidence.T
    amps = across * siemens
    volts = np.ascontiguousarray(node_volts[:, structure.output])
    rest_ohms = driver.low_ohms if driver.zeros is Zeros.DRIVEN else driver.high_ohms
    source = opened.behind(np.full(network.n_pins, rest_ohms)).impedance[structure.output, 0]
    raised = np.array(first_codes(network))
    return Levels(
        states=states,
        volts_by_code=volts,
        open_by_code=open_pin_volts @ opened.transfer[structure.output],
        pin_amps=pin_volts @ loaded.admittance,
        load_amps=volts * load.siemens,
        nodes=structure.nodes,
        node_volts=node_volts,
        resistor_amps=amps,
        resistor_watts=across * amps,
        weights_volts=volts[raised] - volts[raised - pin_steps(network.bits, network.thermometer)],
        source_ohms=float(source),
        problems=problems,
    )


def _pin_volts(ports: Ports, states: FloatArray, driver: Driver, structure: Wiring) -> FloatArray:
    """Return the voltage at each pin's node for every code, shape (n_codes, n_pins). [V]"""
    n_pins = states.shape[1]
    if driver.zeros is Zeros.DRIVEN and driver.high_ohms == driver.low_ohms:
        if driver.high_ohms == 0.0:
            return states * driver.supply_volts
        gain = ports.behind(np.full(n_pins, driver.high_ohms)).gain
        return states @ (driver.supply_volts * gain[:n_pins].T)
    return _pin_volts_code_by_code(ports.admittance, states, driver, structure.afloat)


def _pin_volts_code_by_code(
    admittance: FloatArray,
    states: FloatArray,
    driver: Driver,
    afloat: np.ndarray[tuple[int, int], np.dtype[np.bool_]],
) -> FloatArray:
    """Solve ``(1 + R Y) v = e`` for the on-resistances ``R`` of each code.

    Notes
    -----
    A pin that lets go carries no current: its row is ``Y v = 0``. An island without ground whose
    pins have all let go has no voltage; its pins are put at 0 V, where no current flows either.
    """
    ohms = np.where(states == 1.0, driver.high_ohms, driver.low_ohms)
    matrix = np.eye(states.shape[1]) + ohms[:, :, None] * admittance
    if driver.zeros is Zeros.FLOATING:
        idle = (states @ afloat.T) == 0.0
        left_alone = (idle @ afloat).astype(bool)
        matrix = np.where((states == 0.0)[:, :, None], admittance, matrix)
        matrix = np.where(left_alone[:, :, None], np.eye(states.shape[1]), matrix)
    source_volts = states * driver.supply_volts
    return np.asarray(np.linalg.solve(matrix, source_volts[:, :, None])[:, :, 0], dtype=np.float64)


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
        source_ohms=0.0,
        problems=problems,
    )
