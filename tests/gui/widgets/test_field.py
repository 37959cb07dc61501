"""Undo in a field: the text's while it is typed, the project's once it is in force."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.gui.actions import Actions, ActionSpec
from workbench.gui.widgets import Field

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)

HELD = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def field(qtbot, make_bench):
    """Return a field in a window whose undo and redo write down that they were asked."""
    window = QWidget()
    window.asked = []
    shown = Field(make_bench(), "supply")
    QVBoxLayout(window).addWidget(shown)
    actions = Actions(window)
    actions.attach(window)
    for word, key in (("undo", QKeySequence.StandardKey.Undo), ("redo", QKeySequence.StandardKey.Redo)):
        actions.add([ActionSpec(f"edit.{word}", word, lambda w=word: window.asked.append(w), shortcut=key)])
    qtbot.addWidget(window)
    with qtbot.waitExposed(window):
        window.show()
    shown.setFocus()
    return shown


def test_undo_is_the_texts_while_it_is_typed(qtbot, field):
    qtbot.keyClicks(field, "470")

    qtbot.keyClick(field, Qt.Key.Key_Z, HELD)

    assert (field.text(), field.window().asked) == ("", [])


def test_undo_is_the_projects_once_the_text_is_kept(qtbot, field):
    qtbot.keyClicks(field, "470")
    qtbot.keyClick(field, Qt.Key.Key_Return)

    qtbot.keyClick(field, Qt.Key.Key_Z, HELD)
    qtbot.keyClick(field, Qt.Key.Key_Z, HELD | Qt.KeyboardModifier.ShiftModifier)

    assert (field.text(), field.window().asked) == ("470", ["undo", "redo"])


def test_what_is_typed_after_is_taken_back_first(qtbot, field):
    qtbot.keyClicks(field, "470")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    qtbot.keyClicks(field, "5")

    qtbot.keyClick(field, Qt.Key.Key_Z, HELD)
    assert (field.text(), field.window().asked) == ("470", [])
    qtbot.keyClick(field, Qt.Key.Key_Z, HELD)

    assert (field.text(), field.window().asked) == ("470", ["undo"])


def test_undo_is_the_texts_while_it_is_refused(qtbot, field):
    field.returnPressed.connect(lambda: field.set_state("fails"))
    qtbot.keyClicks(field, "abc")
    qtbot.keyClick(field, Qt.Key.Key_Return)

    qtbot.keyClick(field, Qt.Key.Key_Z, HELD)

    assert (field.text(), field.window().asked) == ("", [])


def test_coming_back_to_a_field_begins_anew(qtbot, field):
    qtbot.keyClicks(field, "470")
    field.clearFocus()
    field.setFocus()

    qtbot.keyClick(field, Qt.Key.Key_Z, HELD)

    assert (field.text(), field.window().asked) == ("470", ["undo"])


def test_with_nothing_to_undo_the_kept_text_stays(qtbot, field):
    qtbot.keyClicks(field, "470")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    for action in field.window().actions():
        action.setEnabled(False)

    qtbot.keyClick(field, Qt.Key.Key_Z, HELD)

    assert field.text() == "470"
