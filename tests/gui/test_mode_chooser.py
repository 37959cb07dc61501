"""The mode chooser: what it finds, what it lists, what it warns of, what is marked."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent

from tests.edids import base_block
from workbench.errors import TimingError
from workbench.gui.cards.mode_filters import Filter, favourites, monitor_modes, toggle_favourite
from workbench.gui.cards.mode_rows import HEADS, chooser_rows
from workbench.gui.clock.kept import ChipText, keep
from workbench.gui.monitor.edid_file import kept_edid
from workbench.gui.settings import EDID, FAVOURITES
from workbench.project.document import Direction, MonitorRange
from workbench.project.edits.drive import set_monitor
from workbench.project.edits.timing import set_counts, set_pixel_clock
from workbench.timing.search import find_mode

LEFT = Qt.MouseButton.LeftButton
CONTROL = Qt.KeyboardModifier.ControlModifier


def names(card) -> list[str]:
    return [row.payload.name for row in card._found(card.field.text())]


@pytest.fixture
def card(desk):
    opened = desk.cards.choose_mode()
    yield opened
    opened.close()


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("close to 25 MHz", "640x480@60"),
        ("31.5 kHz 480", "640x480@60"),
        ("800 600 72", "800x600@72"),
        ("vic 16", "1920x1080@60"),
        ("0x10", "1024x768@60"),
        ("640x480@60", "640x480@60"),
    ],
)
def test_a_mode_is_found_by_what_is_known_of_it(text, first):
    assert chooser_rows(text)[0].payload.name == first


def test_a_typed_size_and_rate_is_worked_out_by_every_formula_too():
    sources = [row.detail for row in chooser_rows("800x600@60")]

    assert sources[0] == "VESA DMT 0x09"
    for formula in ("CVT 1.1", "CVT 1.2", "GTF"):
        assert any(formula in source for source in sources[1:]), formula


def test_favourites_are_marked_by_a_key_and_kept(card, qtbot, settings):
    card.search("800x600@60")
    qtbot.keyClick(card.field, Qt.Key.Key_D, CONTROL)

    assert favourites(settings) == (find_mode("800x600@60"),)
    assert card.current.note == "favourite"
    qtbot.mouseClick(card.filters[Filter.FAVOURITES], LEFT)
    card.search("")
    assert names(card) == ["800x600@60"]
    qtbot.keyClick(card.field, Qt.Key.Key_D, CONTROL)
    assert favourites(settings) == ()


def test_the_key_that_marks_never_reaches_the_text(card):
    press = QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_D, CONTROL)

    # Desktops that delete a letter with Ctrl+D would do so in the field.
    assert card.eventFilter(card.field, press)
    assert card.current.note == "favourite"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("99999x1@1", "larger than the 8192"),
        ("0x0@0", "has no picture"),
        ("1x1@60", "needs at least 1"),
        ("641x480", "lacks a refresh rate"),
        ("zzz", "is not a display mode"),
    ],
)
def test_what_no_table_has_and_no_formula_makes_is_refused_with_its_reason(card, text, words):
    card.search(text)

    assert card.list.rows == 0
    assert words in card.empty.text()
    with pytest.raises(TimingError, match=words):
        find_mode(text)


@pytest.mark.parametrize(
    ("text", "first", "source"),
    [
        ("640x480@60 cvt", "640x480@60", "VESA CVT 1.1"),
        ("800x600@60 cvt-rb", "800x600@60RB", "VESA CVT 1.1 reduced blanking"),
        ("gtf 1024x768", "1024x768@60", "VESA GTF"),
    ],
)
def test_a_formulas_name_lists_what_it_makes(text, first, source):
    rows = chooser_rows(text)

    assert rows[0].payload.name == first
    assert {row.detail for row in rows} == {source}


def test_a_rate_that_a_formula_cannot_make_has_no_row():
    assert [row.detail for row in chooser_rows("640x480@1")] == ["VESA CVT 1.2 reduced blanking v2"]


def test_a_filter_that_lists_something_does_not_say_it_is_empty(card, settings, qtbot):
    toggle_favourite(settings, find_mode("640x480@60"))
    qtbot.mouseClick(card.filters[Filter.FAVOURITES], LEFT)

    card.search("1920x1080")

    assert card.list.rows == 0
    assert "None of these fits" in card.empty.text()


def test_a_mark_that_cannot_be_read_is_left_out(settings):
    toggle_favourite(settings, find_mode("640x480@60"))
    settings.set(FAVOURITES, ("{broken", *settings.get(FAVOURITES), '{"name": "x"}'))

    assert [mode.name for mode in favourites(settings)] == ["640x480@60"]


def test_what_the_monitor_takes_comes_from_its_edid(desk, settings, qtbot):
    settings.set(EDID, base_block().hex())
    card = desk.cards.choose_mode()

    qtbot.mouseClick(card.filters[Filter.MONITOR], LEFT)

    assert names(card)[0] == "1024x768@75"
    assert "1280x1024@85" not in names(card)
    assert "800x600@72" in names(card)
    card.close()


def test_damaged_limits_let_no_other_mode_in(settings):
    settings.set(EDID, base_block({79: 71}).hex())

    assert set(monitor_modes(settings, None)) == set(kept_edid(settings).modes)


def test_without_a_monitor_the_list_says_where_to_enter_one(card, qtbot):
    qtbot.mouseClick(card.filters[Filter.MONITOR], LEFT)

    assert card.list.rows == 0
    assert "page Monitor" in card.empty.text()


def test_what_the_chip_can_clock_is_worked_out_aside(desk, settings, qtbot):
    keep(settings, ChipText("12M", "21", "10", "", "133M", "", ""))
    card = desk.cards.choose_mode()

    qtbot.mouseClick(card.filters[Filter.CHIP], LEFT)
    qtbot.waitUntil(lambda: card.list.rows > 0)

    assert "640x480@60" in names(card)
    assert "800x600@60" not in names(card)
    card.close()


def test_without_a_chip_the_list_says_where_to_enter_one(card, qtbot):
    qtbot.mouseClick(card.filters[Filter.CHIP], LEFT)

    assert card.list.rows == 0
    assert "page Clock" in card.empty.text()


def test_monitor_and_chip_are_asked_together(desk, settings, qtbot):
    """A chip of 126 MHz halved makes 21, 25.2, 31.5 and 63 MHz …; a monitor of one line rate takes one."""
    keep(settings, ChipText("12M", "21", "2", "", "133M", "", ""))
    desk.bench.apply("Range", lambda p: set_monitor(p, MonitorRange(31e3, 38e3, 59.0, 73.0)))
    card = desk.cards.choose_mode()

    qtbot.mouseClick(card.filters[Filter.CHIP], LEFT)
    qtbot.waitUntil(lambda: card.list.rows > 0)
    by_chip = set(names(card))
    qtbot.mouseClick(card.filters[Filter.MONITOR], LEFT)
    by_both = set(names(card))
    qtbot.mouseClick(card.filters[Filter.CHIP], LEFT)
    by_monitor = set(names(card))

    assert by_both == by_chip & by_monitor
    assert "640x480@75" in by_chip - by_both
    assert "800x600@60" in by_monitor - by_both
    assert "640x480@72" in by_both
    card.close()


def test_what_suits_neither_both_says_so(desk, settings, qtbot):
    keep(settings, ChipText("10M", "10", "1", "", "133M", "", ""))
    desk.bench.apply("Range", lambda p: set_monitor(p, MonitorRange(31e3, 32e3, 59.0, 61.0, 26e6)))
    card = desk.cards.choose_mode()

    for choice in (Filter.CHIP, Filter.MONITOR):
        qtbot.mouseClick(card.filters[choice], LEFT)
    qtbot.waitUntil(lambda: "both inside" in card.empty.text())

    assert card.list.rows == 0
    card.close()


def test_the_ticks_choose_among_the_favourites_too(desk, settings, qtbot):
    for name in ("640x480@60", "1280x1024@85"):
        toggle_favourite(settings, find_mode(name))
    desk.bench.apply("Range", lambda p: set_monitor(p, MonitorRange(30e3, 70e3, 50.0, 75.0)))
    card = desk.cards.choose_mode()

    qtbot.mouseClick(card.filters[Filter.FAVOURITES], LEFT)
    assert set(names(card)) == {"640x480@60", "1280x1024@85"}
    qtbot.mouseClick(card.filters[Filter.MONITOR], LEFT)
    assert names(card) == ["640x480@60"]
    card.close()


def test_a_row_says_totals_polarities_and_rates(card):
    card.search("640x350@70")

    assert card.current.figures.split() == ["800", "×", "449", "+/−", "25.175", "31.469"]


def test_the_heads_stand_over_their_figures():
    """Mono face, flush right: each head ends where its figures end."""
    figures = {row.figures for row in chooser_rows("")}
    ends = [HEADS.index(head) + len(head) - len(HEADS) for head in ("H/V", "MHz", "kHz")]
    lines = [figure.rsplit(maxsplit=3) for figure in figures]

    assert {
        len(figure.lstrip()) - len(figure.lstrip()[: figure.lstrip().index("/") + 2]) for figure in figures
    } == {-ends[0]}
    assert {len(f) - f.rindex(line[2]) - len(line[2]) for f, line in zip(figures, lines, strict=True)} == {
        -ends[1]
    }
    assert ends[2] == 0


def test_an_interlaced_row_keeps_its_standard_and_the_reason_stands_below(card):
    card.search("1024x768@43i")

    assert (card.current.detail, card.current.note) == ("VESA DMT 0x0f", "not simulated")
    assert "interlaced" in card.caution.text()


def test_a_clock_of_ones_own_stands_on_the_nearest_of_its_size(desk):
    desk.bench.apply("Clock", lambda p: set_pixel_clock(p, 25_200_000))
    card = desk.cards.choose_mode()

    assert card.current.payload.name == "640x480@60"
    card.close()


def test_a_size_of_ones_own_stands_on_no_row(desk, qtbot):
    desk.bench.apply("Counts", lambda p: set_counts(p, Direction.HORIZONTAL, active=644, back_porch=44))
    before = desk.session.project.mode
    card = desk.cards.choose_mode()

    assert card.current is None
    qtbot.keyClick(card.field, Qt.Key.Key_Return)
    assert desk.session.project.mode == before
    card.close()


def test_a_row_outside_the_monitors_range_stands_back_and_is_not_stood_on(desk):
    desk.bench.apply("Range", lambda p: set_monitor(p, MonitorRange(37e3, 50e3, 59.0, 75.0)))
    card = desk.cards.choose_mode()
    rows = {row.payload.name: row for row in card._found("")}

    assert rows["800x600@56"].dim
    assert rows["800x600@56"].note == "outside your monitor's range"
    assert not rows["800x600@60"].dim
    card.search("800 600")
    assert card.current.payload.name == "800x600@60"
    card.search("800x600@56")
    assert card.current.payload.name == "800x600@56"
    card.close()


def test_an_old_tube_is_thought_of_where_the_mode_is_chosen(card):
    card.search("800x600@60")
    assert "37.879 kHz lines can damage an old tube" in card.caution.text()

    card.search("640x480@60")
    assert "look at its manual" in card.caution.text()


def test_a_mode_outside_the_monitors_range_is_named_with_the_limit(desk):
    desk.bench.apply("Range", lambda p: set_monitor(p, MonitorRange(30e3, 38e3, 50.0, 75.0)))
    card = desk.cards.choose_mode()

    card.search("1024x768@60")
    assert "48.363 kHz is outside the monitor's 30 … 38 kHz" in card.caution.text()
    card.search("800x600@60")
    assert card.caution.text() == "Inside what your monitor takes."
    card.close()


def test_interlaced_modes_say_why_not_and_cannot_be_changed(card):
    card.search("1024x768@43i")

    assert "half-line fields are not simulated" in card.current.refused
    assert not card.change.isEnabled()


def test_a_mode_of_ones_own_starts_from_any(desk, qtbot):
    card = desk.cards.choose_mode()
    card.search("800x600@60")

    qtbot.mouseClick(card.change, LEFT)

    assert desk.session.project.mode.name == "800x600@60"
    assert desk.window.pages.page == "timing"


def test_all_of_it_is_reached_by_keys(card, qtbot):
    card.field.setFocus()
    seen = []
    ticks = [card.filters[Filter.MONITOR], card.filters[Filter.CHIP]]
    for _ in range(6):
        qtbot.keyClick(card.window().focusWidget(), Qt.Key.Key_Tab)
        seen.append(card.window().focusWidget())
    assert seen == [card.filters[Filter.ALL], *ticks, card.list, card.mark, card.change]

    card.filters[Filter.ALL].setFocus()
    qtbot.keyClick(card.filters[Filter.ALL], Qt.Key.Key_Right)

    assert card.filters[Filter.FAVOURITES].isChecked()
    assert "Ctrl+D" in card.empty.text()


def test_on_a_projector_the_caution_has_a_line_of_its_own(desk, qtbot):
    desk.bench.project_large(on=True)
    desk.window.resize(1280, 800)
    card = desk.cards.choose_mode()

    qtbot.waitUntil(lambda: card.caution.geometry().bottom() < card.mark.geometry().top())
    assert card.caution.width() > card.list.width() * 0.9
    card.close()
