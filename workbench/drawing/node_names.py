"""Where the names of the nodes stand while they are asked for: beside their spots, on as little as can be."""

from collections.abc import Iterator
from itertools import product

from workbench.circuit.network import NodeId
from workbench.drawing.elements import Align, Drawing, Figure, Label
from workbench.drawing.faces import Face, Measure
from workbench.drawing.geometry import Point, Rect

__all__ = ["NODE_NAME", "name_boxes"]

NODE_NAME = Face(mono=True, size=0.86, weight=500)
HIGH = 16.0
"""Height of a name's box. [design px]"""
PAD = 8.0
"""Room beside the name in its box. [design px]"""
ASIDE = (10.0, 30.0, 58.0)
"""How far beside a spot its name may begin. [design px]"""
APART = (8.0, 19.0, 34.0)
"""How far over or under a spot its name may stand. [design px]"""
WIDEST = {
    Figure.LEG_AMPS: "00.000 mA",
    Figure.PIN_VOLTS: "0.00 V",
    Figure.SYNC_VOLTS: "0.00 V",
    Figure.LOADED: "0.000 V",
    Figure.OPEN: "0.000 V",
    Figure.NODE_VOLTS: "0.000 V",
    Figure.LOAD_AMPS: "00.000 mA",
}


def name_boxes(drawing: Drawing, measure: Measure) -> dict[NodeId, Rect]:
    """Return a box for each node's name; it covers no figure, name or part where there is any other place."""
    unit, taken = drawing.unit, list(_taken(drawing, measure))
    boxes: dict[NodeId, Rect] = {}
    for spot in drawing.spots:
        width, high = measure(spot.node, NODE_NAME) + PAD * unit, HIGH * unit
        places = list(_places(spot.at, width, high, unit))
        best = min(places, key=lambda box: (_covered(box, taken, drawing), places.index(box)))
        boxes[spot.node] = best
        taken.append(best)
    return boxes


def _places(spot: Point, width: float, high: float, unit: float) -> Iterator[Rect]:
    """Yield places around a spot, near ones first."""
    lefts = [left for aside in ASIDE for left in (-aside * unit - width, aside * unit)]
    tops = [top for apart in APART for top in (-apart * unit - high, apart * unit)]
    for top, left in product(tops, [*lefts, -width / 2]):
        yield Rect(spot.x + left, spot.y + top, width, high)


def _covered(box: Rect, taken: list[Rect], drawing: Drawing) -> int:
    """Return how much a box lies on, and whether it leaves the sheet. [1]"""
    outside = box.left < 0 or box.top < 0 or box.right > drawing.width or box.bottom > drawing.height
    return 5 * outside + sum(box.overlaps(other) for other in taken)


def _taken(drawing: Drawing, measure: Measure) -> Iterator[Rect]:
    """Yield what a name shall not cover."""
    yield from (symbol.hit for symbol in drawing.symbols)
    yield from (key.box for key in drawing.keys)
    labels = [label for symbol in drawing.symbols for label in (symbol.name, symbol.value)]
    for label in (*labels, *drawing.labels):
        if label.text:
            yield _room(label, measure, drawing.unit)
    for place in drawing.places:
        if place.figure in WIDEST:
            text = Label(WIDEST[place.figure], place.at, place.face, place.align)
            yield _room(text, measure, drawing.unit)


def _room(label: Label, measure: Measure, unit: float) -> Rect:
    """Return the room of a text."""
    width, high = measure(label.text, label.face), label.face.size * 14.0 * unit
    left = label.at.x - {Align.LEFT: 0.0, Align.CENTRE: width / 2, Align.RIGHT: width}[label.align]
    return Rect(left, label.at.y - high / 2, width, high)
