"""The Tolerance page: tolerances typed, boards drawn and shown, one after the other picked from the bag."""

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import Qt

from tests.exports.boards import board
from tests.gui.tolerance.doing import drawn, type_in
from workbench.circuit.bands import Band, Distribution
from workbench.circuit.linearity import linearity
from workbench.circuit.network import Network
from workbench.gui.settings import BOARDS
from workbench.gui.tolerance.drawing_boards import drawn_boards
from workbench.gui.widgets import Sign
from workbench.project.document import Channel
from workbench.project.edits.drive import set_on_resistance
from workbench.project.edits.parts import set_value
from workbench.project.edits.tolerances import Varied

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)


def test_boards_are_drawn_as_soon_as_the_page_is_open(page):
    shown = page()

    assert shown.drawn.boards == 2000
    assert shown.verdict.sign is Sign.PASSES
    assert [view.spread for view in shown.spreads] == [
        shown.drawn.full_scale_volts,
        shown.drawn.max_dnl_lsb,
        shown.drawn.max_inl_lsb,
    ]
    assert "2\u202f000 boards" in shown.state.text()


def test_a_typed_tolerance_is_one_step_and_draws_other_boards(qtbot, page):
    shown = page()
    before = shown.drawn

    type_in(qtbot, shown.form.entries[Varied.RESISTORS], "10")
    qtbot.waitUntil(lambda: shown.drawn is not before and not shown.boards.busy)

    session = shown.bench.session
    assert session.project.tolerances.resistors == Band(0.1)
    assert session.undo_label == "Tolerance of the resistors 10 %"
    assert shown.drawn.monotonic_yield < 1.0
    assert shown.verdict.sign is Sign.FAILS


def test_nothing_typed_gives_each_resistor_its_own_again(qtbot, page):
    project = board()
    shown = page(replace(project, tolerances=replace(project.tolerances, resistors=Band(0.1))))
    entry = shown.form.entries[Varied.RESISTORS]
    assert entry.text() == "10 %"

    type_in(qtbot, entry, "")
    entry.clear()
    qtbot.keyClick(entry, Qt.Key.Key_Return)

    assert shown.bench.session.project.tolerances.resistors.half_width is None
    assert entry.placeholderText() == "own, 1 %"


@pytest.mark.parametrize("text", ["100", "-1", "nan", "four"])
def test_what_is_no_tolerance_is_refused_in_its_field(qtbot, page, text):
    shown = page()
    entry = shown.form.entries[Varied.SUPPLY]

    type_in(qtbot, entry, text)

    assert entry.property("state") == "fails"
    assert shown.refusal.text()
    assert not shown.bench.session.can_undo


def test_a_distribution_is_chosen(page):
    shown = page()

    shown.form.shapes[Varied.RESISTORS].chosen.emit(list(Distribution).index(Distribution.NORMAL))

    assert shown.bench.session.project.tolerances.resistors.distribution is Distribution.NORMAL
    assert shown.bench.session.undo_label == "Distribution of the resistors normal"


def test_pins_without_on_resistance_have_none_that_could_vary(qtbot, page):
    shown = page()
    entry = shown.form.entries[Varied.ON_RESISTANCE]
    assert not entry.isEnabled()

    shown.bench.session.apply("Pins", lambda p: set_on_resistance(p, 40.0))
    qtbot.waitUntil(entry.isEnabled)


def test_the_newest_edit_wins(qtbot, page):
    shown = page(boards=300_000, wait=False)

    for ohms in (510.0, 520.0, 530.0):
        shown.bench.session.apply("R1", lambda p, ohms=ohms: set_value(p, Channel.RED, "R1", ohms))
        shown.bench.live.refresh()
    drawn(qtbot, shown)

    assert shown.boards.run.plan.networks[0].resistors[0].ohms == 530.0
    assert shown.boards.run.boards == 300_000


def test_stopping_keeps_the_boards_so_far(qtbot, page):
    shown = page(boards=10_000_000, wait=False)
    qtbot.waitUntil(lambda: shown.boards.run is not None)

    assert shown.stop.isVisible()
    qtbot.mouseClick(shown.stop, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: not shown.boards.busy)

    assert 0 < shown.drawn.boards < 10_000_000
    assert shown.state.text().startswith("stopped; these are")
    assert not shown.stop.isVisible()


def test_more_boards_are_asked_for_and_kept_for_next_time(qtbot, page, settings):
    shown = page()

    type_in(qtbot, shown.form.boards, "5k")
    qtbot.waitUntil(lambda: shown.drawn.boards == 5000)

    assert settings.get(BOARDS) == 5000.0
    assert shown.form.boards.text() == "5\u202f000"


