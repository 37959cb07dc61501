"""Clock and cycle values of the trade digest; C is our own arithmetic, P published."""

from dataclasses import replace
from fractions import Fraction

import pytest

from workbench.timing.clock.budget import cycle_budget, whole_line
from workbench.timing.clock.chip import read_chip
from workbench.timing.clock.plan import Jitter, plan_clock
from workbench.timing.search import find_mode

MODE = find_mode("640x480@60")


@pytest.mark.parametrize(
    ("reference", "multiply", "divide"),
    [("12M", "126", "60"), ("48M", "21", "40"), ("27M", "14", "15"), ("50.4M", "1", "2")],
)
def test_ways_to_25_2_mhz(reference: str, multiply: str, divide: str) -> None:
    """C: 25.2 MHz = 12 × 126/60 = 48 × 21/40 = 27 × 14/15, +993.05 ppm."""
    chip = read_chip(reference=reference, multiply=multiply, divide=divide, max_system="133M")

    best = plan_clock(MODE, chip)[0]

    assert best.pixel_hz == 25_200_000
    assert best.error_ppm == pytest.approx(993.05, abs=0.005)


def test_50_mhz_halved() -> None:
    """C: 25.0 MHz, −6951.3 ppm, 31.250 kHz, 59.52 Hz."""
    best = plan_clock(MODE, read_chip(reference="50M", multiply="1", divide="1", max_system="50M"))[0]
    mode = replace(MODE, pixel_clock_hz=int(best.pixel_hz))

    assert best.divider == 2
    assert best.error_ppm == pytest.approx(-6951.3, abs=0.05)
    assert mode.line_rate_hz == 31_250
    assert mode.frame_rate_hz == pytest.approx(59.52, abs=0.005)


def test_133_mhz_with_eight_fractional_bits() -> None:
    """C: 133/25.175 = 5.28302; 5 + 72/256 is +334.9 ppm, pixels uneven by 7.52 ns."""
    chip = read_chip(reference="133M", multiply="1", divide="1", max_system="133M", fraction_bits=8)

    best = next(plan for plan in plan_clock(MODE, chip) if plan.jitter is Jitter.PIXEL)

    assert pytest.approx(5.28302, abs=5e-6) == 133 / 25.175
    assert best.divider == 5 + Fraction(72, 256)
    assert best.error_ppm == pytest.approx(334.9, abs=0.05)
    assert best.uneven_s * 1e9 == pytest.approx(7.52, abs=0.005)
    assert best.uneven_s * float(best.pixel_hz) == pytest.approx(0.19, abs=0.005)  # of a pixel


def test_a_line_of_whole_cycles_at_16_mhz() -> None:
    """C: 508 clocks give 31.4961 kHz, +867.9 ppm."""
    line = whole_line(MODE, 16e6)

    assert line.cycles == 508
    assert line.line_rate_hz / 1e3 == pytest.approx(31.4961, abs=5e-5)
    assert line.error_ppm == pytest.approx(867.9, abs=0.05)


def test_cycles_at_125_mhz() -> None:
    """C: 3972.2 a line, 3177.8 active, 794.4 blank, 4.97 a pixel, 178 749 in vertical blanking."""
    budget = cycle_budget(MODE, 125e6)

    assert budget.per_line == pytest.approx(3972.2, abs=0.05)
    assert budget.active == pytest.approx(3177.8, abs=0.05)
    assert budget.blanking == pytest.approx(794.4, abs=0.05)
    assert budget.per_pixel == pytest.approx(4.97, abs=0.005)
    assert budget.v_blanking == pytest.approx(178_749, abs=0.5)


@pytest.mark.parametrize(("cpu_mhz", "cycles"), [(126, 4000), (252, 8000)])
def test_cycles_of_a_line_when_clocks_are_locked(cpu_mhz: int, cycles: int) -> None:
    """C: with a pixel clock of 25.2 MHz."""
    locked = replace(MODE, pixel_clock_hz=25_200_000)

    assert cycle_budget(locked, cpu_mhz * 1e6).per_line == pytest.approx(cycles, abs=1e-9)


def test_doubled_320_by_240_at_125_mhz() -> None:
    """C: 24.8 cycles for each of 320 pixels, each shown on two lines, blanking used too."""
    assert 2 * cycle_budget(MODE, 125e6).per_line / 320 == pytest.approx(24.8, abs=0.05)
