"""The plan of a drawing: which runs lie in which row, before anything has a size.

Rows go from top to bottom: those of each pin with all that serves it alone, then its next one; a
node of the spine keeps its own runs beside its pins; what no pin reaches follows at the bottom. A run
goes on in the row in which another one reached its node, if that is free there, so a way from a
pin to the output is one row. Wires can only cross, never cover each other.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise

from workbench.circuit.network import GROUND, Network, NodeId
from workbench.drawing.order import Blocks, sort_runs
from workbench.drawing.ranks import Tail, find_tail, rank_nodes
from workbench.drawing.runs import Bus, Run, find_runs
from workbench.drawing.spines import Spine, find_spines
from workbench.drawing.stack import Row, Stack

__all__ = ["Exit", "Plan", "Rung", "make_plan"]

TALLER = 0.6
"""Room for each further part that hangs between two rows. [row pitch]"""


@dataclass(frozen=True, slots=True)
class Rung:
    """A run that hangs between two rows of a spine."""

    run: Run
    """From the upper node to the lower one."""
    above: int
    """Row it hangs under: the last one before ``below``."""
    below: int
    """First row of the lower node."""


@dataclass(frozen=True, slots=True)
class Exit:
    """Where the output leaves to the connector: on a row, or half-way to the next one."""

    upper: int
    lower: int

    @property
    def between(self) -> bool:
        """Return whether it leaves between two rows."""
        return self.upper != self.lower


@dataclass(frozen=True, slots=True)
class Plan:
    """Rows, ranks and rungs of one network."""

    network: Network
    rows: tuple[Row, ...]
    rank: dict[Bus, int]
    rungs: tuple[Rung, ...]
    tail: Tail
    exit: Exit
    spines: tuple[Spine, ...]

    @property
    def ranks(self) -> int:
        """Return the rank of the rightmost bus. [1]"""
        return max(self.rank.values(), default=0)

    def beside_volts(self, bus: Bus, *, flat: bool) -> bool:
        """Return whether the output's volts stand right of a bus, which may be ``flat`` in its row."""
        tail = {node for run in self.tail.runs for node in run.nodes}
        ends_open = self.rank[bus] > 0 and bus.node not in tail
        return not flat or ends_open or bus == Bus(self.tail.root)


def make_plan(network: Network) -> Plan:
    """Return the plan of a network; every network has one, sensible or not."""
    runs = find_runs(network)
    return _plan(network, runs, find_spines(network, runs))


def _plan(network: Network, runs: tuple[Run, ...], spines: tuple[Spine, ...]) -> Plan:
    """Return the plan with some spines, or without one whose nodes do not follow each other downward."""
    tail = find_tail(network, runs, spines)
    rank = {Bus(node): place for node, place in rank_nodes(network, runs, spines).items()}
    hanging = [rung for spine in spines for rung in spine.rungs]
    apart = {id(run) for each in (*hanging, *tail.runs) for run in runs if each in (run, run.turned())}
    level = _upright((run for run in runs if id(run) not in apart), rank)
    rows = _stack(network, spines, sort_runs(network, spines, level), rank)
    rungs: list[Rung] = []
    for spine in spines:
        reach = [_rows_at(node, rows, network, stubs=True) for node in spine.nodes]
        if any(upper[-1] >= lower[0] for upper, lower in pairwise(reach)):
            return _plan(network, runs, tuple(other for other in spines if other is not spine))
        rungs += _hang(spine, rows, [here[0] for here in reach])
    rows, rungs, way_out = _leave(network, rows, rungs, rank, tail, spines)
    return Plan(network, tuple(rows), rank, tuple(rungs), tail, way_out, spines)


