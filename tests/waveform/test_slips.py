"""What goes wrong between the picture and the network."""

from dataclasses import replace

import numpy as np

from workbench.waveform.slips import NO_SLIPS, Slips, slipped_codes

BITS = (3, 3, 3)
# Two pixels of blanking, then a ramp in red, its reverse in green, white in blue.
LINE = np.array([[0, 0, 0, 1, 2, 3, 4, 5, 6, 7], [0, 0, 7, 6, 5, 4, 3, 2, 1, 0], [0, 0, *[7] * 8]])


def told(slips, line=LINE, bits=BITS):
    return slipped_codes(slips, line, bits, 2)


def test_no_slips_change_nothing():
    np.testing.assert_array_equal(told(NO_SLIPS), LINE)


def test_a_stuck_bit_is_stuck_in_blanking_too():
    line = told(Slips(stuck_high=(4, 0, 0), stuck_low=(0, 0, 1)))

    assert line[0].tolist() == [4, 4, 4, 5, 6, 7, 4, 5, 6, 7]
    assert line[1].tolist() == LINE[1].tolist()
    assert line[2].tolist() == [0, 0, *[6] * 8]


def test_reversed_bits_make_a_ramp_zigzag():
    line = told(Slips(reversed_bits=(True, False, False)))

    assert line[0, 2:].tolist() == [0, 4, 2, 6, 1, 5, 3, 7]
    assert line[1].tolist() == LINE[1].tolist()


def test_exchanged_colours():
    line = told(Slips(shown_by=(2, 1, 0)))

    assert line.tolist() == LINE[::-1].tolist()


def test_exchanged_colours_of_different_bits_keep_their_high_bits():
    line = told(Slips(shown_by=(2, 1, 0)), np.array([[0, 7], [0, 7], [0, 2]]), (3, 3, 2))

    assert line.tolist() == [[0, 4], [0, 7], [0, 3]]


def test_late_colour_starts_late_and_runs_into_the_front_porch():
    line = told(Slips(late_pixels=3))

    assert line[2].tolist() == [7, 7, 7, 0, 0, 7, 7, 7, 7, 7]
    assert line[0, 5:].tolist() == [0, 1, 2, 3, 4]


def test_mirrored_groups_leave_blanking_and_the_rest_alone():
    line = told(Slips(mirrored=3))

    assert line[0].tolist() == [0, 0, 2, 1, 0, 5, 4, 3, 6, 7]


def test_frames_of_lines_are_slipped_line_by_line():
    frame = np.stack([LINE, LINE[::-1]], axis=1)

    both = told(Slips(reversed_bits=(True, True, True), mirrored=4), frame)

    np.testing.assert_array_equal(both[:, 0], told(Slips(reversed_bits=(True,) * 3, mirrored=4)))


def test_slips_are_values():
    assert replace(NO_SLIPS, late_pixels=0) == NO_SLIPS
    assert hash(Slips(late_pixels=1)) != hash(NO_SLIPS)
