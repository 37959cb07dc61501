"""One letter edits the network: never while it was meant for a list, and always said."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QMenu

from workbench.circuit.network import PartId
from workbench.gui.network.table_rows import Column

# What the offscreen platform says of any menu that opens.
pytestmark = pytest.mark.qt_log_ignore("This plugin does not support")

Key = Qt.Key
LETTERS = "abcdeglmopsABCDEGPS"


def type_letters(qtbot, menu: QMenu) -> None:
    for letter in LETTERS:
        if menu.isVisible():
            qtbot.keyClicks(menu, letter)


def test_letters_typed_into_an_open_list_find_a_choice_and_edit_nothing(desk, qtbot) -> None:
    desk.window.network.canvas.setFocus()
    desk.window.scanline.head.card.click()
    menu = QApplication.activePopupWidget()

    qtbot.keyClicks(menu, "g")

    assert menu.isVisible()
    assert menu.activeAction().text().startswith("g")
    type_letters(qtbot, menu)
    assert not desk.session.can_undo
    menu.close()


@pytest.mark.parametrize("plain", [True, False], ids=["any menu of Qt's", "the menu of the drawing"])
def test_letters_typed_into_an_open_menu_edit_nothing(desk, qtbot, plain: bool) -> None:
    canvas = desk.window.network.canvas
    canvas.setFocus()
    desk.bench.view.choose(PartId("R3"))
    if plain:
        menu = QMenu(desk.window)
        menu.addAction("nothing")
        menu.popup(QPoint(5, 5))
    else:
        canvas.menu_asked.emit(canvas.target, QPoint(5, 5))
        menu = QApplication.activePopupWidget()

    type_letters(qtbot, menu)

    assert not desk.session.can_undo
    assert canvas.connecting.lead is None
    menu.close()


def test_letters_on_the_table_twin_are_typed_into_its_cell(desk, qtbot) -> None:
    desk.bench.actions.action("network.table").trigger()
    table = desk.window.network.table
    table.setCurrentIndex(
        table.parts.index(table.parts.row_of(PartId("R2")), list(Column).index(Column.PART))
    )

    qtbot.keyClicks(table, "b")

    assert table.state() is table.State.EditingState
    assert not desk.session.can_undo


@pytest.mark.parametrize(
    ("part", "letter", "words"),
    [
        (None, "g", "Add a shunt to ground: RS 130 Ω, in all three channels."),
        (None, "b", "Add a bit: R6 16 kΩ, in all three channels."),
        ("R3", "m", ""),
        ("R3", "s", "Split R3 in series: R3a 1 kΩ and R3b 1 kΩ, in all three channels."),
        ("R3", "d", "Duplicate R3: R6 2 kΩ, in all three channels."),
        (None, "B", "Remove a bit: without R5, in all three channels."),
    ],
)
def test_an_edit_by_one_letter_says_what_it_did_and_is_taken_back(desk, qtbot, part, letter, words) -> None:
    canvas, bar, before = desk.window.network.canvas, desk.window.notices, desk.session.project
    canvas.setFocus()
    if part:
        desk.bench.view.choose(PartId(part))

    shifted = Qt.KeyboardModifier.ShiftModifier if letter.isupper() else Qt.KeyboardModifier.NoModifier
    qtbot.keyClick(canvas, letter.lower(), shifted)

    assert bar.text == words
    if words:
        qtbot.mouseClick(bar._undo, Qt.MouseButton.LeftButton)
        assert desk.session.project == before
        assert bar.text == ""


def test_the_offer_to_undo_goes_with_the_step_it_is_about(desk, qtbot) -> None:
    desk.window.network.canvas.setFocus()
    qtbot.keyClicks(desk.window.network.canvas, "g")

    desk.bench.apply("Rename", lambda project: replace(project, name="Other"))

    assert desk.window.notices.text == ""
