"""Opening, saving, dropping, recent files, exports, and what is asked before something would be lost."""

from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtGui import QCloseEvent, QDragLeaveEvent
from PySide6.QtWidgets import QApplication, QGraphicsView

from tests.gui.gestures import drop_files, hover_files
from workbench.circuit.series import Series
from workbench.exports import KINDS
from workbench.files.project_file import read_project, write_project
from workbench.gui import settings as table
from workbench.gui.files.commands import FileMenu
from workbench.gui.files.flow import file_stem
from workbench.gui.widgets import Sign
from workbench.project.edits.naming import rename
from workbench.project.templates import TEMPLATES


def change(desk, name: str = "Slipway") -> None:
    """Make a change that is not saved."""
    desk.bench.apply("Rename", lambda project: rename(project, name))


@pytest.fixture
def path(tmp_path: Path, project) -> Path:
    """A project in a file."""
    target = tmp_path / "harbour.backporch"
    write_project(rename(project, "Harbour"), target)
    return target


def test_new_project_is_saved_under_the_name_that_is_asked_for(desk, messages, tmp_path) -> None:
    change(desk)
    messages.save_paths = [tmp_path / "slip"]

    assert desk.files.save()

    saved = tmp_path / "slip.backporch"
    assert read_project(saved) == desk.session.project
    assert desk.session.path == saved
    assert not desk.session.dirty
    assert messages.suggested[0].name == "Slipway.backporch"
    assert desk.window.top.bench_row.saved.text() == "saved 12:00"


def test_file_that_is_open_is_written_without_asking(desk, messages, path) -> None:
    desk.files.load(path)
    change(desk)

    assert desk.files.save()

    assert read_project(path).name == "Slipway"
    assert messages.said == []


def test_suffix_that_is_added_does_not_replace_a_file_unasked(desk, messages, path) -> None:
    messages.save_paths, messages.answers = [path.with_suffix("")], ["Cancel"]

    assert not desk.files.save_as()

    assert read_project(path).name == "Harbour"


def test_save_that_fails_says_why_and_keeps_the_changes(desk, messages, tmp_path) -> None:
    change(desk)
    messages.save_paths = [tmp_path / "no-such-folder" / "a.backporch"]

    assert not desk.files.save()

    assert messages.said[0].sign is Sign.FAILS
    assert "no-such-folder" in messages.said[0].sentence
    assert desk.session.dirty


def test_state_says_how_project_and_file_stand(desk, path, qtbot) -> None:
    words = desk.window.top.bench_row.saved
    assert words.text() == "not saved yet"
    desk.files.load(path)
    qtbot.waitUntil(lambda: words.text().startswith("saved "))
    change(desk)
    qtbot.waitUntil(lambda: words.text() == "changes not saved")


def test_save_of_another_day_is_dated(desk, messages, wall, tmp_path) -> None:
    messages.save_paths = [tmp_path / "a.backporch"]
    desk.files.save()
    wall.time += timedelta(days=1)

    assert desk.files.state == "saved 2025-06-14"


@pytest.mark.parametrize(
    ("answer", "left", "saved"), [("Save", True, True), ("Discard", True, False), ("Cancel", False, False)]
)
def test_changes_are_asked_about_before_another_file_opens(
    desk, messages, path, tmp_path, answer, left, saved
) -> None:
    own = tmp_path / "own.backporch"
    messages.save_paths = [own]
    change(desk)
    messages.answers = [answer]

    assert desk.files.open(path) is left

    assert own.exists() is saved
    assert desk.session.project.name == ("Harbour" if left else "Slipway")
    assert messages.said[0].answers == ("Save", "Discard", "Cancel")


def test_closing_asks_and_cancel_keeps_the_window(desk, messages) -> None:
    change(desk)
    messages.answers = ["Cancel"]

    desk.window.close()

    assert desk.window.isVisible()
    messages.answers = ["Discard"]
    desk.window.close()
    assert not desk.window.isVisible()


def test_closing_without_changes_asks_nothing(desk, messages) -> None:
    event = QCloseEvent()

    desk.window.closeEvent(event)

    assert event.isAccepted()
    assert messages.said == []


