"""Where the nodes of a drawing are: for pointing at them, and for going from one to the next."""

from itertools import pairwise

from workbench.circuit.network import GROUND, NodeId
from workbench.drawing.elements import Drawing, Spot, Wire, WireRole
from workbench.drawing.geometry import Point

__all__ = ["find_spots", "node_at"]

SYNC = (WireRole.H_SYNC, WireRole.V_SYNC)


def node_at(drawing: Drawing, point: Point, reach: float) -> NodeId | None:
    """Return the node of what is nearest to a place: a wire, a ground symbol, a key.

    Parameters
    ----------
    drawing : Drawing
        The drawing; its sync lines are no part of the network and have no node here.
    point : Point
        The place.
    reach : float
        How far away a node may be. [px]
    """
    found: tuple[float, NodeId] | None = None
    for node, away in _distances(drawing, point):
        if away <= reach and (found is None or away < found[0]):
            found = away, node
    return found[1] if found else None


def find_spots(drawing: Drawing) -> tuple[Spot, ...]:
    """Return one spot for each node, from top to bottom and from left to right.

    A node is shown at its dot, else at a ring or a ground symbol, else at the middle of its longest
    piece of wire, a pin at its key.
    """
    wires: dict[NodeId, list[Wire]] = {}
    for wire in drawing.wires:
        if wire.role not in SYNC:
            wires.setdefault(wire.node, []).append(wire)
    marks = {ground.at: GROUND for ground in drawing.grounds[:1]}
    marks |= {end.at: end.node for end in drawing.open_ends}
    at = {node: point for point, node in reversed(marks.items())}
    at |= {key.node: key.at.moved(10 * drawing.unit) for key in reversed(drawing.keys) if key.node != GROUND}
    for node, here in wires.items():
        if node not in at:
            dots = _dots_on(here, drawing.dots)
            at[node] = dots[len(dots) // 2] if dots else _middle(here)
    spots = (Spot(node, point) for node, point in at.items())
    return tuple(sorted(spots, key=lambda spot: (spot.at.y, spot.at.x)))


def _dots_on(wires: list[Wire], dots: tuple[Point, ...]) -> list[Point]:
    """Return the dots at corners of wires: two that cross have none."""
    corners = {point for wire in wires for point in wire.points}
    return [dot for dot in dots if dot in corners]


def _distances(drawing: Drawing, point: Point) -> list[tuple[NodeId, float]]:
    found = [(wire.node, _away(point, wire)) for wire in drawing.wires if wire.role not in SYNC]
    symbol = 6 * drawing.unit
    found += [(GROUND, max(0.0, _apart(point, g.at.moved(dy=symbol)) - symbol)) for g in drawing.grounds]
    found += [(end.node, _apart(point, end.at)) for end in drawing.open_ends]
    return found + [(key.node, 0.0) for key in drawing.keys if key.box.contains(point)]


def _away(point: Point, wire: Wire) -> float:
    """Return how far a place is from the nearest piece of a wire. [px]"""
    places = (
        Point(_between(point.x, a.x, b.x), _between(point.y, a.y, b.y)) for a, b in pairwise(wire.points)
    )
    return min(_apart(point, place) for place in places)


def _between(value: float, one: float, other: float) -> float:
    return min(max(value, min(one, other)), max(one, other))


def _apart(one: Point, other: Point) -> float:
    return float(((one.x - other.x) ** 2 + (one.y - other.y) ** 2) ** 0.5)


def _middle(wires: list[Wire]) -> Point:
    pieces = [piece for wire in wires for piece in pairwise(wire.points)]
    a, b = max(pieces, key=lambda piece: _apart(*piece))
    return Point((a.x + b.x) / 2, (a.y + b.y) / 2)
