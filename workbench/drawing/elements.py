"""What a drawing is made of; positions in pixels, nothing measured, no colour."""

from dataclasses import dataclass
from enum import Enum

from workbench.circuit.network import NodeId, PartId
from workbench.drawing.faces import Face
from workbench.drawing.geometry import Point, Rect

__all__ = [
    "Align",
    "Block",
    "BlockKind",
    "Brace",
    "Contact",
    "Crossing",
    "Drawing",
    "Figure",
    "Ground",
    "Key",
    "Label",
    "OpenEnd",
    "Place",
    "Spot",
    "Symbol",
    "SymbolKind",
    "Wire",
    "WireRole",
]


class SymbolKind(Enum):
    """How a part is drawn."""

    RESISTOR = "resistor"
    CAPACITOR = "capacitor"
    WIRE = "wire"
    """A place where a part may be put; now a plain wire."""


class Align(Enum):
    """Which point of a text is given."""

    LEFT = "left"
    CENTRE = "centre"
    RIGHT = "right"


@dataclass(frozen=True, slots=True)
class Label:
    """A text; ``at`` lies at half the height of its capitals."""

    text: str
    at: Point
    face: Face
    align: Align = Align.LEFT
    strong: bool = False
    """Whether it is drawn in the text colour, and not dim."""
    live: bool = False
    """Whether it only names a measured figure, so that a drawing without figures leaves it out."""


@dataclass(frozen=True, slots=True)
class Symbol:
    """A part."""

    part: PartId
    kind: SymbolKind
    body: Rect
    a: Point
    """Where the wire to its first end meets it: left, or above."""
    b: Point
    nodes: tuple[NodeId, NodeId]
    """Nodes at ``a`` and at ``b``."""
    flipped: bool
    """Whether ``a`` is the part's own end ``b``."""
    vertical: bool
    value: Label
    name: Label
    bands: Rect | None
    """Room for the colour code, where there is some."""
    field: Rect
    """Where its value is typed."""

    @property
    def hit(self) -> Rect:
        """Return where a pointer finds it: at least 20 px high."""
        wide = max(self.body.right, self.field.right) - min(self.body.left, self.field.left)
        left = min(self.body.left, self.field.left)
        both = Rect(left, self.body.top, wide, self.body.height)
        return both.grown(2, max(2.0, (20 - both.height) / 2))


class WireRole(Enum):
    """What a wire says by its weight and colour."""

    LEG = "leg"
    """Follows the state of a pin."""
    BUS = "bus"
    PLAIN = "plain"
    RETURN = "return"
    H_SYNC = "h sync"
    V_SYNC = "v sync"


@dataclass(frozen=True, slots=True)
class Wire:
    """A line of one node, corner by corner."""

    node: NodeId
    points: tuple[Point, ...]
    role: WireRole = WireRole.PLAIN
    pin: int | None = None
    """Pin whose state a leg shows."""


@dataclass(frozen=True, slots=True)
class Crossing:
    """Where an upright wire is broken because another one passes."""

    at: Point


@dataclass(frozen=True, slots=True)
class Ground:
    """A ground symbol; its wire ends at ``at``, its bars lie below."""

    at: Point


@dataclass(frozen=True, slots=True)
class OpenEnd:
    """A ring at a wire that leads nowhere."""

    at: Point
    node: NodeId


@dataclass(frozen=True, slots=True)
class Key:
    """The state key of a pin; its wire starts at ``at``."""

    pin: int
    node: NodeId
    box: Rect
    at: Point


@dataclass(frozen=True, slots=True)
class Contact:
    """A contact of the connector."""

    number: str
    at: Point
    radius: float
    role: WireRole


class BlockKind(Enum):
    """The bodies around the network."""

    CONTROLLER = "controller"
    SOCKET = "socket"
    CABLE = "cable"
    MONITOR = "monitor"
    PATCH = "patch"
    """The piece of screen that shows how light the colour is."""


@dataclass(frozen=True, slots=True)
class Block:
    """A body around the network."""

    kind: BlockKind
    box: Rect


@dataclass(frozen=True, slots=True)
class Brace:
    """A bracket under joined parts, open upward."""

    left: Point
    right: Point
    drop: float


class Figure(Enum):
    """What is written at a place once it is measured."""

    LEG_AMPS = "leg current"
    ARROW = "arrow of a leg"
    PIN_VOLTS = "pin volts"
    LOADED = "loaded volts"
    OPEN = "open volts"
    NODE_VOLTS = "node volts"
    LOAD_AMPS = "load current"
    LOAD_ARROW = "arrow of the load"
    SYNC_VOLTS = "sync volts"


@dataclass(frozen=True, slots=True)
class Place:
    """Room kept for a figure; an arrow points along its wire."""

    figure: Figure
    at: Point
    face: Face
    align: Align = Align.LEFT
    pin: int | None = None
    node: NodeId | None = None


@dataclass(frozen=True, slots=True)
class Spot:
    """The place where a node is best shown."""

    node: NodeId
    at: Point


@dataclass(frozen=True, slots=True)
class Drawing:
    """A network with all that is around it, ready to be painted."""

    width: float
    height: float
    unit: float
    """One design pixel: line weights and radii are written in it. [px]"""
    pitch: float
    """Distance of two rows. [px]"""
    zigzag: bool
    symbols: tuple[Symbol, ...]
    wires: tuple[Wire, ...]
    dots: tuple[Point, ...]
    crossings: tuple[Crossing, ...]
    grounds: tuple[Ground, ...]
    open_ends: tuple[OpenEnd, ...]
    keys: tuple[Key, ...]
    contacts: tuple[Contact, ...]
    blocks: tuple[Block, ...]
    braces: tuple[Brace, ...]
    labels: tuple[Label, ...]
    places: tuple[Place, ...]
    exit: Point
    """Where the output leaves the network's last bus."""
    output: NodeId
    """The node that leaves to the connector."""
    boxes: float = 0.0
    """Where the boxes of the first column begin. [px]"""
    spots: tuple[Spot, ...] = ()
    """One for each node, from top to bottom and from left to right."""

    def spot(self, node: NodeId) -> Point | None:
        """Return where a node is best shown."""
        return next((spot.at for spot in self.spots if spot.node == node), None)

    def symbol(self, part: PartId) -> Symbol | None:
        """Return the symbol of a part."""
        return next((symbol for symbol in self.symbols if symbol.part == part), None)

    def block(self, kind: BlockKind) -> Rect | None:
        """Return the box of a body."""
        return next((block.box for block in self.blocks if block.kind is kind), None)

    def place(self, figure: Figure, pin: int | None = None) -> Place | None:
        """Return the room kept for a figure."""
        return next((p for p in self.places if p.figure is figure and p.pin == pin), None)
