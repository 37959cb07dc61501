import pytest

from workbench.timing.clock.chip import read_chip
from workbench.timing.clock.plan import Jitter, plan_clock
from workbench.timing.clock.reach import within_reach
from workbench.timing.search import search


@pytest.mark.parametrize("within_ppm", [0.0, 1000.0, 5000.0])
def test_the_modes_are_those_with_a_plan_of_even_pixels_that_near(within_ppm: float) -> None:
    chip = read_chip(
        reference="12M", multiply="60..70", divide="1..7x1..3", max_system="133M", fraction_bits=4
    )
    modes = search("")

    reached = within_reach(modes, chip, within_ppm=within_ppm)

    for mode in modes:
        best = plan_clock(mode, chip)[0]
        assert best.jitter is Jitter.NONE
        assert (mode in reached) == (abs(best.error_ppm) <= within_ppm)


def test_a_chip_too_fast_for_itself_reaches_nothing() -> None:
    chip = read_chip(reference="100M", multiply="2", divide="1", max_system="50M")

    assert within_reach(search(""), chip) == ()
