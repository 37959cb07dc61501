"""The window as a whole: it shows the demo, follows edits, and lets itself go."""

import weakref

import shiboken6
from PySide6.QtCore import QCoreApplication, QEvent, Qt

from workbench.circuit.network import PartId
from workbench.project.document import Channel
from workbench.project.edits.naming import rename
from workbench.project.edits.parts import set_value


def test_bar_names_project_mode_and_ladder(desk) -> None:
    row = desk.window.top.bench_row

    assert row.name.text() == desk.session.project.name
    assert row.mode.value == "640 × 480 · 60 Hz"
    assert row.ladder.value.endswith("5·5·5")


def test_title_tells_of_changes(desk, qtbot) -> None:
    assert not desk.window.isWindowModified()

    desk.bench.apply("Rename", lambda project: rename(project, "Slipway"))

    qtbot.waitUntil(lambda: desk.window.windowTitle() == "Slipway[*] · Backporch")
    assert desk.window.isWindowModified()


def test_undo_is_named_and_undoes(desk, qtbot) -> None:
    before = desk.session.project
    desk.bench.apply("Tune R1", lambda p: set_value(p, Channel.RED, PartId("R1"), 470.0))
    action = desk.bench.actions.action("edit.undo")
    qtbot.waitUntil(lambda: action.text() == "Undo Tune R1")

    qtbot.keyClick(desk.window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)

    assert desk.session.project is before
    qtbot.waitUntil(lambda: not action.isEnabled())


def test_link_box_lets_the_channels_part_and_joins_them(desk, qtbot) -> None:
    row = desk.window.top.bench_row
    linked = desk.session.project.linked

    for expected in (not linked, linked):
        qtbot.mouseClick(row.linked, Qt.MouseButton.LeftButton)
        assert desk.session.project.linked is expected
        qtbot.waitUntil(lambda expected=expected: row.linked.isChecked() is expected)


def test_edit_refused_is_said_at_the_foot(desk) -> None:
    taken = desk.bench.apply("Tune R1", lambda p: set_value(p, Channel.RED, PartId("R1"), -5.0))

    assert not taken
    assert desk.window.notices.text
    assert not desk.session.dirty


def test_closed_window_follows_no_more(desk, qtbot) -> None:
    desk.window.close()
    results: list[object] = []
    desk.live.result_changed.connect(results.append)

    desk.session.apply("Rename", lambda project: rename(project, "Slipway"))

    QCoreApplication.processEvents()
    assert results == []
    assert "Slipway" not in desk.window.windowTitle()


def test_closed_window_is_freed(make_desk) -> None:
    desk = make_desk()
    window = weakref.ref(desk.window)
    desk.window.close()
    desk.window.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)

    assert not shiboken6.isValid(window())