def test_a_board_shows_its_values_and_its_levels(qtbot, page):
    shown = page()

    qtbot.mouseClick(shown.bag.after, Qt.MouseButton.LeftButton)
    qtbot.mouseClick(shown.bag.after, Qt.MouseButton.LeftButton)

    volts = shown.drawn.volts_by_board[1]
    assert shown.bag.board == 1
    assert shown.bag.number.text() == "board 2 of 64"
    assert shown.spreads[0].board == pytest.approx(volts[-1])
    assert shown.spreads[1].board == pytest.approx(linearity(volts).max_dnl_lsb)
    first = shown.table.rows[0]
    assert first.cells[0] == "R1"
    off = 100 * (shown.drawn.factors_by_board[1][0] - 1)
    assert first.cells[4] == f"{off:+.2f} %".replace("-", "\u2212")
    assert f"{volts[-1]:.3f} V" in shown.bag.said[0].text()


def test_the_bag_has_no_end_and_takes_boards_back(page):
    shown = page()

    shown.bag.flick(-1)
    assert shown.bag.board == 63
    shown.bag.flick(1)
    assert shown.bag.board == 0
    shown.bag.pick(None)
    assert shown.spreads[0].board is None


def test_resistors_stand_in_the_order_in_which_they_matter(page):
    shown = page()

    assert [row.cells[0] for row in shown.table.rows] == ["R1", "R2", "R3", "R4", "R5", "supply", "load"]
    moved = [each.volts_per_percent for each in shown.drawn.sensitivity]
    assert moved == sorted(moved)
    assert shown.table.rows[0].cells[1] == f"{1e3 * moved[0]:+.3f} mV".replace("-", "\u2212")


def test_a_row_chooses_its_part_on_the_bench(qtbot, page):
    shown = page()
    shown.table.setFocus()

    qtbot.keyClick(shown.table, Qt.Key.Key_Down)
    qtbot.keyClick(shown.table, Qt.Key.Key_Down)
    assert shown.bench.view.chosen == shown.table.current[0]

    shown.bench.view.choose("R4")
    assert shown.table.current[0] == "R4"


def test_another_channel_shows_its_own_boards(qtbot, page):
    project = board()
    blue = replace(project.channels.blue, resistors=project.channels.blue.resistors[1:])
    shown = page(replace(project, channels=replace(project.channels, blue=blue)))

    shown.bench.view.choose_channel(Channel.BLUE)

    assert shown.drawn is shown.boards.run.tolerances[Channel.BLUE]
    assert [row.cells[0] for row in shown.table.rows][:4] == ["R2", "R3", "R4", "R5"]


def test_a_broken_channel_says_why_it_has_no_boards(page):
    project = board()
    broken = Network(project.channels.red.pins, ())
    shown = page(replace(project, channels=replace(project.channels, red=broken)))

    assert shown.drawn is None
    assert "shows nothing that could vary" in shown.verdict.text()
    assert not shown.bag.after.isEnabled()
    assert not shown.grab().isNull()


def test_the_band_is_painted_behind_the_staircase(page):
    project = board()
    wide = replace(project, tolerances=replace(project.tolerances, resistors=Band(0.2)))
    shown = page(wide)
    view, found = shown.staircase, shown.drawn
    place = view.column(30).center().toPoint()
    place.setY(round(view.volts_y(float(found.low_by_code[30] + found.volts_by_board[:, 30].mean()) / 2)))

    pixel = view.grab().toImage().pixelColor(place)

    assert pixel.red() > pixel.blue() + 20


@pytest.mark.parametrize(("width", "height"), [(1280, 300), (1900, 420), (840, 170)])
def test_any_size_paints_and_marks_the_board(page, width, height):
    shown = page(width=width, height=height)
    shown.bag.flick(1)

    assert not shown.grab().isNull()
    low, high = shown.spreads[0].scale
    assert low < shown.spreads[0].board < high


def test_all_panels_of_a_bench_share_the_boards(page):
    shown = page()

    assert drawn_boards(shown.bench) is shown.boards
    assert np.all(shown.drawn.low_by_code <= shown.drawn.high_by_code)


def test_tab_goes_through_the_form_as_one_reads(qtbot, page):
    shown = page()
    form = shown.form
    form.entries[Varied.RESISTORS].setFocus()
    places = []
    while form.isAncestorOf(widget := shown.focusWidget()) and len(places) < 20:
        middle = widget.mapTo(shown, widget.rect().center())
        places.append((round(middle.y() / 10), middle.x()))
        qtbot.keyClick(widget, Qt.Key.Key_Tab)

    assert len(places) >= 9
    assert places == sorted(places)


def test_boards_are_flicked_through_by_keys(qtbot, make_desk):
    desk = make_desk()
    desk.window.pages.open("tolerance")
    shown = desk.window.pages.stack.currentWidget()
    drawn(qtbot, shown)
    shown.table.setFocus()

    qtbot.keyClick(shown.table, Qt.Key.Key_Right, Qt.KeyboardModifier.AltModifier)
    qtbot.keyClick(shown.table, Qt.Key.Key_Right, Qt.KeyboardModifier.AltModifier)
    qtbot.keyClick(shown.table, Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)

    assert shown.bag.board == 0
