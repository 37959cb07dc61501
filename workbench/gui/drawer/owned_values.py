"""What of a project lies in the person's drawer, told to the engine: the project knows no drawer."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from workbench.gui.bench import Bench

if TYPE_CHECKING:
    from workbench.gui.drawer.own_drawer import OwnDrawer

__all__ = ["OwnedValues"]

DRAWER_MS = 150
"""How long after the window the person's drawer is looked into. [ms]"""


class OwnedValues(QObject):
    """Answers whether a value is owned; nothing is until the drawer has been looked into."""

    changed = Signal()
    """The drawer holds something else: run the engine again."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bench: Bench | None = None
        self._own: OwnDrawer | None = None
        self._looking = QTimer(self, singleShot=True, interval=DRAWER_MS)
        self._looking.timeout.connect(self.look)

    def attach(self, bench: Bench) -> None:
        """Look into the drawer of a bench once its window is there."""
        self._bench = bench
        bench.closing.connect(self._looking.stop)
        self._looking.start()

    def look(self) -> None:
        """Look into the drawer now, and follow it from now on."""
        # Imported late: the window is there before what it needs of the drawer is read.
        from workbench.gui.drawer.own_drawer import own_drawer

        if self._bench is None or self._own is not None:
            return
        self._own = own_drawer(self._bench)
        self._own.changed.connect(self.changed)
        if self._own.drawer.parts:
            self.changed.emit()

    def owns(self, ohms: float) -> bool:
        """Return whether a resistor of a value lies in the drawer. [Ω]"""
        return self._own is not None and self._own.drawer.count_of(ohms) != 0
