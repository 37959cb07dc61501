"""The part of a drawing that can be seen: what lies in a rectangle, or touches it."""

from dataclasses import replace

from workbench.drawing.elements import Drawing, Wire
from workbench.drawing.geometry import Rect

__all__ = ["clipped"]

TEXT_REACH = 240.0
"""How far a text may reach from its place to either side. [design px]"""
MARGIN = 24.0
"""How far signs, rings and names reach out of their symbols. [design px]"""


def clipped(drawing: Drawing, seen: Rect) -> Drawing:
    """Return a drawing with only the elements that may touch a rectangle.

    Sizes and blocks stay; what is painted inside the rectangle is the same.
    """
    unit = drawing.unit
    near, texts = seen.grown(MARGIN * unit), seen.grown(TEXT_REACH * unit, MARGIN * unit)
    return replace(
        drawing,
        symbols=tuple(s for s in drawing.symbols if s.hit.grown(60 * unit, MARGIN * unit).overlaps(near)),
        wires=tuple(wire for wire in drawing.wires if _touches(wire, near)),
        dots=tuple(dot for dot in drawing.dots if near.contains(dot)),
        crossings=tuple(c for c in drawing.crossings if near.contains(c.at)),
        grounds=tuple(ground for ground in drawing.grounds if near.contains(ground.at)),
        open_ends=tuple(end for end in drawing.open_ends if near.contains(end.at)),
        keys=tuple(key for key in drawing.keys if key.box.overlaps(near)),
        contacts=tuple(contact for contact in drawing.contacts if near.contains(contact.at)),
        labels=tuple(label for label in drawing.labels if texts.contains(label.at)),
        places=tuple(place for place in drawing.places if texts.contains(place.at)),
    )


def _touches(wire: Wire, near: Rect) -> bool:
    xs, ys = [point.x for point in wire.points], [point.y for point in wire.points]
    return Rect.between(min(xs) - 1, min(ys) - 1, max(xs) + 1, max(ys) + 1).overlaps(near)
