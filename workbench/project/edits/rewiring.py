"""Moving parts about in a network: the small steps that edits of ladders are made of."""

import re
from collections.abc import Mapping
from dataclasses import replace

from workbench.circuit.ladders import pin_nodes
from workbench.circuit.network import GROUND, Network, NodeId, PartId, Resistor
from workbench.project.edits.networks import nodes_of, parts_of

__all__ = ["inserted_after", "renamed", "tidy_pins", "without"]


def inserted_after(network: Network, parts: tuple[PartId, ...], added: Resistor) -> Network:
    """Return the network with a resistor in the list behind the last of some parts."""
    place = max(i for i, part in enumerate(network.resistors) if part.id in parts) + 1
    return replace(network, resistors=(*network.resistors[:place], added, *network.resistors[place:]))


def without(network: Network, parts: set[PartId]) -> Network:
    """Return the network without some resistors, and without capacitors left on no other part."""
    resistors = tuple(part for part in network.resistors if part.id not in parts)
    left = {node for part in resistors for node in (part.a, part.b)} | {*network.pins, network.output, GROUND}
    capacitors = tuple(part for part in network.capacitors if {part.a, part.b} <= left)
    return replace(network, resistors=resistors, capacitors=capacitors)


def renamed(
    network: Network, names: Mapping[NodeId, NodeId], parts: tuple[PartId, ...] | None = None
) -> Network:
    """Return the network with the ends of all parts, or of some, moved to other nodes."""
    chosen = {part.id for part in parts_of(network)} if parts is None else set(parts)
    return replace(
        network,
        resistors=tuple(
            replace(part, a=names.get(part.a, part.a), b=names.get(part.b, part.b))
            if part.id in chosen
            else part
            for part in network.resistors
        ),
        capacitors=tuple(
            replace(part, a=names.get(part.a, part.a), b=names.get(part.b, part.b))
            if part.id in chosen
            else part
            for part in network.capacitors
        ),
    )


def tidy_pins(network: Network) -> Network:
    """Name the pins' nodes bit4 … bit0 again, unless a person's own names are among them."""
    usual = pin_nodes(network.bits, network.thermometer)
    inner = nodes_of(network) - set(network.pins)
    if any(not re.fullmatch(r"(bit|step)\d*", pin) for pin in network.pins) or inner & set(usual):
        return network
    return replace(renamed(network, dict(zip(network.pins, usual, strict=True))), pins=usual)
