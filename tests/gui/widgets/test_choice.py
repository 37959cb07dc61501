"""The list under a choice, by keyboard."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from workbench.gui.widgets.choice import Choice, ChoiceMenu

# What the offscreen platform says of any menu that opens.
pytestmark = pytest.mark.qt_log_ignore("This plugin does not support")

Key = Qt.Key
OPTIONS = ("E6", "E12", "E24", "E48", "own values", "other")


@pytest.fixture
def choice(qtbot, make_bench) -> Choice:
    made = Choice(make_bench(), "series", "E24")
    made.set_options(OPTIONS)
    qtbot.addWidget(made)
    with qtbot.waitExposed(made):
        made.show()
    return made


def opened(choice: Choice) -> ChoiceMenu:
    choice.click()
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, ChoiceMenu)
    return menu


@pytest.mark.parametrize(
    ("keys", "landed"),
    [
        pytest.param([Key.Key_Down], "E48", id="after the one that holds"),
        pytest.param([Key.Key_Up], "E12", id="before it"),
        pytest.param([Key.Key_Home], "E6", id="first"),
        pytest.param([Key.Key_End], "other", id="last"),
        pytest.param([Key.Key_O], "own values", id="by its letter"),
        pytest.param([Key.Key_O, Key.Key_T], "other", id="by its letters"),
        pytest.param([Key.Key_E, Key.Key_1], "E12", id="by letter and figure"),
        pytest.param([Key.Key_X], "E24", id="no such choice"),
    ],
)
def test_keys_go_to_a_choice_and_enter_takes_it(qtbot, choice, keys, landed) -> None:
    taken: list[int] = []
    choice.chosen.connect(taken.append)
    menu = opened(choice)

    for key in keys:
        qtbot.keyClick(menu, key)

    assert menu.activeAction().text() == landed
    qtbot.keyClick(menu, Key.Key_Return)
    assert [OPTIONS[number] for number in taken] == [landed]


def test_escape_takes_nothing(qtbot, choice) -> None:
    taken: list[int] = []
    choice.chosen.connect(taken.append)
    menu = opened(choice)

    qtbot.keyClick(menu, Key.Key_Escape)

    assert not menu.isVisible()
    assert not taken
