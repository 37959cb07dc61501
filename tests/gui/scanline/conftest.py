"""A panel on a bench of its own, following the session as it does in the window."""

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.scanline import ScanlinePanel
from workbench.project.document import Project

WIDE = (1120, 822)
"""The panel's size in a window of 1920 × 1080. [px]"""


@pytest.fixture
def make_panel(
    qtbot, make_bench: Callable[..., Bench], project: Project
) -> Iterator[Callable[..., ScanlinePanel]]:
    """Make a panel that is shown: ``make_panel(project, size=(w, h))``."""

    windows = []

    def make(shown: Project = project, *, size: tuple[int, int] = WIDE) -> ScanlinePanel:
        bench = make_bench(shown)
        # In a window without a layout, as the panel's own least size is no concern of the test.
        window = QWidget()
        qtbot.addWidget(window)
        windows.append(window)
        window.resize(*size)
        panel = ScanlinePanel(bench, window)
        panel.resize(*size)
        panel.show_result(shown, bench.live.result)
        bench.live.result_changed.connect(lambda result: panel.show_result(result.project, result))
        bench.actions.add(panel.action_specs())
        with qtbot.waitExposed(window):
            window.show()
        panel.plot.setFocus()
        return panel

    yield make
    windows.clear()


@pytest.fixture
def panel(make_panel: Callable[..., ScanlinePanel]) -> ScanlinePanel:
    """The demo project's panel."""
    return make_panel()
