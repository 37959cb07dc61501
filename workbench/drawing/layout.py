"""A plan with places: how high each row lies, where each bus stands and how far it reaches."""

from dataclasses import dataclass
from itertools import accumulate

from workbench.circuit.network import GROUND
from workbench.drawing.board import Board
from workbench.drawing.needs import Span, find_needs
from workbench.drawing.plan import Plan
from workbench.drawing.runs import Bus, Run
from workbench.drawing.sheet import TRACK, Columns, Pitch, Sheet, fit_columns, fit_pitch

__all__ = ["Layout", "lay_out", "text_above"]


@dataclass(frozen=True, slots=True)
class Layout:
    """Everything that has to be known before the first element is drawn."""

    plan: Plan
    board: Board
    sheet: Sheet
    pitch: Pitch
    columns: Columns
    levels: tuple[float, ...]
    """Rows, in row pitches below the first."""
    exit_level: float
    spans: dict[Bus, Span]
    tracks: dict[Bus, int]
    slots: tuple[tuple[int, ...], ...]
    """Which boxes' column the parts of each run of each row stand in, counted from 0 at the pins."""

    def y(self, level: float) -> float:
        """Return the height of a level of the network. [px]"""
        return round(self.pitch.captions + self.pitch.above + level * self.pitch.row)

    def sync_y(self, index: int) -> float:
        """Return the height of a sync row: under the network, and under what hangs below the output. [px]"""
        last = self.levels[-1] if self.levels else 0.0
        below = 0.0 if self.screen_above else self.load_height + 52 * self.sheet.unit + self.screen_height
        free = self.exit_y + max(148 * self.sheet.unit, below + 26 * self.sheet.unit)
        return round(max(self.y(last + 1) + self.pitch.sync, free) + index * self.pitch.row)

    @property
    def load_height(self) -> float:
        """Return the length of the termination's box. [px]"""
        return (44 if self.pitch.roomy else 34) * self.sheet.unit

    @property
    def screen_height(self) -> float:
        """Return how high the piece of screen in the monitor is. [px]"""
        return (58 if self.pitch.roomy and self.sheet.wide else 28) * self.sheet.unit

    @property
    def screen_above(self) -> bool:
        """Return whether the piece of screen stands over the output, and not under the load."""
        return self.exit_y - self.screen_height - 30 * self.sheet.unit >= self.pitch.captions

    @property
    def key_size(self) -> tuple[float, float]:
        """Return width and height of a pin's state key. [px]"""
        wide, high = (26, 22) if not (self.sheet.wide or self.sheet.slim) else (30, 24)
        return wide * self.sheet.unit, high * self.sheet.unit

    def flat(self, bus: Bus) -> bool:
        """Return whether a bus is a mere point of its row."""
        return self.spans[bus].top == self.spans[bus].bottom

    def x(self, bus: Bus) -> float:
        """Return where a bus stands; a pin with one row only has none, its wire starts at the key. [px]"""
        if self.plan.rank[bus] == 0 and self.flat(bus):
            return self.columns.block[1] + self.key_size[0] / 2
        return self.columns.ranks[self.plan.rank[bus]] + self.tracks[bus] * TRACK * self.sheet.unit

    @property
    def exit_y(self) -> float:
        """Return how high the output leaves. [px]"""
        return self.y(self.exit_level)

    @property
    def text_x(self) -> float:
        """Return the rightmost bus that the output's volts stand right of. [px]

        It is one that reaches up or down, or one that ends open in a row: its ring would lie on them.
        """
        places = [self.x(bus) for bus in self.spans if self.plan.beside_volts(bus, flat=self.flat(bus))]
        return max(places, default=self.columns.ranks[-1])


def lay_out(plan: Plan, board: Board, sheet: Sheet) -> Layout:
    """Return the places of a plan on a sheet."""
    levels = tuple(accumulate((row.gap for row in plan.rows[1:]), initial=0.0)) if plan.rows else ()
    ends = (levels[plan.exit.upper], levels[plan.exit.lower]) if levels else (0.0, 0.0)
    exit_level = sum(ends) / 2
    spans = _spans(plan, levels, exit_level)
    tracks = _tracks(plan, spans)
    slots = _slots(plan, levels, spans)
    pitch = fit_pitch(
        sheet,
        (levels[-1] if levels else 0.0) + len(board.sync),
        high=_above(plan, sheet) if text_above(plan) and exit_level == 0.0 else 0.0,
    )
    columns = fit_columns(sheet, find_needs(plan, board, sheet, tracks, slots, spans))
    return Layout(plan, board, sheet, pitch, columns, levels, exit_level, spans, tracks, slots)


def text_above(plan: Plan) -> bool:
    """Return whether the output's volts stand over its wire, because rungs hang below it."""
    return any(plan.tail.root == spine.nodes[0] for spine in plan.spines)


def _above(plan: Plan, sheet: Sheet) -> float:
    """Return the room that the output's volts take over a top row. [px]"""
    return (84 if plan.tail.runs else 62) * sheet.unit


def _spans(plan: Plan, levels: tuple[float, ...], exit_level: float) -> dict[Bus, Span]:
    at: dict[Bus, list[float]] = {}

    def touch(bus: Bus, level: float) -> None:
        if bus.node != GROUND:
            at.setdefault(bus, []).append(level)

    for level, row in zip(levels, plan.rows, strict=True):
        if row.pin is not None:
            touch(Bus(plan.network.pins[row.pin]), level)
        for run in row.runs:
            touch(run.start, level)
            touch(run.end, level)
    for run in plan.tail.runs:
        touch(run.start, exit_level)
        touch(run.end, exit_level)
    touch(Bus(plan.tail.root), exit_level)
    touch(Bus(plan.network.output), exit_level)
    for rung in plan.rungs:
        middle = (levels[rung.above] + levels[rung.below]) / 2
        touch(rung.run.start, middle)
        touch(rung.run.end, middle)
    return {bus: Span(min(here), max(here)) for bus, here in at.items()}


def _tracks(plan: Plan, spans: dict[Bus, Span]) -> dict[Bus, int]:
    """Give buses of one rank that reach past each other tracks of their own; a spine has one for all."""
    columns = [[Bus(node) for node in spine.nodes] for spine in plan.spines]
    upright = {bus for column in columns for bus in column}
    tracks: dict[Bus, int] = {}
    taken: dict[tuple[int, int], list[Span]] = {}
    for column in [*columns, *([bus] for bus in spans if bus not in upright)]:
        rank, here, track = plan.rank[column[0]], [spans[bus] for bus in column], 0
        while any(_meet(span, other) for span in here for other in taken.get((rank, track), ())):
            track += 1
        taken.setdefault((rank, track), []).extend(here)
        tracks.update(dict.fromkeys(column, track))
    return tracks


def _meet(one: Span, other: Span) -> bool:
    return one.top <= other.bottom and other.top <= one.bottom


def _slots(plan: Plan, levels: tuple[float, ...], spans: dict[Bus, Span]) -> tuple[tuple[int, ...], ...]:
    """Choose the boxes' column of each run: the first one, unless that would cross other buses."""
    return tuple(
        tuple(_slot(plan, run, level, spans) for run in row.runs)
        for level, row in zip(levels, plan.rows, strict=True)
    )


def _slot(plan: Plan, run: Run, level: float, spans: dict[Bus, Span]) -> int:
    if run.start.node == GROUND:
        return 0
    rank = plan.rank[run.start]
    if run.end.node != GROUND:
        return rank
    passed = any(0 < plan.rank[bus] < rank and s.top <= level <= s.bottom for bus, s in spans.items())
    return max(rank - 1, 0) if passed else 0
