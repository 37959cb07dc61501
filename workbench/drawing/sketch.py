"""A drawing in the making: the layout, and the elements put down so far."""

from dataclasses import dataclass, field

from workbench.circuit.network import GROUND, NodeId
from workbench.drawing.elements import (
    Block,
    Brace,
    Contact,
    Ground,
    Key,
    Label,
    OpenEnd,
    Place,
    Symbol,
    Wire,
    WireRole,
)
from workbench.drawing.geometry import Point
from workbench.drawing.layout import Layout
from workbench.drawing.runs import Bus

__all__ = ["Sketch"]


@dataclass(slots=True)
class Sketch:
    """Collects the elements of a drawing."""

    layout: Layout
    symbols: list[Symbol] = field(default_factory=list)
    wires: list[Wire] = field(default_factory=list)
    grounds: list[Ground] = field(default_factory=list)
    open_ends: list[OpenEnd] = field(default_factory=list)
    keys: list[Key] = field(default_factory=list)
    contacts: list[Contact] = field(default_factory=list)
    blocks: list[Block] = field(default_factory=list)
    braces: list[Brace] = field(default_factory=list)
    labels: list[Label] = field(default_factory=list)
    places: list[Place] = field(default_factory=list)
    reach: dict[Bus, list[float]] = field(default_factory=dict)
    """Heights at which each bus is met. [px]"""

    @property
    def unit(self) -> float:
        """Return one design pixel. [px]"""
        return self.layout.sheet.unit

    def meet(self, bus: Bus, y: float) -> Point:
        """Return where a bus is met at a height, and let it reach there."""
        self.reach.setdefault(bus, []).append(y)
        return Point(self.layout.x(bus), y)

    def wire(
        self, node: NodeId, *points: Point, role: WireRole = WireRole.PLAIN, pin: int | None = None
    ) -> None:
        """Put down a wire; one without length is none."""
        if len(set(points)) < 2:
            return
        self.wires.append(Wire(node, points, role, pin))

    def ground(self, start: Point, x: float) -> None:
        """Put down a ground symbol at ``x``, with its wire from ``start``."""
        foot = Point(x, start.y + 10 * self.unit)
        self.wire(GROUND, start, Point(x, start.y), foot, role=WireRole.RETURN)
        self.grounds.append(Ground(foot))
