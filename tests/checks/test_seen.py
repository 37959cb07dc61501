"""What a monitor makes of a mode: findings that follow from the row it takes it for."""

from dataclasses import replace

import pytest

from workbench.checks import Severity
from workbench.project.document import Direction
from workbench.project.edits.timing import set_axis, set_pixel_clock, set_polarity
from workbench.timing.custom import make_mode
from workbench.timing.mode import Axis, Polarity
from workbench.timing.search import find_mode
from workbench.timing.standards import CLASSIC, KNOWN

H, V = Direction.HORIZONTAL, Direction.VERTICAL
RULES = ("polarity", "refresh", "line-total", "picture-place", "unknown-mode")


def test_a_turned_sync_is_found_and_turned_back(board, found):
    project = set_polarity(board(), V, Polarity.POSITIVE)
    finding = found(project, "polarity")

    assert finding.headline == "V sync is of the other polarity than in 640x480@60 (−/−)."
    assert found(finding.remedy.edit(project), "polarity") is None


def test_a_clock_of_25_mhz_is_0_7_percent_off(board, found):
    project = set_pixel_clock(board(), 25_000_000)
    finding = found(project, "refresh")

    assert finding.measured == pytest.approx(-0.69513, abs=1e-5)
    assert "−0.70 %" in finding.headline
    assert "secondary sources" in finding.source
    assert found(finding.remedy.edit(project), "refresh") is None


def test_a_clock_of_25_2_mhz_is_near_enough(board, found):
    project = set_pixel_clock(board(), 25_200_000)

    assert [rule for rule in RULES if found(project, rule)] == []


def test_another_total_brings_soft_bands(board, found):
    axis = replace(board().mode.h, back_porch=52)
    project = set_axis(set_pixel_clock(board(), 25_301_000), H, axis)
    finding = found(project, "line-total")

    assert "samples 800 times a line; the line has 804 px: 3 soft bands" in finding.headline
    assert finding.remedy.edit(project).mode == find_mode("640x480@60")


def test_the_lesson_on_polarities_is_what_the_tables_say(board, found):
    """350 and 400 lines: one line rate and 449 lines, told apart by signs; 480 lines: a frame of 525."""
    why = found(set_polarity(board(), H, Polarity.POSITIVE), "polarity").why
    rows = {mode.v.active: mode for mode in CLASSIC if mode.h.active == 640 and mode.v.total == 449}
    vga = find_mode("640x480@60")

    assert {lines: (row.h.polarity.value, row.v.polarity.value) for lines, row in rows.items()} == {
        350: ("+", "-"),
        400: ("-", "+"),
    }
    assert {row.pixel_clock_hz for row in rows.values()} == {vga.pixel_clock_hz}
    assert vga.v.total == 525
    for words in ("449 lines", "350 (+/−)", "400 (−/+)", "480 (−/−) have 525", "table of presets"):
        assert words in why


def test_a_frame_of_too_few_lines_is_told_from_a_wrong_clock(board, found):
    """Lines at the right rate, and 522 of them in a frame."""
    short = replace(board().mode.v, back_porch=30)
    finding = found(set_axis(board(), V, short), "refresh")

    assert "is +0.57 % off 640x480@60, the line rate +0.00 %: 522 lines a frame, not 525." in finding.headline


def test_the_larger_of_the_two_offsets_is_what_was_measured(board, found):
    short = replace(board().mode.v, back_porch=30)
    by_field = set_pixel_clock(set_axis(board(), V, short), round(25_175_000 * 522 / 525))

    assert found(by_field, "refresh").measured == pytest.approx(100 * (522 / 525 - 1), abs=1e-4)


def test_a_picture_that_loses_its_edge_warns(board, found):
    """17 px wider, taken from the back porch: the monitor looks 17 px later than the picture starts."""
    wide = replace(board().mode.h, active=657, back_porch=31)
    finding = found(set_axis(board(), H, wide), "picture-place")

    assert finding.severity is Severity.WARN
    assert finding.headline == "Taken for 640x480@60, the picture starts 17 px past the left."
    assert finding.measured == 17.0


def test_a_picture_in_a_wider_one_that_loses_nothing_is_a_note(board, found):
    narrow = Axis(512, 80, 96, 112, Polarity.NEGATIVE)
    finding = found(board(mode=replace(board().mode, h=narrow)), "picture-place")

    assert finding.severity is Severity.INFO
    assert finding.headline == "Taken for 640x480@60, the picture starts 64 px from the left."


def test_a_picture_too_low_loses_its_foot(board, found):
    low = replace(board().mode.v, front_porch=5, back_porch=38, border=0)
    finding = found(set_axis(board(), V, low), "picture-place")

    assert finding.headline == (
        "Taken for 640x480@60, the picture starts 5 lines from the top and loses 5 lines at the foot."
    )


@pytest.mark.parametrize("mode", [m for m in KNOWN if not m.interlaced], ids=lambda mode: mode.source)
def test_modes_of_the_tables_are_taken_for_themselves(board, pipeline, mode):
    assert not {finding.id for finding in pipeline.run(board(mode=mode)).findings} & set(RULES)


def test_a_mode_that_no_table_holds_warns_since_the_screen_may_stay_black(board, found):
    vga = find_mode("640x480@60")
    mode = make_mode(replace(vga.h, back_porch=24), replace(vga.v, back_porch=44), vga.pixel_clock_hz)
    finding = found(board(mode=mode), "unknown-mode")

    assert finding.severity is Severity.WARN
    assert finding.headline == (
        "No mode of the tables has 536 lines at 32.442 kHz: the nearest, 640x480@60, has 525 at 31.469 kHz."
    )
    assert "stays black" in finding.why


def test_a_mode_read_from_an_edid_stands_in_that_monitors_table(board, found):
    mode = replace(find_mode("1000x700@61", by="cvt"), source="EDID detailed timing 1")

    assert found(board(mode=mode), "unknown-mode") is None
    assert found(board(mode=replace(mode, source="VESA CVT 1.1")), "unknown-mode") is not None
