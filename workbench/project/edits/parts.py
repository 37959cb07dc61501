"""Edits of single parts: values, adding and removing, one value made of two parts.

Where the channels are linked, every edit here is made to all three.
"""

from collections.abc import Mapping
from dataclasses import replace

from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, PartId, Resistor
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import (
    edit_network,
    find_capacitor,
    find_resistor,
    free_node,
    free_part,
    nodes_of,
    parts_of,
    swap_capacitor,
    swap_resistor,
)
from workbench.project.limits import FARADS, OHMS, TOLERANCE, WATTS

__all__ = [
    "add_capacitor",
    "add_resistor",
    "join",
    "partner",
    "remove_part",
    "set_farads",
    "set_rating",
    "set_tolerance",
    "set_value",
    "set_values",
    "split_in_parallel",
    "split_in_series",
]


def set_value(project: Project, channel: Channel, part: PartId, ohms: float) -> Project:
    """Give a resistor another value. [Ω]"""
    return set_values(project, channel, {part: ohms})


def set_values(project: Project, channel: Channel, values: Mapping[PartId, float]) -> Project:
    """Give several resistors other values at once, by part. [Ω]"""

    def change(network: Network) -> Network:
        for part, ohms in values.items():
            found = find_resistor(network, part)
            network = swap_resistor(network, found, replace(found, ohms=OHMS.check(ohms, part)))
        return network

    return edit_network(project, channel, change)


def set_farads(project: Project, channel: Channel, part: PartId, farads: float) -> Project:
    """Give a capacitor another value. [F]"""

    def change(network: Network) -> Network:
        found = find_capacitor(network, part)
        return swap_capacitor(network, found, replace(found, farads=FARADS.check(farads, part)))

    return edit_network(project, channel, change)


def set_tolerance(project: Project, channel: Channel, part: PartId, tolerance: float) -> Project:
    """Give a resistor another tolerance, as a part of its value. [1]"""

    def change(network: Network) -> Network:
        found = find_resistor(network, part)
        return swap_resistor(network, found, replace(found, tolerance=TOLERANCE.check(tolerance, part)))

    return edit_network(project, channel, change)


def set_rating(project: Project, channel: Channel, part: PartId, watts: float) -> Project:
    """Give a resistor another power rating. [W]"""

    def change(network: Network) -> Network:
        found = find_resistor(network, part)
        return swap_resistor(network, found, replace(found, rating_watts=WATTS.check(watts, part)))

    return edit_network(project, channel, change)


def add_resistor(project: Project, channel: Channel, a: NodeId, b: NodeId, ohms: float) -> Project:
    """Put a resistor between two nodes; it takes the first free name of R1, R2 …

    One of the nodes may be new: something can be connected to it next.
    """

    def change(network: Network) -> Network:
        _check_ends(network, a, b)
        part = free_part(network, "R")
        added = Resistor(part, a, b, OHMS.check(ohms, part))
        return replace(network, resistors=(*network.resistors, added))

    return edit_network(project, channel, change)


def add_capacitor(project: Project, channel: Channel, a: NodeId, b: NodeId, farads: float) -> Project:
    """Put a capacitor between two nodes; it takes the first free name of C1, C2 …"""

    def change(network: Network) -> Network:
        _check_ends(network, a, b)
        part = free_part(network, "C")
        added = Capacitor(part, a, b, FARADS.check(farads, part))
        return replace(network, capacitors=(*network.capacitors, added))

    return edit_network(project, channel, change)


def remove_part(project: Project, channel: Channel, part: PartId) -> Project:
    """Take a resistor or a capacitor out of the network."""

    def change(network: Network) -> Network:
        if part in {capacitor.id for capacitor in network.capacitors}:
            return swap_capacitor(network, find_capacitor(network, part))
        return swap_resistor(network, find_resistor(network, part))

    return edit_network(project, channel, change)


def split_in_series(
    project: Project, channel: Channel, part: PartId, first_ohms: float | None = None
) -> Project:
    """Let two resistors one after the other stand for one; together they keep its value.

    ``first_ohms`` is the value of the one at the ``a`` end, half of the whole if not given.
    """

    def change(network: Network) -> Network:
        whole = find_resistor(network, part)
        first = whole.ohms / 2.0 if first_ohms is None else first_ohms
        if not first < whole.ohms:
            raise EditError(f"a part of {part} is smaller than {part} itself: in series, values add up")
        one, other = _two_names(network, part)
        middle = free_node(network, f"{part}m")
        return swap_resistor(
            network,
            whole,
            replace(whole, id=one, b=middle, ohms=OHMS.check(first, one)),
            replace(whole, id=other, a=middle, ohms=OHMS.check(whole.ohms - first, other)),
        )

    return edit_network(project, channel, change)


