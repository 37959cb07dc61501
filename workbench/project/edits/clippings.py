"""Parts and whole legs cut out of a network, and put into the same or another one.

Where the channels are linked, every edit here is made to all three.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from workbench.circuit.ladders import MOST_BITS
from workbench.circuit.network import GROUND, OUTPUT, Capacitor, Network, NodeId, PartId, Resistor
from workbench.errors import EditError
from workbench.project.document import Channel, Project, Wiring
from workbench.project.edits.networks import edit_network, free_part, new_node, nodes_of, parts_of, put_part
from workbench.project.edits.rewiring import tidy_pins

__all__ = ["Clipping", "clip", "leg_of", "paste", "pin_of", "remove_leg"]


@dataclass(frozen=True, slots=True)
class Clipping:
    """Some parts of a network, with what their ends were on."""

    resistors: tuple[Resistor, ...] = ()
    capacitors: tuple[Capacitor, ...] = ()
    pins: tuple[NodeId, ...] = ()
    """Nodes that are pins of their own: each makes a new bit where it is put in."""
    output: NodeId = OUTPUT
    """The node that was the output."""

    @property
    def parts(self) -> tuple[Resistor | Capacitor, ...]:
        """Return the resistors, then the capacitors."""
        parts: list[Resistor | Capacitor] = [*self.resistors, *self.capacitors]
        return tuple(parts)


def leg_of(network: Network, pin: int) -> tuple[PartId, ...]:
    """Return the parts that serve one pin alone, most significant first being 0.

    They are those on the pin's node and on every node that current of no other pin passes on its
    way to the output or to ground.
    """
    start = network.pins[pin]
    ends = {*network.pins, network.output, GROUND}
    own = _reached(network, start, ends)
    for other in network.pins:
        if other != start:
            own = own - _reached(network, other, ends)
    return tuple(part.id for part in parts_of(network) if {part.a, part.b} & (own | {start}))


def pin_of(network: Network, part: PartId) -> int | None:
    """Return the pin whose leg a part belongs to; none for a part that several share."""
    return next((pin for pin in range(network.n_pins) if part in leg_of(network, pin)), None)


def clip(network: Network, parts: Iterable[PartId], pins: Iterable[NodeId] = ()) -> Clipping:
    """Return some parts of a network, with pins of their own where whole legs are meant."""
    chosen = set(parts)
    return Clipping(
        tuple(part for part in network.resistors if part.id in chosen),
        tuple(part for part in network.capacitors if part.id in chosen),
        tuple(pins),
        network.output,
    )


def paste(project: Project, channel: Channel, clipping: Clipping) -> Project:
    """Put a clipping into a network.

    Ground goes to ground, the output to the output, and every other node to the one of its name.
    A node that is not there is new. A pin of the clipping makes a new least significant bit with
    nodes of its own, so a leg that is put in twice is there twice.

    Raises
    ------
    EditError
        If there is nothing to put in, or too many bits or parts would come about.
    """
    if not clipping.parts and not clipping.pins:
        raise EditError("there are no parts to put in: copy some first")

    def change(network: Network) -> Network:
        if network.bits + len(clipping.pins) > MOST_BITS:
            raise EditError(f"a channel has at most {MOST_BITS} bits: take one away first")
        network = _put(network, clipping)
        return tidy_pins(network) if clipping.pins else network

    return edit_network(project, channel, change)


def remove_leg(project: Project, channel: Channel, pin: int) -> Project:
    """Take a pin and the parts that serve it alone out of a network; one bit always stays."""
    network = project.channels[channel]
    if network.bits <= 1:
        raise EditError("a channel needs at least one bit: this is the last one")
    if not 0 <= pin < network.n_pins:
        raise EditError(f"{channel.value} has {network.n_pins} pins: there is none with the number {pin + 1}")
    if pin < network.n_thermometer_pins:
        raise EditError("the pins of the thermometer bits go together: make a new ladder instead")

    def change(network: Network) -> Network:
        gone = set(leg_of(network, pin))
        bare = replace(
            network,
            pins=network.pins[:pin] + network.pins[pin + 1 :],
            resistors=tuple(part for part in network.resistors if part.id not in gone),
            capacitors=tuple(part for part in network.capacitors if part.id not in gone),
        )
        return tidy_pins(bare)

    edited = edit_network(project, channel, change)
    channels = tuple(Channel) if project.linked else (channel,)
    return replace(edited, wiring=_without_pin(project.wiring, channels, pin))


def _put(network: Network, clipping: Clipping) -> Network:
    names = _names(network, clipping)
    network = replace(network, pins=(*network.pins, *(names[pin] for pin in clipping.pins)))
    for part in clipping.parts:
        letter = "R" if isinstance(part, Resistor) else "C"
        taken = {other.id for other in parts_of(network)}
        name = free_part(network, letter) if part.id in taken else part.id
        network = put_part(network, replace(part, id=name, a=names[part.a], b=names[part.b]))
    return network


def _names(network: Network, clipping: Clipping) -> dict[NodeId, NodeId]:
    """Return which node of a network each node of a clipping becomes."""
    taken = {*nodes_of(network), GROUND}
    names = {clipping.output: network.output, GROUND: GROUND}
    ends = [node for part in clipping.parts for node in (part.a, part.b)]
    for node in dict.fromkeys((*clipping.pins, *ends)):
        # Inside a leg several of its own parts meet: that node is the leg's own, as its pin is.
        own = node in clipping.pins or (bool(clipping.pins) and ends.count(node) > 1)
        if node not in names:
            stem = "bit" if node in clipping.pins else "n"
            names[node] = new_node(taken, stem) if own and node in taken else node
            taken.add(names[node])
    return names


def _reached(network: Network, start: NodeId, ends: set[NodeId]) -> set[NodeId]:
    """Return the nodes that parts lead to from a node without passing an end."""
    found: set[NodeId] = set()
    edge = [start]
    while edge:
        node = edge.pop()
        for part in parts_of(network):
            if node in (part.a, part.b):
                far = part.b if part.a == node else part.a
                if far not in ends and far not in found:
                    found.add(far)
                    edge.append(far)
    return found


def _without_pin(wiring: Wiring, channels: tuple[Channel, ...], pin: int) -> Wiring:
    red, green, blue = (
        wiring[c][:pin] + wiring[c][pin + 1 :] if c in channels else wiring[c] for c in Channel
    )
    return Wiring(red, green, blue, wiring.h, wiring.v)
