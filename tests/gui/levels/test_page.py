from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication

from tests.exports.boards import board
from tests.gui.gestures import drag
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Network, PartId
from workbench.gui.levels import LevelsPage
from workbench.gui.levels.room import is_clear
from workbench.project.document import Channel
from workbench.project.edits.parts import remove_part, set_value

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def page(qtbot, make_bench):
    """Return a maker of a page that follows its bench's project."""

    def make(project=None, width=1900, height=380):
        bench = make_bench(project or replace(board(), linked=True))
        page = LevelsPage(bench)
        qtbot.addWidget(page)
        bench.live.result_changed.connect(lambda result: page.show_result(result.project, result))
        page.resize(width, height)
        with qtbot.waitExposed(page):
            page.show()
        page.show_result(bench.session.project, bench.live.result)
        return page

    return make


def views(page):
    return page.staircase, page.dnl, page.inl, page.eye


def middle_of(view, code: int) -> QPoint:
    return view.column(code).center().toPoint()


@pytest.mark.parametrize("place", range(4), ids=["staircase", "DNL", "INL", "eye"])
def test_a_click_holds_a_code_and_all_five_light_it(qtbot, page, place):
    shown = page()
    view = views(shown)[place]

    qtbot.mouseClick(view, LEFT, pos=middle_of(view, 22))

    assert [v.held for v in views(shown)] == [22] * 4
    assert shown.table.delegate.held == 22
    assert [shown.bench.view.held(c) for c in Channel] == [22] * 3


def test_a_second_click_gives_the_pins_back_to_the_picture(qtbot, page):
    shown = page()

    for _ in range(2):
        qtbot.mouseClick(shown.staircase, LEFT, pos=middle_of(shown.staircase, 22))

    assert shown.bench.view.held(Channel.RED) is None
    assert shown.staircase.held is None


def test_channels_apart_hold_the_drawn_one_only(qtbot, page):
    shown = page(board())

    qtbot.mouseClick(shown.eye, LEFT, pos=middle_of(shown.eye, 3))

    assert [shown.bench.view.held(c) for c in Channel] == [3, None, None]


def test_a_drag_sweeps_the_held_code(page):
    shown = page()

    drag(
        shown.staircase,
        middle_of(shown.staircase, 2),
        middle_of(shown.staircase, 9),
        middle_of(shown.staircase, 12),
    )

    assert shown.bench.view.held(Channel.RED) == 12


def test_the_keyboard_walks_the_codes(qtbot, page):
    shown = page()
    view = shown.dnl

    for key, code in (
        (Qt.Key.Key_Right, 0),
        (Qt.Key.Key_Right, 1),
        (Qt.Key.Key_End, 31),
        (Qt.Key.Key_Right, 31),
        (Qt.Key.Key_Left, 30),
        (Qt.Key.Key_Home, 0),
        (Qt.Key.Key_Escape, None),
    ):
        qtbot.keyClick(view, key)
        assert shown.bench.view.held(Channel.RED) == code


def test_a_row_of_the_table_holds_its_code(qtbot, page):
    shown = page()
    row = shown.table.visualRect(shown.table.codes.index(5, 0)).center()

    qtbot.mouseClick(shown.table.viewport(), LEFT, pos=row)
    assert shown.bench.view.held(Channel.RED) == 5

    qtbot.keyClick(shown.table, Qt.Key.Key_Down)
    assert shown.bench.view.held(Channel.RED) == 6
    qtbot.keyClick(shown.table, Qt.Key.Key_Escape)
    assert shown.bench.view.held(Channel.RED) is None


def test_the_held_row_comes_into_sight(page):
    shown = page()

    shown.hold(31)

    rect = shown.table.visualRect(shown.table.codes.index(31, 0))
    assert shown.table.viewport().rect().contains(rect.center())


def test_the_table_is_copied_as_text_for_other_programs(qtbot, page):
    shown = page(replace(board(), linked=True))

    qtbot.mouseClick(shown.copy, LEFT)

    rows = [line.split("\t") for line in QGuiApplication.clipboard().text().splitlines()]
    assert rows[0] == ["code", "bits", "loaded V", "open V", "step mV", "DNL", "INL", "L*"]
    assert rows[17][:5] == ["16", "10000", "0.3835", "1.703", "24.0"]
    assert len(rows) == 33
    assert "−" not in QGuiApplication.clipboard().text()


def test_an_edit_is_shown_and_the_held_code_stays(qtbot, page):
    shown = page()
    shown.hold(16)

    shown.bench.session.apply("Tune R1", lambda p: set_value(p, Channel.RED, "R1", 470.0))
    qtbot.waitUntil(lambda: shown.figures.worst_step == 16)

    assert shown.table.codes.index(16, 5).data() == "+0.96"
    assert shown.staircase.held == 16


def test_fewer_bits_forget_a_held_code_that_is_gone(qtbot, page):
    project = board()
    short = weighted(2, [430.0, 820.0])
    wiring = replace(project.wiring, blue=("B1", "B0"))
    shown = page(replace(project, channels=replace(project.channels, blue=short), wiring=wiring))
    shown.bench.view.hold(tuple(Channel), 22)

    shown.bench.view.choose_channel(Channel.BLUE)

    assert shown.staircase.held is None
    assert shown.table.codes.rowCount() == 4


