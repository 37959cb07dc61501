import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QScrollArea

from tests.edids import base_block
from tests.exports.boards import board
from tests.gui.gestures import drag
from workbench.gui.cards.help import help_for
from workbench.gui.monitor.edid_file import kept_edid
from workbench.gui.settings import EDID
from workbench.gui.timing import TimingPage
from workbench.gui.timing.frame_axes import ticks
from workbench.project.document import Channel, MonitorRange
from workbench.project.edits.monitor import use_limits
from workbench.project.edits.picture import set_scanline
from workbench.project.edits.timing import set_mode
from workbench.timing.mode import Polarity, Region
from workbench.timing.search import find_mode

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)
"""The offscreen platform has no window manager to tell a window's least size to."""

LEFT = Qt.MouseButton.LeftButton
ENTER = Qt.Key.Key_Return


@pytest.fixture
def page(qtbot, make_bench):
    """Return a maker of a page that follows its bench's project."""

    def make(project=None, width=1900, height=380):
        bench = make_bench(project or board())
        page = TimingPage(bench)
        qtbot.addWidget(page)
        bench.live.result_changed.connect(lambda result: page.show_result(result.project, result))
        page.resize(width, height)
        with qtbot.waitExposed(page):
            page.show()
        page.show_result(bench.session.project, bench.live.result)
        return page

    return make


def type_in(qtbot, entry, text: str) -> None:
    entry.setFocus()
    entry.selectAll()
    qtbot.keyClicks(entry, text)
    qtbot.keyClick(entry, ENTER)


def test_line_and_frame_show_counts_times_and_shares(page):
    shown = page()

    # 640x480@60: 96 px of sync last 3.8133 µs, a line 31.7776 µs (VESA DMT 0x04)
    assert shown.line.entries[Region.SYNC].text() == "96"
    assert shown.line.times[Region.SYNC].text() == "3.813"
    assert shown.line.shares[Region.ACTIVE].text() == "80.0 %"
    assert (shown.line.total.text(), shown.line.times[None].text()) == ("800", "31.778")
    assert (shown.frame_table.total.text(), shown.frame_table.times[None].text()) == ("525", "16.683")
    assert shown.rates.clock.text() == "25.175 MHz"
    assert shown.rates.source.text() == "640x480@60 · VESA DMT 0x04"


def test_a_typed_count_makes_the_mode_ones_own(qtbot, page):
    shown = page()

    type_in(qtbot, shown.line.entries[Region.BACK_PORCH], "50")
    qtbot.waitUntil(lambda: shown.line.total.text() == "802")

    session = shown.bench.session
    assert session.project.mode.h.back_porch == 50
    assert session.project.mode.source.startswith("custom")
    assert session.undo_label == "Line, back porch 48 → 50 px"


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        pytest.param("0", "needs at least 1", id="no sync"),
        pytest.param("-5", "no whole number of pixels", id="negative"),
        pytest.param("9.5", "no whole number of pixels", id="a part of a pixel"),
        pytest.param("99999", "more than the 8192", id="too many"),
        pytest.param("1e3", "no whole number of pixels", id="a power of ten"),
    ],
)
def test_an_impossible_count_is_refused_with_its_reason(qtbot, page, text, reason):
    shown = page()
    entry = shown.line.entries[Region.SYNC]
    before = shown.bench.session.project

    type_in(qtbot, entry, text)

    assert shown.bench.session.project == before
    assert reason in shown.refusal.text()
    assert entry.property("state") == "fails"


@pytest.mark.parametrize(
    ("text", "count"),
    [("3.2us", 81), ("3200 ns", 81), ("81 px", 81), ("3,2 µs", 81)],
)
def test_a_count_is_typed_as_a_time_too(qtbot, page, text, count):
    shown = page()

    type_in(qtbot, shown.line.entries[Region.SYNC], text)

    assert shown.bench.session.project.mode.h.sync == count


def test_lines_are_typed_as_a_time_too(qtbot, page):
    shown = page()

    type_in(qtbot, shown.frame_table.entries[Region.BACK_PORCH], "1 ms")

    assert shown.bench.session.project.mode.v.back_porch == 31


def test_with_the_total_kept_the_region_behind_gives_way(qtbot, page):
    shown = page()
    qtbot.mouseClick(shown.line.keep, LEFT)

    type_in(qtbot, shown.line.entries[Region.BACK_PORCH], "60")
    h = shown.bench.session.project.mode.h
    assert (h.back_porch, h.active, h.total) == (60, 628, 800)

    type_in(qtbot, shown.line.entries[Region.FRONT_PORCH], "500")
    assert "has at most 111, not 500" in shown.refusal.text()


