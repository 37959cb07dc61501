"""A clock search over a million settings against the same search as a plain Python loop."""

from math import floor

import pytest

from workbench.timing.clock.chip import Chip, Span
from workbench.timing.clock.plan import Jitter, plan_clock
from workbench.timing.search import find_mode, search

pytestmark = pytest.mark.benchmark

MODE = find_mode("640x480@60")
MILLION = Chip(1_000_000, Span(1, 1000), (Span(1, 1000),), 400_000_000, None, fraction_bits=8)
PART = Chip(1_000_000, Span(1, 100), (Span(1, 500),), 400_000_000, None, fraction_bits=8)
"""A twentieth of the settings, so that the loop ends in good time."""
GRIDS = {1: Jitter.NONE, 32: Jitter.PIXEL, 256: Jitter.LINE}
"""Steps of the pixel divider; 32 of them divide a line of 800 pixels evenly."""


def plain_loop(chip: Chip) -> dict[Jitter, tuple[float, int, int, float]]:
    """Return the smallest error of each kind, with its setting."""
    best = {jitter: (float("inf"), 0, 0, 0.0) for jitter in Jitter}
    for multiply in range(chip.multiply.low, chip.multiply.high + 1):
        for divide in range(chip.dividers[0].low, chip.dividers[0].high + 1):
            system_hz = chip.reference_hz * multiply / divide
            if system_hz > chip.max_system_hz:
                continue
            for steps, jitter in GRIDS.items():
                below = max(floor(system_hz / MODE.pixel_clock_hz * steps), steps)
                for count in (below, below + 1):
                    error = abs(system_hz * steps / count / MODE.pixel_clock_hz - 1)
                    if error < best[jitter][0]:
                        best[jitter] = (error, multiply, divide, count / steps)
    return best


def test_clock_search(figures) -> None:
    best = {plan.jitter: plan for plan in reversed(plan_clock(MODE, PART))}
    loop = plain_loop(PART)
    assert abs(best[Jitter.NONE].error_ppm) == pytest.approx(loop[Jitter.NONE][0] * 1e6)
    assert abs(best[Jitter.PIXEL].error_ppm) == pytest.approx(loop[Jitter.PIXEL][0] * 1e6)

    search_s = figures.median_s(lambda: plan_clock(MODE, MILLION), repeats=7, warm=1)
    loop_s = 20 * figures.median_s(lambda: plain_loop(PART), repeats=3, warm=0)

    figures.add("Clock plan", "a million settings searched", search_s, "s", at_most=0.5)
    figures.add("Clock plan", "faster than a plain Python loop", loop_s / search_s, at_least=20)


def test_mode_search(figures) -> None:
    search_s = figures.median_s(lambda: search("close to 25 MHz"))

    figures.add("Clock plan", "all known modes searched by text", 1e3 * search_s, "ms", at_most=100)
