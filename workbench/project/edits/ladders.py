"""Edits of a channel's ladder: bits, the parts around the shared node, all values at once.

Where the channels are linked, every edit here is made to all three.
"""

from dataclasses import replace

from workbench.circuit.branches import Branch
from workbench.circuit.ladders import MOST_BITS, Ladder, Topology, analyse
from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, PartId, Resistor
from workbench.circuit.series import Series, nearest
from workbench.circuit.wish import LadderWish, make_ladder
from workbench.errors import EditError, NetworkError
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import edit_network, free_node, free_part, parts_of, put_networks
from workbench.project.edits.rewiring import inserted_after, renamed, tidy_pins, without
from workbench.project.limits import FARADS, OHMS

__all__ = [
    "add_bit",
    "remove_bit",
    "set_capacitor",
    "set_ladders",
    "set_output_series",
    "set_shunt",
    "use_series_values",
]


def add_bit(project: Project, channel: Channel) -> Project:
    """Add a least significant bit to a ladder.

    A weighted or segmented ladder gets a leg of twice the last one's value; an R-2R ladder one more rung and
    leg like its last ones.
    """

    def change(network: Network) -> Network:
        ladder = _ladder(network, "added to")
        if network.bits >= MOST_BITS:
            raise EditError(f"a channel has at most {MOST_BITS} bits: this one has them all")
        pin = free_node(network, "bit")
        last = ladder.legs[-1]
        if ladder.topology is Topology.R2R:
            network = _longer_r2r(network, ladder, pin)
        else:
            # The legs after the equal ones begin at half of their weight.
            leg = Resistor(free_part(network, "R"), pin, last.b, OHMS.check(2.0 * last.ohms, "the new leg"))
            network = inserted_after(network, last.parts, leg)
        return tidy_pins(replace(network, pins=(*network.pins, pin)))

    return edit_network(project, channel, change)


def remove_bit(project: Project, channel: Channel) -> Project:
    """Take the least significant bit off a ladder; one bit always stays."""

    def change(network: Network) -> Network:
        ladder = _ladder(network, "removed from")
        if network.bits <= 1:
            raise EditError("a channel needs at least one bit: this is the last one")
        if network.bits == network.thermometer:
            raise EditError(
                f"only the {network.thermometer} bits of the equal legs are left, which come and go "
                "together: make a new ladder instead"
            )
        gone = set(ladder.legs[-1].parts)
        if ladder.rungs and ladder.terminator is not None:
            gone |= set(ladder.rungs[-1].parts)
            network = renamed(network, {ladder.terminator.a: ladder.rungs[-1].a}, ladder.terminator.parts)
        kept = replace(network, pins=network.pins[:-1])
        return tidy_pins(without(kept, gone))

    return edit_network(project, channel, change)


def set_shunt(project: Project, channel: Channel, ohms: float | None) -> Project:
    """Put a resistor from the ladder's shared node to ground, change it, or take it away. [Ω]"""

    def change(network: Network) -> Network:
        ladder = analyse(network)
        return _set_between(network, ladder.shunt, ladder.bus, GROUND, PartId("RS"), ohms)

    return edit_network(project, channel, change)


def set_output_series(project: Project, channel: Channel, ohms: float | None) -> Project:
    """Put a resistor between the ladder's shared node and the output, change it, or take it away. [Ω]"""

    def change(network: Network) -> Network:
        ladder = analyse(network)
        if network.output in network.pins:
            raise EditError("a pin stands on the output itself: give it a resistor first")
        if ladder.series is not None and ohms is None:
            bare = without(network, set(ladder.series.parts))
            return renamed(bare, {ladder.bus: network.output})
        if ladder.series is None and ohms is not None:
            bus = free_node(network, "sum")
            network = renamed(network, {network.output: bus})
            return _set_between(network, None, bus, network.output, PartId("RO"), ohms)
        return _set_between(network, ladder.series, ladder.bus, network.output, PartId("RO"), ohms)

    return edit_network(project, channel, change)


