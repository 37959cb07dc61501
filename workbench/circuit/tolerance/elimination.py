"""The weights of thousands of boards at once: one elimination of the nodes, run over arrays.

All boards have the same structure and other values. So the order in which nodes go is worked out
once, and each step of it is an operation on arrays with one entry a board.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from functools import lru_cache
from itertools import combinations
from typing import Any

import numpy as np
import numpy.typing as npt

from workbench.circuit.graph import Edges, edges_of
from workbench.circuit.network import GROUND, Network, NodeId

__all__ = ["BoardArray", "Elimination", "PinState", "elimination"]

BoardArray = npt.NDArray[np.floating[Any]]
"""An array whose last axis runs over boards, single or double precision."""
Pair = frozenset[NodeId]


class PinState(Enum):
    """How a pin holds its node."""

    IDEAL = "ideal"
    RESISTIVE = "resistive"
    FLOATING = "floating"


@dataclass(frozen=True, slots=True)
class Elimination:
    """The order in which to take out the nodes between sources and output.

    Notes
    -----
    What is worked out is the adjoint: the voltage ``x`` of every node for one ampere into the output
    while all sources are at 0 V. By reciprocity a source that reaches node ``k`` through ``g`` adds
    ``g x[k]`` of its volts to the output. Taking out a node is a star-mesh change [1]_: conductances
    are only added, multiplied and divided, never subtracted, so single precision is enough.

    References
    ----------
    .. [1] A. Rosen, "A new network theorem", Journal of the IEE 62, 1924. From memory.
    """

    n_pins: int
    output: NodeId
    output_pin: int | None
    """The ideal pin that is the output itself. [1]"""
    wires: tuple[tuple[int, Pair], ...]
    """Resistors between two free nodes: index, nodes."""
    tied: tuple[tuple[int, NodeId, int | None], ...]
    """Resistors from a free node to an ideal pin or to ground: index, free node, pin."""
    behind: tuple[tuple[int, NodeId], ...]
    """Pins with an on-resistance, and their nodes."""
    steps: tuple[tuple[NodeId, tuple[NodeId, ...]], ...]
    """Nodes to take out, in order, and the nodes that each is then wired to."""

    def weights(
        self,
        siemens: BoardArray,
        on_siemens: Sequence[Any],
        load_siemens: BoardArray | float,
        source_volts: BoardArray | float = 1.0,
    ) -> BoardArray:
        """Return what each source adds to the output.

        Parameters
        ----------
        siemens : float array, shape (n_resistors, n_boards)
            Conductance of every resistor, single or double precision. [S]
        on_siemens : sequence, shape (n_pins,) or (n_pins, n_boards)
            Conductance of each pin's output stage; only that of resistive pins is used. [S]
        load_siemens : float or float array, shape (n_boards,)
            Conductance of the load. [S]
        source_volts : float or float array, shape (n_boards,)
            Voltage of the sources that are high. [V]

        Returns
        -------
        float array, shape (n_pins, n_boards)
            Of the precision of ``siemens``; 0 for pins that do not reach the output. [V]
        """
        shares = np.zeros((self.n_pins, siemens.shape[1]), siemens.dtype)
        if self.output_pin is not None:
            shares[self.output_pin] = source_volts
            return shares
        if not (self.tied or self.behind):
            return shares  # nothing holds the output, and without a load it has no voltage at all
        volts = self._adjoint(siemens, on_siemens, load_siemens, source_volts)
        for index, node, pin in self.tied:
            if pin is not None:
                shares[pin] += siemens[index] * volts[node]
        for pin, node in self.behind:
            shares[pin] += on_siemens[pin] * volts[node]
        return shares

    def _adjoint(
        self,
        siemens: BoardArray,
        on_siemens: Sequence[Any],
        load_siemens: BoardArray | float,
        amps: BoardArray | float,
    ) -> dict[NodeId, Any]:
        """Return the volts of each free node for a current into the output, each of shape (n_boards,)."""
        away: dict[NodeId, Any] = {self.output: load_siemens}
        for index, node, _ in self.tied:
            away[node] = away.get(node, 0.0) + siemens[index]
        for pin, node in self.behind:
            away[node] = away.get(node, 0.0) + on_siemens[pin]
        between: dict[Pair, Any] = {}
        for index, pair in self.wires:
            between[pair] = between[pair] + siemens[index] if pair in between else siemens[index]
        shares = [_take_out(node, others, away, between) for node, others in self.steps]
        volts = {self.output: amps / away[self.output]}
        for (node, others), parts in zip(reversed(self.steps), reversed(shares), strict=True):
            volts[node] = sum(part * volts[other] for part, other in zip(parts, others, strict=True))
        return volts


def _take_out(
    node: NodeId, others: tuple[NodeId, ...], away: dict[NodeId, Any], between: dict[Pair, Any]
) -> list[Any]:
    """Spread a node's conductances over the nodes it is wired to; return the share of each."""
    arms = [between[frozenset((node, other))] for other in others]
    tied = away.get(node)
    total = sum(arms[1:], arms[0]) if tied is None else sum(arms, tied)
    shares = [arm / total for arm in arms]
    if tied is not None:
        for other, share in zip(others, shares, strict=True):
            away[other] = away.get(other, 0.0) + share * tied
    for i, j in combinations(range(len(others)), 2):
        pair = frozenset((others[i], others[j]))
        mesh = shares[i] * arms[j]
        between[pair] = between[pair] + mesh if pair in between else mesh
    return shares


