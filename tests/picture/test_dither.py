"""Colours to codes by the levels a board really makes."""

import numpy as np
import pytest

from workbench.picture.dither import bayer, codes_from_image
from workbench.picture.light import light_from_srgb, light_from_volts
from workbench.picture.scene import Dither, Measure

EVEN = np.linspace(0.0, 0.7, 8)
UNEVEN = np.array([0.0, 0.05, 0.22, 0.31, 0.30, 0.52, 0.61, 0.70])  # step 3 to 4 falls
ONE_BIT = np.array([0.0, 0.7])
MIXING = [Dither.ORDERED_4, Dither.ORDERED_8, Dither.DIFFUSED]


def flat(value, side=64):
    return np.full((side, side, 3), value, np.uint8)


def made(image, levels, **options):
    """Return the volts of each pixel of the first channel."""
    return levels[codes_from_image(image, (levels, levels, levels), **options)[0]]


@pytest.mark.parametrize("levels", [EVEN, UNEVEN, ONE_BIT, EVEN * 1.1, EVEN * 0.6], ids=str)
def test_nearest_takes_the_level_with_the_smallest_distance(levels):
    image = np.arange(256, dtype=np.uint8).reshape(16, 16, 1).repeat(3, axis=2)

    volts = made(image, levels)

    wanted = np.arange(256).reshape(16, 16) / 255 * 0.7
    smallest = np.abs(wanted[..., None] - levels).min(axis=-1)
    np.testing.assert_allclose(np.abs(volts - wanted), smallest, atol=1e-12)


def test_nearest_as_the_eye_sees_it_differs_from_nearest_in_volts():
    codes = [
        codes_from_image(flat(value, 1), (ONE_BIT,) * 3, measure=measure)[0, 0, 0]
        for value in (120, 135)
        for measure in Measure
    ]

    # Half of the volts is 22 % of the light and L* 54: nearer to white.
    assert codes == [0, 1, 1, 1]


@pytest.mark.parametrize("dither", MIXING, ids=lambda dither: dither.value)
@pytest.mark.parametrize("levels", [EVEN, UNEVEN, ONE_BIT], ids=["even", "uneven", "one bit"])
@pytest.mark.parametrize("value", [0, 3, 60, 128, 200, 255])
def test_mean_of_a_flat_field_is_the_input_in_volts(dither, levels, value):
    mean = made(flat(value), levels, dither=dither).mean()

    widest = np.diff(np.sort(levels)).max()
    # An n x n matrix resolves a step into n² parts; diffusion loses what leaves at the edges.
    bound = widest / 2 / {Dither.ORDERED_4: 16, Dither.ORDERED_8: 64}.get(dither, 24)
    assert mean == pytest.approx(value / 255 * 0.7, abs=bound + 1e-9)


@pytest.mark.parametrize("dither", MIXING, ids=lambda dither: dither.value)
@pytest.mark.parametrize("value", [30, 128, 220])
def test_mean_of_a_flat_field_is_the_input_in_light(dither, value):
    volts = made(flat(value), EVEN, dither=dither, measure=Measure.LIGHT)

    widest = np.diff(light_from_volts(EVEN)).max()
    assert light_from_volts(volts).mean() == pytest.approx(light_from_srgb(value / 255), abs=widest / 2 / 16)


@pytest.mark.parametrize("dither", MIXING, ids=lambda dither: dither.value)
def test_only_the_two_levels_around_the_input_are_mixed(dither):
    volts = made(flat(100), EVEN, dither=dither)

    assert set(np.unique(volts)) == {EVEN[2], EVEN[3]}  # 100 / 255 x 7 = 2.75


@pytest.mark.parametrize("dither", list(Dither), ids=lambda dither: dither.value)
@pytest.mark.parametrize("shape", [(1, 1), (1, 9), (9, 1), (5, 7)], ids=str)
def test_black_and_white_are_exact_at_any_size(dither, shape):
    for value, code in ((0, 0), (255, 7)):
        image = np.full((*shape, 3), value, np.uint8)
        codes = codes_from_image(image, (EVEN,) * 3, dither=dither)

        assert codes.shape == (3, *shape)
        assert (codes == code).all()


def test_channels_have_their_own_bits_and_levels():
    image = np.full((4, 4, 3), 255, np.uint8)

    codes = codes_from_image(image, (EVEN, np.linspace(0, 0.7, 64), ONE_BIT))

    assert codes[:, 0, 0].tolist() == [7, 63, 1]


def test_a_white_below_full_scale_is_the_last_code_without_spreading_its_error():
    dim = EVEN * 0.5

    assert (codes_from_image(flat(255), (dim,) * 3, dither=Dither.DIFFUSED) == 7).all()
    assert made(flat(120), dim, dither=Dither.DIFFUSED).mean() == pytest.approx(0.329, abs=0.003)


def test_a_channel_that_does_nothing_shows_code_0():
    codes = codes_from_image(flat(200, 4), (np.zeros(8), EVEN, EVEN), dither=Dither.ORDERED_4)

    assert not codes[0].any()


def slow_diffusion(row_of_values, levels):
    """Diffuse pixel by pixel in reading order."""
    height, width = row_of_values.shape
    work = np.pad(row_of_values.astype(float), ((0, 1), (1, 1)))
    codes = np.empty((height, width), int)
    for y in range(height):
        for x in range(width):
            value = work[y, x + 1]
            codes[y, x] = np.abs(levels - value).argmin()
            error = (value - levels[codes[y, x]]) / 16
            work[y, x + 2] += 7 * error
            work[y + 1, x] += 3 * error
            work[y + 1, x + 1] += 5 * error
            work[y + 1, x + 2] += error
    return codes


def test_fronts_give_what_reading_order_gives():
    image = np.random.default_rng(5).integers(0, 256, (13, 21, 3), dtype=np.uint8)
    codes = codes_from_image(image, (EVEN,) * 3, dither=Dither.DIFFUSED)

    for channel in range(3):
        expected = slow_diffusion(image[:, :, channel] / 255, EVEN / 0.7)
        # A value that lies within 1 / 4096 of a border may go either way.
        assert (codes[channel] != expected).mean() < 0.02


def test_transfer_curve_is_applied_first():
    image = flat(128, 2)

    codes = codes_from_image(image, (EVEN,) * 3, transfer=(0.0, 0.0, 1.0))

    assert not codes.any()


def test_bayer_matrix_holds_every_threshold_once():
    assert np.sort(bayer(8).ravel()).tolist() == ((np.arange(64) + 0.5) / 64).tolist()
