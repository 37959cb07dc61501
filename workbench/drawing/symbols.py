"""Symbols: a run's parts as boxes in a row, or hung between two rows."""

from itertools import pairwise

from workbench.circuit.network import Capacitor, NodeId, Resistor
from workbench.drawing.board import LOAD
from workbench.drawing.elements import Align, Brace, Label, Symbol, SymbolKind
from workbench.drawing.faces import CAPTION, NAME, SMALL_VALUE, VALUE, Face
from workbench.drawing.geometry import Point, Rect
from workbench.drawing.needs import CLEAR, JOINT, OVERHANG, value_text
from workbench.drawing.runs import Run, Step
from workbench.drawing.sheet import Pitch, Sheet
from workbench.units import format_quantity

__all__ = ["body_height", "brace", "hang", "lie"]

PLATE = 26.0
"""Length of a capacitor's plates. [design px]"""
PLATES_APART = 8.0
"""Distance of a capacitor's plates. [design px]"""
ZIGZAG = 16.0
"""Height of a zig-zag. [design px]"""


def body_height(sheet: Sheet, pitch: Pitch) -> float:
    """Return the height of a box. [px]"""
    return (32 if pitch.roomy else 26) * sheet.unit


def lie(
    run: Run,
    left: float,
    right: float,
    y: float,
    sheet: Sheet,
    pitch: Pitch,
    *,
    first: bool = False,
    above: bool = False,
) -> list[Symbol]:
    """Return the symbols of a run that lies in a row, from left to right.

    In the ``first`` column a joined pair is a little wider than a single box. Names stand
    ``above`` the boxes where the pitch is roomy, or where asked.
    """
    count = len(run.steps)
    if count == 0:
        return []
    joint = JOINT * sheet.unit
    over = OVERHANG * sheet.unit if first and count > 1 else 0.0
    each = (right - left + 2 * over - joint * (count - 1)) / count
    height = body_height(sheet, pitch)
    face = SMALL_VALUE if run.joined else VALUE
    symbols = []
    for place, (step, ends) in enumerate(zip(run.steps, _ends(run), strict=True)):
        start = left - over + place * (each + joint)
        box = Rect(round(start), y - height / 2, round(each), height)
        over_box = above or pitch.roomy
        named = over_box or count == 1 or isinstance(step.part, Capacitor)
        symbols.append(_lying(step, ends, box, face, sheet, above=over_box, named=named))
    return symbols


def _ends(run: Run) -> list[tuple[NodeId, NodeId]]:
    nodes = (run.start.node, *run.between, run.end.node)
    return list(pairwise(nodes))


def _lying(
    step: Step, ends: tuple[NodeId, NodeId], box: Rect, face: Face, sheet: Sheet, *, above: bool, named: bool
) -> Symbol:
    unit, part = sheet.unit, step.part
    capacitor = isinstance(part, Capacitor)
    centre = box.centre
    body, value = box, Label(value_text(part), centre, face, Align.CENTRE, strong=True)
    if capacitor:
        body = Rect.around(centre, PLATES_APART * unit, PLATE * unit)
        value = Label(value_text(part), _beside(centre, 1, sheet), face, strong=True)
    elif sheet.zigzag:
        body = Rect.around(centre, box.width, ZIGZAG * unit)
        value = Label(value_text(part), centre.moved(0, 20 * unit), face, Align.CENTRE, strong=True)
    return Symbol(
        part.id,
        SymbolKind.CAPACITOR if capacitor else SymbolKind.RESISTOR,
        body,
        Point(body.left, centre.y),
        Point(body.right, centre.y),
        ends,
        step.flipped,
        vertical=False,
        value=value,
        name=_name(part.id, body, centre, sheet, capacitor=capacitor, above=above, named=named),
        bands=_bands(box, body, unit) if above and not capacitor and box.width > 90 * unit else None,
        field=box,
    )


