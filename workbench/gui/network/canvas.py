"""The drawing of one channel: painted, pointed at, stepped and typed into."""

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QFocusEvent, QKeyEvent, QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from workbench.circuit.network import PartId
from workbench.gui.bench import Bench
from workbench.gui.network.echo_card import EchoCard
from workbench.gui.network.entry import Entry
from workbench.gui.network.field import ValueField, pace_of
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.shown import PinState
from workbench.gui.network.targets import Kind, Target, box_of, towards
from workbench.gui.network.values import Pace, Value, find_value
from workbench.gui.network.view import DrawingView

__all__ = ["Canvas"]

TYPED = "0123456789.,"
"""What opens the field of the chosen part when it is typed."""
ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
    Qt.Key.Key_PageUp: (0, -1),
    Qt.Key.Key_PageDown: (0, 1),
}

HELP = (
    "The network between the pins and the monitor. Tab visits pins, parts, node, connector and "
    "monitor. On a pin: 1, 0, F or Space. On a part: type a value, Enter opens its field, "
    "↑ and ↓ step it through the series (Shift coarser, Ctrl by 1 %), Delete removes it."
)


class Canvas(DrawingView):
    """The drawing with pointer and keys; edits go to the session."""

    menu_asked = Signal(object, QPoint)
    """A target, and where a menu for it is wanted on the screen."""
    target_changed = Signal()
    """The keys are on something else."""

    def __init__(self, bench: Bench, pins: PinKeys, parent: QWidget | None = None) -> None:
        super().__init__(bench, pins, parent)
        self.entry = Entry(bench, self, self._inks)
        self.entry.place(self.drawing)
        self.entry.closed.connect(self._after_field)
        self.entry.moved_on.connect(self._move_on)
        self.drawn.connect(lambda: self.entry.place(self.drawing))
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Network drawing")
        self.setWhatsThis(HELP)
        bench.view.changed.connect(self._on_view)

    def restyle(self) -> None:
        """Take colours and sizes again."""
        super().restyle()
        self.entry.card.take_inks(self._inks)

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

    def step(self, steps: int, pace: Pace) -> None:
        """Step the chosen part's value, live; a burst of steps is one step of the history."""
        self.entry.step(steps, pace)

    def _after_field(self) -> None:
        self._edited = None
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.update()

    def _move_on(self, way: int) -> None:
        self._bench.live.refresh()
        self._step_target(way)
        self.edit()

    # Keys and pointer

    def _step_target(self, way: int) -> bool:
        places = len(self._targets)
        here = self._targets.index(self._target) if self._target in self._targets else None
        after = (0 if way > 0 else places - 1) if here is None else here + way
        if not 0 <= after < places:
            return False
        self.go_to(self._targets[after])
        return True

    def focusNextPrevChild(self, forward: bool) -> bool:
        if self._step_target(1 if forward else -1):
            return True
        return super().focusNextPrevChild(forward)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if event.reason() == Qt.FocusReason.TabFocusReason:
            self._target = None
            self._step_target(1)
        elif event.reason() == Qt.FocusReason.BacktabFocusReason:
            self._target = None
            self._step_target(-1)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.entry.end_burst()
        self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        target, key = self._target, event.key()
        if target is not None and target.kind is Kind.PIN and self._pin_key(event, target):
            return
        if target is not None and target.part is not None and self._part_key(event):
            return
        if key in ARROWS and target is not None:
            onward = towards(self._drawing, self._targets, target, *ARROWS[Qt.Key(key)])
            if onward is not None:
                self.go_to(onward)
            return
        if key == Qt.Key.Key_Escape and (target is not None or self._bench.view.chosen is not None):
            self.go_to(None)
            return
        super().keyPressEvent(event)

    def _pin_key(self, event: QKeyEvent, target: Target) -> bool:
        states = {"1": PinState.HIGH, "0": PinState.LOW, "f": PinState.FLOATING, "F": PinState.FLOATING}
        if target.pin is None:
            return False
        if event.key() in (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._pins.toggle(self.channel, self._result, target.pin)
        elif event.text() in states:
            self._pins.force(self.channel, self._result, target.pin, states[event.text()])
        else:
            return False
        return True

    def _part_key(self, event: QKeyEvent) -> bool:
        key = event.key()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_F2):
            self.edit()
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.step(1 if key == Qt.Key.Key_Up else -1, pace_of(event.modifiers()))
        elif event.text() and event.text() in TYPED:
            self.edit(text=event.text())
        else:
            return False
        return True

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down) and not event.isAutoRepeat():
            self.entry.end_burst()
        super().keyReleaseEvent(event)

    def _under(self, place: QPointF) -> Target | None:
        return self.target_at(place.x(), place.y())

    def mousePressEvent(self, event: QMouseEvent) -> None:
        target = self._under(event.position())
        if event.button() is not Qt.MouseButton.LeftButton:
            self.go_to(target if target is not None else self._target)
            return
        if target is not None and target.kind is Kind.PIN and target.pin is not None:
            self.go_to(target)
            self._pins.toggle(self.channel, self._result, target.pin)
        elif target is not None and target.part is not None and target.part == self._bench.view.chosen:
            self.edit(target.part)
        else:
            self.go_to(target)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self.mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._point(self._under(event.position()))

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._point(None)

    def _point(self, target: Target | None) -> None:
        if target == self._hover:
            return
        self._hover = target
        self.entry.end_burst()
        part = target.part if target is not None else None
        self._bench.view.point(part)
        shape = Qt.CursorShape.ArrowCursor
        if target is not None and target.kind in (Kind.PIN, Kind.PART, Kind.MONITOR):
            shape = Qt.CursorShape.PointingHandCursor
            if part is not None and part == self._bench.view.chosen:
                shape = Qt.CursorShape.IBeamCursor
        self.setCursor(shape)
        self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        target = self._under(event.position())
        chosen = self._bench.view.chosen
        turn = event.angleDelta().y() or event.angleDelta().x()
        if chosen is None or target is None or target.part != chosen or not turn:
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
