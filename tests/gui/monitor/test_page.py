"""The Monitor page: what it sees, what its EDID says, what can be written."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF, QGuiApplication
from PySide6.QtWidgets import QApplication

from tests.edids import base_block
from tests.gui.gestures import drop_files
from tests.gui.scripted import ScriptedMessages
from workbench.bringup.faults import fault_named
from workbench.errors import EditError
from workbench.gui.monitor.edid_file import EDID_SUFFIXES, kept_edid
from workbench.gui.monitor.own_display import OwnDisplay, own_block
from workbench.gui.monitor.page import MonitorPage
from workbench.gui.monitor.sentences import place_sentences
from workbench.gui.settings import EDID
from workbench.gui.widgets import Sign
from workbench.project.document import Direction, MonitorRange
from workbench.project.edits.drive import set_monitor
from workbench.project.edits.timing import set_counts, set_mode, set_pixel_clock, set_polarity
from workbench.timing.edid.read import read_edid
from workbench.timing.edid.text import hex_text
from workbench.timing.mode import Polarity
from workbench.timing.search import find_mode

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def page(qtbot, make_bench, settings):
    """Return a maker of a page that follows its bench's project."""

    def make(block: bytes | None = None, project=None, size=(1880, 400)) -> MonitorPage:
        if block is not None:
            settings.set(EDID, block.hex())
        bench = make_bench() if project is None else make_bench(project)
        bench.dialogs = ScriptedMessages()
        shown = MonitorPage(bench)
        qtbot.addWidget(shown)
        bench.live.result_changed.connect(lambda result: shown.show_result(result.project, result))
        shown.resize(*size)
        with qtbot.waitExposed(shown):
            shown.show()
        shown.show_result(bench.session.project, bench.live.result)
        return shown

    return make


def four_wider(project):
    return set_pixel_clock(set_counts(project, Direction.HORIZONTAL, back_porch=52), 25_301_000)


def test_a_modes_row_and_its_look_alike_are_named(page):
    shown = page()

    assert shown.seen.headline.text() == "Taken for 640x480@60; 720x480@60 looks the same on the cable."
    assert shown.seen.table.rows[0].cells == ("640x480@60", "0", "0", "0", "−/−", "800")
    assert shown.seen.table.rows[0].sign is Sign.PASSES
    # 9 to 29 samples of 1 / 25.175 MHz after sync; 48 px of porch.
    assert "0.357 … 1.152 µs after sync, inside the back porch of 1.907 µs" in shown.seen.said.text()


def test_a_deliberate_fault_is_seen_and_said_whenever_the_page_opens(desk):
    desk.faults.turn(fault_named("half-rate"), on=True)
    desk.live.refresh()
    desk.window.pages.open("monitor")
    shown = desk.window.pages.stack.currentWidget()

    assert not shown.seen.headline.text().startswith("Taken for 640x480@60")
    assert "Seen with deliberate faults on, not as designed: Clock divided" in shown.warning.text()
    assert shown.warning.isVisibleTo(desk.window)
    before = shown.write.hex.text()
    desk.faults.end_all()
    assert shown.seen.headline.text().startswith("Taken for 640x480@60")
    assert not shown.warning.isVisibleTo(desk.window)
    assert shown.write.hex.text() == before  # what is written is the design's


def test_without_sync_it_says_that_nothing_is_seen(desk):
    desk.window.pages.open("monitor")
    shown = desk.window.pages.stack.currentWidget()
    desk.faults.turn(fault_named("no-h-sync"), on=True)

    assert "No signal. H sync reaches" in shown.warning.text()


def test_a_turned_pulse_is_said_in_headline_column_and_sentence(page, project):
    shown = page(project=set_polarity(project, Direction.HORIZONTAL, Polarity.POSITIVE)).seen

    assert shown.headline.text().startswith("Taken for 640x480@60, though H sync is of the other polarity")
    assert shown.table.rows[0].cells[4] == "−/− ≠ +/−"
    assert shown.table.rows[0].sign is Sign.WARNS
    assert "H sync is sent positive; in 640x480@60 it is negative." in shown.said.text()
    assert "H sync is sent positive" in shown.table.rows[0].tip


def test_rates_too_far_off_are_said_to_be(page, project):
    shown = page(project=set_pixel_clock(project, 25_000_000)).seen

    assert shown.headline.text() == (
        "Taken for 640x480@60, though rates are more than 0.5 % off; 720x480@60 looks the same on the cable."
    )
    assert "Lines −6951 ppm and fields −6951 ppm off: outside ±5000 ppm it need not lock" in (
        shown.said.text().replace("\u202f", "")
    )


