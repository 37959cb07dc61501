"""The plan of a drawing: which run lies in which row, before anything has a size.

Rows go from top to bottom: one for each pin, with the pin's other runs under it; a node of the
spine keeps its own runs beside its pins; what is left follows at the bottom. So every run has a
row of its own, and wires can only cross, never cover each other.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from itertools import pairwise

from workbench.circuit.network import GROUND, Network, NodeId
from workbench.drawing.ranks import Spine, Tail, find_spine, find_tail, rank_nodes
from workbench.drawing.runs import Bus, Run, find_runs

__all__ = ["Exit", "Plan", "Row", "Rung", "make_plan"]

BESIDE = 0.78
"""Distance of a part that lies parallel to the one above it. [row pitch]"""
UNDER_PAIR = 1.14
"""Distance to a joined pair above, whose bracket needs room. [row pitch]"""
LINK = 0.5
"""Distance of a row that holds only a wire. [row pitch]"""
TALLER = 0.6
"""Room for each further part that hangs between two rows. [row pitch]"""


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the drawing."""

    run: Run | None = None
    """What lies in it; nothing in a row that only leaves to the connector."""
    pin: int | None = None
    """Which pin's key stands at its left."""
    gap: float = 1.0
    """Distance to the row above. [row pitch]"""


@dataclass(frozen=True, slots=True)
class Rung:
    """A run that hangs between two rows of the spine."""

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
    spine: Spine

    @property
    def ranks(self) -> int:
        """Return the rank of the rightmost bus. [1]"""
        return max(self.rank.values(), default=0)


@dataclass(slots=True)
class _Blocks:
    """Runs sorted by the pin or the spine node whose rows they belong to."""

    pins: list[list[Run]]
    spine: dict[NodeId, list[Run]]
    loose: list[Run] = field(default_factory=list)


def make_plan(network: Network) -> Plan:
    """Return the plan of a network; every network has one, sensible or not."""
    runs = find_runs(network)
    spine = find_spine(network, runs)
    tail = find_tail(network, runs, spine)
    rank = {Bus(node): place for node, place in rank_nodes(network, runs, spine).items()}
    hung = {id(run) for rung in spine.rungs for run in runs if rung in (run, run.turned())}
    drawn = {id(run) for end in tail.runs for run in runs if end in (run, run.turned())}
    level = [run for run in runs if id(run) not in hung | drawn]
    blocks = _sort(network, spine, _upright(level, rank))
    rows, first = _stack(network, spine, blocks)
    rungs = _hang(spine, rows, first)
    rows, rungs, way_out = _leave(network, rows, rungs, rank, tail, spine)
    return Plan(network, tuple(rows), rank, tuple(rungs), tail, way_out, spine)


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
            tidy += [Run(run.start, beyond, run.steps), Run(run.end, beyond)]
    return tidy


def _sort(network: Network, spine: Spine, runs: Iterable[Run]) -> _Blocks:
    blocks = _Blocks([[] for _ in network.pins], {node: [] for node in spine.nodes})
    number = {pin: index for index, pin in reversed(list(enumerate(network.pins)))}
    for run in runs:
        # A wire between two buses of one node belongs to that node, a run to its first pin.
        pins = [number[node] for node in run.nodes if node in number]
        spines = [node for node in run.nodes if node in blocks.spine]
        if pins:
            blocks.pins[pins[0]].append(run)
        elif spines:
            blocks.spine[spines[0]].append(run)
        else:
            blocks.loose.append(run)
    return blocks


