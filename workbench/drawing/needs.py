"""What the contents of a drawing ask of its columns."""

from dataclasses import dataclass
from functools import lru_cache

from workbench.circuit.network import GROUND, Capacitor
from workbench.drawing.board import Board
from workbench.drawing.faces import CAPTION, LOADED, NAME, PIN, SMALL_VALUE, STATE, VALUE
from workbench.drawing.plan import Plan
from workbench.drawing.runs import Bus, Part, Run
from workbench.drawing.sheet import Needs, Sheet
from workbench.units import format_quantity

__all__ = ["JOINT", "OVERHANG", "VALUE_PAD", "Span", "find_needs", "value_text"]

JOINT = 10.0
"""Wire between two joined boxes. [design px]"""
OVERHANG = 10.0
"""How far a joined pair reaches over each side of the first column. [design px]"""
VALUE_PAD = 16.0
"""Room beside a value in a box of its own. [design px]"""


@dataclass(frozen=True, slots=True)
class Span:
    """How far a bus reaches, in row pitches below the first row."""

    top: float
    bottom: float


def value_text(part: Part) -> str:
    """Return a part's value as it stands in the drawing."""
    if isinstance(part, Capacitor):
        return _written(part.farads, "F")
    return _written(part.ohms, "Ω")


@lru_cache(maxsize=1024)
def _written(value: float, unit: str) -> str:
    """Return a value as text; a drawing asks for each of its values several times."""
    return format_quantity(value, unit)


def find_needs(
    plan: Plan,
    board: Board,
    sheet: Sheet,
    tracks: dict[Bus, int],
    slots: dict[int, int],
    spans: dict[Bus, Span],
) -> Needs:
    """Return the least widths that keep every text and symbol of a plan apart."""
    unit = sheet.unit
    count = max(plan.ranks, max(slots.values(), default=-1) + 1)
    boxes, before, after = ([0.0] * count for _ in range(3))
    for slot, run in _placed(plan, slots):
        boxes[slot] = max(boxes[slot], _column(run, sheet, first=slot == 0))
        if run not in plan.tail.runs:
            names = (sheet.measure(step.part.id, NAME) for step in run.steps)
            after[slot] = max(after[slot], max(names, default=0.0) + 14 * unit)
        if GROUND in run.nodes:
            # Beside the boxes stands a ground symbol: after a pin's, and before all others.
            beside = after if run.end.node == GROUND and run.start.node in plan.network.pins else before
            beside[slot] = max(beside[slot], 40 * unit)
    rungs = _rung_texts(plan, sheet)
    if rungs and (rank := plan.rank[plan.rungs[0].run.start]) < count:
        # The texts beside the rungs stand before the next boxes, not before the socket.
        before[rank] = max(before[rank], 0.0) + rungs
        rungs = 0.0
    return Needs(
        tuple(boxes),
        tuple(before),
        tuple(after),
        _stacked(plan, tracks, spans, count),
        max(_gap(plan, sheet, spans), rungs),
        cable=board.cable is not None,
        block=0.0 if sheet.slim else _block(board, sheet),
    )


def _placed(plan: Plan, slots: dict[int, int]) -> list[tuple[int, Run]]:
    """Return every run that lies in a row, with its boxes' column."""
    in_rows = [(slots[index], row.run) for index, row in enumerate(plan.rows) if row.run is not None]
    return in_rows + [(plan.rank[run.start], run) for run in plan.tail.runs]


def _column(run: Run, sheet: Sheet, *, first: bool) -> float:
    """Return how wide a column must be for a run's boxes, joined. [px]"""
    face = VALUE if len(run.steps) == 1 else SMALL_VALUE
    pad = (VALUE_PAD if len(run.steps) == 1 else 11) * sheet.unit
    widths = [sheet.measure(value_text(step.part), face) + pad for step in run.steps]
    if len(widths) < 2:
        return sum(widths)
    joined = len(widths) * max(widths) + JOINT * (len(widths) - 1) * sheet.unit
    return joined - (2 * OVERHANG * sheet.unit if first else 0.0)


def _stacked(plan: Plan, tracks: dict[Bus, int], spans: dict[Bus, Span], count: int) -> tuple[int, ...]:
    """Return how many buses stand beside each other at each rank; a pin's plain wire is none."""
    stacked = [0] + [1] * count
    for bus, track in tracks.items():
        rank = plan.rank[bus]
        if rank or spans[bus].top < spans[bus].bottom:
            stacked[rank] = max(stacked[rank], track + 1)
    return tuple(stacked)


def _gap(plan: Plan, sheet: Sheet, spans: dict[Bus, Span]) -> float:
    """Return the room that the output's volts need before the socket, if they stand there. [px]"""
    upright = [plan.rank[bus] for bus, span in spans.items() if span.top < span.bottom]
    root = plan.rank.get(Bus(plan.tail.root), plan.ranks)
    if max([*upright, root]) < plan.ranks:
        return 20 * sheet.unit
    return 23 * sheet.unit + sheet.measure("0.000 V", STATE if sheet.slim else LOADED)


def _rung_texts(plan: Plan, sheet: Sheet) -> float:
    """Return the room that names and values beside the rungs need. [px]"""
    steps = [step for rung in plan.rungs for step in rung.run.steps]
    texts = (sheet.measure(f"{step.part.id} {value_text(step.part)}", SMALL_VALUE) for step in steps)
    return max(texts) + 26 * sheet.unit if steps else 0.0


def _block(board: Board, sheet: Sheet) -> float:
    pins = max((sheet.measure(name, PIN) for name in board.pins), default=0.0)
    return pins + sheet.measure("0", CAPTION) + 40 * sheet.unit
