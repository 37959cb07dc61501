"""The one dialog of the program."""

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QPlainTextEdit, QWidget

from workbench.gui.messages import MessageDialog, Messages
from workbench.gui.widgets import Button, Sign, Words

# The offscreen platform cannot tell a dialog's least size to anybody, and says so.
pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)


@pytest.fixture
def window(qtbot) -> QWidget:
    window = QWidget()
    qtbot.addWidget(window)
    return window


@pytest.fixture
def dialog(make_bench, qtbot, window):
    dialog = MessageDialog(
        make_bench(),
        "Save the changes?",
        ("Save", "Discard", "Cancel"),
        "They are lost.",
        Sign.WARNS,
        "trace",
        window,
    )
    with qtbot.waitExposed(dialog):
        dialog.show()
    return dialog


def button(dialog: MessageDialog, text: str) -> Button:
    return next(b for b in dialog.findChildren(Button) if b.text() == text)


def test_headline_sentence_and_answers_are_shown(dialog) -> None:
    words = [w.text() for w in dialog.findChildren(Words)]

    assert words == ["Save the changes?", "They are lost."]
    assert [b.text() for b in dialog.findChildren(Button)][-3:] == ["Save", "Discard", "Cancel"]


def test_button_is_the_answer(dialog, qtbot) -> None:
    qtbot.mouseClick(button(dialog, "Discard"), Qt.MouseButton.LeftButton)

    assert dialog.answer == "Discard"
    assert not dialog.isVisible()


def test_enter_takes_the_first_and_esc_the_last(dialog, qtbot) -> None:
    qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    assert dialog.answer == "Cancel"

    dialog.show()
    qtbot.keyClick(dialog.focusWidget() or dialog, Qt.Key.Key_Return)
    assert dialog.answer == "Save"


def test_details_are_folded_until_asked_for(dialog, qtbot) -> None:
    details = dialog.findChild(QPlainTextEdit)
    assert not details.isVisible()

    qtbot.mouseClick(button(dialog, "Details"), Qt.MouseButton.LeftButton)

    assert details.isVisible()
    assert details.toPlainText() == "trace"


def test_question_waits_for_its_answer(make_bench, qtbot, window) -> None:
    messages = Messages(make_bench(), window)

    def answer() -> None:
        open_ = window.findChild(MessageDialog)
        qtbot.mouseClick(button(open_, "No"), Qt.MouseButton.LeftButton)

    QTimer.singleShot(0, answer)
    assert messages.ask("Replace it?", ("Yes", "No")) == "No"
