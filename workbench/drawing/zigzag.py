"""The zig-zag of IEEE 315: six teeth over the length of the box it stands for."""

from workbench.drawing.elements import Symbol
from workbench.drawing.geometry import Point

__all__ = ["zigzag_points"]

TEETH = 6


def zigzag_points(symbol: Symbol) -> tuple[Point, ...]:
    """Return the corners of a resistor's zig-zag, from end to end."""
    a, b = symbol.a, symbol.b
    half = (symbol.body.width if symbol.vertical else symbol.body.height) / 2
    corners = [a]
    for tooth in range(2 * TEETH):
        part = (tooth + 0.5) / (2 * TEETH)
        side = half if tooth % 2 else -half
        if symbol.vertical:
            corners.append(Point(a.x + side, a.y + part * (b.y - a.y)))
        else:
            corners.append(Point(a.x + part * (b.x - a.x), a.y + side))
    return (*corners, b)
