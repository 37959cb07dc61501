"""The codes of a picture, whatever it shows."""

import numpy as np
import pytest

from workbench.picture.cards import card_codes
from workbench.picture.images import kept_image
from workbench.picture.scene import Card, Dither, Fit, Picture
from workbench.picture.source import card_source, fitted_image, image_source

BITS = (3, 3, 2)
LEVELS = tuple(np.linspace(0.0, 0.7, 1 << bits) for bits in BITS)
PHOTO = np.random.default_rng(2).integers(0, 256, (48, 64, 3), dtype=np.uint8)


def shown(width=32, height=24, **settings):
    picture = Picture(image=kept_image("photo.png", PHOTO), **settings)
    return image_source(picture, width, height, BITS, fitted_image(picture, width, height, PHOTO), LEVELS)


def test_a_card_is_itself():
    picture = Picture(Card.ALL_CODES)
    source = card_source(picture, 32, 24, BITS)

    np.testing.assert_array_equal(source.frame(), card_codes(picture, 32, 24, BITS))
    np.testing.assert_array_equal(source.row(7), source.frame()[:, 7])
    assert source.labels(0)[0].text == "all codes"


@pytest.mark.parametrize("dither", list(Dither), ids=lambda dither: dither.value)
def test_rows_of_an_image_are_rows_of_its_frame(dither):
    source = shown(dither=dither)

    assert source.frame().shape == (3, 24, 32)
    np.testing.assert_array_equal(source.row(23), source.frame()[:, 23])
    assert source.row(0).dtype == np.intp
    assert source.labels(3)[0].text == "photo.png"


@pytest.mark.parametrize(("across", "down"), [(2, 1), (1, 2), (4, 4)])
def test_repeats_send_each_column_and_row_several_times(across, down):
    frame = shown(33, 25, repeat_pixels=across, repeat_lines=down, fit=Fit.STRETCH).frame()

    assert frame.shape == (3, 25, 33)
    small = frame[:, ::down, ::across]
    np.testing.assert_array_equal(frame, small.repeat(down, axis=1).repeat(across, axis=2)[:, :25, :33])


def test_frames_cannot_be_written():
    with pytest.raises(ValueError, match="read-only"):
        shown().frame()[0, 0, 0] = 1


@pytest.mark.parametrize("dither", [Dither.NEAREST, Dither.ORDERED_4, Dither.ORDERED_8])
def test_some_rows_are_those_of_the_frame_before_it_is_asked_for(dither):
    source = shown(dither=dither, repeat_lines=2, repeat_pixels=2)

    rows = source.rows(np.array([3, 4, 17]))

    assert source.settled
    np.testing.assert_array_equal(rows, source.frame()[:, [3, 4, 17]])


def test_diffused_rows_settle_once_the_frame_was_asked_for():
    source = shown(dither=Dither.DIFFUSED)
    before = source.row(9)

    assert not source.settled
    frame = source.frame()

    assert source.settled
    np.testing.assert_array_equal(source.row(9), frame[:, 9])
    assert np.abs(before - frame[:, 9]).max() <= 1


def test_a_large_image_is_rough_until_there_is_time():
    picture = Picture(image=kept_image("photo.png", PHOTO))
    pixels = np.random.default_rng(3).integers(0, 256, (600, 800, 3), dtype=np.uint8)
    fitted = fitted_image(picture, 32, 24, pixels)

    rough = fitted.best()
    assert not fitted.settled
    exact = fitted.exact()

    assert fitted.settled
    assert fitted.best() is exact
    assert exact.std() < rough.std()  # means of many pixels are nearer to each other


def test_an_image_says_what_it_wanted():
    source = shown(64, 48, repeat_pixels=2)

    assert source.wanted(7, 5) == tuple(int(v) for v in source.wanted_frame()[5, 7])
    assert card_source(Picture(), 4, 4, BITS).wanted(0, 0) is None


def test_a_transfer_table_bends_the_values():
    dark = shown(transfer=(0.0, 0.0, 1.0), dither=Dither.NEAREST).frame()

    assert dark.mean() < shown(dither=Dither.NEAREST).frame().mean() / 1.5


def test_an_image_of_the_screens_shape_fills_a_mode_of_narrow_pixels():
    white = np.full((48, 64, 3), 255, np.uint8)
    picture = Picture(image=kept_image("white.png", white), fit=Fit.LETTERBOX)

    for size in ((131, 48), (64, 48)):
        shown = fitted_image(picture, *size, white).exact()
        assert (shown == 255).all(), size


def test_columns_sent_twice_are_no_change_of_shape():
    white = np.full((48, 64, 3), 255, np.uint8)
    picture = Picture(image=kept_image("white.png", white), repeat_pixels=2, repeat_lines=1)

    assert (fitted_image(picture, 64, 48, white).exact() == 255).all()
