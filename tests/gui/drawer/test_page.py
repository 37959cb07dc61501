"""The Parts page: rows typed, pasted and read; values found, compared and taken."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QLineEdit

from tests.exports.boards import board
from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.fit.fit import Aim, Candidate, best_at
from workbench.circuit.ladders import Topology, recognise
from workbench.circuit.network import Network
from workbench.gui.drawer.candidates import AIM_WORDS
from workbench.gui.drawer.drawer_side import DrawerSide
from workbench.gui.drawer.page import PartsPage
from workbench.gui.widgets import Sign
from workbench.project.document import Channel
from workbench.project.edits.drive import set_supply
from workbench.project.templates import TEMPLATES

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)

LEFT = Qt.MouseButton.LeftButton
OHMS = (510.0, 1e3, 2e3, 3900.0, 8200.0, 240.0, 470.0, 1800.0, 4300.0)
PLENTY = Drawer(tuple(OwnedPart(ohms, 20) for ohms in OHMS))


@pytest.fixture
def page(qtbot, make_bench, messages):
    """Return a maker of a page that follows its bench's project."""
    made = []

    def make(project=None, *, drawer=None, wait=True, width=1900, height=400):
        bench = make_bench(project or replace(board(), linked=True))
        bench.dialogs = messages
        made.append(bench)
        shown = PartsPage(bench)
        if drawer is not None:
            shown.drawer.own.put(drawer)
            shown.source.set_value("my drawer")
        qtbot.addWidget(shown)
        bench.live.result_changed.connect(lambda result: shown.show_result(result.project, result))
        shown.resize(width, height)
        with qtbot.waitExposed(shown):
            shown.show()
        shown.show_result(bench.session.project, bench.live.result)
        if wait:
            found(qtbot, shown)
        return shown

    yield make
    for bench in made:
        bench.closing.emit()


def found(qtbot, shown) -> None:
    qtbot.waitUntil(lambda: not shown.search.busy, timeout=20_000)


def open_fields(table) -> list[QLineEdit]:
    return [field for field in table.viewport().findChildren(QLineEdit) if field.isVisible()]


def type_cell(qtbot, side: DrawerSide, row: int, column: int, text: str) -> None:
    """Go to a cell and type, as a person does who never touches the mouse."""
    table = side.table
    table.setFocus()
    table.setCurrentIndex(table.rows.index(row, column))
    qtbot.keyClick(table, Qt.Key.Key_Return)
    (field,) = open_fields(table)
    field.selectAll()
    qtbot.keyClicks(field, text)
    qtbot.keyClick(field, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: table.rows.refused or not open_fields(table))


def test_rows_are_typed(qtbot, page):
    side = page().drawer

    type_cell(qtbot, side, 0, 0, "4k7")
    type_cell(qtbot, side, 0, 1, "12")
    type_cell(qtbot, side, 0, 2, "5")
    type_cell(qtbot, side, 0, 3, "4,68k")
    type_cell(qtbot, side, 1, 0, "470")

    assert side.own.drawer == Drawer((OwnedPart(4680.0, 12, 0.05, 4700.0), OwnedPart(470.0)))
    assert [row.cells[:4] for row in side.table.rows.rows[:2]] == [
        ("4.7 kΩ", "12", "5 %", "4.68 kΩ"),
        ("470 Ω", "many", "1 %", ""),
    ]


def test_after_enter_the_next_value_can_be_typed(qtbot, page):
    side = page().drawer

    type_cell(qtbot, side, 0, 0, "1k")

    assert (side.table.currentIndex().row(), side.table.currentIndex().column()) == (1, 0)


@pytest.mark.parametrize(
    ("column", "text", "told"), [(0, "4k7k", "twice"), (1, "0", "no count"), (2, "70", "50 %")]
)
def test_a_cell_that_cannot_be_keeps_its_value(qtbot, page, column, text, told):
    side = page(drawer=Drawer((OwnedPart(1e3, 3),))).drawer

    type_cell(qtbot, side, 0, column, text)

    assert side.own.drawer == Drawer((OwnedPart(1e3, 3),))
    assert told in side.said.text


def test_rows_are_pasted_and_nonsense_is_told_of_by_its_row(qtbot, page):
    side = page().drawer
    QGuiApplication.clipboard().setText("value;count\n4,7k;3\nbig;2\n470;\n")

    side.table.setFocus()
    qtbot.keyClick(side.table, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)

    assert side.own.drawer == Drawer((OwnedPart(4700.0, 3), OwnedPart(470.0)))
    assert side.said.text.startswith("Row 3 is left out: “big”")


