"""What the contents of a drawing ask of its columns."""

from dataclasses import dataclass
from functools import lru_cache
from itertools import chain

from workbench.circuit.network import GROUND, Capacitor
from workbench.drawing.board import Board
from workbench.drawing.faces import CAPTION, CURRENT, LOADED, NAME, PIN, SMALL_VALUE, STATE, VALUE
from workbench.drawing.plan import Plan
from workbench.drawing.runs import Bus, Part, Run
from workbench.drawing.sheet import Needs, Sheet, least_box
from workbench.units import format_quantity

__all__ = ["CLEAR", "JOINT", "OVERHANG", "VALUE_PAD", "Span", "find_needs", "value_text"]

JOINT = 10.0
"""Wire between two joined boxes. [design px]"""
CLEAR = 18.0
"""From the middle of a lying capacitor to its name and value, clear of the focus ring. [design px]"""
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
    slots: tuple[tuple[int, ...], ...],
    spans: dict[Bus, Span],
) -> Needs:
    """Return the least widths that keep every text and symbol of a plan apart."""
    count = max(plan.ranks, max((slot for row in slots for slot in row), default=-1) + 1)
    boxes, before, after = ([0.0] * count for _ in range(3))
    if plan.network.pins and not sheet.slim:
        before[:1] = [_current(sheet)] * min(count, 1)
    for slot, run in _placed(plan, slots):
        first = slot == 0
        boxes[slot] = max(boxes[slot], _column(run, sheet, first=first))
        left, right = _beside(plan, run, sheet, least_box(sheet, first=first))
        before[slot], after[slot] = max(before[slot], left), max(after[slot], right)
    rungs = 0.0
    for rank, width in _rung_texts(plan, sheet).items():
        # The texts beside the rungs stand before the next boxes, or before the socket.
        if rank < count:
            before[rank] += width
        else:
            rungs = width
    return Needs(
        tuple(boxes),
        tuple(before),
        tuple(after),
        _stacked(plan, tracks, spans, count),
        max(_gap(plan, sheet, spans), rungs),
        cable=board.cable is not None,
        block=0.0 if sheet.slim else _block(board, sheet),
    )


def _placed(plan: Plan, slots: tuple[tuple[int, ...], ...]) -> list[tuple[int, Run]]:
    """Return every run that lies in a row, with its boxes' column."""
    rows = (zip(places, row.runs, strict=True) for places, row in zip(slots, plan.rows, strict=True))
    return [*chain.from_iterable(rows), *((plan.rank[run.start], run) for run in plan.tail.runs)]


def _beside(plan: Plan, run: Run, sheet: Sheet, box: float) -> tuple[float, float]:
    """Return the room that a run needs before and after its column, whose boxes are ``box`` wide. [px]"""
    unit, before, after = sheet.unit, 0.0, 0.0
    if run not in plan.tail.runs:
        names = (sheet.measure(step.part.id, NAME) for step in run.steps)
        after = max(names, default=0.0) + 14 * unit
    if len(run.steps) == 1 and isinstance(run.steps[0].part, Capacitor):
        # Its value stands right of its plates, and may be longer than half a box.
        value = sheet.measure(value_text(run.steps[0].part), VALUE)
        after = max(after, (CLEAR + 8) * unit + value - box / 2)
    if GROUND in run.nodes:
        # Beside the boxes stands a ground symbol: after a pin's, and before all others.
        if run.end.node == GROUND and run.start.node in plan.network.pins:
            after = max(after, 40 * unit)
        else:
            before = 40 * unit
    return before, after


def _current(sheet: Sheet) -> float:
    """Return the room of a leg's current between its key and the end of its column. [px]"""
    return sheet.measure("00.000 mA", CURRENT) + (52 if sheet.wide else 40) * sheet.unit


def _column(run: Run, sheet: Sheet, *, first: bool) -> float:
    """Return how wide a column must be for a run's boxes, joined. [px]"""
    widths = [_box(step.part, sheet, joined=run.joined) for step in run.steps]
    if len(widths) < 2:
        return sum(widths)
    joined = len(widths) * max(widths) + JOINT * (len(widths) - 1) * sheet.unit
    return joined - (2 * OVERHANG * sheet.unit if first else 0.0)


def _box(part: Part, sheet: Sheet, *, joined: bool) -> float:
    """Return how wide the box of a part must be. [px]"""
    unit = sheet.unit
    if not joined:
        return sheet.measure(value_text(part), VALUE) + VALUE_PAD * unit
    value = sheet.measure(value_text(part), SMALL_VALUE)
    if isinstance(part, Capacitor):
        return 2 * (max(value, sheet.measure(part.id, NAME)) + CLEAR * unit)
    return value + 11 * unit


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
    beside = [
        plan.rank[bus] for bus, span in spans.items() if plan.beside_volts(bus, flat=span.top == span.bottom)
    ]
    if max(beside, default=plan.ranks) < plan.ranks:
        return 20 * sheet.unit
    return 23 * sheet.unit + sheet.measure("0.000 V", STATE if sheet.slim else LOADED)


def _rung_texts(plan: Plan, sheet: Sheet) -> dict[int, float]:
    """Return the room that names and values beside the rungs need, by rank. [px]"""
    rooms: dict[int, float] = {}
    for rung in plan.rungs:
        rank = plan.rank[rung.run.start]
        for step in rung.run.steps:
            text = sheet.measure(f"{step.part.id} {value_text(step.part)}", SMALL_VALUE)
            rooms[rank] = max(rooms.get(rank, 0.0), text + 26 * sheet.unit)
    return rooms


def _block(board: Board, sheet: Sheet) -> float:
    pins = max((sheet.measure(name, PIN) for name in board.pins), default=0.0)
    return pins + sheet.measure("0", CAPTION) + 40 * sheet.unit
