"""Where the card of an open field covers least of what its reader looks at."""

from itertools import product

from workbench.circuit.network import PartId
from workbench.drawing import H_SERIES, LOAD, V_SERIES, Drawing
from workbench.drawing.geometry import Rect
from workbench.gui.network.targets import Kind, Target, box_of

__all__ = ["card_place"]

USUAL_HEIGHT = 132.0
"""Height for which room is sought, so that a card that grows stays where it is. [design px]"""
GAP = 8.0
"""Between the card and what it keeps clear of. [design px]"""
AROUND = (LOAD, H_SERIES, V_SERIES)
PART_COST, AROUND_COST, VOLTS_COST, KEY_COST, ROW_COST = 3.0, 1.0, 4.0, 0.6, 0.4
"""What it costs to cover a part, one around the network, the volts, a pin; and to be a row away. [1]"""


def card_place(drawing: Drawing, part: PartId, field: Rect, size: tuple[float, float], seen: Rect) -> Rect:
    """Return the place of a card for the field of a part.

    Parameters
    ----------
    drawing : Drawing
        What lies under the card.
    part : PartId
        The part whose field is open.
    field : Rect
        The open field; the card never covers it where there is any other place.
    size : tuple of float
        Width and height of the card. [px]
    seen : Rect
        What can be seen of the drawing.
    """
    unit = drawing.unit
    gap, width, height = GAP * unit, size[0], max(size[1], USUAL_HEIGHT * unit)
    volts = box_of(drawing, Target(Kind.NODE, node=drawing.output))
    beside = max(drawing.exit.x + gap, field.right + gap)
    lefts = [beside, field.left, seen.right - width - 4]
    tops = [
        field.centre.y - 30 * unit,
        field.bottom + gap,
        field.top - gap - height,
        seen.bottom - height - 4,
    ]
    if volts is not None:
        tops += [volts.bottom + 2 * gap, volts.top - gap - height]
    places = [_inside(Rect(left, top, width, height), seen) for left, top in product(lefts, tops)]
    best = min(places, key=lambda place: _cost(drawing, part, field, volts, place))
    return Rect(best.left, best.top, *size)


def _inside(place: Rect, seen: Rect) -> Rect:
    left = max(seen.left + 4, min(place.left, seen.right - place.width - 4))
    top = max(seen.top + 4, min(place.top, seen.bottom - place.height - 4))
    return Rect(left, top, place.width, place.height)


def _cost(drawing: Drawing, part: PartId, field: Rect, volts: Rect | None, place: Rect) -> float:
    cost = 100.0 if place.overlaps(field.grown(4)) else 0.0
    for symbol in drawing.symbols:
        if symbol.part != part and place.overlaps(symbol.hit):
            cost += AROUND_COST if symbol.part in AROUND else PART_COST
    cost += KEY_COST * sum(place.overlaps(key.box) for key in drawing.keys)
    if volts is not None and place.overlaps(volts.grown(0, 10 * drawing.unit)):
        cost += VOLTS_COST
    off = max(place.top - field.centre.y, field.centre.y - place.bottom, 0.0)
    return cost + ROW_COST * off / drawing.pitch
