"""The drawing under the pointer: chosen, typed into, stepped, joined and named."""

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QHideEvent, QMouseEvent, QPainter, QWheelEvent
from PySide6.QtWidgets import QWidget

from workbench.circuit.network import GROUND, NodeId, PartId
from workbench.drawing import LOAD, Drawing
from workbench.drawing.geometry import Point, Rect
from workbench.drawing.node_names import name_boxes
from workbench.drawing.spots import node_at
from workbench.gui.bench import Bench
from workbench.gui.network.echo_card import EchoCard
from workbench.gui.network.entry import Entry
from workbench.gui.network.field import ValueField, pace_of
from workbench.gui.network.naming import Naming
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.targets import Kind, Target, box_of
from workbench.gui.network.values import Pace, Value, find_value
from workbench.gui.network.view import DrawingView
from workbench.gui.network.wiring.connecting import REACH, Connecting
from workbench.gui.network.wiring.paint_lead import paint_handles, paint_hint, paint_lead
from workbench.project.edits.connecting import End
from workbench.project.edits.networks import parts_of

__all__ = ["BODIES", "PointedView"]

BODIES = (Kind.CONTROLLER, Kind.SCREEN, Kind.CABLE, Kind.SOCKET)
"""What a click or Enter opens a card for."""
HANDS = (Kind.PIN, Kind.PART, Kind.MONITOR, *BODIES)
"""What the pointer is a hand on."""


