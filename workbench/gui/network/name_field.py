"""A field for a name, typed where the name stands: of a pin, of a node, of a part."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QWidget

from workbench.drawing.geometry import Rect
from workbench.errors import EditError
from workbench.gui.bench import Bench
from workbench.gui.widgets import Field
from workbench.project.document import Project

__all__ = ["NameField"]

Edit = Callable[[Project, str], Project]
LEAST_WIDTH = 76.0
"""Least width, so that a usual name can be read. [design px]"""


class NameField(Field):
    """Takes a name; Enter keeps it, Esc leaves, and what cannot be says why."""

    left = Signal()
    """Closed, the name kept or not."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(bench, "Name", parent=parent)
        self._canvas = parent
        self._edit: Edit | None = None
        self._before = ""
        self.hide()

    def open(self, what: str, name: str, box: Rect, edit: Edit) -> None:
        """Start typing over a name; ``what`` says whose it is, ``box`` where it stands."""
        self._edit, self._before = edit, name
        self.setAccessibleName(f"Name of {what}")
        self.set_state("")
        width = max(round(box.width), self._bench.px(LEAST_WIDTH))
        high = self.height()
        left = max(2, min(round(box.left), self._canvas.width() - width - 2))
        self.setGeometry(left, round(box.centre.y - high / 2), width, high)
        self.setText(name)
        self.show()
        self.raise_()
        self.setFocus(Qt.FocusReason.OtherFocusReason)
        # Last: a field that gets the focus takes its text anew.
        self.selectAll()

    def keep(self) -> bool:
        """Keep the name, if it can be; return whether it was."""
        edit, name = self._edit, self.text().strip()
        if edit is None:
            return False
        if name != self._before:
            try:
                label = f"Rename {self._before} to {name}"
                self._bench.session.apply(label, lambda project: edit(project, name))
            except EditError as reason:
                self.set_state("fails")
                self.setToolTip(str(reason))
                self._bench.notice(str(reason), warning=True)
                return False
        self.close_field()
        return True

    def close_field(self) -> None:
        """Close without keeping."""
        if self._edit is not None:
            self._edit = None
            self.setToolTip("")
            # Given away first: a field that hides would pass the focus on to what Tab reaches next.
            self._canvas.setFocus(Qt.FocusReason.OtherFocusReason)
            self.hide()
            self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.close_field()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.keep()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        passing = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)
        if event.reason() not in passing and self._edit is not None and not self.keep():
            self.close_field()
