"""Runs: parts in series taken together, so that each run fills one row of the drawing."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, Resistor

__all__ = ["JOINED", "Bus", "Part", "Run", "Step", "find_runs"]

Part = Resistor | Capacitor

JOINED = 2
"""Parts drawn joined in one place of a row; a longer chain goes on in the next place. [1]"""


class Bus(NamedTuple):
    """A vertical line for a node; a node with two such lines has two numbers."""

    node: NodeId
    number: int = 0


@dataclass(frozen=True, slots=True)
class Step:
    """A part as it is met along a run."""

    part: Part
    flipped: bool
    """Whether its end ``b`` is met first."""


@dataclass(frozen=True, slots=True)
class Run:
    """A way from one bus to another through up to two parts; with none it is a wire."""

    start: Bus
    end: Bus
    steps: tuple[Step, ...] = ()
    chain: tuple[Part, ...] = ()
    """Every part of the longer chain that it is a piece of; empty if it is all there is."""

    @property
    def joined(self) -> bool:
        """Return whether its parts are drawn as some of several in series."""
        return len(self.steps) > 1 or bool(self.chain)

    @property
    def between(self) -> tuple[NodeId, ...]:
        """Return the nodes between the parts."""
        return tuple(step.part.a if step.flipped else step.part.b for step in self.steps[:-1])

    @property
    def nodes(self) -> tuple[NodeId, NodeId]:
        """Return the nodes at the two ends."""
        return self.start.node, self.end.node

    def turned(self) -> "Run":
        """Return the same run met from its other end."""
        steps = tuple(Step(step.part, not step.flipped) for step in reversed(self.steps))
        return Run(self.end, self.start, steps, self.chain)

    def seen_from(self, node: NodeId) -> "Run":
        """Return the run with ``node`` at its start."""
        return self if self.start.node == node else self.turned()

    def other(self, node: NodeId) -> NodeId:
        """Return the node at the far end, seen from ``node``."""
        return self.end.node if self.start.node == node else self.start.node


def find_runs(network: Network) -> tuple[Run, ...]:
    """Return every part of a network once, in runs, in the order of the network.

    Pins, output and ground end a run; so does every node where other than two parts meet.
    """
    parts: tuple[Part, ...] = (*network.resistors, *network.capacitors)
    at = _parts_at(parts)
    anchors = {*network.pins, network.output, GROUND}
    through = {
        node: here
        for node, here in at.items()
        if node not in anchors and len(here) == 2 and here[0] != here[1]
    }
    chains = (_from_pin(chain, network) for chain in _walk(parts, through))
    return tuple(piece for chain in chains for piece in _pieces(chain))


def _from_pin(chain: Run, network: Network) -> Run:
    """Return a chain as it is read: from its pin, and towards ground."""
    first, last = chain.nodes
    backward = last in network.pins if first not in network.pins else False
    return chain.turned() if backward or (first == GROUND and last != GROUND) else chain


def _pieces(chain: Run) -> Iterator[Run]:
    """Yield a chain in runs of at most `JOINED` parts."""
    if len(chain.steps) <= JOINED:
        yield chain
        return
    nodes = (chain.start, *map(Bus, chain.between), chain.end)
    whole = tuple(step.part for step in chain.steps)
    for first in range(0, len(chain.steps), JOINED):
        steps = chain.steps[first : first + JOINED]
        yield Run(nodes[first], nodes[first + len(steps)], steps, whole)


def _parts_at(parts: tuple[Part, ...]) -> dict[NodeId, list[int]]:
    at: dict[NodeId, list[int]] = {}
    for index, part in enumerate(parts):
        for node in (part.a, part.b):
            at.setdefault(node, []).append(index)
    return at


def _walk(parts: tuple[Part, ...], through: dict[NodeId, list[int]]) -> Iterator[Run]:
    """Yield every chain of parts, each as one run however long it is."""
    met: set[int] = set()
    for index in range(len(parts)):
        if index in met:
            continue
        met.add(index)
        run = Run(Bus(parts[index].a), Bus(parts[index].b), (Step(parts[index], flipped=False),))
        for _side in range(2):
            while longer := _longer(run, parts, through, met):
                run = longer
            run = run.turned()
        yield run


def _longer(run: Run, parts: tuple[Part, ...], through: dict[NodeId, list[int]], met: set[int]) -> Run | None:
    """Return the run with one more part at its end; none if the chain stops there."""
    node = run.end.node
    onward = next((index for index in through.get(node, ()) if index not in met), None)
    if onward is None:
        return None
    met.add(onward)
    part = parts[onward]
    flipped = part.b == node
    return Run(run.start, Bus(part.a if flipped else part.b), (*run.steps, Step(part, flipped)))
