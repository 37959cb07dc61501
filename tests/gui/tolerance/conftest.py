"""The Tolerance page on a bench of its own."""

from dataclasses import replace

import pytest

from tests.exports.boards import board
from tests.gui.tolerance.doing import drawn
from workbench.gui.settings import BOARDS
from workbench.gui.tolerance.page import TolerancePage


@pytest.fixture
def page(qtbot, make_bench, settings):
    """Return a maker of a page that follows its bench's project."""
    made = []

    def make(project=None, *, boards=2000, wait=True, width=1900, height=400):
        settings.set(BOARDS, float(boards))
        bench = make_bench(project or replace(board(), linked=True))
        made.append(bench)
        shown = TolerancePage(bench)
        qtbot.addWidget(shown)
        bench.live.result_changed.connect(lambda result: shown.show_result(result.project, result))
        shown.resize(width, height)
        with qtbot.waitExposed(shown):
            shown.show()
        shown.show_result(bench.session.project, bench.live.result)
        if wait:
            drawn(qtbot, shown)
        return shown

    yield make
    for bench in made:
        bench.closing.emit()
