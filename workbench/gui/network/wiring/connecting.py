"""The gesture that joins: from a node to a node, or a part's end to another node."""

from collections.abc import Callable
from dataclasses import replace
from math import hypot

from PySide6.QtCore import QObject, Qt, Signal

from workbench.circuit.network import GROUND, NodeId, PartId
from workbench.drawing import Drawing
from workbench.drawing.elements import Spot, Symbol
from workbench.drawing.geometry import Point
from workbench.drawing.spots import node_at
from workbench.gui.bench import Bench
from workbench.gui.network.wiring.lead import Lead, carry_out, label, made_part
from workbench.project.edits.connecting import End, PartKind
from workbench.project.edits.networks import parts_of

__all__ = ["Connecting", "handles"]

REACH = 10.0
"""How far from a wire a press or a release still means its node. [design px]"""
SET_OUT = 6.0
"""How far the pointer goes before a press becomes a drag. [design px]"""
HANDLE = 9.0
"""Within what distance a press on the end of a chosen part takes hold of it. [design px]"""

ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
KINDS = {Qt.Key.Key_R: PartKind.RESISTOR, Qt.Key.Key_C: PartKind.CAPACITOR}


class Connecting(QObject):
    """Holds the lead while one is out; joining it is one edit of the session."""

    changed = Signal()
    """The lead is another one, or gone."""
    joined = Signal(object, bool)
    """The part that was put in or moved, and whether it is new."""

    def __init__(self, bench: Bench, drawing: Callable[[], Drawing], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bench, self._drawing = bench, drawing
        self._waiting: Lead | None = None
        self.lead: Lead | None = None
        """What is out; none while nothing is."""
        self.by_keys = False
        """Whether the keys lead it; then Enter joins, and letting go of a button does not."""

    # With the pointer

    def press(self, point: Point, chosen: PartId | None) -> bool:
        """Take hold of what is under a press; return whether a drag could begin there."""
        drawing = self._drawing()
        symbol = drawing.symbol(chosen) if chosen is not None else None
        for end, at in handles(symbol) if symbol is not None and self._own(chosen) else ():
            if hypot(at.x - point.x, at.y - point.y) <= HANDLE * drawing.unit:
                self._waiting = self._end_lead(symbol, end, point) if symbol is not None else None
                return True
        node = node_at(drawing, point, REACH * drawing.unit)
        self._waiting = None if node is None else Lead(node, point, point, node)
        return node is not None

    def drag(self, point: Point) -> bool:
        """Follow the pointer; return whether a lead is out."""
        unit = self._drawing().unit
        waiting = self._waiting
        if self.lead is None and waiting is not None:
            if hypot(point.x - waiting.tip.x, point.y - waiting.tip.y) < SET_OUT * unit:
                return False
            self.lead, self.by_keys = waiting, False
        if self.lead is None or self.by_keys:
            return False
        over = node_at(self._drawing(), point, REACH * unit)
        self._put(replace(self.lead, tip=point, over=over))
        return True

    def release(self) -> bool:
        """Join a lead that was dragged; return whether there was one."""
        self._waiting = None
        if self.lead is None or self.by_keys:
            return False
        self.join()
        return True

    # With the keys

    def begin(self, node: NodeId, kind: PartKind = PartKind.RESISTOR) -> None:
        """Start a lead at a node; the keys lead it from here."""
        at = self._spots().get(node)
        if at is not None:
            self.by_keys = True
            self._put(Lead(node, at, at, node, kind))

    def begin_end(self, part: PartId) -> None:
        """Take an end of a part: its second one first, the other one when asked again."""
        symbol = self._drawing().symbol(part)
        if symbol is None or not self._own(part):
            return
        before = self.lead.moved if self.lead is not None else None
        end = before[1].other if before is not None and before[0] == part else End.B
        self.by_keys = True
        at = dict(handles(symbol))[end]
        lead = self._end_lead(symbol, end, at)
        self._put(replace(lead, tip=at, over=_node(symbol, end)))

    def key(self, key: Qt.Key) -> bool:
        """Lead on by a key; return whether it meant something."""
        lead = self.lead
        if lead is None:
            return False
        if key == Qt.Key.Key_Escape:
            self.leave()
        elif key in KINDS:
            self._put(lead.turned(KINDS[key]))
        elif key == Qt.Key.Key_E and lead.moved and self.by_keys:
            self.begin_end(lead.moved[0])
        elif not self.by_keys:
            return True
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.join()
        elif key in ARROWS:
            self._go(self._towards(lead, *ARROWS[key]))
        elif key in (Qt.Key.Key_Tab, Qt.Key.Key_Backtab):
            self._go(self._next(lead, 1 if key == Qt.Key.Key_Tab else -1))
        elif key == Qt.Key.Key_G:
            self._go(next((spot for spot in self._drawing().spots if spot.node == GROUND), None))
        elif key == Qt.Key.Key_N:
            away = 40 * self._drawing().unit
            self._put(replace(lead, tip=lead.anchor.moved(away, away), over=None))
        return True

    # Either way

    def join(self) -> None:
        """Join the loose end where it is, if that does something."""
        lead = self.lead
        if lead is None or (lead.idle and self.by_keys and not lead.moved):
            return
        self.leave()
        if lead.idle:
            return
        channel, session = self._bench.view.channel, self._bench.session
        before = session.project
        merge = ("add", session.revision)
        if self._bench.apply(label(lead), lambda p: carry_out(lead, p, channel), merge=merge):
            self._bench.live.refresh()
            part = made_part(before, session.project, channel, lead)
            if lead.moved:
                session.release()
            self.joined.emit(part, not lead.moved)

    def leave(self) -> None:
        """Let go of the lead; nothing happens."""
        self._waiting = None
        if self.lead is not None:
            self.lead, self.by_keys = None, False
            self.changed.emit()

    def _put(self, lead: Lead) -> None:
        if lead != self.lead:
            self.lead = lead
            self.changed.emit()

    def _own(self, part: PartId | None) -> bool:
        network = self._bench.session.project.channels[self._bench.view.channel]
        return any(part == other.id for other in parts_of(network))

    def _end_lead(self, symbol: Symbol, end: End, point: Point) -> Lead:
        """Return the lead that moves one end; it hangs on the other one."""
        places = dict(handles(symbol))
        stays, far = _node(symbol, end.other), places[end.other]
        return Lead(stays, far, point, _node(symbol, end), moved=(symbol.part, end))

    def _spots(self) -> dict[NodeId, Point]:
        return {spot.node: spot.at for spot in self._drawing().spots}

    def _go(self, spot: Spot | None) -> None:
        if spot is not None and self.lead is not None:
            self._put(replace(self.lead, tip=spot.at, over=spot.node))

    def _towards(self, lead: Lead, dx: int, dy: int) -> Spot | None:
        """Return the nearest spot in a direction, one straight ahead before one aside."""
        best: tuple[float, Spot] | None = None
        for spot in self._drawing().spots:
            along = (spot.at.x - lead.tip.x) * dx + (spot.at.y - lead.tip.y) * dy
            aside = abs((spot.at.x - lead.tip.x) * dy) + abs((spot.at.y - lead.tip.y) * dx)
            if along > 1.0 and (best is None or along + 2 * aside < best[0]):
                best = along + 2 * aside, spot
        return best[1] if best else None

    def _next(self, lead: Lead, way: int) -> Spot | None:
        spots = self._drawing().spots
        here = next((i for i, spot in enumerate(spots) if spot.node == lead.over), -1 if way > 0 else 0)
        return spots[(here + way) % len(spots)] if spots else None


def handles(symbol: Symbol) -> tuple[tuple[End, Point], ...]:
    """Return where the ends of a part can be taken hold of: a little way out on their wires."""
    ends = (End.B, End.A) if symbol.flipped else (End.A, End.B)
    return (ends[0], symbol.a), (ends[1], symbol.b)


def _node(symbol: Symbol, end: End) -> NodeId:
    first = End.B if symbol.flipped else End.A
    return symbol.nodes[0] if end is first else symbol.nodes[1]