def test_every_sign_has_its_reason(page, project):
    """A row that warns, or fails, says in its tip or below what for."""
    turned = set_polarity(set_pixel_clock(project, 25_000_000), Direction.VERTICAL, Polarity.POSITIVE)
    for changed in (turned, four_wider(project), set_counts(project, Direction.VERTICAL, back_porch=44)):
        shown = page(project=changed).seen
        said = " ".join(place_sentences(shown.table.rows[0].payload))
        assert shown.table.rows[0].sign in (Sign.WARNS, Sign.FAILS)
        assert any(word in said for word in ("soft band", "of the other", "ppm off", "If it took"))


@pytest.mark.parametrize(
    ("edit", "height"), [("none", 412), ("bands", 412), ("unknown", 412), ("none", 360), ("bands", 360)]
)
def test_all_sentences_are_in_sight_where_the_page_is_high_enough(page, project, qtbot, edit, height):
    edits = {
        "none": lambda p: p,
        "bands": four_wider,
        "unknown": lambda p: set_counts(
            set_counts(p, Direction.VERTICAL, back_porch=44), Direction.HORIZONTAL, back_porch=24
        ),
    }
    shown = page(project=edits[edit](project), size=(1900, height))
    bar, said = shown.parts["sees"].verticalScrollBar(), shown.seen.said

    qtbot.waitUntil(lambda: bar.maximum() == 0 and said.height() >= said.heightForWidth(said.width()))
    assert shown.seen.rect().contains(said.geometry())


def test_a_longer_line_brings_soft_bands_and_a_shift(page, project):
    shown = page(project=four_wider(project))

    said = shown.seen.said.text()
    assert "3 soft bands at pixel 100, 302, 502" in said
    assert "starts 3.3 px from the left" in said
    assert shown.seen.table.rows[0].sign is Sign.WARNS


def test_a_picture_that_is_soft_all_over_is_said_to_be(page, project):
    shown = page(project=set_counts(project, Direction.HORIZONTAL, back_porch=7000))

    assert "Soft everywhere: it samples" in shown.seen.said.text()


def test_a_mode_that_no_row_is_near_says_so(page, project):
    shown = page(project=set_counts(project, Direction.VERTICAL, active=200))

    assert shown.seen.headline.text().startswith("Not in its table")
    assert shown.seen.said.text().startswith("If it took the signal for")
    assert shown.seen.table.rows[0].sign is Sign.FAILS


def test_another_row_is_looked_at_by_keys(page, qtbot):
    shown = page()
    shown.seen.table.setFocus()

    qtbot.keyClick(shown.seen.table, Qt.Key.Key_Down)

    assert "samples 858 times a line" in shown.seen.said.text()
    assert shown.seen.width_strip.seen.row.name == "720x480@60"


def test_without_an_edid_the_page_says_what_to_do(page):
    shown = page()

    assert shown.edid.empty.isVisible()
    assert not shown.edid.use.isVisible()


def test_an_edid_is_shown_with_its_modes_and_damages(page):
    shown = page(base_block({127: 0}, mend=False)).edid

    assert "ROW “Riverside 17”" in shown.identity.text()
    assert "checksum wrong" in shown.identity.text()
    assert "byte 127" in shown.damages.text()
    assert shown.table.rows[0].cells[0] == "1024 × 768 · 75 Hz"
    outside = [row for row in shown.table.rows if row.sign is Sign.WARNS]
    assert [row.cells[0] for row in outside] == ["1600 × 1200 · 60 Hz"]


def test_extension_blocks_are_listed_as_skipped(page):
    extension = bytes((0x02, 0x03)) + bytes(125) + bytes((-5 % 256,))
    shown = page(base_block({126: 1}) + extension).edid

    assert "CTA-861 (tag 02), skipped" in shown.damages.text()


def test_a_click_takes_a_mode(page, qtbot):
    shown = page(base_block())
    table = shown.edid.table
    row = next(n for n, row in enumerate(table.rows) if row.payload.name == "800x600@60")

    qtbot.mouseClick(table.viewport(), LEFT, pos=table.visualRect(table.figures.index(row, 0)).center())

    assert shown.bench.session.project.mode.name == "800x600@60"
    assert shown.bench.session.undo_label == "Choose 800 × 600 · 60 Hz"


