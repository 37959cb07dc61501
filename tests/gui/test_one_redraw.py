"""One edit, one recompute, one redraw; many edits in one turn of the event loop count as one."""

from collections.abc import Callable

import pytest

from workbench.circuit.network import PartId
from workbench.gui.live import LiveResult
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channel, Project
from workbench.project.edits.parts import set_value
from workbench.project.session import Session


class Counted:
    """A pipeline that counts its runs."""

    def __init__(self) -> None:
        self.runs = 0
        self._run = Pipeline().run

    def __call__(self, project: Project):
        self.runs += 1
        return self._run(project)


def tune(ohms: float) -> Callable[[Project], Project]:
    return lambda project: set_value(project, Channel.RED, PartId("R1"), ohms)


@pytest.fixture
def counted() -> Counted:
    return Counted()


@pytest.fixture
def live(project, counted, qtbot):
    session = Session(project)
    live = LiveResult(session, counted)
    live.session = session
    yield live
    live.close()


def test_hundred_edits_in_one_turn_are_one_run(live, counted, qtbot) -> None:
    told: list[object] = []
    live.result_changed.connect(told.append)
    counted.runs = 0

    for ohms in range(400, 500):
        live.session.apply("Tune R1", tune(float(ohms)))

    qtbot.waitUntil(lambda: bool(told))
    assert counted.runs == 1
    assert len(told) == 1
    assert told[0].project is live.session.project


def test_edit_that_changes_nothing_runs_nothing(live, counted, qtbot) -> None:
    told: list[object] = []
    live.result_changed.connect(told.append)
    counted.runs = 0

    live.session.apply("Nothing", lambda project: project)
    live.refresh()

    assert (counted.runs, told) == (0, [])


def test_saving_runs_nothing(live, counted, tmp_path) -> None:
    counted.runs = 0

    live.session.mark_saved(tmp_path / "a.backporch")
    live.refresh()

    assert counted.runs == 0


def test_every_panel_is_shown_once_per_edit(desk, qtbot, monkeypatch) -> None:
    shown: list[str] = []
    window = desk.window
    for name in ("network", "scanline", "findings", "white"):
        panel = getattr(window, name)
        original = panel.show_result

        def record(project, result, name=name, original=original):
            shown.append(name)
            original(project, result)

        monkeypatch.setattr(panel, "show_result", record)

    for ohms in (450.0, 460.0, 470.0):
        desk.bench.apply("Tune R1", tune(ohms))

    qtbot.waitUntil(lambda: desk.live.result.project is desk.session.project)
    assert sorted(shown) == ["findings", "network", "scanline", "white"]


def test_folded_page_is_not_shown_results_and_catches_up_when_opened(desk, qtbot) -> None:
    pages = desk.window.pages
    pages.open("levels")
    pages.fold()
    page = pages.stack.currentWidget()
    seen: list[object] = []
    original = page.show_result
    page.show_result = lambda project, result: (seen.append(result), original(project, result))

    desk.bench.apply("Tune R1", tune(470.0))
    qtbot.waitUntil(lambda: desk.live.result.project is desk.session.project)
    assert seen == []

    pages.open("levels")
    assert seen == [desk.live.result]