def test_counts_typed_back_are_the_tables_mode_again(qtbot, page):
    shown = page()
    entry = shown.line.entries[Region.BACK_PORCH]

    type_in(qtbot, entry, "50")
    shown.bench.live.refresh()
    type_in(qtbot, entry, "48")

    assert shown.bench.session.project.mode == find_mode("640x480@60")


def test_escape_brings_the_old_value_back(qtbot, page):
    shown = page()
    entry = shown.line.entries[Region.SYNC]
    type_in(qtbot, entry, "0")

    qtbot.keyClick(entry, Qt.Key.Key_Escape)

    assert entry.text() == "96"
    assert shown.refusal.text() == ""
    assert entry.property("state") == ""


def test_leaving_a_refused_field_shows_what_is_in_force(qtbot, page):
    shown = page()
    entry = shown.line.entries[Region.SYNC]
    type_in(qtbot, entry, "0")

    shown.rates.clock.setFocus()
    qtbot.waitUntil(lambda: not entry.hasFocus())

    assert entry.text() == "96"


def test_arrows_step_a_count_as_one_undo(qtbot, page):
    shown = page()
    entry = shown.frame_table.entries[Region.FRONT_PORCH]

    for key, modifier in (
        (Qt.Key.Key_Up, Qt.KeyboardModifier.NoModifier),
        (Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier),
        (Qt.Key.Key_Down, Qt.KeyboardModifier.NoModifier),
    ):
        qtbot.keyClick(entry, key, modifier)

    session = shown.bench.session
    assert session.project.mode.v.front_porch == 10 + 1 + 8 - 1
    session.undo()
    assert session.project.mode.v.front_porch == 10


def test_the_pixel_clock_is_typed_as_a_quantity(qtbot, page):
    shown = page()

    type_in(qtbot, shown.rates.clock, "25.2M")
    qtbot.waitUntil(lambda: shown.rates.clock.text() == "25.2 MHz")

    assert shown.bench.session.project.mode.pixel_clock_hz == 25_200_000
    assert shown.rates.figures[2][0].text() == "60 Hz"


@pytest.mark.parametrize("text", ["", "nan", "5", "4,700", "2G"])
def test_an_impossible_clock_is_refused(qtbot, page, text):
    shown = page()
    before = shown.bench.session.project
    shown.rates.clock.clear()

    type_in(qtbot, shown.rates.clock, text)

    assert shown.bench.session.project == before
    assert shown.refusal.text()


def test_a_polarity_is_turned_over(qtbot, page):
    shown = page()

    qtbot.mouseClick(shown.line.polarities[Polarity.POSITIVE], LEFT)

    assert shown.bench.session.project.mode.h.polarity is Polarity.POSITIVE
    assert shown.line.polarities[Polarity.POSITIVE].isChecked()


def test_the_monitor_is_entered_rate_by_rate_and_forgotten(qtbot, page):
    shown = page()
    monitor = shown.monitor
    assert monitor.state.text() == "not entered"

    type_in(qtbot, monitor.entries["h_min_hz"], "48k")
    type_in(qtbot, monitor.entries["max_pixel_clock_hz"], "80M")
    qtbot.waitUntil(lambda: monitor.entries["max_pixel_clock_hz"].text() == "80 MHz")
    assert shown.bench.session.project.monitor == MonitorRange(48e3, 70e3, 50.0, 75.0, 80e6)

    type_in(qtbot, monitor.entries["h_max_hz"], "31k")
    assert "above its highest" in shown.refusal.text()

    qtbot.mouseClick(monitor.forget, LEFT)
    assert shown.bench.session.project.monitor is None


def test_the_caution_stands_beside_the_range(page):
    assert "fixed-frequency tube" in page().monitor.caution.text()


def test_the_frame_is_drawn_to_scale(page):
    frame = page().frame_view.frame()

    assert frame.width() / frame.height() == pytest.approx(800 / 525, rel=1e-9)


def test_a_click_on_the_frame_chooses_the_scanline(qtbot, page):
    shown = page()
    view = shown.frame_view
    frame = view.frame()
    spot = QPoint(round(frame.center().x()), round(frame.top() + frame.height() * 490.5 / 525))

    qtbot.mouseClick(view, LEFT, pos=spot)

    assert shown.bench.session.project.scanline == pytest.approx(491, abs=1)


def test_a_click_on_the_frame_goes_to_the_pixel(qtbot, page):
    shown = page()
    view, frame = shown.frame_view, shown.frame_view.frame()
    spot = QPoint(round(frame.left() + frame.width() * 300.5 / 800), round(frame.center().y()))

    qtbot.mouseClick(view, LEFT, pos=spot)

    assert shown.bench.view.pixel == pytest.approx(300, abs=2)
    qtbot.keyClick(view, Qt.Key.Key_Right)
    assert shown.bench.view.pixel == pytest.approx(301, abs=2)


