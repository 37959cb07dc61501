import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from workbench.circuit.network import PartId
from workbench.drawing import LOAD
from workbench.gui.network.shown import PinState
from workbench.gui.network.targets import Kind
from workbench.gui.settings import SYMBOLS, Symbols
from workbench.project.document import Channel

LEFT = Qt.MouseButton.LeftButton
Key = Qt.Key
SHIFT, CONTROL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


def ohms(panel, part: str, channel: Channel = Channel.RED) -> float:
    network = panel._bench.session.project.channels[channel]
    return next(r.ohms for r in network.resistors if r.id == part)


def state(panel):
    return panel._bench.view, panel._bench.session


def click(qtbot, panel, at: QPoint) -> None:
    qtbot.mouseClick(panel.canvas, LEFT, pos=at)


def turn_wheel(widget, at: QPoint, turns: int) -> bool:
    event = QWheelEvent(
        QPointF(at),
        QPointF(widget.mapToGlobal(at)),
        QPoint(),
        QPoint(0, 120 * turns),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(widget, event)
    return event.isAccepted()


class TestPins:
    def test_a_click_on_a_key_forces_the_pin_on_all_linked_channels(self, qtbot, panel, place) -> None:
        view, _ = state(panel)

        click(qtbot, panel, place(1))

        assert [view.held(channel) for channel in Channel] == [0b10111] * 3
        assert panel.canvas.shown.states[1] is PinState.LOW

    def test_one_nought_and_f_say_what_the_pin_does(self, qtbot, panel, place) -> None:
        view, _ = state(panel)
        click(qtbot, panel, place(0))

        qtbot.keyClicks(panel.canvas, "1")
        assert (view.held(Channel.RED), panel.canvas.shown.states[0]) == (31, PinState.HIGH)
        qtbot.keyClicks(panel.canvas, "f")
        assert (view.held(Channel.RED), panel.canvas.shown.states[0]) == (15, PinState.FLOATING)
        qtbot.keyClick(panel.canvas, Key.Key_Space)
        assert panel.canvas.shown.states[0] is PinState.LOW

    def test_release_gives_the_pins_back_to_the_picture(self, qtbot, panel, place) -> None:
        view, _ = state(panel)
        click(qtbot, panel, place(0))
        qtbot.keyClicks(panel.canvas, "f")

        panel.head.release.click()

        assert view.held(Channel.RED) is None
        assert set(panel.canvas.shown.states) == {PinState.HIGH}
        assert not panel.head.release.isVisible()

    def test_the_pixel_under_the_cursor_drives_the_pins_until_a_code_is_held(self, panel) -> None:
        view, session = state(panel)

        view.look_at(0)
        assert panel.canvas.shown.code == 0
        view.hold((Channel.RED,), 9)
        assert panel.canvas.shown.code == 9
        assert session.undo_label == "", "what is looked at is no edit"


class TestTyping:
    def test_a_click_chooses_and_a_second_one_opens_the_field(self, qtbot, panel, place) -> None:
        view, _ = state(panel)

        click(qtbot, panel, place("R3"))
        assert (view.chosen, panel.canvas.field.isVisible()) == (PartId("R3"), False)
        click(qtbot, panel, place("R3"))

        assert panel.canvas.field.isVisible()
        assert panel.canvas.field.selectedText() == "2 kΩ"

    def test_typing_on_a_chosen_part_opens_the_field_with_what_was_typed(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))

        qtbot.keyClicks(panel.canvas, "4")
        qtbot.keyClicks(panel.canvas.field, "70")

        assert panel.canvas.field.text() == "470"
        assert "470 Ω" in panel.canvas.card.words
        assert "in E24" in panel.canvas.card.words
        assert ohms(panel, "R1") == 500.0, "nothing is kept before Enter"

    @pytest.mark.parametrize(("typed", "words"), [("-5", "not possible"), ("nan", "not a number")])
    def test_what_is_no_value_is_typed_whole_and_refused_as_it_stands(
        self, qtbot, panel, place, typed: str, words: str
    ) -> None:
        click(qtbot, panel, place("R1"))

        qtbot.keyClicks(panel.canvas, typed[0])
        qtbot.keyClicks(panel.canvas.field, typed[1:])

        assert panel.canvas.field.text() == typed
        assert words in panel.canvas.card.words
        qtbot.keyClick(panel.canvas.field, Key.Key_Return)
        assert ohms(panel, "R1") == 500.0

    @pytest.mark.parametrize("first", [".", ",", "+", "("])
    def test_all_that_a_value_begins_with_opens_the_field(self, qtbot, panel, place, first: str) -> None:
        click(qtbot, panel, place("R1"))

        qtbot.keyClicks(panel.canvas, first)

        assert panel.canvas.field.isVisible()
        assert panel.canvas.field.text() == first

    def test_backspace_opens_the_field_and_delete_removes(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))

        qtbot.keyClick(panel.canvas, Key.Key_Backspace)
        assert panel.canvas.field.selectedText() == "500 Ω"
        qtbot.keyClick(panel.canvas.field, Key.Key_Escape)
        assert ohms(panel, "R1") == 500.0
        qtbot.keyClick(panel.canvas, Key.Key_Delete)

        assert PartId("R1") not in {r.id for r in panel._bench.session.project.channels.red.resistors}

    def test_a_sum_of_made_values_is_kept_as_two_parts_and_is_one_step(self, qtbot, panel, place) -> None:
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

    def test_control_and_enter_keep_a_sum_as_one_part(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R2"))
        qtbot.keyClicks(panel.canvas, "8")
        qtbot.keyClicks(panel.canvas.field, "20+150")

        qtbot.keyClick(panel.canvas.field, Key.Key_Return, CONTROL)

        assert ohms(panel, "R2") == 970.0

    def test_the_card_offers_the_other_reading_of_a_sum(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R2"))
        qtbot.keyClicks(panel.canvas, "2")
        qtbot.keyClicks(panel.canvas.field, "k||2k")
        assert "Enter keeps one part of 1 kΩ" in panel.canvas.card.words, "1 kΩ is made itself"

        panel.canvas.card._other.click()

        assert (ohms(panel, "R2a"), ohms(panel, "R2b")) == (2e3, 2e3)

    def test_enter_keeps_the_value_on_all_linked_channels(self, qtbot, panel, place) -> None:
        _, session = state(panel)
        click(qtbot, panel, place("R1"))
        qtbot.keyClicks(panel.canvas, "4")
        qtbot.keyClicks(panel.canvas.field, "70")

        qtbot.keyClick(panel.canvas.field, Key.Key_Return)

        assert [ohms(panel, "R1", channel) for channel in Channel] == [470.0] * 3
        assert session.undo_label == "R1 500 Ω → 470 Ω"
        assert not panel.canvas.field.isVisible()
        assert not panel.canvas.card.isVisible()

    def test_escape_leaves_everything_as_it_was(self, qtbot, panel, place) -> None:
        _, session = state(panel)
        click(qtbot, panel, place("R1"))
        qtbot.keyClicks(panel.canvas, "4")

        qtbot.keyClick(panel.canvas.field, Key.Key_Escape)

        assert ohms(panel, "R1") == 500.0
        assert not session.can_undo
        assert not panel.canvas.field.isVisible()

    def test_what_is_refused_stays_open_with_its_sentence(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))
        qtbot.keyClicks(panel.canvas, "4")
        qtbot.keyClicks(panel.canvas.field, "k7k")

        qtbot.keyClick(panel.canvas.field, Key.Key_Return)

        assert panel.canvas.field.isVisible()
        assert panel.canvas.field.property("state") == "fails"
        assert "4.7 kΩ is written 4k7" in panel.canvas.card.words
        assert ohms(panel, "R1") == 500.0

    def test_an_implausible_value_waits_for_keep(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))
        qtbot.keyClicks(panel.canvas, "1")
        qtbot.keyClicks(panel.canvas.field, "M")

        qtbot.keyClick(panel.canvas.field, Key.Key_Return)
        assert ohms(panel, "R1") == 500.0
        panel.canvas.card._keep.click()

        assert ohms(panel, "R1") == 1e6

    def test_arrows_in_the_field_step_without_keeping(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))
        qtbot.keyClick(panel.canvas, Key.Key_Return)

        qtbot.keyClick(panel.canvas.field, Key.Key_Up)
        assert panel.canvas.field.text() == "510 Ω"
        qtbot.keyClick(panel.canvas.field, Key.Key_Down, SHIFT)
        assert panel.canvas.field.text() == "470 Ω"
        qtbot.keyClick(panel.canvas.field, Key.Key_Up, CONTROL)
        assert panel.canvas.field.text() == "474.7 Ω"
        assert ohms(panel, "R1") == 500.0

    def test_tab_keeps_and_goes_on_to_the_next_part(self, qtbot, panel, place) -> None:
        view, _ = state(panel)
        click(qtbot, panel, place("R1"))
        qtbot.keyClicks(panel.canvas, "5")
        qtbot.keyClicks(panel.canvas.field, "10")

        qtbot.keyClick(panel.canvas.field, Key.Key_Tab)

        assert ohms(panel, "R1") == 510.0
        assert view.chosen == PartId("R2")
        assert panel.canvas.field.isVisible()

    def test_a_click_elsewhere_keeps_what_is_plain(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))
        qtbot.keyClicks(panel.canvas, "5")
        qtbot.keyClicks(panel.canvas.field, "10")

        click(qtbot, panel, place("R3"))

        assert ohms(panel, "R1") == 510.0

    def test_the_load_is_typed_in_its_place(self, qtbot, panel) -> None:
        _, session = state(panel)

        panel.canvas.edit(LOAD)
        panel.canvas.field.setText("none")
        qtbot.keyClick(panel.canvas.field, Key.Key_Return)

        assert session.project.load.ohms is None
        assert session.undo_label == "load 75 Ω → none"

    def test_a_letter_in_the_field_is_typed_and_is_no_shortcut(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))
        qtbot.keyClicks(panel.canvas, "4")

        qtbot.keyClicks(panel.canvas.field, "s")

        assert panel.canvas.field.text() == "4s"
        assert len(panel._bench.session.project.channels.red.resistors) == 5


