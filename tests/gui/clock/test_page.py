"""The Clock page: a chip entered once, plans in order, one of them taken."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from workbench.gui.clock.cycles import cycle_figures
from workbench.gui.clock.form import EXAMPLE
from workbench.gui.clock.kept import ChipText, keep, kept, kept_chip
from workbench.gui.clock.page import ClockPage
from workbench.gui.clock.plans import COLUMNS
from workbench.gui.clock.strip import PixelStrip
from workbench.gui.widgets import Sign
from workbench.picture.scene import Picture
from workbench.project.document import Direction
from workbench.project.edits.timing import set_counts, take_plan
from workbench.timing.clock.plan import Jitter, plan_clock
from workbench.timing.search import find_mode

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)

CHIP = ChipText("12M", "16..320", "1..7x1..7", "750M..1600M", "133M", "8", "")
VGA = find_mode("640x480@60")


@pytest.fixture
def page(qtbot, make_bench, settings):
    """Return a maker of a page that follows its bench's project."""
    made = []

    def make(text: ChipText | None = CHIP) -> ClockPage:
        if text is not None:
            keep(settings, text)
        bench = make_bench()
        shown = ClockPage(bench)
        made.append(bench)
        qtbot.addWidget(shown)
        bench.live.result_changed.connect(lambda result: shown.show_result(result.project, result))
        shown.resize(1400, 320)
        with qtbot.waitExposed(shown):
            shown.show()
        shown.show_result(bench.session.project, bench.live.result)
        return shown

    yield make
    for bench in made:
        bench.closing.emit()


def type_in(qtbot, entry, text: str) -> None:
    entry.setFocus()
    entry.selectAll()
    qtbot.keyClicks(entry, text)
    qtbot.keyClick(entry, Qt.Key.Key_Return)


def planned(qtbot, shown: ClockPage) -> None:
    qtbot.waitUntil(lambda: bool(shown.table.rows) and shown._job is None)


def test_plans_come_best_first_with_their_signs(qtbot, page):
    shown = page()
    planned(qtbot, shown)

    rows = shown.table.rows
    kinds = [row.payload.jitter for row in rows]
    assert kinds == sorted(kinds, key=list(Jitter).index)
    assert rows[0].cells[:3] == ("25.200000", "+993.05", "even")
    assert rows[0].sign is Sign.PASSES
    assert {row.sign for row in rows if row.payload.jitter is Jitter.PIXEL} == {Sign.WARNS}


def test_a_plan_is_taken_by_keys_as_one_step(qtbot, page):
    shown = page()
    planned(qtbot, shown)
    session = shown.bench.session

    shown.table.setFocus()
    qtbot.keyClick(shown.table, Qt.Key.Key_Return)
    shown.bench.live.refresh()

    assert session.project.mode.pixel_clock_hz == 25_200_000
    assert session.undo_label == "Pixel clock 25.2 MHz of a clock plan"
    assert not shown.take.isEnabled()
    session.undo()
    assert session.project.mode == VGA


def test_plans_still_aim_at_the_tables_clock_after_one_is_taken(qtbot, page):
    shown = page()
    planned(qtbot, shown)
    shown.take.click()
    shown.bench.live.refresh()
    planned(qtbot, shown)

    assert shown.table.rows[0].cells[1] == "+993.05"


def test_the_plan_that_holds_is_marked_and_keeps_the_light(qtbot, page):
    shown = page()
    shown.bench.apply("Wider", lambda p: set_counts(p, Direction.HORIZONTAL, back_porch=58))
    shown.bench.live.refresh()
    planned(qtbot, shown)
    rows = shown.table.rows
    uneven = next(n for n, row in enumerate(rows) if row.payload.jitter is Jitter.PIXEL)
    shown.table.setCurrentIndex(shown.table.model().index(uneven, 0))
    plan = shown.table.current

    shown.take.click()
    shown.bench.live.refresh()
    planned(qtbot, shown)

    assert shown.table.current == plan
    assert plan.wanted_hz == 25_175_000
    assert [row.payload for row in shown.table.rows if "in use" in row.cells] == [plan]
    assert shown.take.text() == "This clock is in use"
    assert "25.175 MHz" in shown.state.text()