def elimination(network: Network, states: tuple[PinState, ...]) -> Elimination:
    """Return the order in which to take out a network's nodes.

    Parameters
    ----------
    network : Network
        Its structure counts, and the names of its nodes; no value does.
    states : tuple of PinState, length n_pins
        How each pin holds its node.
    """
    return _elimination(network.pins, edges_of(network.resistors), network.output, states)


@lru_cache(maxsize=1024)
def _elimination(
    pins: tuple[NodeId, ...], resistors: Edges, output: NodeId, states: tuple[PinState, ...]
) -> Elimination:
    ideal = {pin: i for i, pin in enumerate(pins) if states[i] is PinState.IDEAL}
    held = {GROUND, *ideal}
    near = _reached(output, resistors, held)
    wires = tuple(
        (i, frozenset((a, b))) for i, (_, a, b) in enumerate(resistors) if a != b and {a, b} <= near
    )
    tied = tuple(
        (i, free, ideal.get(fixed))
        for i, (_, a, b) in enumerate(resistors)
        for free, fixed in ((a, b), (b, a))
        if free in near and fixed in held
    )
    behind = tuple((i, pin) for i, pin in enumerate(pins) if states[i] is PinState.RESISTIVE and pin in near)
    steps = tuple(_order(near, {pair for _, pair in wires}, output))
    return Elimination(len(pins), output, ideal.get(output), wires, tied, behind, steps)


def _reached(output: NodeId, resistors: Edges, held: set[NodeId]) -> set[NodeId]:
    """Return the free nodes that are connected to the output by way of free nodes."""
    near = {output} - held
    grown = True
    while grown:
        more = {
            free
            for _, a, b in resistors
            for start, free in ((a, b), (b, a))
            if start in near and free not in near and free not in held
        }
        near |= more
        grown = bool(more)
    return near


def _order(near: set[NodeId], pairs: set[Pair], output: NodeId) -> list[tuple[NodeId, tuple[NodeId, ...]]]:
    """Take out the node with the fewest neighbours first, so that little is filled in."""
    neighbours = {node: {other for pair in pairs if node in pair for other in pair - {node}} for node in near}
    steps = []
    while len(neighbours) > 1:
        node = min((n for n in neighbours if n != output), key=lambda n: (len(neighbours[n]), n))
        others = neighbours.pop(node)
        for other in others:
            neighbours[other] |= others - {other}
            neighbours[other] -= {node}
        steps.append((node, tuple(sorted(others))))
    return steps
