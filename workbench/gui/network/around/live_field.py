"""A field whose value is in force while it is typed; one burst of typing is one step of the history."""

from collections.abc import Callable

from PySide6.QtCore import Signal
from PySide6.QtGui import QFocusEvent
from PySide6.QtWidgets import QWidget

from workbench.errors import WorkbenchError
from workbench.gui.bench import Bench
from workbench.gui.widgets import Field
from workbench.project.document import Project

__all__ = ["LiveField"]

WIDTH = 128
"""Width of a field. [design px]"""


class LiveField(Field):
    """Shows one value of a project, and keeps each text that means one.

    A text that means none stays in the field until it does, or until the field is left; what was said
    of it outlasts that.
    """

    told = Signal(str, str)
    """Why the text means no value here, or what is asked about it; its role; empty when it is plain."""
    echoed = Signal(str)
    """The value that is typed as the program writes it; empty when nothing is being typed."""

    def __init__(
        self,
        bench: Bench,
        name: str,
        read: Callable[[Project], str],
        put: Callable[[Project, str], Project],
        *,
        doubt: Callable[[Project], str | None] = lambda _project: None,
        placeholder: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(bench, name, placeholder=placeholder, mono=True, parent=parent)
        self._name, self._read, self._put, self._doubt = name, read, put, doubt
        self._refusal = ""
        """Why the text that stands here means no value; empty while it means one."""
        self.setFixedWidth(bench.px(WIDTH))
        self.textEdited.connect(self._on_text)
        self.returnPressed.connect(self.settle)
        self.show_project(bench.session.project)

    def show_project(self, project: Project) -> None:
        """Show the value in force, unless another one is being typed."""
        text = self._read(project)
        if not (self.hasFocus() and self.isModified()) and text != self.text():
            self.setText(text)

    def settle(self) -> None:
        """End the burst: write the value in force as the program writes it; what is none stays."""
        self._bench.session.release()
        if not self._refusal:
            self._show_in_force()
            self._tell(self._doubt(self._bench.session.project) or "", "warns")

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        refusal = self._refusal
        if refusal:
            self._bench.session.release()
            self._show_in_force()
            self._tell("")
            stays = self._read(self._bench.session.project) or self.placeholderText()
            self.told.emit(f"{refusal}; {self._name} stays {stays}", "fails")
        elif self.isModified():
            self.settle()

    def _show_in_force(self) -> None:
        self.setText(self._read(self._bench.session.project))
        self.setModified(False)
        self.echoed.emit("")

    def _on_text(self, text: str) -> None:
        session = self._bench.session
        try:
            label = f"{self._name} {self._read(self._put(session.project, text)) or 'not entered'}"
            session.apply(label, lambda project: self._put(project, text), merge=("typed", self))
        except WorkbenchError as reason:
            self._refuse(str(reason))
        else:
            self.echoed.emit(self._read(session.project))
            self._tell(self._doubt(session.project) or "", "warns")

    def _refuse(self, reason: str) -> None:
        self._tell(reason, "fails")
        self._refusal = reason

    def _tell(self, sentence: str, state: str = "") -> None:
        self._refusal = ""
        self.set_state(state if sentence else "")
        self.told.emit(sentence, state if sentence else "")