def test_the_lit_row_is_the_mode_in_force(page, qtbot):
    shown = page(base_block())
    table, session = shown.edid.table, shown.bench.session

    def names(row):
        return table.rows[row].payload.name

    def in_use():
        return [row.payload.name for row in table.rows if row.cells[-1].startswith("in use")]

    # 640x480@60 is in force, and among the established timings.
    assert names(table.delegate.current) == "640x480@60"
    assert in_use() == ["640x480@60"]

    row = next(n for n, row in enumerate(table.rows) if row.payload.name == "800x600@60")
    qtbot.mouseClick(table.viewport(), LEFT, pos=table.visualRect(table.figures.index(row, 0)).center())
    shown.bench.live.refresh()
    assert in_use() == ["800x600@60"]

    session.undo()
    shown.bench.live.refresh()
    assert names(table.delegate.current) == "640x480@60"

    shown.bench.apply("Clock", lambda project: set_pixel_clock(project, 25_300_000))
    shown.bench.live.refresh()
    assert (table.current, in_use()) == (None, [])


def test_sync_on_green_has_its_level_only_where_it_is_taken(page):
    """Byte 20: bit 1 is sync on green, bits 5 and 6 the levels, 0.700 and 0.300 V."""
    without = page(base_block()).edid.input.text()
    taken = page(base_block({20: 0x0F})).edid.input.text()

    assert "0.300" not in without
    assert "sync on green (0.300 V below blanking)" in taken


def test_its_limits_become_the_projects_and_can_be_undone(page, qtbot):
    shown = page(base_block())

    qtbot.mouseClick(shown.edid.use, LEFT)
    shown.bench.live.refresh()

    session = shown.bench.session
    assert session.project.monitor == MonitorRange(30e3, 70e3, 50.0, 120.0, 110e6)
    assert shown.edid.use.text() == "Its limits are in use"
    session.undo()
    assert session.project.monitor is None


@pytest.mark.parametrize("content", [base_block(), hex_text(base_block()).encode()], ids=["binary", "hex"])
def test_a_file_is_opened_by_dialog_and_kept(page, qtbot, tmp_path, settings, content):
    shown = page()
    path = tmp_path / "desk.edid"
    path.write_bytes(content)
    shown.bench.dialogs.open_paths = [path]

    qtbot.mouseClick(shown.edid.open, LEFT)

    assert shown.edid.edid == read_edid(base_block())
    assert kept_edid(settings) == read_edid(base_block())
    qtbot.mouseClick(shown.edid.forget, LEFT)
    assert kept_edid(settings) is None


@pytest.mark.parametrize("content", [b"", bytes(100), bytes(128), b"00 f", bytes(10_000_000)], ids=len)
def test_a_file_that_is_no_edid_is_refused_and_changes_nothing(page, qtbot, tmp_path, settings, content):
    shown = page(base_block())
    path = tmp_path / "no.edid"
    path.write_bytes(content)
    shown.bench.dialogs.open_paths = [path]
    said = []
    shown.bench.noticed.connect(said.append)

    qtbot.mouseClick(shown.edid.open, LEFT)

    assert len(said) == 1
    assert "no.edid" in said[0].text
    assert kept_edid(settings) == read_edid(base_block())


@pytest.mark.parametrize("suffix", EDID_SUFFIXES)
def test_an_edid_dropped_on_the_window_opens_the_page(desk, tmp_path: Path, suffix):
    path = tmp_path / f"desk{suffix}"
    path.write_bytes(base_block())

    assert drop_files(desk.window, str(path))

    assert desk.window.pages.page == "monitor"
    assert kept_edid(desk.bench.settings) == read_edid(base_block())


def test_the_descriptor_is_shown_and_copied(page, qtbot):
    shown = page().write

    assert shown.hex.text() == "d5 09 80 a0 20 e0 2d 10 10\n60 a2 00 00 00 00 00 00 18"
    assert "25.17 MHz" in shown.losses.text()
    qtbot.mouseClick(shown.copy_c, LEFT)
    assert "0xd5, 0x09" in QGuiApplication.clipboard().text()
    qtbot.mouseClick(shown.copy_hex, LEFT)
    assert QGuiApplication.clipboard().text().startswith("d5 09 80")


def test_a_mode_that_does_not_fit_says_why(page, project):
    shown = page(project=set_counts(project, Direction.HORIZONTAL, active=5000)).write

    assert "active of 5000" in shown.losses.text()
    assert not shown.copy_hex.isEnabled()


def test_descriptor_and_block_are_saved(page, qtbot, tmp_path):
    shown = page(project=None)
    shown.bench.dialogs.save_paths = [tmp_path / "mode.bin", tmp_path / "own.bin"]
    qtbot.mouseClick(shown.write.save_descriptor, LEFT)
    entry = shown.write.entries["name"]
    entry.setText("Boathouse")
    entry.commit()

    qtbot.mouseClick(shown.write.save_block, LEFT)

    assert (tmp_path / "mode.bin").read_bytes().hex(" ").startswith("d5 09 80")
    edid = read_edid((tmp_path / "own.bin").read_bytes())
    assert edid.damages == ()
    assert edid.product.name == "Boathouse"
    assert edid.modes[0].name == "640x480@60"


