"""Rates and times of the trade digest: published (P) or our own arithmetic (C)."""

import pytest

from workbench.timing.search import find_mode


@pytest.mark.parametrize(
    ("name", "line_us", "frame_hz"),
    [
        ("640x480@60", 31.7776, 59.9405),  # P, and C
        ("800x600@60", 26.400, 60.3165),  # P, and C
        ("1024x768@60", 20.6769, 60.0038),  # P, and C
    ],
)
def test_line_and_frame(name: str, line_us: float, frame_hz: float) -> None:
    mode = find_mode(name)

    assert mode.line_s * 1e6 == pytest.approx(line_us, abs=5e-5)
    assert mode.frame_rate_hz == pytest.approx(frame_hz, abs=5e-5)


def test_sync_and_porch_of_640x480() -> None:
    mode = find_mode("640x480@60")

    assert mode.h.sync * mode.pixel_s * 1e6 == pytest.approx(3.8133, abs=5e-5)  # P
    assert mode.h.back_porch * mode.pixel_s * 1e6 == pytest.approx(1.907, abs=5e-4)  # C
    assert mode.v.blanking * mode.line_s * 1e3 == pytest.approx(1.430, abs=5e-4)  # C
    assert mode.h.active / mode.h.total * mode.v.active / mode.v.total == pytest.approx(0.7314, abs=5e-5)  # C


@pytest.mark.parametrize(
    ("name", "clock_mhz", "line_khz", "frame_hz"),
    [
        ("640x480@60", 25.175, 31.46875, 59.9405),
        ("640x480@72", 31.5, 37.8606, 72.809),
        ("640x480@75", 31.5, 37.500, 75.000),
        ("800x600@56", 36.0, 35.15625, 56.250),
        ("800x600@60", 40.0, 37.8788, 60.3165),
        ("1024x768@60", 65.0, 48.3631, 60.0038),
    ],
)
def test_standard_rows(name: str, clock_mhz: float, line_khz: float, frame_hz: float) -> None:
    """Rows P, rates C."""
    mode = find_mode(name)

    assert mode.pixel_clock_hz == clock_mhz * 1e6
    assert mode.line_rate_hz / 1e3 == pytest.approx(line_khz, abs=5e-5)
    assert mode.frame_rate_hz == pytest.approx(frame_hz, abs=5e-4)
