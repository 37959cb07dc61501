"""How much room there is beside a part, for a few words about it."""

from collections.abc import Iterator
from itertools import pairwise

from workbench.circuit.network import NodeId, PartId
from workbench.drawing.elements import Align, Drawing, Figure, Symbol
from workbench.drawing.geometry import Point, Rect

__all__ = ["SIGN", "badge_place", "note_place", "sign_place"]

LIFT = 10.0
"""How far over the wire the words stand. [design px]"""
AFTER = 13.0
"""Room that the sign on the part's corner takes. [design px]"""
UNDER = 13.0
"""How far under a part its badge stands. [design px]"""
SIGN = 15.0
"""Side of a sign at a node. [design px]"""
VOLTS = 86.0
"""Room of the output's volts. [design px]"""
BADGE_PITCH = 76.0
"""Row pitch from which a badge stands clear of the next row. [design px]"""


def note_place(drawing: Drawing, part: PartId) -> tuple[Point, float]:
    """Return where words beside a lying part begin, and how wide they may be. [px]

    They stand right of the sign on its upper right corner, over its wire. There is no room beside
    a part that hangs, nor where its name stands there.
    """
    symbol, unit = drawing.symbol(part), drawing.unit
    if symbol is None:
        return Point(0.0, 0.0), 0.0
    start = Point(symbol.body.right + AFTER * unit, symbol.body.centre.y - LIFT * unit)
    named_there = bool(symbol.name.text) and symbol.name.at.x > symbol.body.right
    if symbol.vertical or named_there:
        return start, 0.0
    right = symbol.body.right
    band = Rect(right, start.y - 6 * unit, drawing.width - right, 12 * unit)
    ends = [drawing.width, *_edges(drawing, symbol, band)]
    return start, max(0.0, min(ends) - start.x - 6 * unit)


def badge_place(drawing: Drawing, part: PartId) -> tuple[Point, float]:
    """Return where a badge under a lying resistor begins, and how wide it may be. [px]

    There is none in low rows, under a zig-zag's value, a joined pair's bracket, or where the
    output's volts stand.
    """
    symbol, unit = drawing.symbol(part), drawing.unit
    if symbol is None or symbol.vertical or drawing.zigzag or drawing.pitch < BADGE_PITCH * unit:
        return Point(0.0, 0.0), 0.0
    body = symbol.body
    start = Point(body.left, body.bottom + UNDER * unit)
    under = Rect(body.left, start.y - 8 * unit, body.width, 16 * unit)
    taken = [
        Rect.between(o.hit.left, o.body.top - 20 * unit, o.hit.right, o.hit.bottom) for o in drawing.symbols
    ]
    taken += [Rect(b.left.x, b.left.y, b.right.x - b.left.x, 20 * unit) for b in drawing.braces]
    if body.left >= drawing.exit.x or any(
        box.overlaps(under) for box in taken if not box.contains(body.centre)
    ):
        return start, 0.0
    band = Rect(body.right, under.top, drawing.width - body.right, under.height)
    return start, max(0.0, min([drawing.width, *_edges(drawing, symbol, band)]) - start.x - 6 * unit)


def sign_place(drawing: Drawing, node: NodeId) -> Point | None:
    """Return the middle of a sign about a node: over its wire, clear of the output's volts.

    Where the output leaves through a resistor, whose box stands over the wire, the sign of the output is
    left of the volts.
    """
    unit, half = drawing.unit, SIGN * drawing.unit / 2
    volts = drawing.place(Figure.LOADED)
    if node != drawing.output or volts is None:
        spot = drawing.spot(node)
        return spot.moved(7 * unit + half, -0.8 * 2 * half) if spot is not None else None
    if volts.align is Align.RIGHT:
        return volts.at.moved(-VOLTS * unit - half)
    return drawing.exit.moved(7 * unit + half, -7 * unit - half)


def _edges(drawing: Drawing, symbol: Symbol, band: Rect) -> Iterator[float]:
    """Yield where what lies in a band right of a part begins."""
    boxes = [other.hit for other in drawing.symbols if other is not symbol]
    boxes += [block.box for block in drawing.blocks]
    marks = [other.name.at for other in drawing.symbols if other.name.text]
    marks += [label.at for label in drawing.labels] + [place.at for place in drawing.places]
    marks += [end.at.moved(-8 * drawing.unit) for end in drawing.open_ends]
    boxes += [Rect.around(at, 1, 16 * drawing.unit) for at in marks]
    for wire in drawing.wires:
        for a, b in pairwise(wire.points):
            line = Rect.between(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x) + 0.1, max(a.y, b.y) + 0.1)
            # A bus that begins on the part's own wire ends the words too, so they never stand past it.
            boxes.append(line.grown(0.0, 12 * drawing.unit) if a.x == b.x else line)
    yield from (box.left for box in boxes if box.left > symbol.body.right - 1 and box.overlaps(band))