def set_capacitor(project: Project, channel: Channel, farads: float | None) -> Project:
    """Put a capacitor from the ladder's shared node to ground, change it, or take it away. [F]"""

    def change(network: Network) -> Network:
        bus = analyse(network).bus
        here = {frozenset((bus, GROUND))}
        others = tuple(c for c in network.capacitors if frozenset((c.a, c.b)) not in here)
        if farads is None:
            return replace(network, capacitors=others)
        found = [c for c in network.capacitors if c not in others]
        part = found[0].id if found else free_part(network, "C")
        return replace(
            network, capacitors=(Capacitor(part, bus, GROUND, FARADS.check(farads, part)), *others)
        )

    return edit_network(project, channel, change)


def set_ladders(project: Project, wishes: tuple[LadderWish, LadderWish, LadderWish]) -> Project:
    """Put new ladders in all channels: red, green, blue.

    The capacitors of the shared node stay, as they are the board's; shunts and series resistors that
    were there go. Channels stay linked if their wishes are equal.
    """
    networks = {}
    for channel, wish in zip(Channel, wishes, strict=True):
        kept = _at_node(project.channels[channel])
        made = _made(project, replace(wish, node_farads=sum(part.farads for part in kept)))
        networks[channel] = _with_capacitors(made, kept)
    return replace(put_networks(project, networks), linked=project.linked and len(set(wishes)) == 1)


def use_series_values(project: Project, channel: Channel, series: Series) -> Project:
    """Give every resistor of the channel the nearest value of a series."""

    def change(network: Network) -> Network:
        near = (replace(r, ohms=OHMS.check(nearest(r.ohms, series), r.id)) for r in network.resistors)
        return replace(network, resistors=tuple(near))

    return edit_network(project, channel, change)


def _made(project: Project, wish: LadderWish) -> Network:
    try:
        return make_ladder(wish, project.driver, project.load)
    except NetworkError as error:
        raise EditError(str(error)) from error


def _at_node(network: Network) -> tuple[Capacitor, ...]:
    """Return the capacitors between the shared node and ground."""
    ends = {analyse(network).bus, GROUND}
    return tuple(part for part in network.capacitors if {part.a, part.b} == ends)


def _with_capacitors(network: Network, kept: tuple[Capacitor, ...]) -> Network:
    """Put several capacitors of the shared node in the place of the one that stands for all of them."""
    if len(kept) < 2:
        return network
    (whole,) = network.capacitors
    taken = {part.id for part in network.resistors}
    parts = tuple(replace(part, a=whole.a, b=whole.b) for part in kept if part.id not in taken)
    return replace(network, capacitors=parts) if len(parts) == len(kept) else network


def _ladder(network: Network, verb: str) -> Ladder:
    ladder = analyse(network)
    if ladder.topology is Topology.CUSTOM:
        raise EditError(f"bits can be {verb} ladders only: make this network one first")
    return ladder


def _longer_r2r(network: Network, ladder: Ladder, pin: NodeId) -> Network:
    """Put a rung and a leg between the last node and the terminator."""
    if ladder.terminator is None:
        return network
    last, end = ladder.legs[-1], free_node(network, f"n{network.bits}")
    network = renamed(network, {ladder.terminator.a: end}, ladder.terminator.parts)
    leg = Resistor(free_part(network, "R"), pin, end, last.ohms)
    network = inserted_after(network, last.parts, leg)
    rung = Resistor(free_part(network, "R"), last.b, end, ladder.rungs[-1].ohms)
    return inserted_after(network, ladder.rungs[-1].parts, rung)


def _set_between(
    network: Network, branch: Branch | None, a: NodeId, b: NodeId, name: PartId, ohms: float | None
) -> Network:
    """Let one resistor of that value, or nothing, be the branch between two nodes."""
    if branch is not None and len(branch.parts) == 1 and ohms is not None:
        return replace(
            network,
            resistors=tuple(
                replace(part, ohms=OHMS.check(ohms, part.id)) if part.id in branch.parts else part
                for part in network.resistors
            ),
        )
    network = network if branch is None else without(network, set(branch.parts))
    if ohms is None:
        return network
    free = name not in {part.id for part in parts_of(network)}
    part = name if free else free_part(network, "R")
    return replace(network, resistors=(*network.resistors, Resistor(part, a, b, OHMS.check(ohms, part))))
