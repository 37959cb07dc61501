from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from tests.gui.network.doing import click, ohms, state
from workbench.circuit.network import PartId
from workbench.gui.network.shown import PinState
from workbench.gui.network.targets import Kind
from workbench.gui.settings import SYMBOLS, Symbols
from workbench.project.document import Channel

LEFT = Qt.MouseButton.LeftButton
Key = Qt.Key
SHIFT, CONTROL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier


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


def test_what_is_pointed_at_ends_with_the_keys_a_field_and_a_pointer_that_leaves(qtbot, panel, place) -> None:
    view, _ = state(panel)
    click(qtbot, panel, place("R3"))

    qtbot.mouseMove(panel.canvas, place("R4"))
    qtbot.keyClick(panel.canvas, Key.Key_PageUp)
    assert (view.chosen, view.pointed) == (PartId("R2"), None)

    qtbot.mouseMove(panel.canvas, place("R5"))
    assert view.pointed == PartId("R5")
    panel.canvas.edit()
    assert view.pointed is None

    qtbot.keyClick(panel.canvas.field, Key.Key_Escape)
    qtbot.mouseMove(panel.canvas, place("R1"))
    QApplication.sendEvent(panel.canvas, QEvent(QEvent.Type.Leave))
    assert view.pointed is None


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
