"""The table of actions."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QLineEdit, QWidget

from workbench.gui.actions import Actions, ActionSpec


def test_row_becomes_an_action_with_its_words_and_key(qtbot) -> None:
    actions = Actions()

    actions.add([ActionSpec("part.add", "Add a bit", list, shortcut="Ctrl+B", tip="Adds one.")])

    action = actions.action("part.add")
    assert (action.text(), action.shortcut().toString(), action.toolTip()) == (
        "Add a bit",
        "Ctrl+B",
        "Adds one.",
    )


def test_standard_key_brings_every_key_of_the_desktop(qtbot) -> None:
    actions = Actions()

    actions.add([ActionSpec("edit.undo", "Undo", list, shortcut=QKeySequence.StandardKey.Undo)])

    assert QKeySequence("Ctrl+Z") in actions.action("edit.undo").shortcuts()


def test_id_stands_once(qtbot) -> None:
    actions = Actions()
    actions.add([ActionSpec("a", "A", list)])

    with pytest.raises(ValueError, match="a stands twice"):
        actions.add([ActionSpec("a", "A", list)])


def test_refresh_asks_what_holds_now(qtbot) -> None:
    state = {"can": False, "label": "Undo", "on": False}
    actions = Actions()
    actions.add(
        [
            ActionSpec(
                "edit.undo",
                "Undo",
                list,
                enabled=lambda: state["can"],
                label=lambda: state["label"],
                checked=lambda: state["on"],
            )
        ]
    )
    state.update(can=True, label="Undo Tune R3", on=True)

    actions.refresh()

    action = actions.action("edit.undo")
    assert action.isEnabled()
    assert action.isChecked()
    assert action.text() == "Undo Tune R3"


def test_key_of_a_scope_counts_only_there(qtbot) -> None:
    window, inside, outside = QWidget(), QWidget(), QWidget()
    for widget in (inside, outside):
        widget.setParent(window)
        widget.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
    qtbot.addWidget(window)
    done: list[str] = []
    actions = Actions(window)
    actions.attach(window)
    actions.add([ActionSpec("panel.line", "Line", lambda: done.append("line"), shortcut="L", scope=inside)])
    with qtbot.waitExposed(window):
        window.show()

    outside.setFocus()
    qtbot.keyClick(outside, Qt.Key.Key_L)
    assert done == []
    inside.setFocus()
    qtbot.keyClick(inside, Qt.Key.Key_L)
    assert done == ["line"]


def test_undo_in_a_field_undoes_the_text(qtbot) -> None:
    window = QWidget()
    field = QLineEdit(window)
    qtbot.addWidget(window)
    done: list[str] = []
    actions = Actions(window)
    actions.attach(window)
    undo = QKeySequence.StandardKey.Undo
    actions.add([ActionSpec("edit.undo", "Undo", lambda: done.append("undo"), shortcut=undo)])
    with qtbot.waitExposed(window):
        window.show()
    field.setFocus()
    qtbot.keyClicks(field, "470")

    qtbot.keyClick(field, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)

    assert field.text() == ""
    assert done == []
