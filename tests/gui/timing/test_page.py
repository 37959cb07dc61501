import pytest
from PySide6.QtCore import QPoint, Qt

from tests.exports.boards import board
from tests.gui.gestures import drag
from workbench.gui.timing import TimingPage
from workbench.project.document import MonitorRange
from workbench.timing.mode import Polarity, Region

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


def test_a_drag_over_the_frame_is_one_undo(page):
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
    session.undo()
    assert session.project.scanline == 1
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