def test_a_name_that_ends_in_hex_is_written_as_hex_text(page, qtbot, tmp_path):
    shown = page(project=None)
    shown.bench.dialogs.save_paths = [tmp_path / "own.hex"]

    qtbot.mouseClick(shown.write.save_block, LEFT)

    assert (tmp_path / "own.hex").read_text().startswith("00 ff ff ff ff ff ff 00")
    assert read_edid((tmp_path / "own.hex").read_bytes()).modes[0].name == "640x480@60"


def test_a_display_of_ones_own_says_where_its_range_comes_from(page):
    shown = page(project=None)
    assert "2 % around this mode, as no monitor's range is entered" in shown.write.range.text()

    shown.bench.apply("Range", lambda project: set_monitor(project, MonitorRange(30e3, 70e3, 50.0, 75.0)))
    shown.bench.live.refresh()

    assert shown.write.range.text() == (
        "Range: lines 30 … 70 kHz, fields 50 … 75 Hz; that of the project's monitor."
    )


@pytest.mark.parametrize(
    ("field", "text"),
    [
        ("maker", "A1"),
        ("maker", "ÄBC"),
        ("name", "a name far too long"),
        ("width_cm", "-3"),
        ("height_cm", "999"),
    ],
)
def test_what_a_block_cannot_hold_is_refused(field, text):
    with pytest.raises(EditError):
        OwnDisplay().with_text(field, text)


def test_a_block_takes_the_projects_limits(project):
    from dataclasses import replace

    held = replace(set_mode(project, find_mode("800x600@60")), monitor=MonitorRange(30e3, 70e3, 50.0, 75.0))
    edid = read_edid(own_block(OwnDisplay(width_cm=30, height_cm=20), held))

    assert (edid.limits.h_min_hz, edid.limits.v_max_hz) == (30e3, 75.0)
    assert edid.size_cm == (30, 20)


def test_a_narrow_page_shows_one_part_and_a_row_of_names(page, qtbot):
    shown = page(base_block(), size=(700, 300))
    assert [name for name, area in shown.parts.items() if area.isVisible()] == ["sees"]

    qtbot.mouseClick(shown.choices["write"], LEFT)

    assert [name for name, area in shown.parts.items() if area.isVisible()] == ["write"]


@pytest.mark.parametrize("back_porch", [48, 31, 24, 12])
@pytest.mark.parametrize("large", [False, True], ids=["desk", "projector"])
def test_the_time_in_which_black_is_taken_crosses_no_word(page, project, back_porch, large):
    shown = page(project=set_counts(project, Direction.HORIZONTAL, back_porch=back_porch))
    shown.bench.project_large(on=large)
    shown.resize(1880, 800)
    strip, px = shown.seen.black_strip, shown.bench.px

    window, face = strip.window_box(), shown.bench.type.sans(0.8)
    height = QFontMetricsF(face).capHeight()
    assert [name for name, _ in strip.names()] == ["sync", "back porch", "picture"]
    for _, box in strip.names():
        assert not box.intersects(window)
        assert box.height() >= height + px(2)
    assert strip.bar.contains(window.adjusted(0, 0, 0, 1))


@pytest.mark.parametrize("size", [(960, 195), (1280, 299), (1440, 360)], ids=str)
def test_the_lit_name_is_the_part_that_is_seen(page, size, qtbot):
    shown = page(base_block(), size=size)

    for name, button in shown.choices.items():
        qtbot.mouseClick(button, LEFT)
        assert button.isChecked()
        assert [each for each, area in shown.parts.items() if area.isVisible()] == [name]


def test_at_1280_all_of_what_it_sees_has_room(page):
    """A page of a window of 1280 by 800 is 299 high."""
    shown = page(base_block(), size=(1280, 299))

    assert not shown.parts["sees"].verticalScrollBar().isVisible()
    assert not shown.seen.table.verticalScrollBar().isVisible()
    assert not any(shown.seen.table.isColumnHidden(n) for n in range(6))
    assert shown.seen.black_strip.visibleRegion().boundingRect() == shown.seen.black_strip.rect()


@pytest.mark.parametrize("size", [(880, 200), (960, 195), (1280, 299), (1880, 400)], ids=str)
def test_no_column_of_figures_is_lost(page, size):
    shown = page(base_block(), size=size)

    for name, table in (("sees", shown.seen.table), ("says", shown.edid.table)):
        shown.choose(name)
        QApplication.processEvents()
        assert not any(table.isColumnHidden(n) for n in range(5))
        assert not table.horizontalScrollBar().isVisible()