def _beside(centre: Point, way: int, sheet: Sheet) -> Point:
    """Return where a text beside a lying capacitor begins, left (-1) or right (1) of it.

    It stands over the wire, but under it among zig-zags, whose values hang down from the row above.
    """
    return centre.moved(way * CLEAR * sheet.unit, (11 if sheet.zigzag else -11) * sheet.unit)


def _bands(box: Rect, body: Rect, unit: float) -> Rect:
    return Rect(box.right - 46 * unit, body.top - 18 * unit, 32 * unit, 11 * unit)


def _name(
    text: str, body: Rect, centre: Point, sheet: Sheet, *, capacitor: bool, above: bool, named: bool
) -> Label:
    unit = sheet.unit
    if not named or text == LOAD:
        text = ""
    if capacitor:
        return Label(text, _beside(centre, -1, sheet), NAME, Align.RIGHT)
    if above:
        return Label(text, Point(body.left + unit, body.top - 12.5 * unit), NAME)
    return Label(text, Point(body.right + 8 * unit, centre.y - 10 * unit), NAME)


def brace(
    symbols: list[Symbol], parts: list[Resistor | None], sheet: Sheet, pitch: Pitch
) -> tuple[Brace, Label] | None:
    """Return the bracket under resistors in series, and what they are together; none for other parts."""
    joined = [part for part in parts if part is not None]
    if len(symbols) < 2 or len(joined) < len(symbols):
        return None
    unit = sheet.unit
    foot = max(max(symbol.body.bottom, symbol.value.at.y + 6 * unit) for symbol in symbols) + 5 * unit
    ends = Point(symbols[0].body.left, foot), Point(symbols[-1].body.right, foot)
    together = format_quantity(sum(part.ohms for part in joined), "Ω")
    choices = (
        [f"together {together}"] if pitch.roomy else [f"{' + '.join(p.id for p in joined)} = {together}"]
    )
    choices += [f"{joined[0].id} … {joined[-1].id} = {together}", f"= {together}"]
    room = ends[1].x - ends[0].x + 24 * unit
    words = next((each for each in choices if sheet.measure(each, CAPTION) <= room), choices[-1])
    middle = Point((ends[0].x + ends[1].x) / 2, foot + 13 * unit)
    return Brace(*ends, drop=4 * unit), Label(words, middle, CAPTION, Align.CENTRE)


def hang(run: Run, x: float, top: float, bottom: float, sheet: Sheet, room: float) -> list[Symbol]:
    """Return the symbols of a run that hangs between two rows, from top to bottom."""
    unit, count = sheet.unit, len(run.steps)
    if count == 0:
        return []
    part = (bottom - top) / count
    tall = min(34 * unit, part - 20 * unit)
    symbols = []
    for place, (step, ends) in enumerate(zip(run.steps, _ends(run), strict=True)):
        centre = Point(x, round(top + (place + 0.5) * part))
        symbols.append(_hanging(step, ends, centre, tall, sheet, room))
    return symbols


def _hanging(
    step: Step, ends: tuple[NodeId, NodeId], centre: Point, tall: float, sheet: Sheet, room: float
) -> Symbol:
    unit, part = sheet.unit, step.part
    capacitor = isinstance(part, Capacitor)
    body = Rect.around(centre, 16 * unit, tall)
    if capacitor:
        body = Rect.around(centre, PLATE * unit, PLATES_APART * unit)
    name_at = centre.moved(body.width / 2 + 7 * unit)
    value_at = name_at.moved(sheet.measure(part.id, NAME) + 6 * unit)
    left = value_at.x - 5 * unit
    return Symbol(
        part.id,
        SymbolKind.CAPACITOR if capacitor else SymbolKind.RESISTOR,
        body,
        Point(centre.x, body.top),
        Point(centre.x, body.bottom),
        ends,
        step.flipped,
        vertical=True,
        value=Label(value_text(part), value_at, SMALL_VALUE, strong=True),
        name=Label(part.id, name_at, NAME),
        bands=None,
        field=Rect(
            left, centre.y - 13 * unit, min(max(room - (left - centre.x), 60 * unit), 96 * unit), 26 * unit
        ),
    )
