"""Branches: resistors in series or in parallel taken together as one path between two nodes."""

from dataclasses import dataclass

from workbench.circuit.network import GROUND, Network, NodeId, PartId

__all__ = ["Branch", "reduce"]


@dataclass(frozen=True, slots=True)
class Branch:
    """One resistance between two nodes, made of one part or of several."""

    a: NodeId
    b: NodeId
    ohms: float
    """The parts taken together. [Ω]"""
    parts: tuple[PartId, ...]
    """The parts, in the order of the network."""

    def seen_from(self, node: NodeId) -> "Branch":
        """Return the branch with ``node`` as its ``a`` end."""
        return self if self.a == node else Branch(self.b, self.a, self.ohms, self.parts)


def reduce(network: Network) -> tuple[Branch, ...]:
    """Return the network's resistors with series and parallel ones taken together.

    Pins, output and ground stay; a node between exactly two branches goes. Branches that end
    nowhere or on both sides of the same node carry no current for levels and are left out.
    """
    kept = {*network.pins, network.output, GROUND}
    order = {part.id: place for place, part in enumerate(network.resistors)}
    branches = [Branch(part.a, part.b, part.ohms, (part.id,)) for part in network.resistors]
    while True:
        branches = _merge_parallel([branch for branch in branches if branch.a != branch.b])
        joint = _joint(branches, kept)
        if joint is None:
            break
        here = [branch.seen_from(joint) for branch in branches if joint in (branch.a, branch.b)]
        branches = [branch for branch in branches if joint not in (branch.a, branch.b)]
        if len(here) == 2:
            first, second = here
            branches.append(Branch(first.b, second.b, first.ohms + second.ohms, first.parts + second.parts))
    tidy = (Branch(b.a, b.b, b.ohms, tuple(sorted(b.parts, key=order.__getitem__))) for b in branches)
    return tuple(sorted(tidy, key=lambda branch: order[branch.parts[0]]))


def _merge_parallel(branches: list[Branch]) -> list[Branch]:
    between: dict[frozenset[NodeId], Branch] = {}
    for branch in branches:
        ends = frozenset((branch.a, branch.b))
        other = between.get(ends)
        if other is not None:
            ohms = 1.0 / (1.0 / other.ohms + 1.0 / branch.ohms)
            branch = Branch(other.a, other.b, ohms, other.parts + branch.parts)
        between[ends] = branch
    return list(between.values())


def _joint(branches: list[Branch], kept: set[NodeId]) -> NodeId | None:
    """Return a node to take out: one inside the network with one or two branches."""
    degree: dict[NodeId, int] = {}
    for branch in branches:
        for node in (branch.a, branch.b):
            degree[node] = degree.get(node, 0) + 1
    return next((node for node, count in degree.items() if node not in kept and count <= 2), None)
