"""What the program says and asks in dialogs; tests put an object of their own in its place."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QDialog, QFileDialog, QHBoxLayout, QPlainTextEdit, QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Button, ButtonKind, Sign, Words, draw_sign

__all__ = ["MessageDialog", "Messages"]


class Messages:
    """Speaks through modal dialogs over a window."""

    def __init__(self, bench: Bench, window: QWidget) -> None:
        self._bench = bench
        self._window = window

    def tell(self, headline: str, sentence: str = "", *, sign: Sign = Sign.NOTE, details: str = "") -> None:
        """Say something that must not be missed."""
        self.ask(headline, ("Close",), sentence=sentence, sign=sign, details=details)

    def ask(
        self,
        headline: str,
        answers: Sequence[str],
        *,
        sentence: str = "",
        sign: Sign = Sign.NOTE,
        details: str = "",
    ) -> str:
        """Ask, and return the answer; the first is taken on Enter, the last on Esc."""
        dialog = MessageDialog(self._bench, headline, answers, sentence, sign, details, self._window)
        dialog.exec()
        dialog.deleteLater()
        return dialog.answer

    def open_path(self, title: str, folder: Path, kinds: str) -> Path | None:
        """Let the person choose a file to open; none if they change their mind."""
        name, _ = QFileDialog.getOpenFileName(self._window, title, str(folder), kinds)
        return Path(name) if name else None

    def save_path(self, title: str, suggested: Path, kinds: str) -> Path | None:
        """Let the person choose where to write; the dialog asks before it replaces a file."""
        name, _ = QFileDialog.getSaveFileName(self._window, title, str(suggested), kinds)
        return Path(name) if name else None


class MessageDialog(QDialog):
    """One headline, one sentence, a row of answers, and details folded away."""

    def __init__(
        self,
        bench: Bench,
        headline: str,
        answers: Sequence[str],
        sentence: str,
        sign: Sign,
        details: str,
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        px = bench.px
        self.answer = answers[-1]
        self.setWindowTitle("Backporch")
        self.setMinimumWidth(px(460))
        column = QVBoxLayout(self)
        column.setContentsMargins(px(22), px(20), px(22), px(18))
        column.setSpacing(px(12))
        top = QHBoxLayout()
        top.setSpacing(px(12))
        top.addWidget(SignLabel(bench, sign), 0, Qt.AlignmentFlag.AlignTop)
        words = Words(bench, headline, size=1.1, weight=600)
        words.wrap(px(400))
        top.addWidget(words, 1)
        column.addLayout(top)
        if sentence:
            said = Words(bench, sentence)
            said.wrap(px(434))
            column.addWidget(said)
        row = QHBoxLayout()
        row.setSpacing(px(10))
        if details:
            self._add_details(bench, details, column, row)
        row.addStretch(1)
        buttons = [self._button(bench, text, first=not number) for number, text in enumerate(answers)]
        self._first = buttons[0]
        for button in buttons:
            row.addWidget(button)
        column.addLayout(row)
        self._first.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Take the answer that has the focus on Enter, the first one if none has it."""
        if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
            return
        focused = self.focusWidget()
        (focused if isinstance(focused, Button) else self._first).click()

    def _button(self, bench: Bench, text: str, *, first: bool) -> Button:
        button = Button(bench, text, ButtonKind.REMEDY if first else ButtonKind.USUAL)
        button.clicked.connect(lambda: self._take(text))
        return button

    def _add_details(self, bench: Bench, details: str, column: QVBoxLayout, row: QHBoxLayout) -> None:
        text = QPlainTextEdit(details)
        text.setReadOnly(True)
        text.setFont(bench.type.mono(0.9))
        text.setAccessibleName("Details")
        text.setMinimumSize(bench.px(560), bench.px(180))
        text.hide()
        fold = Button(bench, "Details", ButtonKind.QUIET)
        fold.clicked.connect(lambda: self._unfold(text))
        column.addWidget(text)
        row.addWidget(fold)

    def _unfold(self, text: QWidget) -> None:
        text.setVisible(text.isHidden())
        self.adjustSize()

    def _take(self, text: str) -> None:
        self.answer = text
        self.accept()


class SignLabel(QWidget):
    """Shows a sign at text size."""

    def __init__(self, bench: Bench, sign: Sign, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._sign = bench, sign
        self.setFixedSize(bench.px(22), bench.px(22))

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            draw_sign(painter, QRectF(self.rect()).adjusted(1, 1, -1, -1), self._sign, self._bench.theme)
