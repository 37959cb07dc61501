"""Which panels the window shows, and which pages."""

from collections.abc import Callable
from importlib import import_module

from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.findings import FindingsStrip, WhiteStatus
from workbench.gui.network.panel import NetworkPanel
from workbench.gui.scanline.panel import ScanlinePanel
from workbench.gui.tolerance.scanline_band import ScanlineBand
from workbench.gui.window.main_window import Panels
from workbench.gui.window.pages import PageSpec

__all__ = ["PANELS"]


def late(module: str, name: str) -> Callable[[Bench], QWidget]:
    """Return what makes a page, importing it when it is first opened, so that the start stays quick."""

    def make(bench: Bench) -> QWidget:
        return getattr(import_module(module), name)(bench)

    return make


def scanline_with_band(bench: Bench) -> ScanlinePanel:
    """Return the scanline panel, with the band of boards behind its traces."""
    panel = ScanlinePanel(bench)
    ScanlineBand(bench, panel.plot)
    return panel


PANELS = Panels(
    network=NetworkPanel,
    scanline=scanline_with_band,
    findings=FindingsStrip,
    white=WhiteStatus,
    pages=(
        PageSpec("picture", "Picture", late("workbench.gui.picture.page", "PicturePage")),
        PageSpec("levels", "Levels", late("workbench.gui.levels", "LevelsPage")),
        PageSpec("tolerance", "Tolerance", late("workbench.gui.tolerance.page", "TolerancePage")),
        PageSpec("timing", "Timing", late("workbench.gui.timing", "TimingPage")),
        PageSpec("parts", "Parts", late("workbench.gui.drawer.page", "PartsPage")),
        PageSpec("monitor", "Monitor", late("workbench.gui.monitor.page", "MonitorPage")),
        PageSpec("clock", "Clock", late("workbench.gui.clock.page", "ClockPage")),
        PageSpec("palette", "Palette", late("workbench.gui.palette", "PalettePage")),
        PageSpec("working", "Working", late("workbench.gui.working.page", "WorkingPage")),
    ),
)
