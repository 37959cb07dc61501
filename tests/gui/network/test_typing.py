"""Values typed where they stand, from the first character on."""

import pytest
from PySide6.QtCore import Qt

from tests.gui.network.doing import click, ohms, state
from workbench.circuit.network import PartId
from workbench.drawing import LOAD
from workbench.project.document import Channel

Key = Qt.Key
SHIFT, CONTROL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


def test_a_click_chooses_and_a_second_one_opens_the_field(qtbot, panel, place) -> None:
    view, _ = state(panel)

    click(qtbot, panel, place("R3"))
    assert (view.chosen, panel.canvas.field.isVisible()) == (PartId("R3"), False)
    click(qtbot, panel, place("R3"))

    assert panel.canvas.field.isVisible()
    assert panel.canvas.field.selectedText() == "2 kΩ"


def test_typing_on_a_chosen_part_opens_the_field_with_what_was_typed(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R1"))

    qtbot.keyClicks(panel.canvas, "4")
    qtbot.keyClicks(panel.canvas.field, "70")

    assert panel.canvas.field.text() == "470"
    assert "470 Ω" in panel.canvas.card.words
    assert "in E24" in panel.canvas.card.words
    assert ohms(panel, "R1") == 500.0, "nothing is kept before Enter"


@pytest.mark.parametrize(("typed", "words"), [("-5", "not possible"), ("nan", "not a number")])
def test_what_is_no_value_is_typed_whole_and_refused_as_it_stands(
    qtbot, panel, place, typed: str, words: str
) -> None:
    click(qtbot, panel, place("R1"))

    qtbot.keyClicks(panel.canvas, typed[0])
    qtbot.keyClicks(panel.canvas.field, typed[1:])

    assert panel.canvas.field.text() == typed
    assert words in panel.canvas.card.words
    qtbot.keyClick(panel.canvas.field, Key.Key_Return)
    assert ohms(panel, "R1") == 500.0


@pytest.mark.parametrize("first", [".", ",", "+", "("])
def test_all_that_a_value_begins_with_opens_the_field(qtbot, panel, place, first: str) -> None:
    click(qtbot, panel, place("R1"))

    qtbot.keyClicks(panel.canvas, first)

    assert panel.canvas.field.isVisible()
    assert panel.canvas.field.text() == first


def test_backspace_opens_the_field_and_delete_removes(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R1"))

    qtbot.keyClick(panel.canvas, Key.Key_Backspace)
    assert panel.canvas.field.selectedText() == "500 Ω"
    qtbot.keyClick(panel.canvas.field, Key.Key_Escape)
    assert ohms(panel, "R1") == 500.0
    qtbot.keyClick(panel.canvas, Key.Key_Delete)

    assert PartId("R1") not in {r.id for r in panel._bench.session.project.channels.red.resistors}


def test_a_sum_of_made_values_is_kept_as_two_parts_and_is_one_step(qtbot, panel, place) -> None:
    view, session = state(panel)
    click(qtbot, panel, place("R2"))
    qtbot.keyClicks(panel.canvas, "8")
    qtbot.keyClicks(panel.canvas.field, "20+150")
    assert "Enter keeps two in series: 820 Ω + 150 Ω" in panel.canvas.card.words

    qtbot.keyClick(panel.canvas.field, Key.Key_Return)

    assert (ohms(panel, "R2a", Channel.BLUE), ohms(panel, "R2b", Channel.BLUE)) == (820.0, 150.0)
    assert (view.chosen, session.undo_label) == (PartId("R2a"), "R2 1 kΩ → 820 Ω + 150 Ω")
    session.undo()
    assert ohms(panel, "R2") == 1e3


def test_control_and_enter_keep_a_sum_as_one_part(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R2"))
    qtbot.keyClicks(panel.canvas, "8")
    qtbot.keyClicks(panel.canvas.field, "20+150")

    qtbot.keyClick(panel.canvas.field, Key.Key_Return, CONTROL)

    assert ohms(panel, "R2") == 970.0


def test_the_card_offers_the_other_reading_of_a_sum(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R2"))
    qtbot.keyClicks(panel.canvas, "2")
    qtbot.keyClicks(panel.canvas.field, "k||2k")
    assert "Enter keeps one part of 1 kΩ" in panel.canvas.card.words, "1 kΩ is made itself"

    panel.canvas.card._other.click()

    assert (ohms(panel, "R2a"), ohms(panel, "R2b")) == (2e3, 2e3)


def test_enter_keeps_the_value_on_all_linked_channels(qtbot, panel, place) -> None:
    _, session = state(panel)
    click(qtbot, panel, place("R1"))
    qtbot.keyClicks(panel.canvas, "4")
    qtbot.keyClicks(panel.canvas.field, "70")

    qtbot.keyClick(panel.canvas.field, Key.Key_Return)

    assert [ohms(panel, "R1", channel) for channel in Channel] == [470.0] * 3
    assert session.undo_label == "R1 500 Ω → 470 Ω"
    assert not panel.canvas.field.isVisible()
    assert not panel.canvas.card.isVisible()


def test_escape_leaves_everything_as_it_was(qtbot, panel, place) -> None:
    _, session = state(panel)
    click(qtbot, panel, place("R1"))
    qtbot.keyClicks(panel.canvas, "4")

    qtbot.keyClick(panel.canvas.field, Key.Key_Escape)

    assert ohms(panel, "R1") == 500.0
    assert not session.can_undo
    assert not panel.canvas.field.isVisible()


def test_what_is_refused_stays_open_with_its_sentence(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R1"))
    qtbot.keyClicks(panel.canvas, "4")
    qtbot.keyClicks(panel.canvas.field, "k7k")

    qtbot.keyClick(panel.canvas.field, Key.Key_Return)

    assert panel.canvas.field.isVisible()
    assert panel.canvas.field.property("state") == "fails"
    assert "4.7 kΩ is written 4k7" in panel.canvas.card.words
    assert ohms(panel, "R1") == 500.0


def test_an_implausible_value_waits_for_keep(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R1"))
    qtbot.keyClicks(panel.canvas, "1")
    qtbot.keyClicks(panel.canvas.field, "M")

    qtbot.keyClick(panel.canvas.field, Key.Key_Return)
    assert ohms(panel, "R1") == 500.0
    panel.canvas.card._keep.click()

    assert ohms(panel, "R1") == 1e6


def test_arrows_in_the_field_step_without_keeping(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R1"))
    qtbot.keyClick(panel.canvas, Key.Key_Return)

    qtbot.keyClick(panel.canvas.field, Key.Key_Up)
    assert panel.canvas.field.text() == "510 Ω"
    qtbot.keyClick(panel.canvas.field, Key.Key_Down, SHIFT)
    assert panel.canvas.field.text() == "470 Ω"
    qtbot.keyClick(panel.canvas.field, Key.Key_Up, CONTROL)
    assert panel.canvas.field.text() == "474.7 Ω"
    assert ohms(panel, "R1") == 500.0


def test_tab_keeps_and_goes_on_to_the_next_part(qtbot, panel, place) -> None:
    view, _ = state(panel)
    click(qtbot, panel, place("R1"))
    qtbot.keyClicks(panel.canvas, "5")
    qtbot.keyClicks(panel.canvas.field, "10")

    qtbot.keyClick(panel.canvas.field, Key.Key_Tab)

    assert ohms(panel, "R1") == 510.0
    assert view.chosen == PartId("R2")
    assert panel.canvas.field.isVisible()


def test_a_click_elsewhere_keeps_what_is_plain(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R1"))
    qtbot.keyClicks(panel.canvas, "5")
    qtbot.keyClicks(panel.canvas.field, "10")

    click(qtbot, panel, place("R3"))

    assert ohms(panel, "R1") == 510.0


def test_the_load_is_typed_in_its_place(qtbot, panel) -> None:
    _, session = state(panel)

    panel.canvas.edit(LOAD)
    panel.canvas.field.setText("none")
    qtbot.keyClick(panel.canvas.field, Key.Key_Return)

    assert session.project.load.ohms is None
    assert session.undo_label == "load 75 Ω → none"


def test_a_letter_in_the_field_is_typed_and_is_no_shortcut(qtbot, panel, place) -> None:
    click(qtbot, panel, place("R1"))
    qtbot.keyClicks(panel.canvas, "4")

    qtbot.keyClicks(panel.canvas.field, "s")

    assert panel.canvas.field.text() == "4s"
    assert len(panel._bench.session.project.channels.red.resistors) == 5
