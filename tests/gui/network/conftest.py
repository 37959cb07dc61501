"""The network panel on a bench of its own, shown at the size it has in the pictures."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QWidget

from workbench.circuit.network import PartId
from workbench.gui.bench import Bench
from workbench.gui.network.panel import NetworkPanel
from workbench.gui.network.targets import Kind, Target, box_of
from workbench.project.document import Project


@pytest.fixture
def make_panel(qtbot, make_bench: Callable[..., Bench], project: Project) -> Callable[..., NetworkPanel]:
    """Make a shown panel: ``make_panel(project, width, height)``."""

    def make(shown: Project = project, width: int = 800, height: int = 860) -> NetworkPanel:
        bench = make_bench(shown)
        host = QWidget()
        panel = NetworkPanel(bench, host)
        qtbot.addWidget(host)
        bench.actions.attach(host)
        bench.live.result_changed.connect(lambda result: panel.show_result(result.project, result))
        host.resize(width, height)
        panel.resize(width, height)
        with qtbot.waitActive(host):
            host.show()
        return panel

    return make


@pytest.fixture
def panel(make_panel: Callable[..., NetworkPanel]) -> NetworkPanel:
    """The panel with the demo project."""
    return make_panel()


@pytest.fixture
def place(panel: NetworkPanel) -> Callable[[str | int], QPoint]:
    """Return where a part (by name) or a pin's key (by number) lies on the canvas."""

    def find(what: str | int) -> QPoint:
        target = Target(Kind.PIN, pin=what) if isinstance(what, int) else Target(Kind.PART, part=PartId(what))
        box = box_of(panel.canvas.drawing, target)
        assert box is not None
        return QPoint(round(box.centre.x), round(box.centre.y))

    return find