class PointedView(DrawingView):
    """The drawing with the pointer on it; edits go to the session."""

    menu_asked = Signal(object, QPoint)
    """A target, and where a menu for it is wanted on the screen."""
    target_changed = Signal()
    """The keys are on something else."""
    card_asked = Signal(object)
    """The target whose card is wanted."""
    zoom_asked = Signal(int, QPointF)
    """One step larger (1) or smaller (-1), about a place."""

    def __init__(self, bench: Bench, pins: PinKeys, parent: QWidget | None = None) -> None:
        super().__init__(bench, pins, parent)
        self._pressed: tuple[Target, bool] | None = None
        self._names: tuple[Drawing | None, dict[NodeId, Rect]] = (None, {})
        self.entry = Entry(bench, self, self._inks_at(1.0))
        self.entry.place(self.drawing)
        self.entry.closed.connect(self._after_field)
        self.drawn.connect(lambda: self.entry.place(self.drawing))
        self.connecting = Connecting(bench, lambda: self.drawing, self)
        self.connecting.changed.connect(self.update)
        self.connecting.joined.connect(self._after_join)
        self.naming = Naming(bench, self)
        self.naming.field.left.connect(self._after_field)
        self.setMouseTracking(True)
        # Over a child the drawing sees no pointer, so what lies under the child is not pointed at.
        for child in (self.entry.field, self.entry.card, self.naming.field):
            child.installEventFilter(self)
        bench.view.changed.connect(self._on_view)

    def restyle(self) -> None:
        """Take colours and sizes again."""
        super().restyle()
        self.entry.card.take_inks(self._inks_at(1.0))

    # What is chosen

    def go_to(self, target: Target | None) -> None:
        """Put the keys on a target, and choose it if it is a part."""
        if target != self._target:
            self._target = target
            self.entry.end_burst()
            self._describe()
            self.target_changed.emit()
        part = target.part if target is not None else None
        if target is None or part is not None:
            self._bench.view.choose(part)
        self.update()

    def _on_view(self) -> None:
        self._layout()
        chosen = self._bench.view.chosen
        if chosen is not None and (self._target is None or self._target.part != chosen):
            self.go_to(next((t for t in self._targets if t.part == chosen), self._target))

    def chosen_value(self) -> Value | None:
        """Return the value of the chosen part."""
        part = self._bench.view.chosen
        return find_value(self._result.project, self.channel, part) if part is not None else None

    # Typing and stepping

    @property
    def field(self) -> ValueField:
        """The field in a part's box."""
        return self.entry.field

    @property
    def card(self) -> EchoCard:
        """The card beside the field."""
        return self.entry.card

    def edit(self, part: PartId | None = None, text: str | None = None) -> None:
        """Open the field of a part, of the chosen one if none is named."""
        part = part if part is not None else self._bench.view.chosen
        if part is not None:
            self._bench.view.choose(part)
            self.entry.open(part, text)
            self._edited = part if self.field.value is not None else None
            self.update()

    def rename(self, target: Target | None = None) -> None:
        """Open the field for the name of a target, of the one the keys are on if none is named."""
        self._bench.live.refresh()
        self.naming.open(target or self._target, self.drawing)

    def step(self, steps: int, pace: Pace) -> None:
        """Step the chosen part's value, live; a burst of steps is one step of the history."""
        self.entry.step(steps, pace)

    def _after_join(self, part: PartId | None, new: bool) -> None:
        """Choose the part that was joined; a new one is typed into at once, as part of the same step."""
        if part is None:
            return
        self._bench.view.choose(part)
        if new:
            self.entry.open(part, fresh=True)
            self._edited = self._made = part if self.field.value is not None else None
            self.update()

    def _after_field(self) -> None:
        self._edited = self._made = None
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.update()

    # The pointer

    def _under(self, place: QPointF) -> Target | None:
        return self.target_at(place.x(), place.y())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        target = self._under(event.position())
        if event.button() is not Qt.MouseButton.LeftButton:
            self.go_to(target if target is not None else self._target)
            return
        self.connecting.leave()
        chosen = self._bench.view.chosen
        self.connecting.press(_point(event), chosen)
        again = target is not None and target.part is not None and target.part == chosen
        self._pressed = (target, again) if target is not None else None
        if target is None or target.kind is not Kind.NAME:
            self.go_to(target)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        pressed, self._pressed = self._pressed, None
        if event.button() is not Qt.MouseButton.LeftButton or self.connecting.release():
            self._point(self._under(event.position()))
            return
        if pressed is not None:
            self._click(*pressed)

    def _click(self, target: Target, again: bool) -> None:
        """Do what a press that became no drag means; ``again`` if the part was chosen before."""
        if target.kind is Kind.PIN and target.pin is not None:
            self._pins.toggle(self.channel, self._result, target.pin)
        elif target.kind is Kind.NAME:
            self.rename(target)
        elif target.kind in BODIES:
            self.card_asked.emit(target)
        elif again and target.part is not None:
            self.edit(target.part)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self.mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton and self.connecting.drag(_point(event)):
            self._pressed = None
            self.setCursor(Qt.CursorShape.CrossCursor)
            return
        self._point(self._under(event.position()), _point(event))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.Enter, QEvent.Type.Show):
            self._point(None)
        return super().eventFilter(watched, event)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._point(None)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._point(None)

    def _point(self, target: Target | None, at: Point | None = None) -> None:
        self.setCursor(self._cursor(target, at))
        if target == self._hover and (target is not None or self._bench.view.pointed is None):
            return
        self._hover = target
        self.entry.end_burst()
        self._bench.view.point(target.part if target is not None else None)
        self.update()

    def _cursor(self, target: Target | None, at: Point | None) -> Qt.CursorShape:
        if target is not None and target.kind is Kind.NAME:
            return Qt.CursorShape.IBeamCursor
        if target is not None and target.part is not None and target.part == self._bench.view.chosen:
            return Qt.CursorShape.IBeamCursor
        if target is not None and target.kind in HANDS[:3]:
            return Qt.CursorShape.PointingHandCursor
        if at is not None and node_at(self._drawing, at, REACH * self._drawing.unit) is not None:
            return Qt.CursorShape.CrossCursor
        hand = target is not None and target.kind in HANDS
        return Qt.CursorShape.PointingHandCursor if hand else Qt.CursorShape.ArrowCursor

    def wheelEvent(self, event: QWheelEvent) -> None:
        target = self._under(event.position())
        chosen = self._bench.view.chosen
        turn = event.angleDelta().y() or event.angleDelta().x()
        if chosen is None or target is None or target.part != chosen or not turn:
            if turn and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
                self.zoom_asked.emit(1 if turn > 0 else -1, event.position())
                event.accept()
            else:
                event.ignore()
            return
        self.step(1 if turn > 0 else -1, pace_of(event.modifiers()))
        event.accept()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        keyboard = event.reason() is QContextMenuEvent.Reason.Keyboard
        target, place = self._target, event.globalPos()
        if not keyboard:
            target = self._under(QPointF(event.pos()))
        elif target is not None and (box := box_of(self._drawing, target)) is not None:
            place = self.mapToGlobal(QPoint(round(box.left), round(box.bottom)))
        self.menu_asked.emit(target, place)

    def paint_over(self, painter: QPainter) -> None:
        """Paint the ends of the chosen part, and what is being joined."""
        chosen = self._bench.view.chosen
        symbol = self._drawing.symbol(chosen) if chosen not in (None, LOAD) else None
        lead = self.connecting.lead
        if lead is not None:
            paint_lead(painter, self._drawing, lead, self._node_names(), self._inks)
            paint_hint(painter, lead, self._inks_at(1.0), self._seen_of_it(), by_keys=self.connecting.by_keys)
        elif symbol is not None and chosen in self._own_parts and self._edited is None:
            end = self._end_here()
            paint_handles(painter, symbol, self._inks, here=end[0] if end is not None else None)

    def _end_here(self) -> tuple[End, NodeId] | None:
        """Return the end of the chosen part that counts as here, and its node.

        It is the end that is no pin and not ground; of two such ends the second one, which leads on.
        """
        network, chosen = self._result.project.channels[self.channel], self._bench.view.chosen
        part = next((part for part in parts_of(network) if part.id == chosen), None)
        if part is None:
            return None
        ends = [(end, end.node(part)) for end in (End.B, End.A)]
        inner = (each for each in ends if each[1] not in (*network.pins, GROUND))
        return next(inner, next((each for each in ends if each[1] != GROUND), ends[0]))

    def _node_names(self) -> dict[NodeId, Rect]:
        """Return where the names of the nodes stand, worked out once for a drawing."""
        if self._names[0] is not self._drawing:
            self._names = self._drawing, name_boxes(self._drawing, self._inks.measure)
        return self._names[1]

    def _seen_of_it(self) -> Rect:
        """Return what can be seen of the drawing in its pane."""
        seen = self.visibleRegion().boundingRect()
        return Rect(seen.x(), seen.y(), seen.width(), seen.height())

    @property
    def _own_parts(self) -> set[PartId]:
        network = self._result.project.channels[self.channel]
        return {part.id for part in parts_of(network)}


def _point(event: QMouseEvent) -> Point:
    return Point(event.position().x(), event.position().y())
