"""A network with other legs: old parts out, new ones in their place."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from workbench.circuit.branches import Branch
from workbench.circuit.fit.drawer import Arrangement, Leg
from workbench.circuit.network import Network, NodeId, PartId, Resistor

__all__ = ["with_branches"]


def with_branches(network: Network, legs: Mapping[Branch, Leg]) -> Network:
    """Return a network in which some branches are made of other parts.

    Parameters
    ----------
    network : Network
        Where the branches are.
    legs : mapping of Branch to Leg
        What each branch is to be made of. Its first part keeps the name, place and rating of the
        branch's first; the others are named after it.

    Returns
    -------
    Network
        Nodes inside the old branches are gone with their parts.
    """
    old = {part.id: part for part in network.resistors}
    first = {branch.parts[0]: (branch, leg) for branch, leg in legs.items()}
    gone = {part for branch in legs for part in branch.parts}
    taken = {*old, *(part.id for part in network.capacitors)}
    nodes = {node for part in network.resistors for node in (part.a, part.b)}
    resistors: list[Resistor] = []
    for part in network.resistors:
        if part.id in first:
            branch, leg = first[part.id]
            resistors += _parts(part, branch, leg, (taken - gone) | {part.id}, nodes)
        elif part.id not in gone:
            resistors.append(part)
    return replace(network, resistors=tuple(resistors))


def _parts(
    model: Resistor, branch: Branch, leg: Leg, taken: set[PartId], nodes: set[NodeId]
) -> Iterator[Resistor]:
    """Yield the parts of a leg between the ends of a branch."""
    inner = [_new(f"{branch.a}.{letter}", nodes) for letter in "xy"]
    names = [model.id, *(_new(f"{model.id}{letter}", taken) for letter in "bc")]
    ends = _ends(leg.arrangement, branch.a, branch.b, *(NodeId(node) for node in inner))
    for name, part, (a, b) in zip(names, leg.parts, ends, strict=False):
        yield replace(model, id=PartId(name), a=a, b=b, ohms=part.ohms, tolerance=part.tolerance)


def _ends(kind: Arrangement, a: NodeId, b: NodeId, x: NodeId, y: NodeId) -> tuple[tuple[NodeId, NodeId], ...]:
    """Return between which nodes the parts of an arrangement stand, in the order of its letters."""
    return {
        Arrangement.SINGLE: ((a, b),),
        Arrangement.SERIES: ((a, x), (x, b)),
        Arrangement.PARALLEL: ((a, b), (a, b)),
        Arrangement.SERIES_OF_THREE: ((a, x), (x, y), (y, b)),
        Arrangement.PARALLEL_OF_THREE: ((a, b), (a, b), (a, b)),
        Arrangement.SERIES_WITH_PAIR: ((a, x), (x, b), (x, b)),
        Arrangement.PARALLEL_WITH_PAIR: ((a, b), (a, x), (x, b)),
    }[kind]


def _new(name: str, taken: set[PartId] | set[NodeId]) -> str:
    """Return the name, or one like it that is still free."""
    free, number = name, 2
    while free in taken:
        free, number = f"{name}{number}", number + 1
    return free
