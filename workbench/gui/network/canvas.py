"""The drawing with keys as well as pointer: everything on it can be reached and done by either."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QWidget

from workbench.circuit.network import NodeId
from workbench.gui.bench import Bench
from workbench.gui.network.field import pace_of
from workbench.gui.network.naming import can_rename
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.pointed import BODIES, PointedView
from workbench.gui.network.shown import PinState
from workbench.gui.network.targets import Kind, Target, towards
from workbench.gui.network.wiring.clipboard import holds_parts

__all__ = ["Canvas"]

TYPED = "0123456789.,+-−(∞nNiIwWrR"
"""What opens the field of the chosen part when it is typed: all that a value or a word for one begins with.

Whether it is a value is judged in the field, where the whole text can be seen.
"""
ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
    Qt.Key.Key_PageUp: (0, -1),
    Qt.Key.Key_PageDown: (0, 1),
}
ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)

HELP = (
    "The network between the pins and the monitor. Drag from a wire to another one to put a part between "
    "two nodes, from the end of the chosen part to move it. Tab visits pins, parts, nodes and what stands "
    "around. On a pin: 1, 0, F or Space; F2 names it. On a part: type a value, Enter or Backspace "
    "opens its field, ↑ and ↓ step it through the series (Shift coarser, Ctrl by 1 %), Delete removes it, "
    "E moves an end. A puts a part in from here: arrows choose the other node, Enter joins."
)


class Canvas(PointedView):
    """The drawing with pointer and keys; edits go to the session."""

    def __init__(self, bench: Bench, pins: PinKeys, parent: QWidget | None = None) -> None:
        super().__init__(bench, pins, parent)
        self.entry.moved_on.connect(self._move_on)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Network drawing")
        self.setWhatsThis(HELP)

    # Joining by keys

    def node_here(self) -> NodeId:
        """Return the node of what the keys are on: a node, a pin's, a part's marked end; else the output."""
        target, network = self._target, self._result.project.channels[self.channel]
        if target is not None and target.node is not None:
            return target.node
        if target is not None and target.pin is not None and target.pin < network.n_pins:
            return network.pins[target.pin]
        end = self._end_here()
        return network.output if end is None else end[1]

    def connect_from_here(self) -> None:
        """Start a part at the node that the keys are on."""
        self._bench.live.refresh()
        self.connecting.begin(self.node_here())

    def move_end(self) -> None:
        """Take the second end of the chosen part."""
        part = self._bench.view.chosen
        if part is not None:
            self._bench.live.refresh()
            self.connecting.begin_end(part)

    def _move_on(self, way: int) -> None:
        self._bench.live.refresh()
        self._step_target(way)
        self.edit()

    # Keys

    def _step_target(self, way: int) -> bool:
        places = len(self._targets)
        here = self._targets.index(self._target) if self._target in self._targets else None
        after = (0 if way > 0 else places - 1) if here is None else here + way
        if not 0 <= after < places:
            return False
        self.go_to(self._targets[after])
        return True

    def focusNextPrevChild(self, forward: bool) -> bool:
        if self.connecting.key(Qt.Key.Key_Tab if forward else Qt.Key.Key_Backtab):
            return True
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
        self.connecting.leave()
        self.entry.end_burst()
        self.update()

    def event(self, event: QEvent) -> bool:
        # While a lead is out its keys are no shortcuts; and parts on the clipboard go in here.
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            pasting = event.matches(QKeySequence.StandardKey.Paste) and holds_parts()
            plain = not event.modifiers() & ~Qt.KeyboardModifier.ShiftModifier
            if pasting or (self.connecting.lead is not None and plain):
                event.accept()
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        target, key = self._target, event.key()
        # While the keys are used, the pointer only rests: what it lies on lights up when it moves again.
        self._point(None)
        if self.connecting.key(Qt.Key(key)):
            return
        if event.matches(QKeySequence.StandardKey.Paste):
            self._bench.actions.action("network.paste").trigger()
            return
        if self._target_key(Qt.Key(key)):
            return
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

    def _target_key(self, key: Qt.Key) -> bool:
        """Do what F2 and Enter mean on a name, a node and a body."""
        target = self._target
        if target is None:
            return False
        if key == Qt.Key.Key_F2 and can_rename(target):
            self.rename()
        elif key in ENTER and target.kind in BODIES:
            self.card_asked.emit(target)
        elif key in ENTER and target.kind is Kind.NODE:
            self.connect_from_here()
        else:
            return False
        return True

    def _pin_key(self, event: QKeyEvent, target: Target) -> bool:
        states = {"1": PinState.HIGH, "0": PinState.LOW, "f": PinState.FLOATING, "F": PinState.FLOATING}
        if target.pin is None:
            return False
        if event.key() in (Qt.Key.Key_Space, *ENTER):
            self._pins.toggle(self.channel, self._result, target.pin)
        elif event.text() in states:
            self._pins.force(self.channel, self._result, target.pin, states[event.text()])
        else:
            return False
        return True

    def _part_key(self, event: QKeyEvent) -> bool:
        key = event.key()
        if key in (*ENTER, Qt.Key.Key_F2):
            self.edit()
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.step(1 if key == Qt.Key.Key_Up else -1, pace_of(event.modifiers()))
        elif key == Qt.Key.Key_Backspace:
            self.edit()
        elif event.text() and event.text() in TYPED:
            self.edit(text=event.text())
        else:
            return False
        return True

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down) and not event.isAutoRepeat():
            self.entry.end_burst()
        super().keyReleaseEvent(event)
