"""Which colours a board can make."""

import numpy as np
import pytest

from workbench.picture.dither import codes_from_image
from workbench.picture.palette import palette, picture_error


def even(bits, full=0.7):
    return np.linspace(0.0, full, 1 << bits)


@pytest.mark.parametrize(
    ("bits", "colours"), [((1, 1, 1), 8), ((2, 2, 2), 64), ((3, 3, 2), 256), ((5, 6, 5), 65536)], ids=str
)
def test_colours_of_even_levels_are_the_combinations(bits, colours):
    made = palette(tuple(even(n) for n in bits))

    assert made.combinations == made.colours == colours


def test_equal_levels_and_levels_above_full_scale_count_once():
    doubled = np.array([0.0, 0.2, 0.2, 0.7])
    too_high = np.array([0.0, 0.5, 0.75, 1.0])

    assert palette((doubled, too_high, even(1))).seen_levels == (3, 3, 2)


def test_equal_channels_make_every_grey_neutral():
    made = palette((even(3),) * 3)

    assert [grey.codes for grey in made.neutral_greys] == [(n, n, n) for n in range(8)]
    # L* of even 3-bit levels, own arithmetic
    assert [round(grey.lightness) for grey in made.greys] == [0, 12, 30, 46, 61, 75, 88, 100]


def test_two_bits_of_blue_beside_three_leave_only_black_and_white_neutral():
    made = palette((even(3), even(3), even(2)))

    assert [grey.codes for grey in made.neutral_greys] == [(0, 0, 0), (7, 7, 3)]
    assert all(grey.tint > 3 for grey in made.greys[1:-1])


def test_greys_rise_though_levels_do_not():
    uneven = np.array([0.0, 0.3, 0.2, 0.7])

    lightness = [grey.lightness for grey in palette((uneven,) * 3).greys]

    assert lightness == sorted(lightness)


def test_a_dead_board_is_black_only():
    made = palette((np.zeros(8),) * 3)

    assert (made.colours, len(made.greys)) == (1, 1)


def test_error_of_a_picture_is_none_where_every_byte_has_its_level():
    levels = (np.arange(256) / 255 * 0.7,) * 3
    image = np.random.default_rng(1).integers(0, 256, (20, 30, 3), dtype=np.uint8)

    error = picture_error(image, np.moveaxis(image, 2, 0), levels)

    # Not quite none: the picture is in sRGB, the display has a power of 2.2.
    assert error.mean < 1.0


def test_worst_pixel_is_found():
    levels = (even(1),) * 3
    image = np.zeros((40, 50, 3), np.uint8)
    image[33, 21] = 200
    image[5, 5] = 10

    error = picture_error(image, codes_from_image(image, levels), levels)

    assert error.worst_at == (21, 33)
    assert error.worst > 10
    assert error.mean == pytest.approx(
        (error.worst + picture_error(image[5:6, 5:6], np.zeros((3, 1, 1), np.uint8), levels).mean) / 2000
    )
