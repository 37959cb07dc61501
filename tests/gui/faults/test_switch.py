"""Deliberate faults: marked while they are on, never part of the design."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from workbench.bringup.faults import FAULTS, fault_named
from workbench.circuit.network import PartId
from workbench.exports import KINDS
from workbench.files.project_file import encode
from workbench.gui.faults.card import GROUPS
from workbench.project.document import Channel
from workbench.project.edits.parts import set_value


def on(desk, *names: str, channel: Channel = Channel.RED) -> None:
    for name in names:
        desk.faults.turn(fault_named(name), on=True, channel=channel)


def test_a_fault_breaks_what_is_shown_and_not_the_design(desk) -> None:
    before = encode(desk.session.project)

    on(desk, "two-loads")

    assert desk.live.result.channels.red.levels.volts_by_code[-1] < 0.45
    assert encode(desk.session.project) == before
    assert not desk.session.dirty
    assert not desk.session.can_undo


def test_saving_while_a_fault_is_on_saves_the_design(desk, tmp_path, messages) -> None:
    before = encode(desk.session.project)
    on(desk, "low-bit-tenth", "stuck-high")
    path = tmp_path / "board.backporch"
    messages.save_paths.append(path)

    assert desk.files.save()
    assert path.read_bytes() == before


def test_what_is_exported_while_a_fault_is_on_is_named_after_it(desk, tmp_path, messages) -> None:
    said = []
    desk.bench.noticed.connect(said.append)
    messages.save_paths = [tmp_path / "a.csv", tmp_path / "b.csv"]

    on(desk, "stuck-high")
    assert desk.files.export(KINDS["levels-csv"])
    desk.faults.end_all()
    assert desk.files.export(KINDS["levels-csv"])

    assert [path.name for path in messages.suggested] == [
        "Tide board-levels-with-faults.csv",
        "Tide board-levels.csv",
    ]
    assert fault_named("stuck-high").name in said[0].text
    assert said[0].warning
    assert said[1].text.startswith("Written: b.csv")
    assert not said[1].warning


def test_no_remedy_is_offered_for_a_broken_board(desk) -> None:
    on(desk, "no-h-sync")

    assert any("H sync" in finding.headline for finding in desk.live.result.findings)
    assert all(finding.remedy is None for finding in desk.live.result.findings)


def test_the_banner_names_the_faults_and_ends_them(desk) -> None:
    banner = desk.window.banner
    assert not banner.isVisible()

    on(desk, "two-loads", "bits-reversed", channel=Channel.BLUE)

    assert banner.isVisible()
    assert "2 deliberate faults are on" in banner.text
    assert "Bit order reversed (blue)" in banner.text
    banner.end.click()
    assert not banner.isVisible()
    assert desk.live.result.project is desk.session.project


def test_edits_go_on_while_a_fault_is_on(desk) -> None:
    on(desk, "two-loads")

    desk.bench.apply("Tune", lambda p: set_value(p, Channel.RED, PartId("R1"), 470.0))
    desk.live.refresh()

    assert desk.session.project.channels.red.resistors[0].ohms == 470.0
    assert desk.live.result.project.channels.red.resistors[0].ohms == 470.0
    assert desk.live.result.project.load.monitors == 2


def test_a_slip_shows_in_the_plot(desk) -> None:
    on(desk, "stuck-high")

    line = desk.live.result.scanline
    assert line.volts[0].min() > 0.3
    assert line.volts[1].min() < 0.01


def test_the_list_holds_every_fault_once() -> None:
    listed = [fault.id for _, group in GROUPS for fault in group]

    assert sorted(listed) == sorted(fault.id for fault in FAULTS)


def test_every_fault_can_be_switched_on_and_off(desk) -> None:
    clean = desk.live.result

    for fault in FAULTS:
        desk.faults.turn(fault, on=True)
        assert desk.faults.is_on(fault)
        assert desk.faults.refused == {}, fault.id
        desk.faults.turn(fault, on=False)
        assert desk.live.result.project is clean.project


def test_the_list_is_used_by_keyboard(desk, qtbot) -> None:
    desk.bench.actions.action("faults.list").trigger()
    card = desk.fault_list.card
    box = card.boxes["open-wire"]

    box.setFocus()
    QTest.keyClick(box, Qt.Key.Key_Space)

    assert desk.faults.is_on(fault_named("open-wire"))
    assert "A colour's wire open" in card.name.text()
    assert card.said["monitor"].text().startswith("White is cyan")
    card.chips[Channel.BLUE].click()
    assert desk.faults.on[0].channel is Channel.BLUE
    QTest.keyClick(card, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: desk.fault_list.card is None)
    assert desk.faults.on


def test_a_fault_that_is_not_possible_is_said_and_does_nothing(desk) -> None:
    on(desk, "open-wire", "high-bit-open")

    assert "high-bit-open" in desk.faults.refused
    assert "cannot be tried here" in desk.faults.refused["high-bit-open"]


def test_ending_faults_is_a_command(desk) -> None:
    action = desk.bench.actions.action("faults.end")
    desk.bench.actions.refresh()
    assert not action.isEnabled()

    on(desk, "two-loads")
    desk.bench.actions.refresh()
    action.trigger()

    assert desk.faults.on == ()
