"""Ladders: networks made from a template, and the template recognised in a network.

A template only *makes* a network; afterwards it is edited part by part. :func:`analyse` looks
at the structure alone, so names do not matter, and two parts that stand for one value count as
one. The most significant bit comes first everywhere, in a segmented ladder the equal legs.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum
from itertools import pairwise

from workbench.circuit.branches import Branch, reduce
from workbench.circuit.network import GROUND, OUTPUT, Capacitor, Network, NodeId, PartId, Resistor
from workbench.errors import NetworkError

__all__ = [
    "MOST_BITS",
    "MOST_THERMOMETER",
    "Ladder",
    "Topology",
    "analyse",
    "pin_nodes",
    "r2r",
    "recognise",
    "segmented",
    "weighted",
]

MOST_BITS = 8
"""The widest channel this workbench makes. [1]"""
MOST_THERMOMETER = 3
"""Thermometer bits of a channel at most: 7 pins, 12 with the other bits of the widest channel. [1]"""


class Topology(Enum):
    """The shape of a network."""

    WEIGHTED = "weighted"
    R2R = "r2r"
    SEGMENTED = "segmented"
    CUSTOM = "custom"


@dataclass(frozen=True, slots=True)
class Ladder:
    """The structure found in a network.

    A custom network has neither legs nor rungs. In a weighted or segmented ladder the legs meet at
    the bus and there are no rungs; in an R-2R ladder ``rungs[i]`` lies between the nodes of
    ``legs[i]`` and ``legs[i + 1]``.
    """

    topology: Topology
    bus: NodeId
    """Where the legs (or the first leg and the first rung) meet."""
    legs: tuple[Branch, ...] = ()
    """One branch for each pin, ``a`` at the pin, in the order of the pins."""
    rungs: tuple[Branch, ...] = ()
    terminator: Branch | None = None
    shunt: Branch | None = None
    """From the bus to ground."""
    series: Branch | None = None
    """From the bus to the output, where the two differ."""


def weighted(
    bits: int,
    ohms: Sequence[float],
    *,
    shunt_ohms: float | None = None,
    series_ohms: float | None = None,
    node_farads: float = 0.0,
) -> Network:
    """Return a binary-weighted ladder: one resistor from each pin to the node they share.

    Parameters
    ----------
    bits : int
        Number of pins, ``1 <= bits <= 8``. [1]
    ohms : sequence of float, shape (bits,)
        Resistors, most significant bit first, ``0 < ohms``. [Ω]
    shunt_ohms, series_ohms : float, optional
        From the shared node to ground, and from there to the connector. [Ω]
    node_farads : float
        Capacitance of the shared node to ground; 0 leaves the part out. [F]

    Raises
    ------
    NetworkError
        If the number of bits is out of range or does not match the number of values.
    """
    if len(ohms) != len(pin_nodes(bits)):
        raise NetworkError(f"a weighted ladder of {bits} bits takes {bits} values, not {len(ohms)}")
    return _star(pin_nodes(bits), ohms, shunt_ohms, series_ohms, node_farads)


def segmented(
    bits: int,
    thermometer: int,
    ohms: Sequence[float],
    *,
    shunt_ohms: float | None = None,
    series_ohms: float | None = None,
    node_farads: float = 0.0,
) -> Network:
    """Return a segmented ladder: equal legs for the highest bits, weighted ones for the others.

    Parameters
    ----------
    bits : int
        Bits of the code, ``2 <= bits <= 8``. [1]
    thermometer : int
        How many of them the equal legs show, ``2 <= thermometer <= 3`` and not above ``bits``. [1]
    ohms : sequence of float, shape (1 + bits - thermometer,)
        One of the ``2**thermometer - 1`` equal legs, then the others, most significant first. [Ω]
    shunt_ohms, series_ohms, node_farads
        As for :func:`weighted`.

    Raises
    ------
    NetworkError
        If a number is out of range or does not match the number of values.
    """
    pins = pin_nodes(bits, thermometer)
    tail = bits - thermometer
    if len(ohms) != 1 + tail:
        raise NetworkError(
            f"a segmented ladder of {bits} bits, {thermometer} of them thermometer coded, takes {1 + tail} "
            f"values (one of its equal legs first), not {len(ohms)}"
        )
    each = (ohms[0],) * (len(pins) - tail)
    star = _star(pins, (*each, *ohms[1:]), shunt_ohms, series_ohms, node_farads)
    return replace(star, thermometer=thermometer)


def r2r(
    bits: int,
    r_ohms: float,
    two_r_ohms: float | None = None,
    *,
    shunt_ohms: float | None = None,
    series_ohms: float | None = None,
    node_farads: float = 0.0,
) -> Network:
    """Return an R-2R ladder with the most significant bit at the output.

    Parts are numbered legs first, then the rungs of ``r_ohms`` between them, then the
    terminator at the far end. ``two_r_ohms`` is twice ``r_ohms`` unless given; the other
    parameters are those of :func:`weighted`.

    Raises
    ------
    NetworkError
        If the number of bits is out of range.
    """
    pins = pin_nodes(bits)
    leg_ohms = 2.0 * r_ohms if two_r_ohms is None else two_r_ohms
    bus = OUTPUT if series_ohms is None else NodeId("sum")
    nodes = [bus, *(NodeId(f"n{i}") for i in range(1, bits))]
    ends = [
        *((pin, node, leg_ohms) for pin, node in zip(pins, nodes, strict=True)),
        *((near, far, r_ohms) for near, far in pairwise(nodes)),
        (nodes[-1], GROUND, leg_ohms),
    ]
    parts = [Resistor(_part(i), a, b, ohms) for i, (a, b, ohms) in enumerate(ends, 1)]
    return _finish(pins, parts, bus, shunt_ohms, series_ohms, node_farads)


def pin_nodes(bits: int, thermometer: int = 0) -> tuple[NodeId, ...]:
    """Return the usual pin nodes: ``bit4`` to ``bit0`` for five bits.

    The pins of thermometer bits are ``step1`` to ``step3`` (or ``step7``).

    Raises
    ------
    NetworkError
        If ``bits`` is not 1 to 8, or ``thermometer`` not 0 or 2 to 3, or above ``bits``.
    """
    if not 1 <= bits <= MOST_BITS:
        raise NetworkError(f"a channel has 1 to {MOST_BITS} bits, not {bits}")
    if thermometer and not 2 <= thermometer <= min(bits, MOST_THERMOMETER):
        raise NetworkError(
            f"2 to {MOST_THERMOMETER} bits, and no more than there are, can be thermometer coded, "
            f"not {thermometer} of {bits}"
        )
    steps = (NodeId(f"step{k}") for k in range(1, 1 << thermometer))
    return (*steps, *(NodeId(f"bit{k}") for k in reversed(range(bits - thermometer))))


def recognise(network: Network) -> Topology:
    """Return the shape of a network, by its structure and not by its names."""
    return analyse(network).topology


def analyse(network: Network) -> Ladder:
    """Return the ladder that a network forms, with its optional shunt and series resistor.

    Capacitors are left aside; resistors in series or in parallel count as one branch.
    """
    bus, between = _around_bus(network)
    shunt = between.pop(frozenset((bus, GROUND)), None)
    series = between.pop(frozenset((bus, network.output)), None)
    between.pop(frozenset((network.output, GROUND)), None)
    distinct = len({*network.pins, network.output, GROUND}) == len(network.pins) + 2
    found = (_star_legs(network, bus, between) or _climb(network, bus, between)) if distinct else None
    if found is None or not network.pins:
        return Ladder(Topology.CUSTOM, bus)
    topology, legs, rungs, terminator = found
    return Ladder(topology, bus, legs, rungs, terminator, shunt, series)


_Between = dict[frozenset[NodeId], Branch]
_Found = tuple[Topology, tuple[Branch, ...], tuple[Branch, ...], Branch | None]


def _around_bus(network: Network) -> tuple[NodeId, _Between]:
    """Return the node where the ladder meets its output side, and the branches by their ends."""
    between = {frozenset((branch.a, branch.b)): branch for branch in reduce(network)}
    beyond = [b.seen_from(network.output).b for ends, b in between.items() if network.output in ends]
    inner = [node for node in beyond if node != GROUND]
    alone = len(inner) == 1 and inner[0] not in network.pins
    return (inner[0] if alone else network.output), between


def _star_legs(network: Network, bus: NodeId, between: _Between) -> _Found | None:
    legs = [
        between[ends].seen_from(pin) for pin in network.pins if (ends := frozenset((pin, bus))) in between
    ]
    topology = Topology.SEGMENTED if network.thermometer else Topology.WEIGHTED
    return (topology, tuple(legs), (), None) if len(legs) == network.n_pins == len(between) else None


def _climb(network: Network, bus: NodeId, between: _Between) -> _Found | None:
    """Walk an R-2R ladder from the bus to its terminator; every branch must lie on the way."""
    if network.thermometer:
        return None
    node, left = bus, dict(between)
    legs: list[Branch] = []
    rungs: list[Branch] = []
    fixed = {*network.pins, network.output, GROUND}
    for pin in network.pins:
        if legs:
            onward = [b for b in left.values() if node in (b.a, b.b) and b.seen_from(node).b not in fixed]
            if len(onward) != 1:
                return None
            rungs.append(left.pop(frozenset((onward[0].a, onward[0].b))).seen_from(node))
            node = rungs[-1].b
        leg = left.pop(frozenset((pin, node)), None)
        if leg is None:
            return None
        legs.append(leg.seen_from(pin))
    terminator = left.pop(frozenset((node, GROUND)), None)
    if terminator is None or left:
        return None
    return Topology.R2R, tuple(legs), tuple(rungs), terminator.seen_from(node)


def _star(
    pins: tuple[NodeId, ...],
    ohms: Sequence[float],
    shunt_ohms: float | None,
    series_ohms: float | None,
    node_farads: float,
) -> Network:
    """Return one resistor from each pin to the node they share, with what is around that node."""
    bus = OUTPUT if series_ohms is None else NodeId("sum")
    legs = [Resistor(_part(i), pin, bus, r) for i, (pin, r) in enumerate(zip(pins, ohms, strict=True), 1)]
    return _finish(pins, legs, bus, shunt_ohms, series_ohms, node_farads)


def _part(number: int) -> PartId:
    return PartId(f"R{number}")


def _finish(
    pins: tuple[NodeId, ...],
    resistors: list[Resistor],
    bus: NodeId,
    shunt_ohms: float | None,
    series_ohms: float | None,
    node_farads: float,
) -> Network:
    """Add the optional parts around the shared node."""
    if shunt_ohms is not None:
        resistors.append(Resistor(PartId("RS"), bus, GROUND, shunt_ohms))
    if series_ohms is not None:
        resistors.append(Resistor(PartId("RO"), bus, OUTPUT, series_ohms))
    capacitors = (Capacitor(PartId("C1"), bus, GROUND, node_farads),) if node_farads else ()
    return Network(pins, tuple(resistors), capacitors)
