"""The shape of a screen and of its pixels."""

import pytest

from workbench.picture.shape import pixel_aspect, screen_aspect


@pytest.mark.parametrize(
    "size",
    [
        (640, 480),
        (800, 600),
        (1280, 1024),
        (1280, 768),
        (1366, 768),
        (1440, 900),
        (1920, 1080),
        (848, 480),
        (2048, 1080),
        (2560, 1080),
    ],
    ids=str,
)
def test_modes_of_a_screens_shape_have_square_pixels(size):
    assert pixel_aspect(*size) == pytest.approx(1.0)


@pytest.mark.parametrize("size", [(1312, 480), (640, 350), (720, 400), (1, 1), (2080, 1470)], ids=str)
def test_any_other_mode_fills_four_to_three(size):
    assert screen_aspect(*size) == 4 / 3
