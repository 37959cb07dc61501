"""The test cards: what each shows, at any size and for any bits."""

import itertools

import numpy as np
import pytest

from workbench.picture.cards import BAR_NAMES, Label, card_codes, card_labels, card_row
from workbench.picture.scene import Card, Picture

SIZES = [(1, 1), (1, 7), (7, 1), (3, 5), (639, 11), (640, 480)]
BITS = [(0, 0, 0), (1, 0, 1), (3, 3, 2), (5, 6, 5), (8, 8, 8)]


@pytest.mark.parametrize("card", list(Card), ids=lambda card: card.value)
@pytest.mark.parametrize("bits", BITS, ids=str)
@pytest.mark.parametrize(("width", "height"), SIZES[:-1])
def test_a_row_is_the_row_of_the_frame_and_no_code_is_out_of_range(card, bits, width, height):
    picture = Picture(card, (0.2, 0.5, 0.9))

    frame = card_codes(picture, width, height, bits)

    assert frame.shape == (3, height, width)
    assert (frame.max(axis=(1, 2)) < [1 << n for n in bits]).all()
    for row in range(height):
        np.testing.assert_array_equal(card_row(picture, width, height, bits, row), frame[:, row])


def test_colour_bars_run_from_white_to_black():
    row = card_row(Picture(Card.COLOUR_BARS), 640, 480, (5, 6, 5), 100)

    bars = [tuple(int(code) for code in row[:, 80 * i + 40]) for i in range(8)]

    assert bars == [
        (31, 63, 31),
        (31, 63, 0),
        (0, 63, 31),
        (0, 63, 0),
        (31, 0, 31),
        (31, 0, 0),
        (0, 0, 31),
        (0, 0, 0),
    ]


def test_a_bar_is_an_eighth_of_the_line():
    row = card_row(Picture(Card.COLOUR_BARS), 640, 480, (1, 1, 1), 0)

    assert list(np.flatnonzero(np.diff(row[2])) + 1) == [80, 160, 240, 320, 400, 480, 560]


def test_labels_of_the_bars_stand_where_the_bars_are():
    labels = card_labels(Picture(Card.COLOUR_BARS), 640, 480, (5, 5, 5), 0)

    assert [label.text for label in labels] == list(BAR_NAMES)
    assert labels[1] == Label(80, 160, "yellow")
    assert labels[-1].stop == 640


def test_bars_narrower_than_a_pixel_have_no_label():
    labels = card_labels(Picture(Card.COLOUR_BARS), 3, 1, (1, 1, 1), 0)

    assert labels == (Label(0, 1, "white"), Label(1, 2, "cyan"), Label(2, 3, "red"))
    assert card_row(Picture(), 3, 1, (1, 1, 1), 0)[:, 1].tolist() == [0, 1, 1]


@pytest.mark.parametrize("card", list(Card), ids=lambda card: card.value)
def test_labels_cover_the_row_without_gap(card):
    labels = card_labels(Picture(card), 37, 5, (3, 3, 2), 4)

    assert labels[0].start == 0
    assert labels[-1].stop == 37
    assert all(left.stop == right.start for left, right in itertools.pairwise(labels))


def test_grey_ramp_shows_every_code_equally_wide():
    row = card_row(Picture(Card.GREY_RAMP), 640, 1, (5, 5, 5), 0)

    assert (np.bincount(row[0]) == 20).all()
    assert (row[0] == row[1]).all()
    assert (np.diff(row[0]) >= 0).all()


def test_grey_ramp_takes_the_nearest_code_of_a_coarser_channel():
    row = card_row(Picture(Card.GREY_RAMP), 8, 1, (3, 3, 2), 0)

    assert row[0].tolist() == [0, 1, 2, 3, 4, 5, 6, 7]
    assert row[2].tolist() == [0, 0, 1, 1, 2, 2, 3, 3]  # 3 k / 7 to the nearest


def test_grey_ramp_on_a_short_line_still_ends_at_white():
    assert card_row(Picture(Card.GREY_RAMP), 3, 1, (8, 8, 8), 0)[0].tolist() == [0, 128, 255]