@pytest.mark.parametrize(
    "content", [b"", b"{", b"\xff\xfe\x00", b'{"format": "backporch-project", "version": 99}'], ids=repr
)
def test_damaged_file_is_one_dialog_and_stays_as_it_is(desk, messages, tmp_path, content) -> None:
    damaged = tmp_path / "damaged.backporch"
    damaged.write_bytes(content)
    before = desk.session.project

    assert not desk.files.open(damaged)

    assert len(messages.said) == 1
    assert "damaged.backporch" in messages.said[0].sentence
    assert desk.session.project is before
    assert damaged.read_bytes() == content


def test_file_can_be_dropped_on_the_window(desk, path) -> None:
    assert drop_files(desk.window, str(path))

    assert desk.session.project.name == "Harbour"
    assert desk.session.path == path


def test_two_files_at_once_are_refused(desk, path, tmp_path) -> None:
    drop_files(desk.window, str(path), str(tmp_path))

    assert "one file" in desk.window.notices.text
    assert desk.session.path is None


def test_recent_files_are_newest_first_and_missing_ones_grey(desk, path, tmp_path, project) -> None:
    other = tmp_path / "other.backporch"
    write_project(project, other)
    desk.files.load(path)
    desk.files.load(other)
    path.unlink()

    menu = FileMenu(desk.bench.actions, desk.files, desk.window)

    rows = [(a.text(), a.isEnabled(), a.toolTip()) for a in menu.recent.actions() if not a.isSeparator()]
    assert rows[:2] == [("other.backporch", True, str(other)), ("harbour.backporch", False, str(path))]
    menu.recent.actions()[-1].trigger()
    assert desk.bench.settings.get(table.RECENT) == ()
    menu.deleteLater()


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_every_kind_can_be_exported(desk, messages, tmp_path, kind) -> None:
    messages.save_paths = [tmp_path / "out"]

    assert desk.files.export(kind)

    assert (tmp_path / f"out{kind.suffix}").read_bytes() == kind.content(desk.live.result)
    assert desk.window.notices.text.startswith("Written")


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda template: template.id)
def test_every_template_opens_without_a_file(desk, template) -> None:
    desk.files.start_from(template)

    assert desk.session.project == template.project()
    assert desk.session.path is None
    assert template.description in desk.bench.actions.action(f"new.{template.id}").toolTip()


@pytest.mark.parametrize(
    ("name", "stem"), [("Tide: 5/5/5", "Tide- 5-5-5"), ("..", "project"), ("a\nb", "a-b"), ("Ü 1", "Ü 1")]
)
def test_name_becomes_a_file_name(name, stem) -> None:
    assert file_stem(name) == stem


def test_new_project_takes_over_what_the_person_prefers(desk) -> None:
    settings = desk.bench.settings
    settings.set(table.SERIES, Series.E96)
    settings.set(table.PIN_LIMIT, 0.012)

    desk.files.start_from(TEMPLATES[1])

    project = desk.session.project
    assert project.series is Series.E96
    assert project.driver.pin_limit_amps == 0.012
    assert not desk.session.dirty


@pytest.mark.parametrize("panel", ["network", "scanline", "findings", "top"])
def test_file_can_be_dropped_on_every_part_of_the_window(desk, path, panel) -> None:
    target = getattr(desk.window, panel)
    inner = target.findChildren(QGraphicsView)

    assert drop_files(inner[0].viewport() if inner else target, str(path))

    assert desk.session.path == path


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("slip.png", "Drop slip.png to show this image on the line"),
        ("screen.edid", "Drop screen.edid to read the monitor's EDID in it"),
        ("slip.backporch", "Drop slip.backporch to open it as a project"),
    ],
)
def test_a_file_that_hovers_is_told_what_dropping_it_would_do(desk, name, words) -> None:
    sign = desk.window.drop_sign

    assert hover_files(desk.window, f"/no/{name}")
    assert sign.isVisible()
    assert sign.words == words
    assert sign.geometry() == desk.window.rect()

    QApplication.sendEvent(desk.window, QDragLeaveEvent())
    assert not sign.isVisible()


def test_the_sign_goes_when_the_file_falls(desk, path) -> None:
    assert drop_files(desk.window, str(path))

    assert not desk.window.drop_sign.isVisible()
