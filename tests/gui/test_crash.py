"""What happens when something goes wrong that should not."""

import faulthandler
import sys
import threading
from pathlib import Path

import pytest

from workbench.gui.start.crash import CrashHook, FaultLog


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "state" / "errors.log"


def fail(hook: CrashHook) -> None:
    try:
        raise RuntimeError("the bus is hot")
    except RuntimeError as error:
        hook.handle(type(error), error, error.__traceback__)


def test_error_is_logged_work_rescued_and_person_told(path) -> None:
    hook, done = CrashHook(path), []
    hook.connect(rescue=lambda: done.append("rescued"), tell=done.append)

    fail(hook)

    assert done[0] == "rescued"
    assert "RuntimeError: the bus is hot" in done[1]
    assert "RuntimeError: the bus is hot" in path.read_text(encoding="utf-8")


def test_error_while_telling_opens_no_second_dialog(path) -> None:
    hook, told = CrashHook(path), []

    def tell(details: str) -> None:
        told.append(details)
        if len(told) < 3:
            fail(hook)

    hook.connect(rescue=lambda: None, tell=tell)

    fail(hook)

    assert len(told) == 1
    assert path.read_text(encoding="utf-8").count("the bus is hot") >= 2


def test_error_of_a_thread_is_logged_and_opens_no_dialog_there(path) -> None:
    hook, told = CrashHook(path), []
    hook.connect(rescue=lambda: None, tell=told.append)

    thread = threading.Thread(target=fail, args=(hook,))
    thread.start()
    thread.join()

    assert told == []
    assert "the bus is hot" in path.read_text(encoding="utf-8")


def test_hook_is_installed_for_every_thread(path, monkeypatch) -> None:
    monkeypatch.setattr(sys, "excepthook", sys.excepthook)
    monkeypatch.setattr(threading, "excepthook", threading.excepthook)
    hook = CrashHook(path)

    hook.install()

    assert sys.excepthook == hook.handle


@pytest.fixture
def own_faulthandler():
    """Give the test runner its fault handler back."""
    yield
    faulthandler.enable()


def test_run_that_ended_well_leaves_no_fault_log(path, own_faulthandler) -> None:
    faults = FaultLog(path)
    faults.open()
    assert faulthandler.is_enabled()

    faults.close()

    assert not path.exists()


def test_fault_of_the_last_run_is_read_once(path) -> None:
    path.parent.mkdir()
    path.write_text("Fatal Python error: Segmentation fault\n", encoding="utf-8")

    assert FaultLog(path).take_last() == "Fatal Python error: Segmentation fault"
    assert FaultLog(path).take_last() == ""
    assert path.with_suffix(".last.log").exists()
