from dataclasses import replace

import pytest

from workbench.checks import Severity
from workbench.circuit.ladders import weighted
from workbench.picture.scene import Picture
from workbench.timing.mode import Axis, Polarity
from workbench.timing.search import find_mode


def test_colour_in_blanking_fails_and_is_blackened(board, found):
    project = board(picture=Picture(blanking=(16, 0, 3)))
    finding = found(project, "black-in-blanking")

    assert finding.severity is Severity.FAIL
    assert finding.subject == "red and blue"
    assert finding.headline == "Red and blue show code 16 in blanking: 0.384 V where black belongs."
    # (0.743 - 0.384) V shown of 0.700 V, to the power 2.2
    assert "white sinks to 23 %" in finding.why
    assert found(finding.remedy.edit(project), "black-in-blanking") is None


def test_a_code_under_ten_millivolts_is_black_enough(board, found):
    fine = weighted(8, [560.0 * 2**bit for bit in range(8)])

    assert found(board(fine, picture=Picture(blanking=(1, 1, 1))), "black-in-blanking") is None
    assert found(board(fine, picture=Picture(blanking=(4, 4, 4))), "black-in-blanking") is not None


def test_black_blanking_is_not_mentioned(board, found):
    assert found(board(), "black-in-blanking") is None


def with_back_porch(pixels: int):
    mode = find_mode("640x480@60")
    return replace(mode, h=replace(mode.h, back_porch=pixels))


def test_a_short_back_porch_warns_in_pixels_and_time(board, found):
    finding = found(board(mode=with_back_porch(10)), "back-porch")

    assert finding.severity is Severity.WARN
    assert finding.headline == (
        "The back porch is 10 px (0.397 µs); one receiver samples black until 29 px (1.152 µs) after sync."
    )


@pytest.mark.parametrize("pixels", [29, 48])
def test_a_porch_as_long_as_the_window_is_enough(board, found, pixels):
    assert found(board(mode=with_back_porch(pixels)), "back-porch") is None


def test_a_porch_of_half_as_many_pixels_is_measured_in_the_samples_of_the_monitor(board, found):
    """24 px at half the clock are the 1.907 µs of 48: two samples a pixel."""
    vga = find_mode("640x480@60")
    half = replace(vga, pixel_clock_hz=12_587_500, h=Axis(320, 8, 48, 24, Polarity.NEGATIVE))
    tight = replace(half, h=Axis(320, 18, 48, 14, Polarity.NEGATIVE))

    assert found(board(mode=half), "back-porch") is None
    assert "is 14 px (1.112 µs); one receiver samples black until 15 px (1.152 µs)" in (
        found(board(mode=tight), "back-porch").headline
    )


def test_the_remedy_takes_what_the_front_porch_can_spare(board, found):
    vga = find_mode("640x480@60")
    project = board(mode=replace(vga, h=replace(vga.h, front_porch=40, back_porch=24, border=0)))
    finding = found(project, "back-porch")

    assert finding.remedy.label == "Use the line of 640x480@60"
    wide = replace(vga, h=replace(vga.h, active=660, front_porch=20, back_porch=24, border=0))
    assert found(board(mode=wide), "back-porch") is not None
