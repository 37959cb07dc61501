"""How the parts of a network hang together, and what is wrong with that.

Everything here depends on which part joins which nodes, never on a value, so it is worked out
once for a structure and kept: turning a resistor asks for nothing new.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, PartId, Resistor

__all__ = ["MAX_PARTS", "MAX_PINS", "Edges", "Problem", "ProblemKind", "Wiring", "edges_of", "wiring"]

MAX_PINS = 12
"""Pins of one channel that are solved; 4096 codes at most. [1]"""
MAX_PARTS = 1000
"""Parts of one channel that are solved. [1]"""

_DEAD_CURRENT = 1e-9
"""Current below which a branch of the generic network, of some amperes, carries none. [A]"""

Edge = tuple[PartId, NodeId, NodeId]
Edges = tuple[Edge, ...]


class ProblemKind(Enum):
    """What keeps a network from being what it seems."""

    NO_PINS = "no pins"
    TOO_BIG = "too big"
    BAD_VALUE = "bad value"
    SHORT = "short"
    UNSOLVABLE = "unsolvable"
    FLOATING_OUTPUT = "floating output"
    UNDRIVEN_OUTPUT = "undriven output"
    ISLAND = "island"
    DEAD_PIN = "dead pin"
    DEAD_PART = "dead part"

    @property
    def fatal(self) -> bool:
        """Return whether the network has no voltages at all, so that every figure is 0."""
        return self in _FATAL


_FATAL = {
    ProblemKind.NO_PINS,
    ProblemKind.TOO_BIG,
    ProblemKind.BAD_VALUE,
    ProblemKind.SHORT,
    ProblemKind.UNSOLVABLE,
}


@dataclass(frozen=True, slots=True)
class Problem:
    """Something wrong with a network, in one sentence for its user."""

    kind: ProblemKind
    sentence: str
    parts: tuple[PartId, ...] = ()
    nodes: tuple[NodeId, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class Wiring:
    """The structure of a network as numbers.

    ``nodes`` leaves ground out and starts with the pins, most significant bit first. With a
    fatal problem only ``problems`` means anything.
    """

    nodes: tuple[NodeId, ...]
    output: int
    """Index of the output in ``nodes``."""
    incidence: npt.NDArray[np.float64]
    """+1 at end a, -1 at end b of each resistor, shape (n_resistors, n_nodes). [1]"""
    capacitor_incidence: npt.NDArray[np.float64]
    """The same for the capacitors, shape (n_capacitors, n_nodes). [1]"""
    held: npt.NDArray[np.bool_]
    """Whether resistors lead from the node to a pin or to ground, shape (n_nodes,)."""
    afloat: npt.NDArray[np.bool_]
    """Which pins hang together in an island without ground, shape (n_islands, n_pins)."""
    problems: tuple[Problem, ...]

    @property
    def fatal(self) -> bool:
        """Return whether the network has no voltages at all."""
        return any(problem.kind.fatal for problem in self.problems)


def wiring(network: Network) -> Wiring:
    """Return the structure of a network; each structure is worked out only once."""
    return _wiring(network.pins, edges_of(network.resistors), edges_of(network.capacitors), network.output)


def edges_of(parts: Iterable[Resistor] | Iterable[Capacitor]) -> Edges:
    """Return the structure of some parts: which part joins which nodes."""
    return tuple([(part.id, part.a, part.b) for part in parts])


@lru_cache(maxsize=256)
def _wiring(pins: tuple[NodeId, ...], resistors: Edges, capacitors: Edges, output: NodeId) -> Wiring:
    fatal = tuple(_fatal_problems(pins, len(resistors) + len(capacitors), output))
    if fatal:
        return _unsolved(fatal, output)
    ends = [node for _, a, b in (*resistors, *capacitors) for node in (a, b)]
    nodes = tuple(node for node in dict.fromkeys((*pins, output, *ends)) if node != GROUND)
    labels = _components(nodes, resistors)
    anchored = {labels[node] for node in (*pins, GROUND)}
    return Wiring(
        nodes,
        nodes.index(output),
        _incidence(nodes, resistors),
        _incidence(nodes, capacitors),
        np.array([labels[node] in anchored for node in nodes]),
        _islands_of_pins(pins, labels),
        (
            *_output_problems(pins, resistors, output, labels[output] == labels[GROUND]),
            *_island_problems(resistors, labels, anchored | {labels[output]}),
            *_dead_problems(nodes, {*pins, output, GROUND}, (*resistors, *capacitors)),
        ),
    )


def _unsolved(problems: tuple[Problem, ...], output: NodeId) -> Wiring:
    nothing = np.zeros((0, 1))
    return Wiring((output,), 0, nothing, nothing, np.zeros(1, bool), np.zeros((0, 0), bool), problems)


def _fatal_problems(pins: tuple[NodeId, ...], n_parts: int, output: NodeId) -> Iterator[Problem]:
    if not pins:
        yield Problem(ProblemKind.NO_PINS, "No pin drives this network: add a bit to it.")
    if len(pins) > MAX_PINS:
        sentence = f"This channel has {len(pins)} pins; at most {MAX_PINS} are solved. Remove some."
        yield Problem(ProblemKind.TOO_BIG, sentence, nodes=pins)
    if n_parts > MAX_PARTS:
        sentence = f"This channel has {n_parts} parts; at most {MAX_PARTS} are solved. Remove some parts."
        yield Problem(ProblemKind.TOO_BIG, sentence)
    if GROUND in pins:
        sentence = (
            "A pin is tied straight to ground, which shorts the supply when it is 1: put a resistor between."
        )
        yield Problem(ProblemKind.SHORT, sentence, nodes=(GROUND,))
    if joined := tuple(sorted({pin for pin in pins if pins.count(pin) > 1})):
        sentence = (
            f"Several pins are tied together at {', '.join(joined)}, which shorts the supply when they "
            "differ: give each pin a node of its own."
        )
        yield Problem(ProblemKind.SHORT, sentence, nodes=joined)
    if output == GROUND:
        sentence = "The output is tied to ground: choose another node as output."
        yield Problem(ProblemKind.SHORT, sentence, nodes=(GROUND,))


def _components(nodes: tuple[NodeId, ...], edges: Edges) -> dict[NodeId, NodeId]:
    """Return for each node, ground too, one node that stands for all it is connected to."""
    parent = {node: node for node in (*nodes, GROUND)}

    def root(node: NodeId) -> NodeId:
        while parent[node] != node:
            parent[node] = node = parent[parent[node]]
        return node

    for _, a, b in edges:
        parent[root(a)] = root(b)
    return {node: root(node) for node in parent}


def _incidence(nodes: tuple[NodeId, ...], edges: Edges) -> npt.NDArray[np.float64]:
    """Return +1 at end a and -1 at end b of each edge; an end at no such node is left out."""
    index = {node: i for i, node in enumerate(nodes)}
    matrix = np.zeros((len(edges), len(nodes) + 1))
    for row, (_, a, b) in enumerate(edges):
        matrix[row, index.get(a, -1)] += 1.0
        matrix[row, index.get(b, -1)] -= 1.0
    return np.ascontiguousarray(matrix[:, :-1])


def _islands_of_pins(pins: tuple[NodeId, ...], labels: dict[NodeId, NodeId]) -> npt.NDArray[np.bool_]:
    islands = [label for label in dict.fromkeys(labels[pin] for pin in pins) if label != labels[GROUND]]
    rows = [[labels[pin] == label for pin in pins] for label in islands]
    return np.array(rows, bool).reshape(len(islands), len(pins))


def _output_problems(
    pins: tuple[NodeId, ...], resistors: Edges, output: NodeId, grounded: bool
) -> Iterator[Problem]:
    off_ground = tuple(edge for edge in resistors if GROUND not in edge[1:])
    labels = _components((*pins, output, *(node for edge in off_ground for node in edge[1:])), off_ground)
    dead = tuple(pin for pin in pins if labels[pin] != labels[output])
    if len(dead) < len(pins):
        for pin in dead:
            sentence = (
                f"No resistor leads from the pin {pin} to {output}, so its bit shows nothing: connect it."
            )
            yield Problem(ProblemKind.DEAD_PIN, sentence, nodes=(pin,))
    elif grounded:
        sentence = f"No resistor leads from a pin to {output}, so it stays at 0 V: connect one."
        yield Problem(ProblemKind.UNDRIVEN_OUTPUT, sentence, nodes=(output,))
    else:
        sentence = f"The output {output} floats: connect a resistor from a pin to it."
        yield Problem(ProblemKind.FLOATING_OUTPUT, sentence, nodes=(output,))


def _island_problems(
    resistors: Edges, labels: dict[NodeId, NodeId], anchored: set[NodeId]
) -> Iterator[Problem]:
    islands: dict[NodeId, list[Edge]] = {}
    for edge in resistors:
        if labels[edge[1]] not in anchored:
            islands.setdefault(labels[edge[1]], []).append(edge)
    for edges in islands.values():
        parts = tuple(part for part, _, _ in edges)
        nodes = tuple(dict.fromkeys(node for edge in edges for node in edge[1:]))
        verb = "hangs" if len(parts) == 1 else "hang"
        sentence = f"{_listed(parts)} {verb} in the air, tied to no pin and not to ground: connect or remove."
        yield Problem(ProblemKind.ISLAND, sentence, parts, nodes)


def _dead_problems(nodes: tuple[NodeId, ...], terminals: set[NodeId], edges: Edges) -> Iterator[Problem]:
    """Yield a problem for each part that lies on no path between two terminals.

    Notes
    -----
    In a network of the same structure with values drawn at random, and a random voltage at each
    terminal, exactly those branches carry no current (chance coincidences have probability 0).
    """
    labels = _components(nodes, edges)
    tied = {labels[node] for node in terminals}
    tied_edges = tuple(edge for edge in edges if labels[edge[1]] in tied)
    for (part, a, b), amps in zip(tied_edges, _generic_amps(tied_edges, terminals), strict=True):
        if abs(amps) > _DEAD_CURRENT:
            continue
        why = f"both its ends are at {a}" if a == b else "no current can ever flow through it"
        sentence = f"{part} has no effect, since {why}: connect it otherwise or remove it."
        yield Problem(ProblemKind.DEAD_PART, sentence, (part,), (a, b))


def _generic_amps(edges: Edges, terminals: set[NodeId]) -> npt.NDArray[np.float64]:
    fixed = sorted(terminals)
    free = tuple(dict.fromkeys(node for edge in edges for node in edge[1:] if node not in terminals))
    random = np.random.default_rng(seed=1)
    siemens = random.uniform(1.0, 2.0, len(edges))
    volts = random.uniform(0.0, 1.0, len(fixed))
    to_free, to_fixed = _incidence(free, edges), _incidence(tuple(fixed), edges)
    drive = to_fixed @ volts
    laplacian = to_free.T @ (siemens[:, None] * to_free)
    return siemens * (drive - to_free @ np.linalg.solve(laplacian, to_free.T @ (siemens * drive)))


def _listed(parts: tuple[PartId, ...]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
