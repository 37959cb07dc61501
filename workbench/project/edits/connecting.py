"""Edits of how parts hang together: beside and behind each other, their ends, the names of nodes.

Where the channels are linked, every edit here is made to all three.
"""

from dataclasses import replace
from enum import Enum

from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, PartId, Resistor
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import (
    edit_network,
    find_part,
    free_part,
    new_node,
    nodes_of,
    parts_of,
    put_part,
)
from workbench.project.edits.rewiring import renamed
from workbench.project.limits import FARADS, OHMS, check_name

__all__ = [
    "FIRST_FARADS",
    "FIRST_OHMS",
    "End",
    "PartKind",
    "add_in_parallel",
    "add_in_series",
    "add_part",
    "duplicate",
    "move_end",
    "rename_node",
    "rename_part",
]

FIRST_OHMS = 1e3
"""First value of a resistor that is put in; our own choice, made to be typed over. [Ω]"""
FIRST_FARADS = 30e-12
"""First value of a capacitor that is put in: what a short board and its pins bring. [F]"""


class PartKind(Enum):
    """What can be put between two nodes; the value is the word for it."""

    RESISTOR = "resistor"
    CAPACITOR = "capacitor"

    @property
    def letter(self) -> str:
        """Return the letter its names begin with."""
        return "R" if self is PartKind.RESISTOR else "C"


class End(Enum):
    """One of the two ends of a part."""

    A = "a"
    B = "b"

    @property
    def other(self) -> "End":
        """Return the far end."""
        return End.B if self is End.A else End.A

    def node(self, part: Resistor | Capacitor) -> NodeId:
        """Return the node that this end of a part is on."""
        return part.a if self is End.A else part.b

    def moved(self, part: Resistor | Capacitor, node: NodeId) -> Resistor | Capacitor:
        """Return a part with this end on another node."""
        return replace(part, a=node) if self is End.A else replace(part, b=node)


def add_part(
    project: Project,
    channel: Channel,
    kind: PartKind,
    a: NodeId,
    b: NodeId | None = None,
    *,
    part: PartId | None = None,
    value: float | None = None,
) -> Project:
    """Put a part between two nodes.

    Parameters
    ----------
    project : Project
        The project.
    channel : Channel
        Whose network.
    kind : PartKind
        Resistor or capacitor.
    a, b : NodeId
        The nodes; one of them may be new. Without ``b`` the far end gets a new node of its own,
        so that something can be connected to it next.
    part : PartId, optional
        Its name; the first free one of R1, R2 … or C1, C2 … if not given.
    value : float, optional
        Resistance or capacitance; a first value to be typed over if not given. [Ω] or [F]

    Raises
    ------
    EditError
        If both ends are on one node, neither node is there, the name is taken or the value out of range.
    """

    def change(network: Network) -> Network:
        far = new_node(nodes_of(network)) if b is None else _checked_node(b)
        if a == far:
            raise EditError(f"both ends are on the node {a}: choose two different nodes")
        if not {a, far} & {*nodes_of(network), GROUND}:
            raise EditError(f"neither {a} nor {far} is a node of this network: start at one that is")
        name = free_part(network, kind.letter) if part is None else _free_name(network, part)
        return put_part(network, _made(kind, name, _checked_node(a), far, value))

    return edit_network(project, channel, change)


def add_in_series(
    project: Project, channel: Channel, part: PartId, kind: PartKind, end: End = End.B
) -> Project:
    """Put a part between one end of another and the node that end was on; a new node joins the two."""

    def change(network: Network) -> Network:
        old = find_part(network, part)
        middle, name = new_node(nodes_of(network)), free_part(network, kind.letter)
        moved = end.moved(old, middle)
        added = _made(kind, name, middle, end.node(old), _like(old, kind))
        return put_part(put_part(network, moved), added, after=part)

    return edit_network(project, channel, change)


def add_in_parallel(project: Project, channel: Channel, part: PartId, kind: PartKind) -> Project:
    """Put a part between the two nodes of another."""

    def change(network: Network) -> Network:
        old = find_part(network, part)
        added = _made(kind, free_part(network, kind.letter), old.a, old.b, _like(old, kind))
        return put_part(network, added, after=part)

    return edit_network(project, channel, change)


def duplicate(project: Project, channel: Channel, part: PartId) -> Project:
    """Put a part like another one beside it: same nodes, value, tolerance and rating."""

    def change(network: Network) -> Network:
        old = find_part(network, part)
        letter = "R" if isinstance(old, Resistor) else "C"
        return put_part(network, replace(old, id=free_part(network, letter)), after=part)

    return edit_network(project, channel, change)


def move_end(
    project: Project, channel: Channel, part: PartId, end: End, node: NodeId | None = None
) -> Project:
    """Put one end of a part on another node; without one, on a new node of its own."""

    def change(network: Network) -> Network:
        old = find_part(network, part)
        target = new_node(nodes_of(network)) if node is None else _checked_node(node)
        if target == end.other.node(old):
            raise EditError(f"the other end of {part} is on {target} already: choose another node")
        return put_part(network, end.moved(old, target))

    return edit_network(project, channel, change)


def rename_node(project: Project, channel: Channel, node: NodeId, name: str) -> Project:
    """Give a node another name; a name that is in use is refused, since it would join two nodes."""
    wanted = _checked_node(NodeId(name))

    def change(network: Network) -> Network:
        if node == GROUND:
            raise EditError(f"the node {GROUND} is 0 V and keeps its name")
        if wanted == node:
            return network
        if wanted in {*nodes_of(network), GROUND}:
            raise EditError(f"there is a node {wanted} already: two nodes cannot share a name")
        pins = tuple(wanted if pin == node else pin for pin in network.pins)
        output = wanted if network.output == node else network.output
        return replace(renamed(network, {node: wanted}), pins=pins, output=output)

    return edit_network(project, channel, change)


def rename_part(project: Project, channel: Channel, part: PartId, name: str) -> Project:
    """Give a part another name; no two parts of a channel have the same."""

    def change(network: Network) -> Network:
        old = find_part(network, part)
        return network if name.strip() == part else put_part(network, old, name=_free_name(network, name))

    return edit_network(project, channel, change)


def _made(kind: PartKind, name: PartId, a: NodeId, b: NodeId, value: float | None) -> Resistor | Capacitor:
    if kind is PartKind.RESISTOR:
        return Resistor(name, a, b, OHMS.check(FIRST_OHMS if value is None else value, name))
    return Capacitor(name, a, b, FARADS.check(FIRST_FARADS if value is None else value, name))


def _like(old: Resistor | Capacitor, kind: PartKind) -> float | None:
    """Return the value of a part for another one of its kind; none for one of the other kind."""
    if kind is PartKind.RESISTOR:
        return old.ohms if isinstance(old, Resistor) else None
    return old.farads if isinstance(old, Capacitor) else None


def _checked_node(node: NodeId) -> NodeId:
    return NodeId(check_name(node.strip(), "the node's name"))


def _free_name(network: Network, name: str) -> PartId:
    wanted = PartId(check_name(name.strip(), "the part's name"))
    if wanted in {part.id for part in parts_of(network)}:
        raise EditError(f"there is a part {wanted} already: choose another name")
    return wanted
