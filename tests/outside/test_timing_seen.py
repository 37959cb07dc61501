"""What a display knows: values of the trade digest and of published monitor manuals."""

from dataclasses import replace

import pytest

from workbench.timing.sampling import black_window
from workbench.timing.search import find_mode
from workbench.timing.seen_as import seen_as

MODE = find_mode("640x480@60")


def test_black_level_window() -> None:
    """Published: 9 pixels delay, 20 pixels long; so 0.357 to 1.152 µs of a back porch of 1.907 µs."""
    window = black_window(MODE, 800)

    assert window.start_s * 1e6 == pytest.approx(0.357, abs=5e-4)
    assert window.end_s * 1e6 == pytest.approx(1.152, abs=5e-4)
    assert window.back_porch_s * 1e6 == pytest.approx(1.907, abs=5e-4)
    assert window.fits


@pytest.mark.parametrize(("back_porch", "fits"), [(29, True), (28, False)])
def test_shortest_back_porch(back_porch: int, fits: bool) -> None:
    """Published: a picture that starts less than 29 pixels after H sync disturbs the level of black."""
    line = replace(MODE.h, back_porch=back_porch, front_porch=64 - back_porch)

    assert black_window(replace(MODE, h=line), 800).fits is fits


@pytest.mark.parametrize(
    ("lines", "h", "v"), [(350, "+", "-"), (400, "-", "+"), (480, "-", "-")], ids=lambda value: str(value)
)
def test_the_polarity_pair_codes_the_line_count(lines: int, h: str, v: str) -> None:
    """Published: at 31.5 kHz + - is 350 lines, - + is 400, - - is 480."""
    name = {350: "640x350@70", 400: "640x400@70", 480: "640x480@60"}[lines]
    row = seen_as(find_mode(name))[0].row

    assert (row.v.active, row.h.polarity.value, row.v.polarity.value) == (lines, h, v)


@pytest.mark.parametrize(("clock_mhz", "ppm"), [(25.0, -6951.3), (25.2, 993.05)])
def test_ppm_of_the_line_rate(clock_mhz: float, ppm: float) -> None:
    """Our own arithmetic: (f / f0 - 1) × 10⁶."""
    found = seen_as(replace(MODE, pixel_clock_hz=round(clock_mhz * 1e6)))[0]

    assert found.line_rate_ppm == pytest.approx(ppm, abs=0.05)