def test_a_page_opened_later_stands_on_the_plan_that_holds(qtbot, page):
    first = page()
    planned(qtbot, first)
    plan = next(row.payload for row in first.table.rows if row.cells[0] == "25.224490")

    first.bench.apply("Take", lambda project: take_plan(project, plan))
    later = ClockPage(first.bench)
    qtbot.addWidget(later)
    first.bench.live.refresh()
    later.show_result(first.bench.session.project, first.bench.live.result)
    planned(qtbot, later)

    assert later.table.current == plan


def test_another_line_total_is_planned_anew(qtbot, page):
    shown = page()
    planned(qtbot, shown)
    before = shown.table.rows

    shown.bench.apply("Wider", lambda p: set_counts(p, Direction.HORIZONTAL, back_porch=49))
    shown.bench.live.refresh()
    qtbot.waitUntil(lambda: shown.table.rows != before and shown._job is None)

    assert {row.payload.jitter for row in shown.table.rows} == {Jitter.NONE, Jitter.LINE}


def test_a_chip_typed_once_is_there_next_time(qtbot, page, settings):
    shown = page(None)
    assert shown.empty.isVisible()
    assert kept_chip(settings) is None

    for field, text in (("reference", "12M"), ("multiply", "126"), ("max_system", "200M"), ("divide", "12")):
        type_in(qtbot, shown.form.entries[field], text)
    planned(qtbot, shown)

    assert kept(settings) == ChipText("12M", "126", "12", "", "200M", "", "")
    assert kept_chip(settings) is not None
    assert not shown.empty.isVisible()


@pytest.mark.parametrize(
    ("field", "text", "reason"),
    [
        ("multiply", "320..16", "runs backwards"),
        ("reference", "0", "reference"),
        ("fraction", "99", "fractional bits"),
        ("fraction", "a few", "no number of fractional bits"),
        ("oscillator", "fast", "oscillator's range"),
        ("processor", "nan", "not a number"),
    ],
)
def test_a_value_that_cannot_be_is_refused_in_its_field(qtbot, page, settings, field, text, reason):
    shown = page()
    planned(qtbot, shown)

    type_in(qtbot, shown.form.entries[field], text)

    assert shown.form.entries[field].property("state") == "fails"
    entry, refusal = shown.form.entries[field], shown.form.refusal
    assert reason in refusal.text()
    assert kept(settings) == CHIP
    assert refusal.isVisible()
    qtbot.waitUntil(lambda: 0 <= refusal.geometry().top() - entry.geometry().bottom() <= 12)
    qtbot.keyClick(entry, Qt.Key.Key_Escape)
    assert not refusal.isVisible()


def test_all_offsets_of_the_plans_are_in_one_unit(qtbot, page):
    shown = page(ChipText("10M", "2", "1..8", "", "150M", "", ""))
    planned(qtbot, shown)
    offsets = [row.cells[1] for row in shown.table.rows]

    assert shown.table.figures.columns[1].title == "off, ppm"
    assert any(len(offset) > 7 for offset in offsets)
    assert all(set(offset) <= set("+−0123456789.\u202f") for offset in offsets)


def test_a_chip_without_a_setting_says_so(qtbot, page):
    shown = page(ChipText("12M", "16..320", "1", "", "1k", "", ""))
    qtbot.waitUntil(lambda: "No setting keeps" in shown.empty.words.text())

    assert not shown.table.isVisible()


def test_a_chip_too_slow_for_any_picture_says_so(qtbot, page):
    shown = page(ChipText("10k", "1..2", "1", "", "50k", "", ""))

    qtbot.waitUntil(lambda: "20 kHz, is outside" in shown.empty.words.text())


def test_too_many_settings_are_refused_and_not_begun(qtbot, page):
    shown = page(ChipText("12M", "1..1000000", "1..1000000", "", "133M", "", ""))

    qtbot.waitUntil(lambda: "narrow" in shown.empty.words.text())


