"""Recovery copies: kept after the last change, gone after a save, offered at the next start."""

import os
from pathlib import Path

import pytest

from workbench.files.project_file import write_project
from workbench.files.recovery import Recovery, leftover_copies
from workbench.gui.files.recovery import KEPT_AFTER_MS, RecoveryFlow
from workbench.project.edits.naming import rename

GONE_PID = 2**22 + 1
"""Above the largest process number of Linux, so nothing that runs has it."""


@pytest.fixture
def flow(make_bench, messages, tmp_path):
    bench = make_bench()
    flow = RecoveryFlow(bench, messages, Recovery(tmp_path / "recovery"), after_ms=0)
    flow.bench = bench
    yield flow
    flow.close()


def copies(folder: Path) -> list[Path]:
    return sorted(folder.glob("*.recovery"))


def left_by_a_crash(folder: Path, project, source: Path | None = None) -> Path:
    """Leave a copy as a program that was killed would."""
    recovery = Recovery(folder)
    recovery.write(project, source)
    return recovery.path.rename(folder / recovery.path.name.replace(str(os.getpid()), str(GONE_PID), 1))


def change(flow, name: str) -> None:
    flow.bench.apply("Rename", lambda project: rename(project, name))


def test_copy_is_kept_two_seconds_after_the_last_change() -> None:
    assert KEPT_AFTER_MS == 2000


def test_change_is_copied(flow, qtbot, tmp_path) -> None:
    change(flow, "Slipway")

    qtbot.waitUntil(lambda: len(copies(tmp_path / "recovery")) == 1)


def test_save_removes_the_copy(flow, qtbot, tmp_path) -> None:
    change(flow, "Slipway")
    qtbot.waitUntil(lambda: len(copies(tmp_path / "recovery")) == 1)

    flow.bench.session.mark_saved(tmp_path / "a.backporch")

    assert copies(tmp_path / "recovery") == []


def test_clean_close_removes_the_copy(desk, messages, tmp_path) -> None:
    desk.bench.apply("Rename", lambda project: rename(project, "Slipway"))
    desk.recovery.keep_copy()
    assert len(copies(tmp_path / "recovery")) == 1
    messages.answers = ["Discard"]

    desk.window.close()

    assert copies(tmp_path / "recovery") == []


def test_copy_that_cannot_be_kept_is_said_once(make_bench, messages, tmp_path, qtbot) -> None:
    blocked = tmp_path / "recovery"
    blocked.write_text("a file where the folder should be")
    bench = make_bench()
    flow = RecoveryFlow(bench, messages, Recovery(blocked), after_ms=0)
    told: list[object] = []
    bench.noticed.connect(told.append)
    bench.apply("Rename", lambda project: rename(project, "Slipway"))

    flow.keep_copy()
    flow.keep_copy()

    assert len(told) == 1
    assert "No recovery copy" in told[0].text
    flow.close()


def test_work_left_by_a_crash_comes_back(flow, messages, project, tmp_path) -> None:
    lost = rename(project, "Lost and found")
    left_by_a_crash(tmp_path / "recovery", lost)
    messages.answers = ["Recover it"]

    flow.offer()

    assert flow.bench.session.project == lost
    assert flow.bench.session.dirty
    assert "Lost and found" in messages.said[0].headline


def test_recovered_work_is_safe_before_its_old_copy_goes(flow, messages, project, tmp_path) -> None:
    old = left_by_a_crash(tmp_path / "recovery", rename(project, "Lost"))
    messages.answers = ["Recover it"]

    flow.offer()

    assert not old.exists()
    assert len(copies(tmp_path / "recovery")) == 1


def test_recovered_work_knows_its_file_while_that_is_as_it_was(flow, messages, project, tmp_path) -> None:
    source = tmp_path / "a.backporch"
    write_project(project, source)
    left_by_a_crash(tmp_path / "recovery", rename(project, "Later"), source)
    messages.answers = ["Recover it"]

    flow.offer()

    assert flow.bench.session.path == source


def test_recovered_work_does_not_cover_a_file_that_changed(flow, messages, project, tmp_path) -> None:
    source = tmp_path / "a.backporch"
    write_project(project, source)
    left_by_a_crash(tmp_path / "recovery", rename(project, "Later"), source)
    write_project(rename(project, "Someone else's"), source)
    messages.answers = ["Recover it"]

    flow.offer()

    assert flow.bench.session.path is None
    assert "changed" in messages.said[0].sentence


@pytest.mark.parametrize(("answer", "kept"), [("Throw it away", 0), ("Ask again next time", 1)])
def test_copy_goes_only_when_it_is_not_wanted(flow, messages, project, tmp_path, answer, kept) -> None:
    left_by_a_crash(tmp_path / "recovery", rename(project, "Lost"))
    before = flow.bench.session.project
    messages.answers = [answer]

    flow.offer()

    assert flow.bench.session.project is before
    assert len(leftover_copies(tmp_path / "recovery")) == kept


def test_damaged_copy_is_set_aside_and_not_offered(flow, messages, tmp_path) -> None:
    folder = tmp_path / "recovery"
    folder.mkdir()
    (folder / f"{GONE_PID}-0123abcd.recovery").write_bytes(b"{")

    flow.offer()

    assert messages.said == []
    assert [path.name for path in (folder / "damaged").iterdir()] == [f"{GONE_PID}-0123abcd.recovery"]
