"""The projector view: the same bench at 24 pt and more, on white, over the whole screen."""

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench

__all__ = ["Projector"]

CAUTION = (
    "Stripes, checkerboards and toggles can flicker on a projector; warn people who are sensitive to "
    "flashing pictures."
)


class Projector(QObject):
    """Turns a window into the projector view and back as it was."""

    turned = Signal(bool)

    def __init__(self, bench: Bench, window: QWidget) -> None:
        super().__init__(window)
        self._bench = bench
        self._window = window
        self._before = Qt.WindowState.WindowNoState

    @property
    def on(self) -> bool:
        """Whether the view is shown."""
        return self._bench.projecting

    def toggle(self) -> None:
        """Show the projector view, or leave it."""
        self.turn(on=not self.on)

    def turn(self, *, on: bool) -> None:
        """Show the projector view or the desk."""
        if on == self.on:
            return
        if on:
            self._before = self._window.windowState()
            self._window.setWindowState(self._before | Qt.WindowState.WindowFullScreen)
        else:
            self._window.setWindowState(self._before)
        self._bench.project_large(on=on)
        self.turned.emit(on)