def test_a_long_search_can_be_stopped(qtbot, page):
    shown = page(ChipText("1M", "1..4000", "1..4500", "", "400M", "8", ""))
    qtbot.waitUntil(lambda: shown.stop.isVisible(), timeout=10_000)

    qtbot.mouseClick(shown.stop, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: shown._job is None, timeout=10_000)

    assert "stopped" in shown.state.text()
    assert shown.table.rows == ()


def test_cycles_are_those_of_the_processor(qtbot, page):
    shown = page()
    planned(qtbot, shown)

    type_in(qtbot, shown.form.entries["processor"], "125M")

    # The plan's pixels come at 25.2 MHz: 125 / 25.2 is 4.9603; times 800, 640, 160, 800 × 45 and 800 × 525.
    figures = [words.text().replace("\u202f", "") for words in shown.cycles.figures]
    assert figures == ["4.96", "3968", "3175", "794", "178571", "2083333"]


def test_a_line_has_as_many_cycles_as_the_strip_says(qtbot, page):
    shown = page()
    planned(qtbot, shown)

    # The system clock of the plan is 5 of its pixels', and a line has 800 of these.
    assert shown.strip.sentence() == "every pixel lasts 5 system clocks, every line 4000"
    assert shown.cycles.figures[1].text() == "4\u202f000"
    assert shown.cycles.line.text().startswith("A line is 4000 whole cycles")


def test_a_processor_slower_than_the_lines_is_said_to_be(qtbot, page):
    shown = page()
    planned(qtbot, shown)

    type_in(qtbot, shown.form.entries["processor"], "1k")

    assert shown.cycles.line.text() == "A clock of 1 kHz is slower than the lines of 640x480@60."


def test_a_doubled_pixel_has_four_times_the_cycles():
    plain = cycle_figures(VGA, Picture(), 125e6)[0]
    doubled = cycle_figures(VGA, Picture(repeat_pixels=2, repeat_lines=2), 125e6)[0]

    assert (plain, doubled) == ("4.97", "19.86")


@pytest.mark.parametrize(
    ("jitter", "words"), [(Jitter.NONE, "every pixel lasts"), (Jitter.PIXEL, "or"), (Jitter.LINE, "lines ")]
)
def test_the_strip_says_what_it_draws(qtbot, make_bench, jitter, words):
    strip = PixelStrip(make_bench())
    qtbot.addWidget(strip)
    plan = next(plan for plan in plan_clock(VGA, CHIP.chip()) if plan.jitter is jitter)

    strip.show_plan(VGA, plan)

    assert words in strip.sentence()
    assert sum(strip.clocks) == pytest.approx(24 * float(plan.divider), abs=1)
    strip.resize(300, 110)
    assert not strip.grab().isNull()


def test_the_example_is_a_start(qtbot, page, settings):
    shown = page(None)
    fields = {name: entry.placeholderText() for name, entry in shown.form.entries.items()}
    assert fields.pop("processor") == "as system"
    assert all(text.startswith("e.g. ") for text in fields.values())
    assert shown.empty.title.text() == "No chip is entered yet."

    qtbot.mouseClick(shown.example, Qt.MouseButton.LeftButton)
    planned(qtbot, shown)

    assert kept(settings) == EXAMPLE
    assert shown.form.entries["reference"].text() == EXAMPLE.reference
    assert shown.table.rows[0].sign is Sign.PASSES
    assert not shown.example.isVisible()


@pytest.mark.parametrize(
    ("size", "large"),
    [((960, 195), False), ((1280, 299), False), ((1920, 420), False), ((1920, 830), True)],
    ids=["960", "1280", "1920", "projector"],
)
def test_settings_and_what_is_in_use_are_seen_without_scrolling(qtbot, page, size, large):
    shown = page()
    shown.bench.project_large(on=large)
    shown.resize(*size)
    planned(qtbot, shown)
    QApplication.processEvents()

    table = shown.table
    seen = {c.title: table.columnWidth(n) for n, c in enumerate(COLUMNS) if not table.isColumnHidden(n)}
    assert not table.horizontalScrollBar().isVisible()
    assert {"pixel clock MHz", "off, ppm", "picture", "", "settings"} <= set(seen)
    assert seen["settings"] >= shown.bench.px(120)
