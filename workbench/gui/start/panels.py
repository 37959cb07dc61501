"""Which panels the window shows, and which pages."""

from importlib import import_module

from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.window.main_window import Panels
from workbench.gui.window.pages import PageSpec

__all__ = ["PANELS"]


class Blank(QWidget):
    """Stands where a panel is not built yet."""

    def show_result(self, _project: object, _result: object) -> None:
        """Show nothing."""


def _panel(module: str, name: str):
    def make(bench: Bench) -> QWidget:
        try:
            return getattr(import_module(module), name)(bench)
        except ImportError:
            return Blank()

    return make


PANELS = Panels(
    network=_panel("workbench.gui.network.panel", "NetworkPanel"),
    scanline=_panel("workbench.gui.scanline.panel", "ScanlinePanel"),
    findings=_panel("workbench.gui.findings", "FindingsStrip"),
    white=_panel("workbench.gui.findings", "WhiteStatus"),
    pages=(
        PageSpec("levels", "Levels", _panel("workbench.gui.levels", "LevelsPage")),
        PageSpec("timing", "Timing", _panel("workbench.gui.timing", "TimingPage")),
    ),
)