@pytest.mark.parametrize(
    ("pixel", "scanline"),
    [(480, 240), (30, 500), (799, 1)],
    ids=["in the middle", "in a porch", "at the edge"],
)
def test_the_lines_over_the_frame_leave_its_words_free(page, pixel, scanline):
    shown = page(set_scanline(board(), scanline))
    view = shown.frame_view
    box = view.size_box(view.frame()).toAlignedRect()
    shown.bench.view.look_at(0)
    without = view.grab(box).toImage()

    shown.bench.view.look_at(pixel)

    assert view.grab(box).toImage() == without
    assert box.width() > 80


def test_places_beside_the_frame_are_no_pixel(page):
    view = page().frame_view

    assert view.pixel_at(view.frame().left() - 1) is None
    assert view.pixel_at(view.frame().right() + 1) is None
    assert view.pixel_at(view.frame().left()) == 0


def test_a_drag_over_the_frame_looks_and_leaves_nothing_to_be_saved(page):
    shown = page()
    view, frame = shown.frame_view, shown.frame_view.frame()
    x = round(frame.center().x())

    drag(
        view,
        QPoint(x, round(frame.top()) + 20),
        QPoint(x, round(frame.top()) + 60),
        QPoint(x, round(frame.top()) + 90),
    )

    session = shown.bench.session
    assert session.project.scanline > 100
    assert (session.can_undo, session.dirty) == (False, False)
    assert not session.can_undo


def test_arrows_walk_the_scanlines(qtbot, page):
    shown = page()

    for key in (Qt.Key.Key_Down, Qt.Key.Key_PageDown, Qt.Key.Key_Up):
        qtbot.keyClick(shown.frame_view, key)

    assert shown.bench.session.project.scanline == 1 + 1 + 16 - 1


@pytest.mark.parametrize("width", [800, 1280, 1900])
def test_every_width_keeps_the_fields_whole(page, width):
    shown = page(width=width, height=300)

    for entry in (*shown.line.entries.values(), *shown.monitor.entries.values(), shown.rates.clock):
        assert entry.width() >= shown.bench.px(70)
        assert entry.height() >= shown.bench.px(28)


def test_the_frame_ruler_moves_edges_by_drag_and_key(qtbot, page):
    shown = page()
    knob = shown.frame_ruler.knobs[0]
    centre = knob.rect().center()

    drag(knob, centre, centre + QPoint(0, -20), centre + QPoint(0, -40))

    session = shown.bench.session
    assert session.project.mode.v.front_porch < 10
    assert session.project.mode.v.total == 525
    assert session.undo_label == "Move the end of the vertical front porch"
    session.undo()
    shown.bench.live.refresh()
    qtbot.keyClick(shown.frame_ruler.knobs[2], Qt.Key.Key_Down)
    assert session.project.mode.v.total == 526


def test_ctrl_keeps_the_lines_of_the_frame(qtbot, page):
    shown = page()

    qtbot.keyClick(shown.frame_ruler.knobs[2], Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)

    v = shown.bench.session.project.mode.v
    assert (v.back_porch, v.active, v.total) == (34, 479, 525)


def test_a_drag_that_is_left_changes_nothing(qtbot, page):
    shown = page()
    before = shown.bench.session.project
    knob = shown.frame_ruler.knobs[2]
    centre = knob.rect().center()

    drag(knob, centre, centre + QPoint(0, -30), release=False)
    assert shown.bench.session.project != before
    qtbot.keyClick(knob, Qt.Key.Key_Escape)

    assert shown.bench.session.project == before


def test_pixels_and_lines_are_sent_twice(qtbot, page):
    shown = page()

    qtbot.mouseClick(shown.sent.pixels[2], LEFT)
    qtbot.mouseClick(shown.sent.lines[4], LEFT)
    shown.bench.live.refresh()

    picture = shown.bench.session.project.picture
    assert (picture.repeat_pixels, picture.repeat_lines) == (2, 4)
    assert shown.sent.columns.text() == "a picture of 320 × 120"
    assert shown.bench.session.undo_label == "Send each line 4 times"


def test_the_code_in_blanking_is_typed_or_stepped(qtbot, page):
    shown = page()
    entry = shown.sent.codes[Channel.GREEN]

    type_in(qtbot, entry, "3")
    qtbot.keyClick(entry, Qt.Key.Key_Up)
    assert shown.bench.session.project.picture.blanking == (0, 4, 0)

    type_in(qtbot, entry, "99")
    assert "lies between 0 and" in shown.refusal.text()


