"""Volts, light and lightness."""

import numpy as np
import pytest

from workbench.picture.light import (
    light_from_srgb,
    light_from_volts,
    lightness_from_light,
    srgb_bytes,
    srgb_from_light,
    volts_from_light,
)


@pytest.mark.parametrize(("volts", "light"), [(-0.2, 0.0), (0.0, 0.0), (0.7, 1.0), (1.06, 1.0)])
def test_light_is_clipped(volts, light):
    assert light_from_volts(volts) == light


@pytest.mark.parametrize(("full_scale", "part"), [(0.65, 0.85), (0.61, 0.74), (0.50, 0.48), (0.39, 0.28)])
def test_a_low_white_is_dim(full_scale, part):
    # (volts / 0.7) ** 2.2, own arithmetic
    assert light_from_volts(full_scale) == pytest.approx(part, abs=0.006)


def test_volts_and_light_are_inverse():
    volts = np.linspace(0.0, 0.7, 15)

    np.testing.assert_allclose(volts_from_light(light_from_volts(volts)), volts, atol=1e-12)


def test_srgb_and_light_are_inverse_for_every_byte():
    values = np.arange(256)

    assert (srgb_bytes(light_from_srgb(values / 255)) == values).all()


def test_srgb_has_no_step_where_its_two_parts_meet():
    below, above = srgb_from_light([0.0031308, 0.0031309])

    assert above - below < 2e-6


def test_lightness_of_middle_grey_and_of_the_ends():
    # L* 50 is 18.4 % of white
    np.testing.assert_allclose(lightness_from_light([0.0, 0.1842, 1.0]), [0.0, 50.0, 100.0], atol=0.01)