@pytest.mark.parametrize(
    ("text", "told"),
    [("", "no text"), ("hello", "no row"), ("colour,size", "names the columns"), ("value\nx1", "no row")],
)
def test_what_is_no_table_changes_nothing(page, text, told):
    side = page(drawer=PLENTY).drawer

    side.add_rows(text)

    assert side.own.drawer == PLENTY
    assert told in side.said.text.lower() or told in side.said.text


def test_rows_are_deleted_and_taken_back(qtbot, page):
    side = page(drawer=PLENTY).drawer
    side.table.setFocus()
    side.table.setCurrentIndex(side.table.rows.index(1, 0))

    qtbot.keyClick(side.table, Qt.Key.Key_Delete)
    assert 1e3 not in {part.ohms for part in side.own.drawer.parts}

    qtbot.mouseClick(side.back, LEFT)
    assert side.own.drawer == PLENTY


def test_a_drawer_goes_to_a_file_and_comes_back(page, messages, tmp_path):
    side = page(drawer=PLENTY).drawer
    path = tmp_path / "shared"
    messages.save_paths, messages.open_paths = [path], [tmp_path / "shared.csv"]

    side.ask_and_write()
    side.own.put(Drawer(()))
    side.ask_and_read()

    assert side.own.drawer == PLENTY
    assert messages.suggested[0].name == "drawer.csv"


def test_a_file_that_cannot_be_read_is_said(page, messages, tmp_path):
    side = page(drawer=PLENTY).drawer
    messages.open_paths = [tmp_path / "none.csv"]

    side.ask_and_read()

    assert "none.csv" in side.said.text
    assert side.own.drawer == PLENTY


def test_who_changes_their_mind_changes_nothing(page, messages):
    side = page(drawer=PLENTY).drawer
    messages.open_paths, messages.save_paths = [None], [None]

    side.ask_and_read()
    side.ask_and_write()

    assert side.own.drawer == PLENTY


def test_what_the_board_lacks_is_said(page):
    side = page(drawer=Drawer((OwnedPart(500.0, 2), OwnedPart(1e3)))).drawer

    assert side.missing.text() == "Missing for this board: 1 × 500 Ω, 3 × 2 kΩ, 3 × 4 kΩ, 3 × 8 kΩ."
    assert side.table.rows.rows[1].cells[4] == "3 on this board"


def test_an_empty_drawer_says_what_to_do(page):
    shown = page(drawer=Drawer(()))

    assert shown.empty.isVisible()
    assert not shown.table.rows
    assert not shown.take.isVisible()


def test_a_new_person_starts_with_the_series_of_the_project(page):
    shown = page()

    assert shown.source.value == "E24"
    assert len(shown.table.rows) > 1
    assert not shown.empty.isVisible()


def test_candidates_stand_below_the_board_as_it_is(page):
    """500 Ω … 8 kΩ are 3.875 mS: 3.3 V × 3.875 / (3.875 + 1000/75) is 43.099 mV above 0.700 V."""
    shown = page(drawer=PLENTY)

    rows = shown.table.rows
    assert rows[0].cells[:3] == ("as it is now", "0.7431", "43.099")
    assert all(isinstance(row.payload, Candidate) for row in rows[1:])
    assert shown.table.current is rows[1].payload
    assert shown.proof.sign is Sign.PASSES
    assert shown.proof.text().startswith("Proved: with one part a leg")


def test_another_aim_orders_the_same_candidates(page):
    shown = page(drawer=PLENTY)
    before = {id(row.payload) for row in shown.table.rows[1:]}

    shown.aim.chosen.emit(list(AIM_WORDS).index(Aim.SOURCE))

    sources = [abs(row.payload.source_ohms - 75.0) for row in shown.table.rows[1:]]
    assert sources == sorted(sources)
    assert {id(row.payload) for row in shown.table.rows[1:]} == before


def test_each_aim_names_the_candidate_that_is_best_at_it(qtbot, page):
    shown = page(drawer=PLENTY)
    shown.legs.chosen.emit(1)
    found(qtbot, shown)

    candidates = shown.search.run.fit.candidates
    best = best_at(candidates)
    by_id = {id(each): each for each in candidates}
    for each, aims in best.items():
        if Aim.CURRENT in aims:
            least = min(c.worst_total_current_amps for c in candidates)
            assert by_id[each].worst_total_current_amps == least
        if Aim.PARTS in aims:
            assert by_id[each].n_parts == min(c.n_parts for c in candidates)
    assert sorted((aim for aims in best.values() for aim in aims), key=list(Aim).index) == list(Aim)
    assert all(best[id(row.payload)] for row in shown.table.rows[1:])


def test_more_parts_a_leg_come_closer(qtbot, page):
    shown = page(drawer=PLENTY)
    single = shown.search.run.fit.candidates[0].worst_error_volts

    shown.legs.chosen.emit(1)
    found(qtbot, shown)

    assert shown.search.run.most_parts == 2
    assert shown.search.run.fit.candidates[0].worst_error_volts < single
    assert "+" in shown.chosen_legs.text() or "||" in shown.chosen_legs.text()


