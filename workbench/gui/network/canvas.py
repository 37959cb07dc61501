"""The drawing of one channel: painted, pointed at, stepped and typed into."""

from dataclasses import replace

from PySide6.QtCore import QEvent, QPoint, QRect, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QToolTip, QWidget

from workbench.circuit.network import PartId
from workbench.drawing import Drawing, Sheet, draw
from workbench.drawing.geometry import Point, Rect
from workbench.exports.schematic_svg import board_of
from workbench.gui.bench import Bench
from workbench.gui.network.bands import bands
from workbench.gui.network.echo_card import EchoCard
from workbench.gui.network.field import ValueField, pace_of
from workbench.gui.network.inks import Inks
from workbench.gui.network.paint import paint
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.scene import Scene, findings_by_part
from workbench.gui.network.shown import PinState, Shown, shown_figures, sync_volts
from workbench.gui.network.targets import Kind, Target, box_of, in_order, target_at, towards
from workbench.gui.network.values import Pace, Reading, Value, find_value, stepped
from workbench.gui.network.words import spoken, tip
from workbench.gui.settings import SYMBOLS, Symbols
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project

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


class Canvas(QWidget):
    """Shows the drawn channel of one Result; edits go to the session."""

    menu_asked = Signal(object, QPoint)
    """A target, and where a menu for it is wanted on the screen."""
    target_changed = Signal()
    """The keys are on something else."""

    def __init__(self, bench: Bench, pins: PinKeys, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._pins = bench, pins
        self._result: Result = bench.live.result
        self._room = QSize(800, 700)
        self._target: Target | None = None
        self._hover: Target | None = None
        self._burst: Value | None = None
        self._drawn_for: object = None
        self._inks = Inks(bench.theme, bench.type, bench.type.base_px / 14.0)
        self.field = ValueField(bench, self)
        self.card = EchoCard(bench, self._inks, self)
        self._connect_field()
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName("Network drawing")
        self.setWhatsThis(
            "The network between the pins and the monitor. Tab visits pins, parts, node, connector and "
            "monitor. On a pin: 1, 0, F or Space. On a part: type a value, Enter opens its field, "
            "↑ and ↓ step it through the series (Shift coarser, Ctrl by 1 %), Delete removes it."
        )
        bench.view.changed.connect(self._on_view)
        bench.theme_changed.connect(self.restyle)
        bench.settings.changed.connect(self._on_setting)
        self._layout()

    # What is shown

    @property
    def channel(self) -> Channel:
        """The drawn channel."""
        return self._bench.view.channel

    @property
    def drawing(self) -> Drawing:
        """The drawing as it is painted."""
        return self._drawing

    @property
    def shown(self) -> Shown:
        """The figures beside the parts."""
        return self._shown

    @property
    def target(self) -> Target | None:
        """What the keys are on."""
        return self._target

    def show_result(self, result: Result) -> None:
        """Show another result."""
        self._result = result
        self._layout()

    def set_room(self, room: QSize) -> None:
        """Draw for the room there is; a drawing that needs more is larger."""
        if room != self._room:
            self._room = room
            self._layout()

    def restyle(self) -> None:
        """Take colours and sizes again."""
        self._inks = Inks(self._bench.theme, self._bench.type, self._bench.type.base_px / 14.0)
        self.card.take_inks(self._inks)
        self._drawn_for = None
        self._layout()

    def _layout(self) -> None:
        """Draw the network again if it is another one, then take the figures again."""
        project = self._result.project
        network, board = project.channels[self.channel], board_of(project, self.channel)
        zigzag = self._bench.settings.get(SYMBOLS) is Symbols.ZIGZAG
        base = self._bench.type.base_px
        wanted = (network, board, self._room, base, zigzag)
        if wanted != self._drawn_for:
            self._drawn_for = wanted
            sheet = Sheet(self._room.width(), self._room.height(), base, self._inks.measure, zigzag)
            self._drawing = draw(network, board, sheet)
            self.setFixedSize(
                max(self._room.width(), round(self._drawing.width)),
                max(self._room.height(), round(self._drawing.height)),
            )
            self._targets = in_order(self._drawing, network.output)
            if self._target not in self._targets:
                self._target = None
            self._place_field()
        self._measure()

    def _measure(self) -> None:
        project, result, channel = self._result.project, self._result, self.channel
        network, view = project.channels[channel], self._bench.view
        code, _ = self._pins.code(channel, result)
        levels = result.channels[channel].levels
        floating = self._pins.floating(channel)
        self._shown = shown_figures(network, levels, project.driver, project.load, code, floating)
        self._still = Scene(
            channel,
            self._shown,
            sync_volts(project, result, view.pixel),
            codes={r.id: bands(r.ohms, r.tolerance) for r in network.resistors},
            findings=findings_by_part(result.findings, channel),
            limited=any(problem.kind.fatal for problem in levels.problems),
        )
        self.setAccessibleDescription(spoken(self._target, project, channel, self._shown))
        self.update()

    def scene(self) -> Scene:
        """Return what is painted over the drawing now."""
        value, view = self.field.value, self._bench.view
        return replace(
            self._still,
            chosen=view.chosen,
            pointed=view.pointed,
            edited=value.part if value else None,
            focus=self._target if self.hasFocus() else None,
            hover=self._hover,
        )

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(event.rect(), self._bench.theme.color("panel"))
            paint(painter, self._drawing, self.scene(), self._inks)

    # What is chosen

    def go_to(self, target: Target | None) -> None:
        """Put the keys on a target, and choose it if it is a part."""
        if target != self._target:
            self._target = target
            self._end_burst()
            self.setAccessibleDescription(spoken(target, self._result.project, self.channel, self._shown))
            self.target_changed.emit()
        part = target.part if target is not None else None
        if target is None or part is not None:
            self._bench.view.choose(part)
        self.update()

    def _on_view(self) -> None:
        chosen = self._bench.view.chosen
        if chosen is not None and (self._target is None or self._target.part != chosen):
            self.go_to(next((t for t in self._targets if t.part == chosen), self._target))
        self._layout()

    def _on_setting(self, setting: object) -> None:
        if setting is SYMBOLS:
            self._layout()

    def chosen_value(self) -> Value | None:
        """Return the value of the chosen part."""
        part = self._bench.view.chosen
        return find_value(self._result.project, self.channel, part) if part is not None else None

    # Typing

    def edit(self, part: PartId | None = None, text: str | None = None) -> None:
        """Open the field of a part, of the chosen one if none is named."""
        self._bench.live.refresh()
        part = part if part is not None else self._bench.view.chosen
        value = find_value(self._bench.session.project, self.channel, part) if part is not None else None
        if value is None:
            return
        self._bench.view.choose(value.part)
        self._place_field(value.part)
        self.field.open(value, text)
        self.update()

    def _connect_field(self) -> None:
        self.field.kept.connect(self._keep)
        self.field.left.connect(self._after_field)
        self.field.read.connect(self._tell)
        self.field.moved_on.connect(self._move_on)
        self.card.asked.connect(lambda: self.field.keep(asked=True))

    def _keep(self, new: float | None) -> None:
        value = self.chosen_value()
        if value is not None:
            self._bench.apply(value.label(new), lambda project: value.put(project, new))
        self._after_field()

    def _after_field(self) -> None:
        self.card.hide()
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        self.update()

    def _move_on(self, way: int) -> None:
        self._bench.live.refresh()
        self._step_target(way)
        self.edit()

    def _tell(self, reading: Reading) -> None:
        value = self.field.value
        if value is not None:
            self.card.tell(value, reading, self.channel)
            self._place_card(value.part)
            self.card.show()
            self.card.raise_()

    def _place_field(self, part: PartId | None = None) -> None:
        part = part if part is not None else (self.field.value.part if self.field.value else None)
        symbol = self._drawing.symbol(part) if part is not None else None
        if symbol is None:
            return
        unit = self._drawing.unit
        # The name stands right of a low box and left of an upright one; it stays in sight.
        named_above = symbol.name.at.y < symbol.body.top
        left, right = (11.0, 11.0) if named_above else (0.0, 4.0) if symbol.vertical else (18.0, 4.0)
        box = symbol.field
        width = max(box.width + (left + right) * unit, 114 * unit)
        start = min(box.left - left * unit, self.width() - width - 4 * unit)
        self.field.setGeometry(_qrect(Rect(start, box.top - 2 * unit, width, box.height + 4 * unit)))
        self._place_card(symbol.part)

    def _place_card(self, part: PartId) -> None:
        """Put the card right of the last bus, or under the field where there is no room beside it."""
        symbol = self._drawing.symbol(part)
        if symbol is None:
            return
        size, field, unit = self.card.sizeHint(), self.field.geometry(), self._drawing.unit
        seen = self.visibleRegion().boundingRect()
        middle = symbol.field.centre.y
        left = max(round(self._drawing.exit.x + 8 * unit), field.right() + round(8 * unit))
        beside = left + size.width() <= self.width() - 2
        if beside:
            top = round(middle - 30 * unit)
        else:
            left = min(max(4, field.left()), self.width() - size.width() - 4)
            below, above = field.bottom() + round(6 * unit), field.top() - size.height() - round(6 * unit)
            top = below if below + size.height() <= max(seen.bottom(), 1) or above < 0 else above
        top = max(4, min(top, max(seen.bottom(), size.height()) - size.height() - 4))
        self.card.setGeometry(QRect(left, top, size.width(), size.height()))
        self.card.point_at(middle - top if beside else None)

    # Stepping

    def step(self, steps: int, pace: Pace) -> None:
        """Step the chosen part's value, live; a burst of steps is one step of the history."""
        self._bench.live.refresh()
        value = self.chosen_value()
        if value is None or not value.value:
            return
        if self._burst is None or self._burst.part != value.part:
            self._burst = value
        new = stepped(value.value, self._result.project.series, steps, pace)
        start = self._burst
        self._bench.apply(
            start.label(new),
            lambda project: value.put(project, new),
            merge=("step", self.channel, value.part),
            origin=self,
        )

    def _end_burst(self) -> None:
        if self._burst is not None:
            self._burst = None
            self._bench.session.release()

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
        self._end_burst()
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
            self._end_burst()
        super().keyReleaseEvent(event)

    def _target_at(self, place: QPoint) -> Target | None:
        output = self._result.project.channels[self.channel].output
        return target_at(self._drawing, Point(place.x(), place.y()), output)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        target = self._target_at(event.position().toPoint())
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
        self._point(self._target_at(event.position().toPoint()))

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._point(None)

    def _point(self, target: Target | None) -> None:
        if target == self._hover:
            return
        self._hover = target
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
        target = self._target_at(event.position().toPoint())
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
            target = self._target_at(event.pos())
        elif target is not None and (box := box_of(self._drawing, target)) is not None:
            place = self.mapToGlobal(QPoint(round(box.left), round(box.bottom)))
        self.menu_asked.emit(target, place)

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            target = self._target_at(event.pos())
            text = tip(target, self._result, self.channel, self._shown)
            if text:
                QToolTip.showText(event.globalPos(), text, self)
            else:
                QToolTip.hideText()
            return True
        return super().event(event)

    # For others

    def project(self) -> Project:
        """Return the project that is shown."""
        return self._result.project


def _qrect(box: Rect) -> QRect:
    return QRect(round(box.left), round(box.top), round(box.width), round(box.height))
