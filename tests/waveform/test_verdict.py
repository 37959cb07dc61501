"""Whether a monitor shows a signal, and what it says if not."""

from dataclasses import dataclass, replace

import pytest

from workbench.timing.search import find_mode
from workbench.timing.standards import DMT
from workbench.waveform.monitor import Screen
from workbench.waveform.sync import SyncDrive
from workbench.waveform.verdict import Standing, judge

VGA = find_mode("640x480@60")
GOOD = SyncDrive(3.3, 3.3, 2e-9)


@dataclass(frozen=True)
class Range:
    h_min_hz: float = 30e3
    h_max_hz: float = 64e3
    v_min_hz: float = 55.0
    v_max_hz: float = 76.0


@pytest.mark.parametrize("screen", list(Screen), ids=lambda screen: screen.value)
@pytest.mark.parametrize("name", ["640x480@60", "800x600@60", "1024x768@60"])
def test_a_mode_of_the_table_is_shown_as_itself(name, screen):
    verdict = judge(find_mode(name), GOOD, screen, Range())

    assert verdict.standing is Standing.SHOWN
    assert verdict.row == find_mode(name)


def test_every_progressive_mode_of_the_table_has_a_picture_that_stands():
    for mode in DMT:
        verdict = judge(mode, GOOD, Screen.PANEL)

        assert verdict.standing.has_picture is not mode.interlaced, mode.name


def test_weak_h_sync_is_no_signal():
    verdict = judge(VGA, replace(GOOD, h_high_volts=1.2), Screen.PANEL)

    assert verdict.standing is Standing.NO_SIGNAL
    assert "H sync reaches 1.20 V" in verdict.sentence


@pytest.mark.parametrize(
    ("screen", "standing"), [(Screen.TUBE, Standing.ROLLING), (Screen.PANEL, Standing.NO_SIGNAL)]
)
def test_weak_v_sync_rolls_on_a_tube(screen, standing):
    assert judge(VGA, replace(GOOD, v_high_volts=0.9), screen).standing is standing


@pytest.mark.parametrize(
    ("name", "rate"), [("1600x1200@60", "line rate is 75.00 kHz"), ("640x480@85", "field rate is 85.01 Hz")]
)
def test_a_rate_outside_the_monitors_range_is_named(name, rate):
    verdict = judge(find_mode(name), GOOD, Screen.PANEL, Range())

    assert verdict.standing is Standing.OUT_OF_RANGE
    assert rate in verdict.sentence


def test_a_moved_porch_is_a_shift_in_pixels():
    moved = replace(VGA, h=replace(VGA.h, front_porch=8, back_porch=56))

    verdict = judge(moved, GOOD, Screen.PANEL)

    assert verdict.standing is Standing.SHIFTED
    assert "8 pixels and 0 lines" in verdict.sentence


def test_a_wrong_total_bands_on_a_panel_and_not_on_a_tube():
    # The same line rate from a slower clock: 792 pixels a line.
    short = replace(VGA, h=replace(VGA.h, front_porch=12, back_porch=44), pixel_clock_hz=24_923_250)

    panel, tube = (judge(short, GOOD, screen) for screen in (Screen.PANEL, Screen.TUBE))

    assert "800 pixels and not 792: soft bands, 8 a line" in panel.sentence
    assert "bands" not in tube.sentence


def test_an_unknown_mode_is_guessed():
    odd = replace(VGA, v=replace(VGA.v, active=600, back_porch=90))

    assert judge(odd, GOOD, Screen.PANEL).standing is Standing.GUESSED


def test_interlaced_is_said_and_not_shown():
    verdict = judge(find_mode("1024x768@43i"), GOOD, Screen.TUBE)

    assert verdict.standing is Standing.NOT_SIMULATED
    assert not verdict.standing.has_picture
