"""With the Picture page open: from an edit to everything painted, and to the whole picture."""

from statistics import median, quantiles
from time import perf_counter

import pytest
from PySide6.QtWidgets import QApplication

from tests.benchmarks.test_window_speed import desk, repaint_all, settle  # noqa: F401 - the fixture
from workbench.circuit.network import PartId
from workbench.gui.start.desk import Desk
from workbench.project.document import Channel
from workbench.project.edits.parts import set_value

pytestmark = pytest.mark.benchmark

TOPIC = "Edit of one resistor with the page Picture open, 1920×1080, 640×480@60, 5-5-5"


def tune(desk: Desk, ohms: float) -> None:  # noqa: F811
    desk.bench.apply(
        "Tune R1", lambda project: set_value(project, Channel.RED, PartId("R1"), ohms), merge="bench"
    )


def wait_whole(desk: Desk) -> None:  # noqa: F811
    """Let the window live until the whole picture of the newest result is shown."""
    page = desk.window.pages.stack.currentWidget()
    while not (page.looking.shot.whole and page.looking.shot.result is desk.live.result):
        QApplication.processEvents()
    settle()


def test_edit_to_painted_with_the_picture_open(desk: Desk, figures) -> None:  # noqa: F811
    desk.window.pages.open("picture")
    wait_whole(desk)
    bare = figures.median_s(lambda: repaint_all(desk.window), repeats=40)
    values = iter(range(400, 4000))

    def edit() -> None:
        tune(desk, float(next(values)))
        settle()

    spent = figures.seconds(edit, repeats=60)
    wait_whole(desk)

    figures.add(TOPIC, "preview, against the bare repaint", median(spent) / bare, at_most=2.5)
    figures.add(TOPIC, "preview, 95th percentile", quantiles(spent, n=20)[-1] * 1e3, "ms", at_most=16.7)


def test_edit_to_the_whole_picture(desk: Desk, figures) -> None:  # noqa: F811
    desk.window.pages.open("picture")
    wait_whole(desk)
    spent = []
    for ohms in range(400, 430):
        start = perf_counter()
        tune(desk, float(ohms))
        desk.live.refresh()
        wait_whole(desk)
        spent.append(perf_counter() - start)

    figures.add(TOPIC, "whole picture settled", median(spent) * 1e3, "ms", at_most=150)
