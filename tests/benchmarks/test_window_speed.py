"""From an edit to everything painted, against the bare repaint of the same window; and the start."""

import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from statistics import median, quantiles

import pytest
from PySide6.QtWidgets import QApplication, QWidget

from workbench.circuit.network import Cable, Load, PartId
from workbench.files.assets import asset_path
from workbench.files.project_file import read_project
from workbench.files.recovery import Recovery
from workbench.gui.settings import Settings
from workbench.gui.start.desk import Desk
from workbench.gui.start.fonts import load_fonts
from workbench.project.document import Channel, Project
from workbench.project.edits.drive import set_skews
from workbench.project.edits.parts import set_value
from workbench.project.session import Session

pytestmark = pytest.mark.benchmark


@pytest.fixture
def desk(qapp: QApplication, tmp_path: Path) -> Iterator[Desk]:
    """Return a full-size window on the 5-5-5 demo."""
    load_fonts()
    project = read_project(asset_path("projects/tide-board.backporch"))
    made = Desk(Session(project), Settings(tmp_path / "settings.ini"), Recovery(tmp_path / "recovery"))
    made.window.resize(1920, 1080)
    made.window.show()
    settle()
    yield made
    made.session.mark_saved(tmp_path / "unused")
    made.window.close()


def settle() -> None:
    """Let everything that is due be painted."""
    for _ in range(3):
        QApplication.processEvents()


def repaint_all(window: QWidget) -> None:
    """Paint the whole window again, nothing having changed."""
    window.update()
    for child in window.findChildren(QWidget):
        child.update()
    settle()


def edit_seconds(desk: Desk, figures, repeats: int = 60) -> list[float]:
    """Return the time of each edit of R1, from the session to the last pixel. [s]"""
    values = iter(range(400, 4000))

    def edit() -> None:
        ohms = float(next(values))
        desk.bench.apply(
            "Tune R1", lambda project: set_value(project, Channel.RED, PartId("R1"), ohms), merge="bench"
        )
        settle()

    return figures.seconds(edit, repeats=repeats)


@pytest.mark.parametrize("page", ["", "levels", "timing"])
def test_edit_to_painted(desk: Desk, figures, page: str) -> None:
    if page:
        desk.window.pages.toggle(page)
        settle()
    bare = figures.median_s(lambda: repaint_all(desk.window), repeats=40)

    spent = edit_seconds(desk, figures)

    where = f", page {page} open" if page else ""
    topic = "Edit of one resistor to everything painted, 1920×1080, 640×480@60, 5-5-5"
    figures.add(topic, f"against the bare repaint{where}", median(spent) / bare, at_most=2.5)
    figures.add(topic, f"95th percentile{where}", quantiles(spent, n=20)[-1] * 1e3, "ms", at_most=16.7)


def with_everything(project: Project) -> Project:
    """Return the project with a lossy cable, capacitors at both ends, a late pin and channels apart."""
    cable = Cable(10.0, loss_db_per_m=0.1)
    project = replace(project, linked=False, cable=cable, load=Load(ohms=82.0, farads=10e-12))
    for place, channel in enumerate(Channel):
        project = set_skews(project, channel, (4e-9, 0.0, 1e-9 * place))
    return project


def test_edit_to_painted_with_cable_capacitors_and_skew(desk: Desk, figures) -> None:
    desk.bench.apply("Everything", with_everything)
    settle()
    bare = figures.median_s(lambda: repaint_all(desk.window), repeats=40)

    spent = edit_seconds(desk, figures)

    topic = "Edit of one resistor to everything painted, with cable, capacitors and skew"
    figures.add(topic, "against the bare repaint", median(spent) / bare, at_most=2.5)
    figures.add(topic, "95th percentile", quantiles(spent, n=20)[-1] * 1e3, "ms", at_most=16.7)


BARE = """
import os, sys, time
os.environ["QT_NO_GUI_THREADPOOL"] = "1"
import numpy
from PySide6.QtWidgets import QApplication
import pyqtgraph
app = QApplication(sys.argv[:1])
plot = pyqtgraph.PlotWidget()
plot.resize(1920, 1080)
plot.show()
for _ in range(3):
    app.processEvents()
"""

FULL = """
import sys
from pathlib import Path
from workbench.gui.app import run_window
from PySide6.QtWidgets import QApplication
def paint_and_leave(self=None):
    for _ in range(3):
        QApplication.processEvents()
    assert "scipy" not in sys.modules
    return 0
QApplication.exec = paint_and_leave
run_window(Path(sys.argv[1]))
"""


def start_s(figures, script: str, *arguments: str) -> float:
    """Return the median wall time of a program that paints its window and ends. [s]"""

    def run() -> str:
        done = subprocess.run(
            [sys.executable, "-c", script, *arguments], capture_output=True, text=True, check=True
        )
        return done.stdout

    return figures.median_s(run, repeats=7, warm=2)


def test_start(figures) -> None:
    demo = str(asset_path("projects/tide-board.backporch"))

    bare, full = start_s(figures, BARE), start_s(figures, FULL, demo)

    topic = "Start to painted window"
    figures.add(topic, "against a bare program with Qt, numpy and an empty plot", full / bare, at_most=2.0)
    figures.add(topic, "the window itself", full * 1e3, "ms")
