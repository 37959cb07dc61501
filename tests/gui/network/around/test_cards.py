"""The cards about pins, cable and monitor: in force as they are typed, a burst one step."""

import pytest
from PySide6.QtCore import QPoint, Qt

from workbench.circuit.network import Cable, PartId, Zeros
from workbench.drawing.elements import BlockKind
from workbench.gui.network.around.cable_card import CableCard
from workbench.gui.network.around.coax import COAX, coax_of
from workbench.gui.network.around.drive_card import CAUTION, DriveCard
from workbench.gui.network.targets import Kind, Target
from workbench.project.document import Channel
from workbench.project.edits.drive import set_cable, set_load
from workbench.project.edits.parts import remove_part

Key = Qt.Key


def opened(panel, kind: Kind):
    panel.opening.open_for(Target(kind))
    return panel.opening.card


def project(panel):
    return panel._bench.session.project


def type_into(qtbot, field, text: str) -> None:
    field.setFocus()
    field.selectAll()
    qtbot.keyClicks(field, text)


class TestOpening:
    def test_a_click_on_the_controller_opens_the_card_of_the_pins(self, qtbot, panel) -> None:
        box = panel.canvas.drawing.block(BlockKind.CONTROLLER)
        at = QPoint(round(box.left + 30), round(box.bottom - 8))

        qtbot.mouseClick(panel.canvas, Qt.MouseButton.LeftButton, pos=at)

        assert isinstance(panel.opening.card, DriveCard)
        assert panel.opening.card.isVisible()

    def test_enter_on_the_monitor_opens_its_card_and_escape_closes_it(self, qtbot, panel) -> None:
        panel.canvas.setFocus()
        panel.canvas.go_to(Target(Kind.SCREEN))

        qtbot.keyClick(panel.canvas, Key.Key_Return)
        card = panel.opening.card
        assert isinstance(card, CableCard)
        qtbot.keyClick(card.first, Key.Key_Escape)

        assert panel.opening.card is None
        assert panel.canvas.hasFocus()

    def test_the_finder_has_both(self, panel) -> None:
        for verb, kind in (("drive", DriveCard), ("cable", CableCard)):
            panel._bench.actions.action(f"network.{verb}").trigger()
            assert isinstance(panel.opening.card, kind)


class TestDrive:
    def test_what_is_typed_is_in_force_at_once_and_one_step(self, qtbot, panel) -> None:
        card = opened(panel, Kind.CONTROLLER)
        field = card.fields["supply"]

        type_into(qtbot, field, "2.5")
        panel._bench.live.refresh()
        assert project(panel).driver.supply_volts == 2.5
        assert "white, loaded 0.743 V to 0.563 V" in card.effects.words
        qtbot.keyClick(field, Key.Key_Return)

        assert field.text() == "2.5 V"
        assert panel._bench.session.undo_label == "supply 2.5 V"
        panel._bench.session.undo()
        assert project(panel).driver.supply_volts == 3.3
        assert not panel._bench.session.can_undo

    def test_on_resistances_rise_and_zeros(self, qtbot, panel) -> None:
        card = opened(panel, Kind.CONTROLLER)

        type_into(qtbot, card.fields["on-resistance, driving 1"], "40")
        type_into(qtbot, card.fields["on-resistance, driving 0"], "55")
        type_into(qtbot, card.fields["rise time"], "3n")
        card.zeros.buttons[1].click()

        driver = project(panel).driver
        assert (driver.high_ohms, driver.low_ohms, driver.rise_s) == (40.0, 55.0, 3e-9)
        assert driver.zeros is Zeros.FLOATING

    def test_limits_are_entered_and_forgotten(self, qtbot, panel) -> None:
        card = opened(panel, Kind.CONTROLLER)
        field = card.fields["one pin, mA"]

        type_into(qtbot, field, "8m")
        assert project(panel).driver.pin_limit_amps == 8e-3
        field.clear()
        field.textEdited.emit("")
        assert project(panel).driver.pin_limit_amps is None

    def test_a_pin_can_be_late(self, qtbot, panel) -> None:
        card = opened(panel, Kind.CONTROLLER)

        type_into(qtbot, card.fields["P1, bit 3"], "2n")

        assert project(panel).skews.red == (0.0, 2e-9)

    def test_what_is_refused_says_why_and_the_old_value_stands(self, qtbot, panel) -> None:
        card = opened(panel, Kind.CONTROLLER)
        field = card.fields["supply"]

        type_into(qtbot, field, "3.3.3")

        assert field.property("state") == "fails"
        assert card.said.isVisible()
        qtbot.keyClick(field, Key.Key_Return)
        assert (field.text(), field.property("state")) == ("3.3.3", "fails")
        assert card.said.isVisible()
        type_into(qtbot, field, "3.2")
        assert project(panel).driver.supply_volts == 3.2
        assert not card.said.isVisible()

    def test_a_field_left_with_nonsense_takes_its_value_again_and_the_reason_stays(
        self, qtbot, panel
    ) -> None:
        card = opened(panel, Kind.CONTROLLER)
        field = card.fields["supply"]

        type_into(qtbot, field, "abc")
        qtbot.keyClick(field, Key.Key_Return)
        qtbot.keyClick(field, Key.Key_Tab)

        assert (field.text(), field.property("state")) == ("3.3 V", "")
        assert card.said.text() == "“abc” is not understood: type a value like 3.3; supply stays 3.3 V"
        assert card.said.isVisible()

    @pytest.mark.parametrize(("text", "value"), [("20", "20 mA"), ("4m", "4 mA"), ("0.02 A", "20 mA")])
    def test_a_limit_is_in_milliamperes_and_echoed(self, qtbot, panel, text, value) -> None:
        card = opened(panel, Kind.CONTROLLER)
        field = card.fields["one pin, mA"]

        type_into(qtbot, field, text)

        assert card.foot.text().startswith(f"limit of one pin: {value} · in force")
        qtbot.keyClick(field, Key.Key_Return)
        assert field.text() == value
        assert card.foot.text().startswith("in force")

    def test_a_limit_that_no_pin_has_is_asked_about(self, qtbot, panel) -> None:
        card = opened(panel, Kind.CONTROLLER)
        field = card.fields["one pin, mA"]

        type_into(qtbot, field, "2 A")

        assert field.property("state") == "warns"
        assert card.said.text().startswith("2 A for one pin: logic pins carry milliamperes.")
        assert card.said.isVisible()

    def test_the_caution_stands_where_limits_are_entered(self) -> None:
        assert "damage limit, not a design target" in CAUTION
        assert "maker's data come first" in CAUTION


