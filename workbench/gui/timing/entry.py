"""A field for one value: it keeps what is understood and says why not, the old value in force."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QWidget

from workbench.errors import WorkbenchError
from workbench.gui.bench import Bench
from workbench.gui.widgets import Field

__all__ = ["Entry"]

_COARSE = 8


class Entry(Field):
    """Takes a value on Enter or when left; arrows step it, with Shift coarsely; Esc restores it."""

    told = Signal(str)
    """Why a value was refused; empty when all is well again."""

    def __init__(
        self,
        bench: Bench,
        name: str,
        take: Callable[[str], object],
        *,
        step: Callable[[int], object] | None = None,
        placeholder: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(bench, name, mono=True, placeholder=placeholder, parent=parent)
        self._take, self._step = take, step
        self._shown = ""
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.returnPressed.connect(self.commit)

    def show_value(self, text: str) -> None:
        """Show the value in force, unless another one is being typed."""
        typing = self.hasFocus() and self.pending
        self._shown = text
        if not typing and text != self.text():
            self.setText(text)

    def commit(self) -> None:
        """Hand what was typed on; what cannot be stays in the field, outlined, with its reason."""
        if self.text() == self._shown:
            self._settle()
            return
        self._attempt(lambda: self._take(self.text()))

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.commit()
        if self.property("state"):
            # Left in dispute: the value in force is what holds, so it is what stands here.
            self.setText(self._shown)
            self._settle()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}.get(Qt.Key(event.key()))
        if steps is not None and self._step is not None:
            step = self._step
            coarse = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
            self._attempt(lambda: step(steps * (_COARSE if coarse else 1)))
        elif event.key() == Qt.Key.Key_Escape and self.text() != self._shown:
            self.setText(self._shown)
            self._settle()
        else:
            super().keyPressEvent(event)

    def _attempt(self, edit: Callable[[], object]) -> None:
        try:
            edit()
        except WorkbenchError as error:
            self.set_state("fails")
            self.told.emit(str(error))
            return
        self.setModified(False)
        self._settle()

    def _settle(self) -> None:
        self.set_state("")
        self.told.emit("")
