"""A field to type in, with the key that jumps to it and a refused state."""

from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import QFocusEvent, QFontMetricsF, QKeyEvent, QKeySequence, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QLineEdit, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import outlined
from workbench.gui.widgets.text import draw_text

__all__ = ["Field"]

_HISTORY_KEYS = (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo)
_SAME_TYPING = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)
"""Why the focus comes back to a field in which a person is still typing."""


class Field(QLineEdit):
    """A line edit in the house style: accent outline while typing, red while refused.

    Undo and redo are the text's while it is pending; once it is in force they are the project's.
    """

    def __init__(
        self,
        bench: Bench,
        name: str,
        *,
        placeholder: str = "",
        key: str = "",
        mono: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._bench, self._key, self._mono = bench, key, mono
        self.setAccessibleName(name)
        self.setPlaceholderText(placeholder)
        self.setProperty("state", "")
        bench.theme_changed.connect(self.restyle)
        self.restyle()

    @property
    def pending(self) -> bool:
        """Whether a text stands here that is not in force: being typed, or refused."""
        return self.isModified() or self.property("state") == "fails"

    def set_state(self, role: str) -> None:
        """Outline the field in a role such as ``fails`` or ``warns``; empty for the usual look."""
        if role != self.property("state"):
            self.setProperty("state", role)
            self.style().unpolish(self)
            self.style().polish(self)
            self._take_face()

    def _take_face(self) -> None:
        """Take the face again; polishing for another outline loses it."""
        self.setFont(self._bench.type.mono(1.0, 500) if self._mono else self._bench.type.sans())

    def restyle(self) -> None:
        """Take sizes again; the colours come with the window's style sheet."""
        px = self._bench.px
        self._take_face()
        self.setFixedHeight(px(30))
        self.setTextMargins(0, 0, self._key_width(), 0)

    def _key_width(self) -> int:
        if not self._key:
            return 0
        face = self._bench.type.sans(0.82)
        return round(QFontMetricsF(face).horizontalAdvance(self._key)) + self._bench.px(12)

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ShortcutOverride and self._is_history_of_project(event):
            event.ignore()
            return False
        return super().event(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if event.reason() not in _SAME_TYPING:
            self._forget_typing()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self._is_history_of_project(event):
            event.ignore()
            return
        super().keyPressEvent(event)
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.property("state") != "fails":
            self._forget_typing()

    def _forget_typing(self) -> None:
        """Take the text for kept: nothing of how it was typed can be taken back in the field."""
        place = self.cursorPosition()
        self.setText(self.text())
        self.setCursorPosition(place)

    def _is_history_of_project(self, event: QEvent) -> bool:
        """Tell whether a key would take back, or do again, what is in force already."""
        return isinstance(event, QKeyEvent) and not self.pending and any(map(event.matches, _HISTORY_KEYS))

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if not self._key:
            return
        theme, px, width = self._bench.theme, self._bench.px, self._key_width()
        key = QRectF(self.width() - px(7) - width, px(6), width, self.height() - px(12))
        with QPainter(self) as painter:
            outlined(painter, key, px(3), None, QPen(theme.color("outline"), 1.0))
            centre = Qt.AlignmentFlag.AlignHCenter
            draw_text(painter, key, self._key, self._bench.type.sans(0.82), theme.color("dim"), align=centre)