def test_channel_ramps_are_three_bands():
    frame = card_codes(Picture(Card.CHANNEL_RAMPS), 64, 9, (5, 6, 4))

    for band, top in enumerate((31, 63, 15)):
        rows = frame[:, 3 * band : 3 * band + 3]
        assert rows[band].max() == top
        assert np.unique(rows[band]).size == top + 1
        assert rows.sum() == rows[band].sum()


@pytest.mark.parametrize(
    ("bits", "width", "height"), [((3, 3, 2), 16, 16), ((5, 5, 5), 640, 480), ((1, 2, 3), 9, 11)], ids=str
)
def test_all_codes_shows_every_colour(bits, width, height):
    red, green, blue = card_codes(Picture(Card.ALL_CODES), width, height, bits).astype(int)

    colours = (red << (bits[1] + bits[2])) | (green << bits[2]) | blue

    assert np.unique(colours).size == 1 << sum(bits)
    assert (np.diff(colours.ravel()) >= 0).all()


def test_all_codes_in_a_small_frame_leaves_colours_out_evenly():
    red, green, blue = card_codes(Picture(Card.ALL_CODES), 4, 4, (8, 8, 8)).astype(int)

    colours = ((red << 16) | (green << 8) | blue).ravel()

    assert (np.diff(colours) == 1 << 20).all()


def test_checkerboard_alternates_both_ways():
    frame = card_codes(Picture(Card.CHECKERBOARD), 3, 2, (1, 2, 3))

    assert frame[:, 0, 0].tolist() == [1, 3, 7]
    assert frame[2].tolist() == [[7, 0, 7], [0, 7, 0]]


def test_stripes_alternate_along_the_line_only():
    frame = card_codes(Picture(Card.STRIPES), 4, 2, (2, 2, 2))

    assert frame[0].tolist() == [[3, 0, 3, 0], [3, 0, 3, 0]]


def test_border_is_one_white_pixel_and_each_corner_has_its_colour():
    frame = card_codes(Picture(Card.BORDER), 64, 48, (5, 5, 5))

    assert (frame[:, 0] == 31).all()
    assert (frame[:, -1] == 31).all()
    assert (frame[:, :, 0] == 31).all()
    assert (frame[:, :, -1] == 31).all()
    corners = [frame[:, y, x].tolist() for y, x in ((1, 1), (1, 62), (46, 1), (46, 62))]
    assert corners == [[31, 0, 0], [0, 31, 0], [0, 0, 31], [31, 31, 0]]
    assert not frame[:, 4:-4, 4:-4].any()


def test_solid_takes_the_nearest_code():
    row = card_row(Picture(Card.SOLID, (1.0, 0.5, 0.1)), 2, 1, (3, 2, 5), 0)

    assert row.tolist() == [[7, 7], [2, 2], [3, 3]]


def test_half_scale_toggles_across_the_major_carry():
    row = card_row(Picture(Card.HALF_SCALE), 4, 1, (1, 3, 8), 0)

    assert row.tolist() == [[0, 1, 0, 1], [3, 4, 3, 4], [127, 128, 127, 128]]


@pytest.mark.parametrize(("across", "down"), [(2, 1), (1, 2), (4, 4), (2, 4)])
@pytest.mark.parametrize("card", Card)
def test_repeated_pixels_and_lines_send_the_smaller_picture_several_times(card, across, down):
    picture = Picture(card, repeat_pixels=across, repeat_lines=down)
    small = card_codes(Picture(card), -(-37 // across), -(-23 // down), (3, 4, 2))

    frame = card_codes(picture, 37, 23, (3, 4, 2))

    sent = small.repeat(across, axis=2).repeat(down, axis=1)[:, :23, :37]
    assert (frame == sent).all()
    assert (card_row(picture, 37, 23, (3, 4, 2), 22) == sent[:, 22]).all()


def test_labels_of_a_doubled_picture_cover_its_width():
    labels = card_labels(Picture(repeat_pixels=4), 637, 480, (5, 5, 5), 3)

    assert labels[0].start == 0
    assert labels[-1].stop == 637
    assert all(one.stop == other.start for one, other in itertools.pairwise(labels))
