"""Opening the mode chooser, and a timing edit to everything painted, in the whole window."""

from collections.abc import Iterator
from pathlib import Path
from statistics import median, quantiles

import pytest
from PySide6.QtWidgets import QApplication, QWidget

from workbench.files.assets import asset_path
from workbench.files.project_file import read_project
from workbench.files.recovery import Recovery
from workbench.gui.settings import Settings
from workbench.gui.start.desk import Desk
from workbench.gui.start.fonts import load_fonts
from workbench.project.document import Direction
from workbench.project.edits.timing import set_counts
from workbench.project.session import Session

pytestmark = pytest.mark.benchmark

TOPIC = "Timing in the window, 1920×1080, 640×480@60, 5-5-5"


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


def test_chooser_opens(desk: Desk, figures) -> None:
    def open_it() -> None:
        desk.cards.choose_mode()
        settle()
        assert desk.cards.open_card.list.rows > 88

    spent = figures.median_s(open_it, repeats=20)
    desk.cards.open_card.close()

    figures.add(TOPIC, "mode chooser opened with all modes, painted", spent * 1e3, "ms", at_most=100)


@pytest.mark.parametrize("page", ["", "timing", "monitor", "clock"])
def test_timing_edit_to_painted(desk: Desk, figures, page: str) -> None:
    if page:
        desk.window.pages.toggle(page)
        settle()
    bare = figures.median_s(lambda: repaint_all(desk.window), repeats=30)
    porches = iter([number for _ in range(10) for number in range(40, 60)])

    def edit() -> None:
        back = next(porches)
        desk.bench.apply(
            "Porch", lambda p: set_counts(p, Direction.HORIZONTAL, back_porch=back), merge="bench"
        )
        settle()

    spent = figures.seconds(edit, repeats=60)

    where = f", page {page} open" if page else ""
    figures.add(
        TOPIC,
        f"edge moved to all painted, against the bare repaint{where}",
        median(spent) / bare,
        at_most=2.5,
    )
    figures.add(
        TOPIC, f"edge moved, 95th percentile{where}", quantiles(spent, n=20)[-1] * 1e3, "ms", at_most=16.7
    )
