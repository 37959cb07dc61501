"""The number of the scanline, typed, stepped or picked from where the frame changes."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPalette, QPen, QValidator
from PySide6.QtWidgets import QAbstractSpinBox, QMenu, QSpinBox, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Control, draw_text
from workbench.gui.widgets.control import draw_chevron, outlined
from workbench.timing.frame import v_sync_lines
from workbench.timing.mode import Mode

__all__ = ["LineField", "LineMenu", "landmarks"]

MOST_DIGITS = 6
"""So many digits are taken in; a frame has fewer. [1]"""


def landmarks(mode: Mode) -> list[tuple[str, int]]:
    """Return the lines at which the frame changes, with words for each."""
    v, sync = mode.v, v_sync_lines(mode)
    marks = [("first line of the picture", 1), ("middle of the picture", (v.active + 1) // 2)]
    marks.append(("last line of the picture", v.active))
    if v.front_porch:
        marks.append(("vertical front porch", v.active + 1))
    marks.append(("V sync begins", sync.start))
    if sync.stop <= v.total:
        marks.append(("V sync ends", sync.stop))
    return marks


class LineField(QSpinBox):
    """The scanline's number; wheel and arrows step it, Page Up and Page Down by ten."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.setFrame(False)
        self.setButtonSymbols(QAbstractSpinBox.ButtonSymbols.NoButtons)
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.setWrapping(True)
        self.setKeyboardTracking(False)
        self.setAccelerated(True)
        self.setRange(1, 525)
        self.setAccessibleName("scanline")
        self.setToolTip("Scanline, from 1 at the first line of the picture. Wheel or arrow keys step it")
        bench.theme_changed.connect(self.restyle)
        self.restyle()

    def restyle(self) -> None:
        """Take colours and sizes again."""
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        palette = self.palette()
        for role in (QPalette.ColorRole.Base, QPalette.ColorRole.Window):
            palette.setColor(role, theme.color("panel", 0.0))
        palette.setColor(QPalette.ColorRole.Text, theme.color("text"))
        # The field inside does not follow by itself where a style sheet is set.
        for widget in (self, self.lineEdit()):
            widget.setFont(type_.mono(1.0, 600))
            widget.setPalette(palette)
        digits = len(str(self.maximum()))
        width = QFontMetricsF(self.font()).horizontalAdvance("0" * digits)
        self.setFixedSize(round(width) + px(14), px(26))

    def set_lines(self, total: int) -> None:
        """Take numbers up to the frame's last line."""
        if total != self.maximum():
            self.setMaximum(total)
            self.restyle()

    def validate(self, text: str, place: int) -> tuple[QValidator.State, str, int]:
        """Take in any number, so that no key is swallowed; one out of range is refused when it is left."""
        digits = text.strip()
        if digits and not (digits.isascii() and digits.isdigit() and len(digits) <= MOST_DIGITS):
            return QValidator.State.Invalid, text, place
        inside = digits != "" and self.minimum() <= int(digits) <= self.maximum()
        return QValidator.State.Acceptable if inside else QValidator.State.Intermediate, text, place

    def fixup(self, text: str) -> str:
        """Say which lines there are; the old line stays."""
        if text.strip():
            words = f"There is no line {text.strip()}: this mode has lines 1 … {self.maximum()}."
            self._bench.notice(words, warning=True)
        return str(self.value())

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.hasFocus() or self.underMouse():
            theme = self._bench.theme
            role, width = ("accent", 1.8) if self.hasFocus() else ("outline", 1.1)
            with QPainter(self) as painter:
                box = QRectF(self.rect())
                outlined(painter, box, self._bench.px(5), theme.color("plot"), QPen(theme.color(role), width))
            return
        super().paintEvent(event)


class LineMenu(Control):
    """How many lines there are; opens the lines at which the frame changes."""

    def __init__(self, bench: Bench, field: LineField, parent: QWidget | None = None) -> None:
        super().__init__(bench, "", parent)
        self._field = field
        self._mode = bench.session.project.mode
        self.clicked.connect(self.open)
        self._name()

    def show_mode(self, mode: Mode) -> None:
        """Show the lines of a mode."""
        if mode != self._mode:
            self._mode = mode
            self._name()

    def _name(self) -> None:
        total = self._mode.v.total
        self.setText(f"of {total}")
        self.setAccessibleName(f"of {total} scanlines: go to")
        self.setToolTip("Go to a line where the frame changes: picture, porch, V sync")
        self.restyle()

    def open(self) -> None:
        """Open the list under the control."""
        menu = QMenu(self)
        menu.setAccessibleName("lines at which the frame changes")
        for words, number in landmarks(self._mode):
            action = menu.addAction(f"{words}\t{number}")
            action.triggered.connect(lambda _checked=False, number=number: self._field.setValue(number))
        menu.aboutToHide.connect(menu.deleteLater)
        menu.popup(self.mapToGlobal(self.rect().bottomLeft()))

    def sizeHint(self) -> QSize:
        words = QFontMetricsF(self.bench.type.sans()).horizontalAdvance(self.text())
        return QSize(round(words) + self.bench.px(24), self.bench.px(26))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self.bench.theme, self.bench.px
        ink = theme.color("text" if self.pointed else "dim")
        with QPainter(self) as painter:
            if self.pointed or self.isDown():
                outlined(painter, QRectF(self.rect()), px(5), theme.mixed("panel", "accent", 0.14), None)
            words = QRectF(self.rect()).adjusted(px(4), 0, 0, 0)
            width = draw_text(painter, words, self.text(), self.bench.type.sans(), ink)
            centre = QPointF(px(4) + width + px(9), self.height() / 2 + px(1))
            draw_chevron(painter, centre, px(3.2), QPen(ink, 1.3))
