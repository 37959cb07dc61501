"""Joints of wires: dots where three meet, breaks where two cross, and a wire cut at its breaks."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from workbench.drawing.elements import Crossing, Drawing, Wire
from workbench.drawing.geometry import Point

__all__ = ["BREAK", "find_crossings", "find_dots", "pieces"]

BREAK = 5.0
"""Length of the gap on each side of a crossing wire. [design px]"""

Segment = tuple[Point, Point]


def _segments(wire: Wire) -> Iterator[Segment]:
    for a, b in pairwise(wire.points):
        if a != b:
            yield a, b


def _upright(segment: Segment) -> bool:
    return segment[0].x == segment[1].x


def _inside(place: float, one: float, other: float) -> bool:
    return min(one, other) < place < max(one, other)


def find_crossings(wires: Iterable[Wire]) -> tuple[Crossing, ...]:
    """Return where wires of different nodes pass each other."""
    level: list[tuple[Wire, Segment]] = []
    upright: list[tuple[Wire, Segment]] = []
    for wire in wires:
        for segment in _segments(wire):
            (upright if _upright(segment) else level).append((wire, segment))
    found = {
        Point(v[0].x, h[0].y)
        for across, h in level
        for along, v in upright
        if across.node != along.node and _inside(v[0].x, h[0].x, h[1].x) and _inside(h[0].y, v[0].y, v[1].y)
    }
    return tuple(Crossing(point) for point in sorted(found))


def find_dots(wires: Iterable[Wire]) -> tuple[Point, ...]:
    """Return where wires of one node leave a point in three or more directions."""
    by_node: dict[str, list[Segment]] = {}
    for wire in wires:
        by_node.setdefault(wire.node, []).extend(_segments(wire))
    dots: list[Point] = []
    for segments in by_node.values():
        corners = dict.fromkeys(point for segment in segments for point in segment)
        dots += [point for point in corners if _ways(point, segments) > 2]
    return tuple(dots)


def _ways(point: Point, segments: list[Segment]) -> int:
    """Return in how many directions wires leave a point."""
    ways: set[tuple[int, int]] = set()
    for a, b in segments:
        if not _on(point, a, b):
            continue
        for end in (a, b):
            if end != point:
                ways.add((_sign(end.x - point.x), _sign(end.y - point.y)))
    return len(ways)


def _on(point: Point, a: Point, b: Point) -> bool:
    across = min(a.x, b.x) <= point.x <= max(a.x, b.x)
    return across and min(a.y, b.y) <= point.y <= max(a.y, b.y)


def _sign(value: float) -> int:
    return (value > 0) - (value < 0)


def pieces(wire: Wire, drawing: Drawing) -> list[tuple[Point, ...]]:
    """Return a wire as it is painted: broken where another one crosses its upright parts."""
    gap = BREAK * drawing.unit
    lines: list[list[Point]] = [[wire.points[0]]]
    for a, b in pairwise(wire.points):
        if a.x == b.x:
            down = 1 if b.y > a.y else -1
            at = [c.at for c in drawing.crossings if c.at.x == a.x and _inside(c.at.y, a.y, b.y)]
            for point in sorted(at, key=lambda p: p.y * down):
                lines[-1].append(Point(a.x, point.y - down * gap))
                lines.append([Point(a.x, point.y + down * gap)])
        lines[-1].append(b)
    return [tuple(line) for line in lines]
