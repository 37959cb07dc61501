from dataclasses import replace

import pytest

from workbench.timing.mode import Polarity
from workbench.timing.search import find_mode
from workbench.timing.seen_as import look_alikes, seen_as
from workbench.timing.standards import KNOWN

MODE = find_mode("640x480@60")


@pytest.mark.parametrize("mode", KNOWN, ids=lambda mode: f"{mode.source} {mode.name}")
def test_a_known_mode_is_taken_for_itself(mode) -> None:
    found = seen_as(mode)[0]

    assert (found.row.name, found.distance) == (mode.name, 0.0)
    assert found.is_known
    assert found.within_lock
    assert found.bands.per_line == 0
    assert (found.horizontal.shift, found.vertical.shift) == (0.0, 0)


def test_modes_of_one_line_rate_and_polarity_look_alike() -> None:
    alike = look_alikes(seen_as(find_mode("640x400@70")))

    assert {found.row.name for found in alike} == {"640x400@70", "720x400@70"}


def test_wrong_total_makes_bands() -> None:
    """Two pixels too many a line at the right line rate."""
    wide = replace(MODE, pixel_clock_hz=25_237_938, h=replace(MODE.h, back_porch=50))

    found = seen_as(wide)[0]

    assert found.row is MODE
    assert abs(found.line_rate_ppm) < 1
    assert found.assumed_total == 800
    assert found.bands.per_line == 2
    assert found.sampling_clock_hz == pytest.approx(25.175e6, rel=1e-6)


def test_a_clock_off_by_0_7_percent_is_known_but_outside_the_lock() -> None:
    found = seen_as(replace(MODE, pixel_clock_hz=25_000_000))[0]

    assert found.row is MODE
    assert found.line_rate_ppm == pytest.approx(-6951.3, abs=0.05)
    assert found.is_known
    assert not found.within_lock


def test_lines_of_a_known_rate_in_half_as_many_fields_are_no_known_mode() -> None:
    """The clock divided once too often: 15.73 kHz and 525 lines, as interlaced television has them."""
    halved = seen_as(replace(MODE, pixel_clock_hz=MODE.pixel_clock_hz // 2), most=len(KNOWN))

    by_line_rate = next(found for found in halved if found.row.interlaced)
    assert abs(by_line_rate.line_rate_ppm) < 1000
    assert by_line_rate.lines_off == 0
    assert by_line_rate.field_rate_ppm == pytest.approx(-500_000, abs=1000)
    assert not any(found.is_known for found in halved)
    assert not halved[0].row.interlaced


def test_turned_polarity_is_said_and_shifts_to_another_row_where_rates_agree() -> None:
    turned = replace(MODE, h=replace(MODE.h, polarity=Polarity.POSITIVE))
    found = seen_as(turned)[0]

    assert found.row is MODE
    assert (found.h_polarity_agrees, found.v_polarity_agrees) == (False, True)


def test_polarity_tells_350_from_400_lines() -> None:
    """31.469 kHz, 449 lines: + and - mean 350 lines, - and + mean 400."""
    as_400 = find_mode("640x400@70")
    as_350 = replace(
        as_400,
        h=replace(as_400.h, polarity=Polarity.POSITIVE),
        v=replace(as_400.v, polarity=Polarity.NEGATIVE),
    )

    assert seen_as(as_400)[0].row.v.active == 400
    assert seen_as(as_350)[0].row.v.active == 350


def test_a_longer_back_porch_moves_the_picture_right_and_crops_it() -> None:
    moved = replace(MODE, h=replace(MODE.h, front_porch=6, back_porch=58))
    placing = seen_as(moved)[0].horizontal

    assert (placing.shift, placing.cropped_before, placing.cropped_after) == (10.0, 0.0, 10.0)


def test_fewer_lines_above_move_the_picture_up() -> None:
    moved = replace(MODE, v=replace(MODE.v, front_porch=15, back_porch=28))
    placing = seen_as(moved)[0].vertical

    assert (placing.shift, placing.cropped_before, placing.cropped_after) == (-5.0, 5.0, 0.0)


def test_an_unheard_of_mode_is_a_guess() -> None:
    assert not seen_as(find_mode("640x480@60", by="cvt"))[0].is_known


def test_rows_may_be_a_monitors_own() -> None:
    row = find_mode("800x600@60")

    assert [found.row for found in seen_as(MODE, (row,))] == [row]