def _upright(runs: Iterable[Run], rank: dict[Bus, int]) -> list[Run]:
    """Turn runs so that they go right; where both ends have one rank, give the end a second bus.

    The second bus lies one rank further right, and a wire joins it to the first; it follows its
    run in the list.
    """
    tidy: list[Run] = []
    for run in runs:
        if GROUND in run.nodes:
            tidy.append(run.turned() if run.start.node == GROUND else run)
        elif rank[run.start] != rank[run.end]:
            tidy.append(run if rank[run.start] < rank[run.end] else run.turned())
        else:
            number = 1 + max(bus.number for bus in rank if bus.node == run.end.node)
            beyond = Bus(run.end.node, number)
            rank[beyond] = rank[run.end] + 1
            tidy += [replace(run, end=beyond), Run(run.end, beyond)]
    return tidy


def _stack(network: Network, spines: tuple[Spine, ...], blocks: Blocks, rank: dict[Bus, int]) -> list[Row]:
    """Put the blocks above each other."""
    stack = Stack(rank)
    legs = {node: _pins_of(blocks, node) for node in blocks.spine}
    tops = [spine.nodes[0] for spine in spines]
    for index, pin in enumerate(network.pins):
        for node in (top for top in tops if legs[top][:1] == [index]):
            # What goes on from the node shares the row of a leg; what hangs on it stands above.
            stack.add(run for run in blocks.spine[node] if GROUND in run.nodes)
        stack.open(index, Bus(pin))
        stack.add(blocks.pins[index])
        for node in (node for node in legs if legs[node][-1:] == [index]):
            stack.add(run for run in blocks.spine[node] if run not in stack)
    stack.add(blocks.loose)
    return stack.rows()


def _pins_of(blocks: Blocks, node: NodeId) -> list[int]:
    return [i for i, runs in enumerate(blocks.pins) if any(node in run.nodes for run in runs)]


def _hang(spine: Spine, rows: list[Row], first: list[int]) -> list[Rung]:
    """Hang the rungs over the ``first`` row of their lower node, making room for long ones."""
    rungs = []
    for run, below in zip(spine.rungs, first[1:], strict=True):
        row = rows[below]
        rows[below] = replace(row, gap=max(row.gap, 1.0) + TALLER * (len(run.steps) - 1))
        rungs.append(Rung(run, below - 1, below))
    return rungs


def _leave(
    network: Network,
    rows: list[Row],
    rungs: list[Rung],
    rank: dict[Bus, int],
    tail: Tail,
    spines: tuple[Spine, ...],
) -> tuple[list[Row], list[Rung], Exit]:
    """Find where the output leaves, or make a row for it."""
    here = _rows_at(tail.root, rows, network)
    lower = here[(len(here) - 1) // 2] if here else len(rows) - 1
    drawn = {bus for row in rows for run in row.runs for bus in (run.start, run.end)}
    root = rank.get(Bus(tail.root), 0)
    busy = any(rank[bus] > root for bus in drawn if bus in rank)
    if tail.root in network.pins:
        # What lies in a pin's rows stands right of the pin, where the output would leave.
        busy = busy or any(rows[index].runs for index in here)
    hangs = any(tail.root in spine.nodes[1:] for spine in spines)
    if len(here) == 1 and not busy and not hangs:
        return rows, rungs, Exit(lower, lower)
    if len(here) > 1 and not busy and lower + 1 < len(rows):
        return rows, rungs, Exit(lower, lower + 1)
    own = lower + 1
    rows = [*rows[:own], Row(gap=0.85), *rows[own:]]
    moved = [Rung(r.run, r.above + (r.above >= lower), r.below + (r.below >= own)) for r in rungs]
    return rows, moved, Exit(own, own)


def _rows_at(node: NodeId, rows: list[Row], network: Network, *, stubs: bool = False) -> list[int]:
    """Return the rows with a leg or another run that ends at a node.

    Those with a way to ground only count where ``stubs`` are asked for, or if there is nothing else.
    """
    if node == GROUND:
        return []
    at = {i: [run for run in row.runs if node in run.nodes] for i, row in enumerate(rows)}
    keyed = [i for i, row in enumerate(rows) if row.pin is not None and network.pins[row.pin] == node]
    hanging = [i for i, runs in at.items() if runs]
    joined = [i for i, runs in at.items() if any(GROUND not in run.nodes for run in runs)]
    return sorted({*keyed, *(hanging if stubs else joined)}) or hanging
