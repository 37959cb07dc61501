"""One pixel's working says what the picture shows."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest

from tests.waveform.pulses import rc_pulse
from tests.waveform.test_scanline import LEVELS, STATES, VGA, WEIGHTS
from workbench.picture.light import light_from_volts, srgb_bytes
from workbench.waveform.adjustment import from_table
from workbench.waveform.clamp import lines_remembered
from workbench.waveform.kernel import pixel_kernel
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.pixel import seen_pixel
from workbench.waveform.places import places_of
from workbench.waveform.sampling import column_on, instants
from workbench.waveform.seen import seen_picture

SMALL = replace(VGA, h=replace(VGA.h, active=64), v=replace(VGA.v, active=48))
SHORT_PORCH = replace(SMALL, h=replace(SMALL.h, back_porch=12, front_porch=52))
SOFT = (pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=15e-9, samples=8, n_after=12)),) * 3
FINE = pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=3e-9, samples=32, n_after=6))
NOISE = np.random.default_rng(3).integers(0, 32, (3, 48, 64), dtype=np.uint8)
TABLE = Monitor(auto_adjust=False)


def at(mode, monitor, column, row, blanking=(0, 0, 0), codes=NOISE, kernels=SOFT):
    return seen_pixel(
        mode,
        lambda rows: codes[:, rows],
        blanking,
        kernels,
        monitor,
        from_table(mode, monitor),
        pixel=mode.h.blanking + column,
        line=row,
    )


@pytest.mark.parametrize("row", [0, 1, 20, 47])
@pytest.mark.parametrize(
    ("mode", "monitor", "blanking"),
    [
        (SMALL, TABLE, (0, 0, 0)),
        (SMALL, replace(TABLE, phase=0.1), (3, 0, 9)),
        (SHORT_PORCH, TABLE, (0, 0, 0)),
        (SHORT_PORCH, replace(TABLE, full_volts=1.0), (0, 5, 0)),
        (SHORT_PORCH, replace(TABLE, screen=Screen.TUBE), (0, 0, 0)),
        (SHORT_PORCH, replace(TABLE, clamp_start=30, clamp_pixels=20), (0, 0, 0)),
        (SMALL, replace(TABLE, assumed=replace(SMALL, h=replace(SMALL.h, front_porch=32))), (0, 0, 0)),
        (SMALL, replace(TABLE, assumed=replace(SMALL, v=replace(SMALL.v, back_porch=20))), (7, 0, 0)),
    ],
    ids=["table", "porch", "picture in window", "gain", "tube", "other clamp", "total", "lower"],
)
def test_a_pixel_is_as_the_picture_shows_it(mode, monitor, blanking, row):
    shown = seen_picture(mode, NOISE, blanking, SOFT, monitor)
    places = places_of(mode, shown.adjustment, 64, 48)

    for column in (0, 9, 40):
        pixel = at(mode, monitor, column, row, blanking)

        dot = places.dot_of(column, row)
        assert pixel.on_screen == (dot is not None)
        if dot is not None:
            above = (pixel.volts - pixel.black_volts[:, None]) / monitor.full_volts
            light = light_from_volts(above * 0.7).mean(axis=1)
            rgb = shown.rgb[dot[1], dot[0]].astype(int)
            np.testing.assert_allclose(srgb_bytes(light).astype(int), rgb, atol=2)


# A line of 224 px is a whole number of the coarse divider's clocks, and of the fine one's is none.
@pytest.mark.parametrize("divider", [Fraction(169, 32), Fraction(1357, 256)], ids=str)
@pytest.mark.parametrize("screen", list(Screen), ids=lambda screen: screen.value)
def test_an_uneven_pixel_is_as_the_picture_shows_it(screen, divider):
    monitor = replace(TABLE, screen=screen)
    uneven = (replace(FINE, divider=divider, finer=4),) * 3
    shown = seen_picture(SMALL, NOISE, (0, 0, 0), uneven, monitor).rgb.astype(int)

    for column, row in ((0, 0), (9, 20), (40, 33), (63, 47)):
        pixel = at(SMALL, monitor, column, row, kernels=uneven)

        light = light_from_volts(pixel.volts - pixel.black_volts[:, None]).mean(axis=1)
        np.testing.assert_allclose(srgb_bytes(light).astype(int), shown[row, column], atol=3)


def test_a_monitor_counts_from_the_uneven_edge_of_h_sync():
    uneven = (replace(FINE, divider=Fraction(9, 4), finer=4),) * 3
    # The front porch ends with pixel 15: 15 * 9 / 4 = 33.75, so H sync is early by 3/4 of a clock.
    mode = replace(SMALL, h=replace(SMALL.h, front_porch=15, back_porch=SMALL.h.back_porch + 1))

    pixel = at(mode, TABLE, 9, 3, kernels=uneven)

    column = mode.h.blanking + 9
    assert pixel.instants_s / mode.pixel_s == pytest.approx(column + TABLE.phase - 0.75 / 2.25)


def test_black_sinks_into_the_picture_line_by_line():
    white = np.full((3, 48, 64), 31, np.uint8)

    volts = [at(SHORT_PORCH, TABLE, 32, row, codes=white).black_volts[0] for row in (0, 10, 47)]

    assert volts[0] < volts[1] < volts[2]
    assert volts[2] == pytest.approx(0.7 * 17 / 20, abs=0.02)


def test_below_the_picture_black_comes_back():
    white = np.full((3, 48, 64), 31, np.uint8)

    black = [at(SHORT_PORCH, TABLE, 32, line, codes=white).black_volts[0] for line in (47, 52, 90)]

    assert black[0] > black[1] > black[2]
    assert black[2] < 0.01


@pytest.mark.parametrize("phase", [0.0, 0.3, 0.5, 0.99])
def test_a_pixel_is_looked_at_inside_itself(phase):
    monitor = replace(TABLE, phase=phase)
    set_ = from_table(SMALL, monitor)

    column = column_on(SMALL, monitor, set_, 170)

    assert instants(SMALL, monitor, set_, np.array([column]))[0, 0] == pytest.approx(170 + phase)


def test_a_weak_clamp_remembers_more_lines():
    assert lines_remembered(1.0) == 1
    assert lines_remembered(0.01) == 917
