"""Reads the connections of a drawing back from its lines alone, as a person with a pencil would."""

from itertools import pairwise

from workbench.circuit.network import PartId
from workbench.drawing.board import H_SERIES, LOAD, V_SERIES
from workbench.drawing.elements import Drawing, Wire
from workbench.drawing.geometry import Point

AROUND = {H_SERIES, V_SERIES, LOAD}
"""Parts that stand around the network."""


class Netlist:
    """Which ends hang together, by a number for each set of joined wires."""

    def __init__(self, drawing: Drawing) -> None:
        self._wires = drawing.wires
        self._root = list(range(len(self._wires)))
        self._join_wires()
        self._ground = self._join_grounds([g.at for g in drawing.grounds])
        self.keys = {key.pin: self.at(key.at) for key in drawing.keys}
        self.output = self.at(drawing.contacts[len(drawing.contacts) - 2].at) if drawing.contacts else None
        self.parts: dict[PartId, tuple[int | None, int | None]] = {}
        for symbol in drawing.symbols:
            ends = (self.at(symbol.a), self.at(symbol.b))
            self.parts[symbol.part] = ends[::-1] if symbol.flipped else ends

    @property
    def ground(self) -> int | None:
        """The set that ground symbols hang on."""
        return None if self._ground is None else self._find(self._ground)

    def at(self, point: Point) -> int | None:
        """Return the set of wires that touch a point."""
        found = {self._find(i) for i, wire in enumerate(self._wires) if touches(wire, point)}
        assert len(found) <= 1, f"wires of several nodes meet at {point}"
        return found.pop() if found else None

    def _find(self, index: int) -> int:
        while self._root[index] != index:
            index = self._root[index]
        return index

    def _join_wires(self) -> None:
        for i, one in enumerate(self._wires):
            for j, other in enumerate(self._wires[:i]):
                ends = [p for p in (one.points[0], one.points[-1]) if touches(other, p)]
                ends += [p for p in (other.points[0], other.points[-1]) if touches(one, p)]
                if ends:
                    self._root[self._find(i)] = self._find(j)

    def _join_grounds(self, points: list[Point]) -> int | None:
        sets = [found for point in points if (found := self.at(point)) is not None]
        for found in sets[1:]:
            self._root[self._find(found)] = self._find(sets[0])
        return sets[0] if sets else None


def touches(wire: Wire, point: Point) -> bool:
    """Return whether a point lies on a wire."""
    return any(
        min(a.x, b.x) <= point.x <= max(a.x, b.x) and min(a.y, b.y) <= point.y <= max(a.y, b.y)
        for a, b in pairwise(wire.points)
    )
