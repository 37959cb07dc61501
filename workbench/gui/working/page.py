"""The Working page: why a pixel looks as it does, step by step, to copy and to print."""

from PySide6.QtCore import QMimeData, Qt
from PySide6.QtGui import QGuiApplication, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QPlainTextEdit, QVBoxLayout, QWidget

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.widgets import Button, Words
from workbench.gui.widgets.caption import that_fits
from workbench.gui.working.chain import Chain
from workbench.gui.working.looked_at import LookedAt, looked_at
from workbench.gui.working.printing import print_text
from workbench.pipeline.result import Result
from workbench.project.document import Project

__all__ = ["WorkingPage"]

_ROOM_FOR_TEXT = 1100
"""Width from which the words have room beside the whole chain. [design px]"""
_ROOM_BELOW = 300
"""Height from which they have room below it, as on a projector. [design px]"""


class WorkingPage(QWidget):
    """Shows the working of the pixel under the *here* cursor."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Working")
        self._result: Result | None = None
        self.shown: LookedAt | None = None
        self.title = Words(bench, "Why this pixel?", size=1.1, weight=600)
        self.place = Words(bench, size=0.95, role="dim")
        self.copy_button = Button(bench, "Copy")
        self.copy_button.clicked.connect(self.copy)
        self.print_button = Button(bench, "Print …")
        self.print_button.clicked.connect(self.print_out)
        self.chain = Chain(bench)
        self.text = QPlainTextEdit()
        self.text.setReadOnly(True)
        self.text.setAccessibleName("The working in words")
        self.text.setFrameShape(QPlainTextEdit.Shape.NoFrame)
        self.text.setLineWrapMode(QPlainTextEdit.LineWrapMode.WidgetWidth)
        self.text.setTabChangesFocus(True)
        self._lay_out()
        bench.view.changed.connect(self._take)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def action_specs(self) -> tuple[ActionSpec, ...]:
        """Return the page's rows of the command table."""
        return (
            ActionSpec("working.copy", "Copy the working of this pixel", self.copy, "Picture"),
            ActionSpec("working.print", "Print the working of this pixel", self.print_out, "Picture"),
        )

    def show_result(self, _project: Project, result: Result) -> None:
        """Show a result's pixel."""
        self._result = result
        self._take()

    @property
    def words(self) -> str:
        """The working as text; a sentence where there is none."""
        return "" if self.shown is None else self.shown.text

    def copy(self) -> None:
        """Copy the working as text and as a picture: who pastes takes what it can."""
        data = QMimeData()
        data.setText(self.words)
        data.setImageData(self.chain.grab().toImage())
        QGuiApplication.clipboard().setMimeData(data)
        self.bench.notice("Copied the working, as text and as a picture.")

    def print_out(self) -> None:
        """Print the working, or write it as PDF."""
        print_text(self, f"{self.bench.session.project.name}: why this pixel", self.words)

    def _take(self) -> None:
        if self._result is None or not self.isVisibleTo(self.window()):
            return
        self.shown = looked_at(self._result, self.bench)
        if self.shown is None:
            self.place.say("this mode has no scanline to look at: choose a progressive one")
        else:
            self._say_place()
        self.chain.show_pixel(self.shown, self.words)
        if self.text.toPlainText() != self.words:
            at = self.text.verticalScrollBar().value()
            self.text.setPlainText(self.words)
            self.text.verticalScrollBar().setValue(at)

    def _say_place(self) -> None:
        """Say which pixel it is, as long as the head has room."""
        if self.shown is not None:
            others = (self.title, self.copy_button, self.print_button)
            room = self.width() - sum(widget.sizeHint().width() for widget in others) - self.bench.px(90)
            placed = self.shown.placed
            self.place.say(that_fits(placed, self.place.font(), room) or placed[-1])

    def _lay_out(self) -> None:
        self._head = QHBoxLayout()
        self._head.addWidget(self.title)
        self._head.addWidget(self.place)
        self._head.addStretch(1)
        self._head.addWidget(self.copy_button)
        self._head.addWidget(self.print_button)
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._row.addWidget(self.chain, 5)
        self._row.addWidget(self.text, 3)
        self._whole = QVBoxLayout(self)
        self._whole.addLayout(self._head)
        self._whole.addLayout(self._row, 1)

    def _restyle(self) -> None:
        px = self.bench.px
        self._whole.setContentsMargins(px(20), px(10), px(20), px(10))
        self._whole.setSpacing(px(8))
        self._head.setSpacing(px(10))
        self.text.setFont(self.bench.type.mono(0.9))
        self._fit()

    def _fit(self) -> None:
        """Put the words below a chain that needs the width, where there is the height."""
        px, directions = self.bench.px, QBoxLayout.Direction
        narrow = self.width() < px(_ROOM_FOR_TEXT)
        below = narrow and self.height() >= px(_ROOM_BELOW)
        self._row.setDirection(directions.TopToBottom if below else directions.LeftToRight)
        self._row.setSpacing(px(8 if below else 28))
        self.chain.setMinimumHeight(px(220 if below else 120))
        self.text.setMinimumWidth(px(300 if narrow else 380))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()
        self._say_place()

    def keyPressEvent(self, event) -> None:
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        if step is None or self._result is None:
            super().keyPressEvent(event)
            return
        pixel = (self.bench.view.pixel or 0) + step
        self.bench.view.look_at(min(max(pixel, 0), self._result.project.mode.h.total - 1))

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.bench.theme.color("panel"))
