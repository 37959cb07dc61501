"""Where nodes lie from left to right: pins first, then by distance to the output, which is last.

Two nodes that share a part never get the same rank, except along a spine: a column of nodes which
hang above each other with their rungs between them.
"""

from dataclasses import dataclass

from workbench.circuit.network import GROUND, Network, NodeId
from workbench.drawing.runs import Run
from workbench.drawing.spines import Spine, heads

__all__ = ["Tail", "find_tail", "rank_nodes"]


@dataclass(frozen=True, slots=True)
class Tail:
    """The runs that only lead to the output, drawn in the row that leaves to the connector."""

    root: NodeId
    """Where the output row begins."""
    runs: tuple[Run, ...] = ()
    """From ``root`` to the output, left to right."""


def find_tail(network: Network, runs: tuple[Run, ...], spines: tuple[Spine, ...]) -> Tail:
    """Follow the output back to the node where the network begins to branch."""
    node, found = network.output, list[Run]()
    stop = {*network.pins, *heads(spines), GROUND}
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


def rank_nodes(network: Network, runs: tuple[Run, ...], spines: tuple[Spine, ...]) -> dict[NodeId, int]:
    """Return the rank of every node that a run ends at, and of the output; pins are at 0.

    Notes
    -----
    Nodes are taken far ones first, so an edit near the output leaves the rest where it was. Each
    node comes one rank right of the rightmost neighbour taken before it.
    """
    head = heads(spines)
    near = _neighbours(network, runs, head)
    out = head.get(network.output, network.output)
    away = _distances(near, out)
    first = {node: place for place, node in enumerate(near)}
    pins = {head.get(pin, pin) for pin in network.pins}
    rank = dict.fromkeys(pins, 0)
    unreached = len(near)
    for node in sorted(near, key=lambda node: (-away.get(node, unreached), first[node])):
        if node not in rank:
            rank[node] = 1 + max((rank.get(other, 0) for other in near[node]), default=0)
    if out not in pins:
        rank[out] = max(rank.values(), default=0) if near.get(out) else max(rank.values(), default=1)
    return {node: rank[head.get(node, node)] for node in (*rank, *head)}


def _neighbours(
    network: Network, runs: tuple[Run, ...], head: dict[NodeId, NodeId]
) -> dict[NodeId, list[NodeId]]:
    """Return the nodes each node shares a run with; a spine is one node, its ``head``."""
    near: dict[NodeId, list[NodeId]] = {head.get(node, node): [] for node in (*network.pins, network.output)}
    for run in runs:
        start, end = (head.get(node, node) for node in run.nodes)
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