def test_values_are_taken_with_one_step_and_without_looking_again(qtbot, page):
    shown = page(drawer=PLENTY)
    session = shown.bench.session
    before, run = session.project, shown.search.run
    candidate = shown.table.current

    qtbot.mouseClick(shown.take, LEFT)
    shown.bench.live.refresh()

    assert tuple(session.project.channels[c] for c in Channel) == candidate.networks
    assert session.undo_label == "Values from the drawer: level error"
    assert shown.search.run is run
    assert shown.take.text() == "The board has these"
    assert not shown.take.isEnabled()
    assert next(row for row in shown.table.rows if row.payload is candidate).sign is Sign.PASSES
    session.undo()
    assert session.project == before


def test_the_keyboard_picks_and_takes(qtbot, page):
    shown = page(drawer=PLENTY)
    shown.table.setFocus()

    qtbot.keyClick(shown.table, Qt.Key.Key_Down)
    candidate = shown.table.current
    qtbot.keyClick(shown.table, Qt.Key.Key_Return)

    assert shown.bench.session.project.channels.red == candidate.networks[0]


def test_candidates_of_an_earlier_board_cannot_be_taken(qtbot, page):
    shown = page(drawer=PLENTY)
    candidate = shown.table.current

    shown.bench.session.apply("Supply", lambda p: set_supply(p, 5.0))
    shown.table.picked.emit(candidate)

    assert shown.bench.session.undo_label == "Supply"
    shown.bench.live.refresh()
    found(qtbot, shown)
    assert shown.search.plan.driver.supply_volts == 5.0


def test_a_drawer_too_small_is_said(page):
    shown = page(drawer=Drawer((OwnedPart(1e3, 4),)))

    assert shown.proof.sign is Sign.WARNS
    assert "4" in shown.proof.text()
    assert not shown.table.rows


def test_a_network_that_is_no_ladder_is_said(page):
    project = board()
    broken = Network(project.channels.red.pins, ())
    shown = page(replace(project, channels=replace(project.channels, red=broken)), drawer=PLENTY)

    assert shown.proof.sign is Sign.WARNS
    assert shown.proof.text()
    assert not shown.grab().isNull()


def test_stopping_keeps_what_fewer_parts_made(qtbot, page):
    shown = page()
    shown.legs.chosen.emit(2)
    qtbot.waitUntil(lambda: shown.search.run is not None, timeout=20_000)

    assert shown.stop.isVisible()
    qtbot.mouseClick(shown.stop, LEFT)
    found(qtbot, shown)

    assert 1 <= shown.search.run.most_parts < 3
    assert shown.table.rows
    assert "Stopped before more parts a leg were tried." in shown.proof.text()


@pytest.mark.parametrize(("width", "height"), [(1280, 300), (1900, 420), (840, 170)])
def test_any_size_paints(page, width, height):
    shown = page(drawer=PLENTY, width=width, height=height)

    assert not shown.grab().isNull()
    assert shown.drawer.isVisible() == (width >= 1000)


def test_an_empty_drawer_says_what_belongs_in_it(qtbot, page):
    side = page().drawer
    assert side.empty.isVisible()
    assert side.empty.title.text() == "The drawer is empty."
    assert side.empty.y() > side.table.geometry().bottom()

    type_cell(qtbot, side, 0, 0, "4k7")

    assert not side.empty.isVisible()
    assert side.table.height() > side.table.one_row() * 2


def test_segmented_ladders_are_fitted_and_stay_segmented(qtbot, page):
    clock = next(each for each in TEMPLATES if each.id == "race-clock").project()

    shown = page(clock)
    shown.take.click()

    assert shown.proof.sign is Sign.PASSES
    network = shown.bench.session.project.channels.red
    assert recognise(network) is Topology.SEGMENTED
    assert network in shown.search.run.fit.candidates[0].networks
    assert shown.bench.session.project.linked


def test_a_network_that_is_no_ladder_is_told_of(qtbot, page):
    project = replace(board(), linked=False)
    loose = replace(project.channels.green, resistors=project.channels.green.resistors[1:])
    project = replace(project, channels=replace(project.channels, green=loose))

    shown = page(project)

    assert shown.proof.text().startswith("green: Values are chosen for weighted, segmented and R-2R ladders")
    assert not shown.table.isVisible()


def test_a_candidate_whose_staircase_falls_is_marked(page):
    falling = Drawer((OwnedPart(1e3, 3), OwnedPart(1.2e3, 6), OwnedPart(1.5e3, 6)))
    shown = page(drawer=falling)

    row = next(row for row in shown.table.rows if row.payload is not None)

    assert row.cells[3].endswith("↓")
    assert "a step goes down" in row.tip
