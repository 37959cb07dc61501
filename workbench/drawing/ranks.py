"""Where nodes lie from left to right: pins first, then by distance to the output, which is last.

Two nodes that share a part never get the same rank, except along the spine: the column of
nodes of an R-2R ladder, which hang above each other with their rungs between them.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from workbench.circuit.network import GROUND, Network, NodeId
from workbench.drawing.runs import Run

__all__ = ["Spine", "Tail", "find_spine", "find_tail", "rank_nodes"]


@dataclass(frozen=True, slots=True)
class Spine:
    """Nodes that hang above each other, top first, and the runs between them."""

    nodes: tuple[NodeId, ...] = ()
    rungs: tuple[Run, ...] = ()
    """``rungs[i]`` leads from ``nodes[i]`` down to ``nodes[i + 1]``."""


@dataclass(frozen=True, slots=True)
class Tail:
    """The runs that only lead to the output, drawn in the row that leaves to the connector."""

    root: NodeId
    """Where the output row begins."""
    runs: tuple[Run, ...] = ()
    """From ``root`` to the output, left to right."""


def legs_by_node(network: Network, runs: Iterable[Run]) -> dict[NodeId, list[int]]:
    """Return which pins, by number, lead to each node that is no pin, through one run."""
    number = {pin: index for index, pin in reversed(list(enumerate(network.pins)))}
    legs: dict[NodeId, list[int]] = {}
    for run in runs:
        for near, far in (run.nodes, run.nodes[::-1]):
            if near in number and far not in number and far != GROUND:
                legs.setdefault(far, []).append(number[near])
    return {node: sorted(here) for node, here in legs.items()}


def find_spine(network: Network, runs: tuple[Run, ...]) -> Spine:
    """Return the longest column of nodes whose legs follow each other and that are joined in turn."""
    legs = legs_by_node(network, runs)
    order = sorted(legs, key=lambda node: legs[node][0])
    best, chain = Spine(), Spine()
    for upper, lower in pairwise(order):
        rung = next((run for run in runs if set(run.nodes) == {upper, lower}), None)
        if rung is None or legs[upper][-1] >= legs[lower][0]:
            chain = Spine()
            continue
        nodes = (*chain.nodes, lower) if chain.nodes else (upper, lower)
        chain = Spine(nodes, (*chain.rungs, rung.seen_from(upper)))
        best = max(best, chain, key=lambda spine: len(spine.nodes))
    return best


def find_tail(network: Network, runs: tuple[Run, ...], spine: Spine) -> Tail:
    """Follow the output back to the node where the network begins to branch."""
    node, found = network.output, list[Run]()
    stop = {*network.pins, *spine.nodes, GROUND}
    while node not in stop:
        here = [run for run in runs if node in run.nodes and GROUND not in run.nodes and run not in found]
        if len(here) != 1 or (far := here[0].other(node)) in {*network.pins, node}:
            break
        found.append(here[0])
        node = far
    return Tail(node, tuple(run.seen_from(run.other(end)) for run, end in _with_ends(network.output, found)))


def _with_ends(output: NodeId, found: list[Run]) -> list[tuple[Run, NodeId]]:
    """Return the runs from left to right, each with its right end."""
    ends, node = [], output
    for run in found:
        ends.append((run, node))
        node = run.other(node)
    return ends[::-1]


def rank_nodes(network: Network, runs: tuple[Run, ...], spine: Spine) -> dict[NodeId, int]:
    """Return the rank of every node that a run ends at, and of the output; pins are at 0.

    Notes
    -----
    Nodes are taken far ones first, so an edit near the output leaves the rest where it was. Each
    node comes one rank right of the rightmost neighbour taken before it.
    """
    near = _neighbours(network, runs, spine)
    away = _distances(near, _head(network.output, spine))
    first = {node: place for place, node in enumerate(near)}
    pins = {_head(pin, spine) for pin in network.pins}
    rank = dict.fromkeys(pins, 0)
    unreached = len(near)
    for node in sorted(near, key=lambda node: (-away.get(node, unreached), first[node])):
        if node not in rank:
            rank[node] = 1 + max((rank.get(other, 0) for other in near[node]), default=0)
    output = _head(network.output, spine)
    if output not in pins:
        rank[output] = max(rank.values(), default=0) if near.get(output) else max(rank.values(), default=1)
    return {node: rank[_head(node, spine)] for node in (*rank, *spine.nodes)}


def _head(node: NodeId, spine: Spine) -> NodeId:
    """Return the node that stands for a whole spine, or the node itself."""
    return spine.nodes[0] if node in spine.nodes else node


def _neighbours(network: Network, runs: tuple[Run, ...], spine: Spine) -> dict[NodeId, list[NodeId]]:
    near: dict[NodeId, list[NodeId]] = {_head(node, spine): [] for node in (*network.pins, network.output)}
    for run in runs:
        start, end = (_head(node, spine) for node in run.nodes)
        for node, other in ((start, end), (end, start)):
            if node != GROUND:
                near.setdefault(node, [])
                if other not in (GROUND, node):
                    near[node].append(other)
    return near


def _distances(near: dict[NodeId, list[NodeId]], output: NodeId) -> dict[NodeId, int]:
    """Return how many runs lie between each node and the output, for those it is joined to."""
    away, edge = {output: 0}, [output]
    while edge:
        edge = list(dict.fromkeys(n for node in edge for n in near[node] if n not in away))
        away.update(dict.fromkeys(edge, 1 + max(away.values())))
    return away