def split_in_parallel(
    project: Project, channel: Channel, part: PartId, first_ohms: float | None = None
) -> Project:
    """Let two resistors side by side stand for one; together they keep its value.

    ``first_ohms`` is the value of the first, twice the whole if not given.
    """

    def change(network: Network) -> Network:
        whole = find_resistor(network, part)
        first = whole.ohms * 2.0 if first_ohms is None else first_ohms
        if not first > whole.ohms:
            raise EditError(f"a part of {part} is larger than {part} itself: side by side, resistance falls")
        one, other = _two_names(network, part)
        rest = 1.0 / (1.0 / whole.ohms - 1.0 / first)
        return swap_resistor(
            network,
            whole,
            replace(whole, id=one, ohms=OHMS.check(first, one)),
            replace(whole, id=other, ohms=OHMS.check(rest, other)),
        )

    return edit_network(project, channel, change)


def join(project: Project, channel: Channel, part: PartId) -> Project:
    """Put one resistor in the place of this one and its partner, with the value of both."""

    def change(network: Network) -> Network:
        one = find_resistor(network, part)
        other = partner(network, one)
        if other is None:
            raise EditError(f"{part} has no partner: nothing lies side by side with it or follows it alone")
        if network.resistors.index(other) < network.resistors.index(one):
            one, other = other, one
        whole = _joined(network, one, other)
        return swap_resistor(swap_resistor(network, other), one, whole)

    return edit_network(project, channel, change)


def partner(network: Network, resistor: Resistor) -> Resistor | None:
    """Return the resistor that with this one stands for one value, if there is one.

    It lies side by side with it, or follows it over a node where nothing else is connected.
    """
    ends = {resistor.a, resistor.b}
    others = [other for other in network.resistors if other.id != resistor.id]
    beside = [other for other in others if {other.a, other.b} == ends]
    following = [other for other in others if _shared_inner_node(network, resistor, other) is not None]
    return next(iter((*beside, *following)), None)


def _joined(network: Network, one: Resistor, other: Resistor) -> Resistor:
    middle = _shared_inner_node(network, one, other)
    tolerance = max(one.tolerance, other.tolerance)
    rating = min(one.rating_watts, other.rating_watts)
    stem = one.id[:-1] if f"{one.id[:-1]}a {one.id[:-1]}b" == f"{one.id} {other.id}" else ""
    name = PartId(stem) if stem and stem not in {part.id for part in parts_of(network)} else one.id
    if middle is None:
        ohms = 1.0 / (1.0 / one.ohms + 1.0 / other.ohms)
        return Resistor(name, one.a, one.b, ohms, tolerance, rating)
    a = one.a if one.b == middle else one.b
    b = other.b if other.a == middle else other.a
    return Resistor(name, a, b, one.ohms + other.ohms, tolerance, rating)


def _shared_inner_node(network: Network, one: Resistor, other: Resistor) -> NodeId | None:
    """Return the node that the two share with no other part, pin or output."""
    shared = {one.a, one.b} & {other.a, other.b}
    if len(shared) != 1:
        return None
    (node,) = shared
    crowded = sum(node in (part.a, part.b) for part in parts_of(network)) > 2
    return None if crowded or node in (*network.pins, network.output, GROUND) else node


def _two_names(network: Network, part: PartId) -> tuple[PartId, PartId]:
    """Return names for two parts in the place of one: R4a and R4b for R4."""
    taken = {other.id for other in parts_of(network)}
    for stem in (part, *(f"{part}{n}" for n in range(1, len(taken) + 2))):
        pair = PartId(f"{stem}a"), PartId(f"{stem}b")
        if not taken & set(pair):
            return pair
    raise EditError(f"there is no free name for the parts of {part}")


def _check_ends(network: Network, a: NodeId, b: NodeId) -> None:
    if a == b:
        raise EditError(f"both ends are on the node {a}: choose two different nodes")
    if not {a, b} & {*nodes_of(network)}:
        raise EditError(f"neither {a} nor {b} is a node of this network: start at one that is")
