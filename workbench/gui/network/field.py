"""The field in a part's box: a value is typed where it stands."""

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPen, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from workbench.gui.bench import Bench
from workbench.gui.network.values import Pace, Reading, Standing, Value, read_text, stepped
from workbench.gui.widgets import draw_text
from workbench.gui.widgets.control import draw_chevron

__all__ = ["ValueField", "pace_of"]

ROOMY = 100
"""Width from which a field shows unit and angles beside its value. [design px]"""


def pace_of(modifiers: Qt.KeyboardModifier) -> Pace:
    """Return how far a step goes with these keys held."""
    if modifiers & Qt.KeyboardModifier.ControlModifier:
        return Pace.FINE
    return Pace.COARSE if modifiers & Qt.KeyboardModifier.ShiftModifier else Pace.SERIES


class ValueField(QLineEdit):
    """Takes one value in the place where it stands; Enter keeps it, Esc leaves."""

    kept = Signal(object)
    """The value to keep: a number, a :class:`Pair`, or none where nothing is to be fitted."""
    left = Signal()
    """Closed without keeping."""
    read = Signal(object)
    """The :class:`Reading` of the text as it stands."""
    moved_on = Signal(int)
    """Kept with Tab (1) or Shift+Tab (-1)."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = bench
        self._value: Value | None = None
        self._reading: Reading | None = None
        self._asked = False
        self.setAttribute(Qt.WidgetAttribute.WA_MacShowFocusRect, False)
        self.textChanged.connect(self._on_text)
        self.hide()

    @property
    def value(self) -> Value | None:
        """The value that is being typed; none while the field is closed."""
        return self._value

    @property
    def reading(self) -> Reading | None:
        """What the text means as it stands."""
        return self._reading

    def open(self, value: Value, text: str | None = None) -> None:
        """Start typing a value; ``text`` is what was typed already."""
        self._value, self._asked = value, False
        self.setAccessibleName(f"{value.name}, in {value.unit}")
        self._dress()
        started = "" if value.value is None else value.text(value.value)
        self.setText(started if text is None else text)
        self._on_text()
        if text is None:
            self.selectAll()
        self.show()
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def close_field(self) -> None:
        """Close without keeping."""
        if self._value is not None:
            self._value = None
            self.hide()
            self.left.emit()

    def keep(self, *, asked: bool = False, other: bool = False) -> bool:
        """Keep the value if it may be kept, or the ``other`` reading of a sum; return whether it was."""
        reading = self._reading
        if self._value is None or reading is None or reading.standing is Standing.REFUSED:
            return False
        if reading.standing is Standing.ASKED and not asked and not self._asked:
            self._asked = True
            return False
        self._value = None
        self.hide()
        self.kept.emit(reading.kept(other=other))
        return True

    def step(self, steps: int, pace: Pace) -> None:
        """Put the value so many steps further into the field."""
        value = self._value
        if value is None:
            return
        start = self._reading.value if self._reading and self._reading.value else value.value
        if start:
            series = self._bench.session.project.series
            self.setText(value.text(stepped(start, series, steps, pace)))

    @property
    def _roomy(self) -> bool:
        """Whether unit and angles have room beside the value."""
        return self.width() >= self._bench.px(ROOMY)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._dress()

    def _dress(self) -> None:
        """Take the face again; polishing for another outline loses it."""
        self.setFont(self._bench.type.mono(1.18, 500))
        self.setTextMargins(0, 0, self._bench.px(34) if self._roomy else 0, 0)

    def _on_text(self) -> None:
        if self._value is None:
            return
        self._asked = False
        self._reading = read_text(self.text(), self._value, self._bench.session.project)
        role = {Standing.REFUSED: "fails", Standing.ASKED: "warns"}.get(self._reading.standing, "")
        if role != self.property("state"):
            self.setProperty("state", role)
            self.style().unpolish(self)
            self.style().polish(self)
            self._dress()
        self.read.emit(self._reading)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key == Qt.Key.Key_Escape:
            self.close_field()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.keep(other=bool(event.modifiers() & Qt.KeyboardModifier.ControlModifier))
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self.step(1 if key == Qt.Key.Key_Up else -1, pace_of(event.modifiers()))
        else:
            super().keyPressEvent(event)

    def focusNextPrevChild(self, forward: bool) -> bool:
        if self.keep():
            self.moved_on.emit(1 if forward else -1)
        return True

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        passing = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)
        if event.reason() not in passing and self._value is not None and not self.keep():
            self.close_field()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self._value is None or not self._roomy:
            return
        theme, px = self._bench.theme, self._bench.px
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            unit = box.adjusted(0, 0, -px(26), 0)
            right = Qt.AlignmentFlag.AlignRight
            if not self.text().endswith(self._value.unit):
                font = self._bench.type.mono(0.9)
                draw_text(painter, unit, self._value.unit, font, theme.color("dim"), align=right)
            for way in (-1, 1):
                centre = QPointF(box.right() - px(13), box.center().y() + way * px(6))
                draw_chevron(painter, centre, px(4), QPen(theme.color("text"), 1.5), up=way < 0)

    def wheelEvent(self, event: QWheelEvent) -> None:
        turn = event.angleDelta().y() or event.angleDelta().x()
        if turn:
            self.step(1 if turn > 0 else -1, pace_of(event.modifiers()))
        event.accept()
