"""Rows put above each other, each holding what fits side by side."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import NamedTuple

from workbench.circuit.network import GROUND
from workbench.drawing.runs import Bus, Run

__all__ = ["Row", "Stack"]

BESIDE = 0.78
"""Distance of a part that lies parallel to the one above it. [row pitch]"""
UNDER_PAIR = 1.14
"""Distance to a joined pair above, whose bracket needs room. [row pitch]"""
LINK = 0.5
"""Distance of a row that holds only a wire. [row pitch]"""


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the drawing."""

    runs: tuple[Run, ...] = ()
    """What lies in it, side by side; nothing in a row that only leaves to the connector."""
    pin: int | None = None
    """Which pin's key stands at its left."""
    gap: float = 1.0
    """Distance to the row above. [row pitch]"""


class _Extent(NamedTuple):
    """From where to where something reaches in its row, in ranks, and the buses at its ends."""

    left: float
    right: float
    start: Bus | None
    end: Bus | None

    def beside(self, other: "_Extent") -> bool:
        """Return whether the two can lie in one row: they share nothing, or only a bus at their ends."""
        apart = self.right < other.left or other.right < self.left
        return apart or self.joins(other)

    def joins(self, other: "_Extent") -> bool:
        """Return whether one goes on where the other one ends."""
        after = self.right == other.left and self.end is not None and self.end == other.start
        return after or (other.right == self.left and self.start is not None and self.start == other.end)


@dataclass(slots=True)
class _Open:
    """A row in the making."""

    pin: int | None = None
    runs: list[Run] = field(default_factory=list)
    extents: list[_Extent] = field(default_factory=list)

    def takes(self, extent: _Extent) -> bool:
        """Return whether a run can go on in this row."""
        return all(map(extent.beside, self.extents)) and any(map(extent.joins, self.extents))


class Stack:
    """Puts runs into rows, each into one where it goes on if there is one, else into a new one."""

    def __init__(self, rank: dict[Bus, int]) -> None:
        self._rank = rank
        self._pins = {bus for bus, place in rank.items() if place == 0}
        self._open: list[_Open] = []

    def __contains__(self, run: Run) -> bool:
        return any(run is other for row in self._open for other in row.runs)

    def open(self, pin: int, bus: Bus) -> None:
        """Begin the row of a pin's key."""
        self._open.append(_Open(pin, extents=[_Extent(-1, 0, None, bus)]))

    def add(self, runs: Iterable[Run]) -> None:
        """Put runs in, one after the other."""
        for run in runs:
            extent = self._extent(run)
            rows = [row for row in self._open if row.takes(extent)]
            if not rows:
                rows = [_Open()]
                self._open += rows
            # Of two ways into its node a run goes on in the first one, of several in their middle.
            row = rows[(len(rows) - 1) // 2]
            row.runs.append(run)
            row.extents.append(extent)

    def _extent(self, run: Run) -> _Extent:
        start = self._rank.get(run.start, 0)
        if run.end.node != GROUND:
            return _Extent(start, self._rank[run.end], run.start, run.end)
        if run.start in self._pins:
            return _Extent(0, 1, run.start, None)
        return _Extent(-1, start, None, run.start)

    def rows(self) -> list[Row]:
        """Return the rows, each as far under the one above as both need."""
        rows: list[Row] = []
        for row in self._open:
            above = rows[-1].runs if rows else ()
            rows.append(Row(tuple(row.runs), row.pin, _gap(row, above)))
        return rows


def _gap(row: _Open, above: tuple[Run, ...]) -> float:
    gap = 1.0
    if row.pin is None and not any(run.steps for run in row.runs):
        gap = LINK
    elif row.pin is None and any(_alike(run, other) for run in row.runs for other in above):
        gap = BESIDE
    return max(gap, UNDER_PAIR) if any(len(run.steps) > 1 for run in above) else gap


def _alike(run: Run, other: Run) -> bool:
    return (run.start, run.end) == (other.start, other.end) and GROUND not in run.nodes
