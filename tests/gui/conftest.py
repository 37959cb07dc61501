"""The window factory: session, settings, dialogs and clock are handed in, nothing is patched."""

import gc
from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path

import pytest
import shiboken6
from PySide6.QtCore import QCoreApplication, QEvent, QThreadPool
from PySide6.QtWidgets import QApplication

from tests.gui.scripted import ScriptedMessages
from workbench.files.assets import asset_path
from workbench.files.project_file import read_project
from workbench.files.recovery import Recovery
from workbench.gui.bench import Bench
from workbench.gui.live import LiveResult
from workbench.gui.settings import Settings
from workbench.gui.start.desk import Desk
from workbench.gui.start.fonts import load_fonts
from workbench.pipeline.run import Pipeline
from workbench.project.document import Project
from workbench.project.session import Session

NOON = datetime(2025, 6, 14, 12, 0).astimezone()


class Wall:
    """A clock on the wall that stands until it is set."""

    def __init__(self) -> None:
        self.time = NOON

    def __call__(self) -> datetime:
        return self.time


@pytest.fixture(scope="session")
def qapp_args() -> list[str]:
    return ["backporch"]


@pytest.fixture(scope="session", autouse=True)
def dressed_application(qapp: QApplication) -> Iterator[None]:
    """Give the application the style and the faces of the program."""
    qapp.setStyle("Fusion")
    load_fonts()
    # What is loaded by now stays for good: leave it out of the collection after each test.
    gc.collect()
    gc.freeze()
    yield
    # The offscreen clipboard outlives the interpreter, and would free what Python copied to it too late.
    qapp.clipboard().clear()


@pytest.fixture
def project() -> Project:
    """The demo project of the program."""
    return read_project(asset_path("projects/tide-board.backporch"))


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    return Settings(tmp_path / "settings.ini")


@pytest.fixture
def make_bench(settings: Settings, project: Project) -> Iterator[Callable[..., Bench]]:
    """Make a bench, for tests of one panel: ``make_bench(project)``."""
    made: list[Bench] = []

    def make(shown: Project = project) -> Bench:
        session = Session(shown)
        bench = Bench(session, LiveResult(session, Pipeline().run), settings)
        made.append(bench)
        return bench

    yield make
    for bench in made:
        bench.live.close()


@pytest.fixture
def messages() -> ScriptedMessages:
    return ScriptedMessages()


@pytest.fixture
def wall() -> Wall:
    return Wall()


@pytest.fixture
def make_desk(
    qtbot, settings: Settings, project: Project, messages: ScriptedMessages, wall: Wall, tmp_path: Path
) -> Iterator[Callable[..., Desk]]:
    """Make a whole window: ``make_desk(project, path)``; it is closed after the test."""
    made: list[Desk] = []

    def make(shown: Project = project, path: Path | None = None, *, show: bool = True) -> Desk:
        desk = Desk(
            Session(shown, path),
            settings,
            Recovery(tmp_path / "recovery"),
            messages=lambda _bench, _window: messages,
            clock=wall,
        )
        made.append(desk)
        if show:
            desk.window.resize(1920, 1080)
            with qtbot.waitExposed(desk.window):
                desk.window.show()
        return desk

    yield make
    for desk in made:
        close(desk, messages)


@pytest.fixture
def desk(make_desk: Callable[..., Desk]) -> Desk:
    """A window on the demo project."""
    return make_desk()


def close(desk: Desk, messages: ScriptedMessages) -> None:
    """Close a window that may have changes, without saving them, and let it go."""
    if not shiboken6.isValid(desk.window):
        return
    messages.answers = ["Discard"]
    desk.window.close()
    desk.window.deleteLater()
    desk.deleteLater()


@pytest.fixture(autouse=True)
def nothing_left(qapp: QApplication) -> Iterator[None]:
    """Fail a test that leaves a window, a thread's job or a modal dialog behind."""
    before = set(qapp.topLevelWidgets())
    yield
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)
    gc.collect()
    left = [w for w in qapp.topLevelWidgets() if w not in before and w.isVisible()]
    assert not left, f"left open: {left}"
    assert QThreadPool.globalInstance().activeThreadCount() == 0