def _stack(network: Network, spine: Spine, blocks: _Blocks) -> tuple[list[Row], dict[NodeId, int]]:
    """Put the blocks above each other; return the first row of each spine node as well."""
    rows: list[Row] = []
    first: dict[NodeId, int] = {}
    last_pin = _last_pins(blocks, spine)
    for index, _pin in enumerate(network.pins):
        for node in spine.nodes[:1]:
            if index == min(_pins_of(blocks, node), default=None):
                rows += (Row(run) for run in blocks.spine[node])
        start = len(rows)
        rows += _pin_rows(index, blocks.pins[index])
        for node in (n for n in spine.nodes if index in _pins_of(blocks, n)):
            first.setdefault(node, start)
        for node in spine.nodes[1:]:
            if last_pin[node] == index:
                rows += _rows(blocks.spine[node])
    rows += _rows(blocks.loose)
    for index, (above, row) in enumerate(pairwise(rows), 1):
        if above.run is not None and len(above.run.steps) > 1:
            rows[index] = replace(row, gap=max(row.gap, UNDER_PAIR))
    return rows, first


def _pins_of(blocks: _Blocks, node: NodeId) -> list[int]:
    return [i for i, runs in enumerate(blocks.pins) if any(node in run.nodes for run in runs)]


def _last_pins(blocks: _Blocks, spine: Spine) -> dict[NodeId, int]:
    return {node: _pins_of(blocks, node)[-1] for node in spine.nodes}


def _pin_rows(index: int, runs: list[Run]) -> Iterator[Row]:
    runs = sorted(runs, key=lambda run: (GROUND in run.nodes, not run.steps))
    yield Row(runs[0] if runs else None, pin=index)
    for before, run in pairwise(runs):
        yield Row(run, gap=_gap(run, before))


def _rows(runs: list[Run]) -> Iterator[Row]:
    for before, run in pairwise([None, *runs]):
        if run is not None:
            yield Row(run, gap=_gap(run, before))


def _gap(run: Run, before: Run | None) -> float:
    if not run.steps:
        return LINK
    alike = before is not None and (run.start, run.end) == (before.start, before.end)
    return BESIDE if alike and GROUND not in run.nodes else 1.0


def _hang(spine: Spine, rows: list[Row], first: dict[NodeId, int]) -> list[Rung]:
    """Hang the rungs over the first row of their lower node, making room for long ones."""
    rungs = []
    for run, node in zip(spine.rungs, spine.nodes[1:], strict=True):
        below = first[node]
        row = rows[below]
        rows[below] = replace(row, gap=max(row.gap, 1.0) + TALLER * (len(run.steps) - 1))
        rungs.append(Rung(run, below - 1, below))
    return rungs


def _leave(
    network: Network, rows: list[Row], rungs: list[Rung], rank: dict[Bus, int], tail: Tail, spine: Spine
) -> tuple[list[Row], list[Rung], Exit]:
    """Find where the output leaves, or make a row for it."""
    here = _rows_at(tail.root, rows, network)
    lower = here[(len(here) - 1) // 2] if here else len(rows) - 1
    drawn = {bus for row in rows if row.run for bus in (row.run.start, row.run.end)}
    root = rank.get(Bus(tail.root), 0)
    busy = any(rank[bus] > root for bus in drawn if bus in rank)
    if tail.root in network.pins:
        # What lies in a pin's rows stands right of the pin, where the output would leave.
        busy = busy or any(rows[index].run is not None for index in here)
    if len(here) == 1 and not busy and tail.root not in spine.nodes[1:]:
        return rows, rungs, Exit(lower, lower)
    if len(here) > 1 and not busy and lower + 1 < len(rows):
        return rows, rungs, Exit(lower, lower + 1)
    own = lower + 1
    rows = [*rows[:own], Row(gap=0.85), *rows[own:]]
    moved = [Rung(r.run, r.above + (r.above >= lower), r.below + (r.below >= own)) for r in rungs]
    return rows, moved, Exit(own, own)


def _rows_at(node: NodeId, rows: list[Row], network: Network) -> list[int]:
    """Return the rows with a leg or another run that ends at a node; stubs only if there is nothing else."""
    if node == GROUND:
        return []
    at = {i: row.run for i, row in enumerate(rows) if row.run and node in row.run.nodes}
    keyed = [i for i, row in enumerate(rows) if row.pin is not None and network.pins[row.pin] == node]
    joined = [i for i, run in at.items() if GROUND not in run.nodes]
    return sorted({*keyed, *joined}) or list(at)
