"""What can be pointed at in a drawing, in what order the keys visit it, and what lies where."""

from dataclasses import dataclass
from enum import Enum

from workbench.circuit.network import GROUND, NodeId, PartId
from workbench.drawing import H_SERIES, LOAD, V_SERIES, Drawing
from workbench.drawing.elements import Align, BlockKind, Figure, WireRole
from workbench.drawing.geometry import Point, Rect

__all__ = [
    "CABLE",
    "CONTROLLER",
    "MONITOR",
    "SCREEN",
    "SOCKET",
    "Kind",
    "Target",
    "box_of",
    "in_order",
    "name_box",
    "target_at",
    "towards",
]

NEAR_BUS = 9.0
"""How near to a bus the pointer is on it. [design px]"""


class Kind(Enum):
    """What a target is."""

    PIN = "pin"
    PART = "part"
    NODE = "node"
    SOCKET = "socket"
    MONITOR = "monitor"
    """Its termination."""
    SCREEN = "screen"
    """The monitor itself."""
    CABLE = "cable"
    CONTROLLER = "controller"
    NAME = "name"
    """What the controller's pin is called: of a colour pin, or of a sync line's part."""


@dataclass(frozen=True, slots=True)
class Target:
    """One thing of a drawing that can have the focus."""

    kind: Kind
    pin: int | None = None
    part: PartId | None = None
    node: NodeId | None = None


SOCKET = Target(Kind.SOCKET)
MONITOR = Target(Kind.MONITOR, part=LOAD)
SCREEN = Target(Kind.SCREEN)
CABLE = Target(Kind.CABLE)
CONTROLLER = Target(Kind.CONTROLLER)
BODIES = (
    (BlockKind.SOCKET, SOCKET),
    (BlockKind.CABLE, CABLE),
    (BlockKind.MONITOR, SCREEN),
    (BlockKind.CONTROLLER, CONTROLLER),
)
"""Bodies around the network, and what pointing at them means."""


def in_order(drawing: Drawing, output: NodeId) -> tuple[Target, ...]:
    """Return the targets as Tab visits them: pins, parts, nodes, then what stands around them."""
    pins = sorted(drawing.keys, key=lambda key: key.box.top)
    parts = [symbol for symbol in drawing.symbols if symbol.part != LOAD]
    parts.sort(key=lambda symbol: (symbol.body.centre.y, symbol.body.left))
    found = [Target(Kind.PIN, pin=key.pin) for key in pins]
    found += [Target(Kind.PART, part=symbol.part) for symbol in parts]
    found.append(Target(Kind.NODE, node=output))
    known = {key.node for key in drawing.keys} | {output, GROUND}
    found += [Target(Kind.NODE, node=spot.node) for spot in drawing.spots if spot.node not in known]
    if drawing.block(BlockKind.SOCKET) is not None:
        found.append(SOCKET)
    if drawing.symbol(LOAD) is not None:
        found.append(MONITOR)
    found += [target for kind, target in BODIES[1:] if drawing.block(kind) is not None]
    return tuple(found)


def box_of(drawing: Drawing, target: Target) -> Rect | None:
    """Return the box of a target; none if it is not in this drawing."""
    if target.kind is Kind.PIN:
        return next((key.box for key in drawing.keys if key.pin == target.pin), None)
    if target.kind is Kind.NAME:
        return name_box(drawing, target)
    for kind, body in BODIES:
        if target == body:
            return drawing.block(kind)
    if target.kind is Kind.NODE:
        if target.node != drawing.output:
            at = drawing.spot(target.node) if target.node is not None else None
            return Rect.around(at, 20 * drawing.unit, 20 * drawing.unit) if at is not None else None
        place = drawing.place(Figure.LOADED)
        if place is None:
            return Rect.around(drawing.exit, 12 * drawing.unit, 12 * drawing.unit)
        unit = drawing.unit
        left = place.at.x - (86 if place.align is Align.RIGHT else 6) * unit
        return Rect(left, place.at.y - 13 * unit, 92 * unit, 48 * unit)
    symbol = drawing.symbol(target.part) if target.part is not None else None
    return symbol.hit if symbol is not None else None


def name_box(drawing: Drawing, target: Target) -> Rect | None:
    """Return where the name of a pin stands in the controller; none on a slim drawing."""
    body, unit = drawing.block(BlockKind.CONTROLLER), drawing.unit
    if body is None:
        return None
    right, y = body.right - 4 * unit, None
    if target.pin is not None:
        key = next((key for key in drawing.keys if key.pin == target.pin), None)
        right, y = (key.box.left - 4 * unit, key.at.y) if key is not None else (right, None)
    elif target.part is not None:
        symbol = drawing.symbol(target.part)
        y = symbol.a.y if symbol is not None else None
    left = body.left + 4 * unit
    return Rect(left, y - 12 * unit, right - left, 24 * unit) if y is not None else None


def _name_at(drawing: Drawing, point: Point) -> Target | None:
    names = [Target(Kind.NAME, pin=key.pin) for key in drawing.keys]
    names += [Target(Kind.NAME, part=part) for part in (H_SERIES, V_SERIES) if drawing.symbol(part)]
    for name in names:
        box = name_box(drawing, name)
        if box is not None and box.contains(point):
            return name
    return None


def target_at(drawing: Drawing, point: Point, output: NodeId) -> Target | None:
    """Return what lies at a place; small things win over what they lie on."""
    reach = 3 * drawing.unit
    for key in drawing.keys:
        if key.box.grown(reach).contains(point):
            return Target(Kind.PIN, pin=key.pin)
    for symbol in drawing.symbols:
        if symbol.hit.contains(point):
            return MONITOR if symbol.part == LOAD else Target(Kind.PART, part=symbol.part)
    node = _bus_at(drawing, point)
    if node is not None:
        return Target(Kind.NODE, node=node)
    place = box_of(drawing, Target(Kind.NODE, node=output))
    if place is not None and place.contains(point):
        return Target(Kind.NODE, node=output)
    if (name := _name_at(drawing, point)) is not None:
        return name
    for kind, target in BODIES:
        block = drawing.block(kind)
        if block is not None and block.contains(point):
            return target
    return None


def _bus_at(drawing: Drawing, point: Point) -> NodeId | None:
    """Return the node of the upright bus near a place."""
    reach = NEAR_BUS * drawing.unit
    for wire in drawing.wires:
        a, b = wire.points[0], wire.points[-1]
        if wire.role is WireRole.BUS and len(wire.points) == 2 and a.x == b.x:
            near = Rect.between(a.x, min(a.y, b.y), a.x, max(a.y, b.y)).grown(reach)
            if near.contains(point):
                return wire.node
    return None


def towards(drawing: Drawing, targets: tuple[Target, ...], start: Target, dx: int, dy: int) -> Target | None:
    """Return the nearest target in a direction; none if there is nothing that way."""
    here = box_of(drawing, start)
    if here is None:
        return None
    best: tuple[float, Target] | None = None
    for target in targets:
        box = box_of(drawing, target)
        # The controller lies around its pins: Tab gets there, arrows stay on what it holds.
        if box is None or target in (start, CONTROLLER):
            continue
        along = (box.centre.x - here.centre.x) * dx + (box.centre.y - here.centre.y) * dy
        aside = abs((box.centre.x - here.centre.x) * dy) + abs((box.centre.y - here.centre.y) * dx)
        if along > 1.0 and (best is None or along + 2 * aside < best[0]):
            best = (along + 2 * aside, target)
    return best[1] if best else None
