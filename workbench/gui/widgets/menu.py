"""The house's menu: every key pressed while it is open is its own."""

from PySide6.QtCore import QEvent
from PySide6.QtWidgets import QMenu

__all__ = ["Menu"]


class Menu(QMenu):
    """A menu whose keys are no shortcuts of what lies under it.

    Qt asks the window's shortcuts before an open menu, and a menu takes no focus: a letter typed to
    find an entry would otherwise be a command to whatever has it.
    """

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.ShortcutOverride:
            event.accept()
            return True
        return super().event(event)
