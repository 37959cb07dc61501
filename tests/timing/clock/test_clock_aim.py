"""What a plan aims at once another plan's clock is in force."""

from dataclasses import replace

from workbench.timing.clock.aim import aimed_mode
from workbench.timing.edges import with_counts
from workbench.timing.search import find_mode

VGA = find_mode("640x480@60")
WIDER = with_counts(VGA, h=replace(VGA.h, back_porch=58))


def test_counts_of_a_table_aim_at_its_clock():
    assert aimed_mode(with_counts(VGA, pixel_clock_hz=25_151_515)) == VGA


def test_counts_of_ones_own_aim_at_the_clock_that_was_aimed_at_before():
    taken = with_counts(WIDER, pixel_clock_hz=25_151_515)

    assert aimed_mode(taken, {25_151_515: 25_175_000}).pixel_clock_hz == 25_175_000
    assert aimed_mode(taken, {25_151_515: 25_175_000}).h.total == 810


def test_a_clock_that_was_typed_is_itself_the_aim():
    typed = with_counts(WIDER, pixel_clock_hz=25_490_000)

    assert aimed_mode(typed, {25_151_515: 25_175_000}) == typed