@pytest.mark.parametrize(("width", "height"), [(1280, 299), (1440, 339), (1600, 339), (1920, 411)])
def test_the_page_has_room_for_all_of_it(page, width, height):
    shown = page(width=width, height=height)

    (area,) = shown.findChildren(QScrollArea)
    assert area.verticalScrollBar().maximum() <= 8
    assert area.horizontalScrollBar().maximum() == 0
    frame = shown.frame_view.frame()
    assert frame.width() >= 120
    assert frame.right() <= shown.frame_view.width()
    assert shown.frame_view.geometry().right() < shown.rates.geometry().left()


def test_tables_stand_below_each_other_where_a_projector_is_narrow(page):
    shown = page(width=700, height=300)

    (area,) = shown.findChildren(QScrollArea)
    assert shown.frame_table.y() > shown.line.geometry().bottom()
    assert area.horizontalScrollBar().maximum() == 0


@pytest.mark.parametrize("size", [(960, 540), (1280, 800), (1920, 1080)], ids=str)
def test_the_frame_s_edges_can_be_moved_at_every_size(desk, qtbot, size):
    desk.window.resize(*size)
    desk.window.pages.open("timing")
    shown = desk.window.pages.stack.currentWidget()
    QApplication.processEvents()

    assert shown.edges.isHidden() is shown.frame_ruler.isVisible()
    if not shown.frame_ruler.isVisible():
        qtbot.mouseClick(shown.edges, LEFT)
        ruler = desk.window.scanline.ruler
        assert ruler.isVisible()
        before = desk.session.project.mode.v.front_porch
        qtbot.keyClick(ruler.knobs[0], Qt.Key.Key_Right)
        assert desk.session.project.mode.v.front_porch == before + 1


def test_the_frame_ruler_goes_first_and_the_axes_next(page):
    wide, less, narrow = (page(width=width, height=339) for width in (1900, 1440, 1280))

    assert [shown.frame_ruler.isVisible() for shown in (wide, less, narrow)] == [True, False, False]
    assert [shown.frame_view.has_axes for shown in (wide, less, narrow)] == [True, True, False]


def test_words_in_the_frame_have_room_or_shorter_forms(page):
    view = page().frame_view
    font = view.bench.type.sans(0.86)
    forms = ("active, 73.1 % of the time", "73.1 % of the time", "73.1 %")
    widths = [view.bench.type.width(form, font) for form in forms]

    assert [view.longest(forms, width, font) for width in widths] == list(forms)
    assert view.longest(forms, widths[-1] - 1, font) == ""


@pytest.mark.parametrize(
    ("span", "most", "places"), [(31.8, 4, [0, 10, 20, 30]), (1.0, 1, [0, 1]), (9.9, 5, [0, 2, 4, 6, 8])]
)
def test_ticks_are_round(span, most, places):
    assert ticks(span, most) == pytest.approx(places)


@pytest.mark.parametrize("region", list(Region), ids=lambda region: region.value)
@pytest.mark.parametrize("table", ["line", "frame_table"])
def test_what_a_part_is_for_is_said_over_its_name_and_by_f1_in_its_field(page, table, region):
    shown = getattr(page(), table)
    tip, help_text = shown.names[region].toolTip(), shown.entries[region].whatsThis()

    assert " ".join(tip.split()) == " ".join(help_text.split())
    assert max(map(len, tip.splitlines())) <= 84
    assert help_for(shown.entries[region])[1] == help_text


def test_the_back_porch_is_said_to_give_the_level_of_black(page):
    shown = page()

    assert "takes what it gets here for black" in shown.line.entries[Region.BACK_PORCH].whatsThis()
    assert "registers; others differ" in shown.line.entries[Region.BACK_PORCH].whatsThis()


def test_a_border_is_explained_where_the_mode_has_one(page):
    shown = page()
    porch = shown.line.names[Region.FRONT_PORCH]
    assert "8 px of it are border" in porch.toolTip()
    assert shown.frame_view.has_border

    shown.bench.apply("Choose", lambda project: set_mode(project, find_mode("800x600@60")))
    shown.show_result(shown.bench.session.project, shown.bench.live.result)
    assert "border" not in porch.toolTip()
    assert not shown.frame_view.has_border


def test_polarity_is_no_voltage_and_tells_modes_apart(page):
    table = page().line

    assert "not below it" in " ".join(table.pulse.toolTip().split())
    assert table.polarities[Polarity.POSITIVE].whatsThis().count("350") == 1


def test_the_monitors_range_says_whether_it_is_that_of_the_edid(page, settings):
    shown = page()
    settings.set(EDID, base_block().hex())
    limits = kept_edid(settings).limits
    assert shown.monitor.state.text() == "not entered"

    shown.bench.apply("Use", lambda project: use_limits(project, limits))
    shown.show_result(shown.bench.session.project, shown.bench.live.result)
    assert shown.monitor.state.text().startswith("the limits in the EDID of ")

    settings.set(EDID, "")
    assert shown.monitor.state.text() == "as entered in this project"
