"""The projector view: the same bench at 24 pt and more, on white, over the whole screen."""

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import PROJECTOR_PX, Bench

__all__ = ["Projector", "projected_px"]

CAUTION = (
    "Stripes, checkerboards and toggles can flicker on a projector; warn people who are sensitive to "
    "flashing pictures."
)


_SCREEN = 1080
"""Height of a screen on which the base text is as high as it is written down. [px]"""


def projected_px(height: int, ratio: float) -> float:
    """Return the height of the base text on a screen. [px]

    Parameters
    ----------
    height : int
        Of the screen. [px]
    ratio : float
        Dots of the screen in a pixel, ``1 <= ratio``: where the desktop enlarges everything, a low
        screen has text of as many dots, and all of the bench on it. [1]

    Examples
    --------
    >>> projected_px(1080, 1.0), projected_px(800, 1.0), projected_px(540, 2.0), projected_px(1080, 2.0)
    (32.0, 32.0, 16.0, 32.0)
    """
    return max(PROJECTOR_PX / ratio, min(PROJECTOR_PX, PROJECTOR_PX * height / _SCREEN))


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
        screen = self._window.screen()
        base_px = projected_px(screen.size().height(), screen.devicePixelRatio())
        self._bench.project_large(on=on, base_px=base_px)
        self.turned.emit(on)
