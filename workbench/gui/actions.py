"""Everything a person can do, in one table that menus, tool bar, context menus and finder read."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QApplication, QWidget

__all__ = ["ActionSpec", "Actions"]

Shortcut = QKeySequence.StandardKey | str | tuple[str, ...] | None


def always() -> bool:
    """Return true: the usual answer to whether an action can be taken now."""
    return True


@dataclass(frozen=True, slots=True)
class ActionSpec:
    """One thing that can be done: its words, its key, and what it calls."""

    id: str
    """Name in the table, ``panel.verb``."""
    text: str
    """What it does, as a command: "Add a bit"."""
    callback: Callable[[], object]
    group: str = "Edit"
    """Heading in the finder and on the page of shortcuts."""
    shortcut: Shortcut = None
    """A standard key, or portable text such as "Ctrl+K"; several texts are several keys."""
    tip: str = ""
    """One sentence for tool tip and finder; F1 shows it too."""
    enabled: Callable[[], bool] = always
    checked: Callable[[], bool] | None = None
    """State of something that is on or off; none for a plain command."""
    label: Callable[[], str] | None = None
    """Text that changes with the project, such as "Undo Tune R3"; ``text`` if none."""
    scope: QWidget | None = field(default=None, compare=False)
    """Widget that must hold the focus for the key to count; none for the whole window."""
    in_finder: bool = True
    also: str = ""
    """Words that find it and are not shown."""


class KeyedAction(QAction):
    """An action whose key does nothing while a list or a menu is open: the key was meant for that."""

    def event(self, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Shortcut and QApplication.activePopupWidget() is not None:
            return True
        return super().event(event)


class Actions(QObject):
    """Holds the table and one :class:`QAction` for each of its rows."""

    changed = Signal()
    """Rows came or went."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._specs: dict[str, ActionSpec] = {}
        self._made: dict[str, QAction] = {}
        self._window: QWidget | None = None

    @property
    def specs(self) -> tuple[ActionSpec, ...]:
        """Every row, in the order in which it came."""
        return tuple(self._specs.values())

    def add(self, specs: Iterable[ActionSpec]) -> None:
        """Add rows; an id stands once."""
        for spec in specs:
            if spec.id in self._specs:
                raise ValueError(f"the action {spec.id} stands twice in the table")
            self._specs[spec.id] = spec
            self._made[spec.id] = self._make(spec)
        self.refresh()
        self.changed.emit()

    def action(self, spec_id: str) -> QAction:
        """Return the action of a row, for a menu or a button."""
        return self._made[spec_id]

    def attach(self, window: QWidget) -> None:
        """Let the keys of the rows without a scope count in a window."""
        self._window = window
        for spec_id, spec in self._specs.items():
            if spec.scope is None:
                window.addAction(self._made[spec_id])

    def refresh(self) -> None:
        """Bring texts, ticks and availability up to date."""
        for spec_id, spec in self._specs.items():
            action = self._made[spec_id]
            action.setText(spec.label() if spec.label else spec.text)
            action.setEnabled(spec.enabled())
            if spec.checked is not None:
                action.setChecked(spec.checked())

    def keys(self, spec_id: str) -> str:
        """Return a row's key as the desktop writes it; empty if it has none."""
        return self._made[spec_id].shortcut().toString(QKeySequence.SequenceFormat.NativeText)

    def _make(self, spec: ActionSpec) -> QAction:
        action = KeyedAction(spec.text, self)
        action.setObjectName(spec.id)
        action.setShortcuts(key_sequences(spec.shortcut))
        action.setToolTip(spec.tip or spec.text)
        action.setCheckable(spec.checked is not None)
        action.triggered.connect(lambda _checked=False: self._call(spec))
        if spec.scope is not None:
            action.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            spec.scope.addAction(action)
        elif self._window is not None:
            self._window.addAction(action)
        return action

    def _call(self, spec: ActionSpec) -> None:
        spec.callback()
        self.refresh()


def key_sequences(shortcut: Shortcut) -> list[QKeySequence]:
    """Return the keys of a row."""
    if shortcut is None:
        return []
    if isinstance(shortcut, QKeySequence.StandardKey):
        return QKeySequence.keyBindings(shortcut)
    texts = (shortcut,) if isinstance(shortcut, str) else shortcut
    return [QKeySequence(text) for text in texts]