class TestCable:
    def test_a_cable_is_fitted_chosen_by_kind_and_taken_off(self, panel) -> None:
        card = opened(panel, Kind.SCREEN)

        card.fitted.buttons[1].click()
        assert project(panel).cable == Cable(2.0)
        card.kind.chosen.emit(0)
        assert coax_of(project(panel).cable) == COAX[0]
        panel._bench.live.refresh()
        assert panel.canvas.drawing.block(BlockKind.CABLE) is not None
        card.fitted.buttons[0].click()
        assert project(panel).cable is None

    def test_length_load_and_velocity_are_typed(self, qtbot, panel) -> None:
        card = opened(panel, Kind.SCREEN)

        type_into(qtbot, card.fields["length"], "10")
        panel._bench.live.refresh()
        type_into(qtbot, card.fields["wave speed"], "0,8")
        type_into(qtbot, card.fields["load of one"], "50")
        card.monitors.buttons[1].click()

        assert project(panel).cable == Cable(10.0, velocity=0.8)
        assert (project(panel).load.ohms, project(panel).load.monitors) == (50.0, 2)

    def test_a_length_of_0_is_no_cable_and_another_brings_the_same_one_back(self, qtbot, panel) -> None:
        card = opened(panel, Kind.SCREEN)
        card.fitted.buttons[1].click()
        card.kind.chosen.emit(0)
        panel._bench.live.refresh()
        field = card.fields["length"]

        type_into(qtbot, field, "0")
        panel._bench.live.refresh()
        assert project(panel).cable is None
        qtbot.keyClicks(field, ".5")
        assert project(panel).cable == COAX[0].at(0.5)
        type_into(qtbot, field, "0")
        qtbot.keyClick(field, Key.Key_Return)

        assert project(panel).cable is None
        assert (field.text(), field.placeholderText()) == ("", "none")
        assert not card.said.isVisible()

    def test_a_kilometre_is_kept_and_asked_about(self, qtbot, panel) -> None:
        card = opened(panel, Kind.SCREEN)

        type_into(qtbot, card.fields["length"], "1000")
        qtbot.keyClick(card.fields["length"], Key.Key_Return)

        assert project(panel).cable.metres == 1000.0
        assert card.said.text().startswith("1 km of cable: analog pictures seldom")
        assert card.said.isVisible()

    @pytest.mark.parametrize(
        ("cable", "load", "words"),
        [
            (None, 75.0, "none: no cable"),
            (Cable(2.0), 75.0, "none: the load takes all of it"),
            (Cable(2.0), 82.0, "2.45 % after 20.2 ns"),
            (Cable(2.0, ohms=258.0645161), 82.0, "none: the ladder takes what comes back"),
        ],
        ids=["no cable", "ended", "a ghost", "matched ladder"],
    )
    def test_why_there_is_no_ghost_is_said(self, panel, cable, load, words) -> None:
        session = panel._bench.session
        session.apply("bare", lambda p: remove_part(p, Channel.RED, PartId("C1")))
        session.apply("ends", lambda p: set_load(set_cable(p, cable), load))
        panel._bench.live.refresh()

        card = opened(panel, Kind.SCREEN)

        assert f"first ghost {words};" in card.effects.words

    def test_the_sync_lines_are_there(self, qtbot, panel) -> None:
        card = opened(panel, Kind.SCREEN)

        type_into(qtbot, card.fields["H: series resistor"], "0")
        type_into(qtbot, card.fields["V: monitor's input"], "2k2")

        assert project(panel).sync.h.series_ohms == 0.0
        assert project(panel).sync.v.input_ohms == 2200.0

    def test_no_number_is_refused_in_a_sentence(self, qtbot, panel) -> None:
        card = opened(panel, Kind.SCREEN)
        card.fitted.buttons[1].click()
        panel._bench.live.refresh()

        type_into(qtbot, card.fields["loss, dB a metre"], "abc")

        assert card.said.text() == "“abc” is no number: write one like 0.66"


def test_a_card_that_has_something_to_say_stays_inside_its_window(qtbot, panel) -> None:
    card = opened(panel, Kind.SCREEN)
    window = panel.window()
    window.resize(window.width(), card.height() + 80)
    card.open_at(QPoint(0, window.height()))
    assert card.geometry().bottom() > window.height() - 20

    type_into(qtbot, card.fields["length"], "abc")

    assert card.said.isVisible()
    assert window.rect().contains(card.geometry())


def test_closing_leaves_no_card_behind(panel) -> None:
    card = opened(panel, Kind.CONTROLLER)

    card.close()

    assert panel.opening.card is None
