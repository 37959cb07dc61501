"""Volts as the eye sees them."""

import numpy as np
import pytest

from tests.waveform.test_scanline import kernels, render
from workbench.picture.scene import Card, Picture
from workbench.waveform.eye import (
    light_from_volts,
    lightness,
    lightness_of_colour,
    srgb_from_volts,
    strip_colours,
)


def test_lightness_of_even_two_bit_levels():
    # 0 / 36 / 70 / 100, own arithmetic: Y = (n / 3) ** 2.2
    np.testing.assert_allclose(lightness(np.arange(4) * 0.7 / 3), [0.0, 35.8, 70.2, 100.0], atol=0.05)


def test_lightness_of_even_three_bit_levels():
    assert np.rint(lightness(np.arange(8) * 0.1)).tolist() == [0, 12, 30, 46, 61, 75, 88, 100]


@pytest.mark.parametrize(("volts", "light"), [(-0.2, 0.0), (0.0, 0.0), (0.7, 1.0), (1.06, 1.0)])
def test_light_is_clipped(volts, light):
    assert light_from_volts(np.array(volts)) == light


@pytest.mark.parametrize(("full_scale", "part"), [(0.65, 0.85), (0.61, 0.74), (0.50, 0.48), (0.39, 0.28)])
def test_a_low_white_is_dim(full_scale, part):
    assert light_from_volts(np.array(full_scale)) == pytest.approx(part, abs=0.006)


def test_grey_is_as_light_as_a_grey_channel():
    volts = np.linspace(0.0, 0.8, 9)

    np.testing.assert_allclose(lightness_of_colour(np.stack([volts] * 3)), lightness(volts), atol=1e-9)


def test_green_is_lighter_than_red_and_red_than_blue():
    red, green, blue = lightness_of_colour(np.diag([0.7] * 3))

    assert green > red > blue


def test_srgb_of_the_ends_and_of_a_middle_grey():
    # Y = 0.5 ** 2.2 = 0.2176 -> 1.055 Y ** (1 / 2.4) - 0.055 = 0.5039 -> 128
    assert srgb_from_volts(np.array([0.0, 0.35, 0.7])).tolist() == [0, 128, 255]


def test_strip_shows_blanking_black_and_bars_in_their_colours():
    strip = strip_colours(render(number=100))

    assert strip.shape == (800, 3)
    assert not strip[:160].any()
    assert strip[[200, 280, 360, 440, 520, 600, 680]].tolist() == [
        [255, 255, 255],
        [255, 255, 0],
        [0, 255, 255],
        [0, 255, 0],
        [255, 0, 255],
        [255, 0, 0],
        [0, 0, 255],
    ]


def test_strip_of_a_slow_network_is_grey_where_stripes_should_be():
    strip = strip_colours(render(picture=Picture(Card.STRIPES), kernels=kernels(tau_s=100e-9, n_after=30)))

    assert np.ptp(strip[300:500].astype(int)) < 60