class TestStepping:
    def test_arrows_step_the_chosen_part_live_and_a_burst_is_one_step_of_the_history(
        self, qtbot, panel, place
    ) -> None:
        _, session = state(panel)
        click(qtbot, panel, place("R1"))

        for _ in range(3):
            qtbot.keyPress(panel.canvas, Key.Key_Up)
        assert ohms(panel, "R1") == 620.0
        qtbot.keyRelease(panel.canvas, Key.Key_Up)
        session.undo()

        assert ohms(panel, "R1") == 500.0
        assert not session.can_undo

    def test_two_bursts_are_two_steps(self, qtbot, panel, place) -> None:
        _, session = state(panel)
        click(qtbot, panel, place("R1"))

        qtbot.keyClick(panel.canvas, Key.Key_Up)
        qtbot.keyClick(panel.canvas, Key.Key_Up)
        session.undo()

        assert ohms(panel, "R1") == 510.0

    def test_the_wheel_steps_the_chosen_part_and_scrolls_over_any_other(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))

        assert turn_wheel(panel.canvas, place("R1"), 1)
        turn_wheel(panel.canvas, place("R2"), 1)

        assert (ohms(panel, "R1"), ohms(panel, "R2")) == (510.0, 1e3)


class TestFocus:
    def test_tab_visits_pins_parts_node_and_what_stands_around_and_then_leaves(self, qtbot, panel) -> None:
        canvas = panel.canvas
        canvas.setFocus(Qt.FocusReason.TabFocusReason)
        visited = []
        while canvas.hasFocus() and len(visited) < 40:
            visited.append(canvas.target.kind)
            qtbot.keyClick(canvas, Key.Key_Tab)

        around = [Kind.SOCKET, Kind.MONITOR, Kind.SCREEN, Kind.CONTROLLER]
        assert visited == [*[Kind.PIN] * 5, *[Kind.PART] * 8, Kind.NODE, *around]

    def test_the_focus_chooses_parts_and_says_what_it_is_on(self, qtbot, panel) -> None:
        canvas = panel.canvas
        canvas.setFocus(Qt.FocusReason.TabFocusReason)

        assert canvas.accessibleDescription().startswith("P0, bit 4, high, 5.114 mA out of the pin")
        for _ in range(5):
            qtbot.keyClick(canvas, Key.Key_Tab)

        assert panel._bench.view.chosen == PartId("R1")
        assert canvas.accessibleDescription() == "R1, 500 Ω, ± 1 %, 250 mW, between bit4 and out"

    def test_arrows_go_to_what_lies_that_way(self, qtbot, panel, place) -> None:
        canvas = panel.canvas
        click(qtbot, panel, place(0))

        qtbot.keyClick(canvas, Key.Key_Down)
        assert canvas.target.pin == 1
        qtbot.keyClick(canvas, Key.Key_Right)
        assert canvas.target.part == PartId("R2")
        qtbot.keyClick(canvas, Key.Key_PageDown)
        assert canvas.target.part == PartId("R3")
        qtbot.keyClick(canvas, Key.Key_Left)
        assert canvas.target.pin == 2

    def test_escape_lets_go_of_what_is_chosen(self, qtbot, panel, place) -> None:
        click(qtbot, panel, place("R1"))

        qtbot.keyClick(panel.canvas, Key.Key_Escape)

        assert panel._bench.view.chosen is None