def test_the_held_column_is_lit_on_screen(page):
    shown = page()
    spot = middle_of(shown.inl, 22)
    before = shown.inl.grab().toImage().pixelColor(spot)

    shown.hold(22)

    after = shown.inl.grab().toImage().pixelColor(spot)
    assert after.red() > before.red() + 10


@pytest.mark.parametrize("bits", [1, 2, 8])
@pytest.mark.parametrize(("width", "height"), [(1280, 300), (1900, 380), (900, 130)])
def test_any_size_and_any_number_of_bits_paint(page, bits, width, height):
    project = board()
    network = weighted(bits, [500.0 * 2**bit for bit in range(bits)])
    wiring = replace(project.wiring, red=tuple(f"R{bit}" for bit in range(bits)))
    shown = page(
        replace(project, channels=replace(project.channels, red=network), wiring=wiring), width, height
    )
    shown.hold(1)

    assert not shown.grab().isNull()
    assert not shown.staircase.area.isEmpty()


def test_a_broken_network_leaves_an_empty_plot(page):
    project = board()
    broken = Network(project.channels.red.pins, ())
    shown = page(replace(project, channels=replace(project.channels, red=broken)))

    assert not shown.grab().isNull()
    assert not shown.figures.sound


def test_matching_and_source_resistance_are_said(page):
    shown = page()

    assert shown.matching.text() == "The whites are alike: 0.743 V."
    assert shown.source.text().startswith("Source resistance 258.1 Ω")
    assert shown.table.y() > shown.source.geometry().bottom()


def test_the_table_goes_to_a_file(qtbot, desk, messages, tmp_path):
    desk.window.pages.open("levels")
    shown = desk.window.pages.stack.currentWidget()
    messages.save_paths = [tmp_path / "levels.csv"]

    qtbot.mouseClick(shown.save, LEFT)

    rows = (tmp_path / "levels.csv").read_text().splitlines()
    assert rows[0].startswith("channel,code,bits,loaded_v")
    assert len(rows) == 1 + 3 * 32


def test_saving_is_found_by_who_copies_and_stays_where_there_is_room_for_one(qtbot, page):
    shown, told = page(), []
    shown.bench.noticed.connect(told.append)

    qtbot.mouseClick(shown.copy, LEFT)
    assert told[0].text == "Copied 32 codes as a table; Save as CSV … writes a file."

    shown.resize(460, 300)
    assert shown.save.isVisible()
    assert not shown.copy.isVisible()
    assert shown.rect().contains(shown.save.geometry())


def test_a_click_on_what_is_lit_but_not_held_holds_it(qtbot, page):
    shown = page()
    view = shown.bench.view
    place = shown.bench.session.project.mode.h.blanking + 40

    view.look_at(place)
    lit = shown.staircase.held
    assert lit is not None
    assert view.held(Channel.RED) is None
    row = shown.table.visualRect(shown.table.codes.index(lit, 0)).center()
    qtbot.mouseClick(shown.table.viewport(), LEFT, pos=row)
    assert view.held(Channel.RED) == lit

    shown.hold(None)
    qtbot.mouseClick(shown.staircase, LEFT, pos=middle_of(shown.staircase, lit))
    assert view.held(Channel.RED) == lit


@pytest.mark.parametrize("height", range(300, 330, 7))
def test_the_table_shows_whole_rows_only(page, height):
    shown = page(height=height)

    assert shown.table.viewport().height() % shown.table.rowHeight(0) == 0


@pytest.mark.parametrize(("width", "height"), [(1280, 525), (1600, 625), (1920, 805)])
def test_on_a_projector_columns_numbers_and_captions_have_room(page, width, height):
    shown = page(width=width, height=height)
    shown.bench.project_large(on=True)
    shown.hold(31)

    table = shown.table
    seen = [c for c in range(table.codes.columnCount()) if not table.isColumnHidden(c)]
    assert sum(table.columnWidth(c) for c in seen) <= table.viewport().width()
    assert {0, 1, 2} < set(seen)
    widest = shown.bench.type.width("100", shown.bench.type.mono(0.86))
    assert shown.eye._number_x(31, widest) + widest / 2 <= shown.eye.width()


R1_GONE = "R1 gone"


@pytest.mark.parametrize("r1", [100.0, 300.0, 470.0, 500.0, 560.0, 700.0, 2000.0, R1_GONE])
@pytest.mark.parametrize(
    ("width", "height", "large"), [(1440, 330, False), (1920, 805, True), (1600, 625, True)]
)
def test_no_words_lie_on_the_staircase(page, r1, width, height, large):
    project = replace(board(), linked=True)
    if r1 == R1_GONE:
        project = remove_part(project, Channel.RED, PartId("R1"))
    else:
        project = set_value(project, Channel.RED, "R1", r1)
    shown = page(project, width, height)
    shown.bench.project_large(on=large)
    stairs = shown.staircase
    assert not stairs.grab().isNull()

    ideal, callout = stairs.ideal_place(stairs.callout_place()), stairs.callout_place()
    for box in (callout, ideal and ideal[1]):
        if box is not None:
            assert stairs.area.contains(box)
            assert is_clear(box, stairs.area, stairs._traces(), 0.0)
    if callout is not None and ideal is not None:
        assert not callout.intersects(ideal[1])
    if r1 == R1_GONE and height != 625:
        assert callout is not None
