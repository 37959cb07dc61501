"""Spines: nodes that hang above each other with the runs between them upright.

The nodes of an R-2R ladder are one, and so are the two inner nodes of a bridge.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from workbench.circuit.network import GROUND, Network, NodeId
from workbench.drawing.runs import Run

__all__ = ["Spine", "find_spines", "heads"]


@dataclass(frozen=True, slots=True)
class Spine:
    """Nodes that hang above each other, top first, and the runs between them."""

    nodes: tuple[NodeId, ...]
    rungs: tuple[Run, ...] = ()
    """``rungs[i]`` leads from ``nodes[i]`` down to ``nodes[i + 1]``."""


def legs_by_node(network: Network, runs: Iterable[Run]) -> dict[NodeId, list[int]]:
    """Return which pins, by number, lead to each node that is no pin, through one run."""
    number = {pin: index for index, pin in reversed(list(enumerate(network.pins)))}
    legs: dict[NodeId, list[int]] = {}
    for run in runs:
        for near, far in (run.nodes, run.nodes[::-1]):
            if near in number and far not in number and far != GROUND:
                legs.setdefault(far, []).append(number[near])
    return {node: sorted(here) for node, here in legs.items()}


def find_spines(network: Network, runs: tuple[Run, ...]) -> tuple[Spine, ...]:
    """Return the columns of nodes whose legs follow each other and that are joined in turn."""
    legs = legs_by_node(network, runs)
    order = sorted(legs, key=lambda node: legs[node][0])
    found: list[Spine] = []
    for upper, lower in pairwise(order):
        between = [run for run in runs if set(run.nodes) == {upper, lower}]
        if len(between) != 1 or between[0].chain or not _follow(legs[upper], legs[lower]):
            continue
        spine = found.pop() if found and found[-1].nodes[-1] == upper else Spine((upper,))
        found.append(Spine((*spine.nodes, lower), (*spine.rungs, between[0].seen_from(upper))))
    return tuple(found)


def _follow(upper: list[int], lower: list[int]) -> bool:
    """Return whether legs can lie under others: after all of them, or beside the only one."""
    return upper[-1] < lower[0] or upper == lower == upper[:1]


def heads(spines: Iterable[Spine]) -> dict[NodeId, NodeId]:
    """Return for every node of a spine the one that stands for all of it: its first."""
    return {node: spine.nodes[0] for spine in spines for node in spine.nodes}