def test_pointing_lights_the_same_part_everywhere(qtbot, panel, place) -> None:
    qtbot.mouseMove(panel.canvas, place("R4"))
    assert panel._bench.view.pointed == PartId("R4")

    qtbot.mouseMove(panel.canvas, QPoint(4, 4))
    assert panel._bench.view.pointed is None


def test_what_another_panel_chooses_gets_the_keys_here(panel) -> None:
    panel._bench.view.choose(PartId("R5"))

    assert panel.canvas.target.part == PartId("R5")
    assert panel.canvas.scene().chosen == PartId("R5")


def test_a_value_the_series_lacks_has_its_sign(panel) -> None:
    assert PartId("R1") in panel.canvas.scene().findings


def test_the_symbols_are_the_persons_choice(panel) -> None:
    assert not panel.canvas.drawing.zigzag

    panel._bench.settings.set(SYMBOLS, Symbols.ZIGZAG)

    assert panel.canvas.drawing.zigzag


def test_a_chosen_part_is_lit(panel, place) -> None:
    at = place("R3") + QPoint(0, 26)
    dark = panel.canvas.grab().toImage().pixelColor(at)

    panel._bench.view.choose(PartId("R3"))

    lit = panel.canvas.grab().toImage().pixelColor(at)
    assert lit.red() > dark.red() + 20
    assert lit.red() > lit.blue()
