"""What goes wrong between the picture and the network."""

from dataclasses import replace

import numpy as np
import pytest

from tests.waveform.pulses import rc_pulse
from tests.waveform.test_scanline import LEVELS, STATES, WEIGHTS
from workbench.waveform.kernel import pixel_kernel
from workbench.waveform.slips import NO_SLIPS, Slips, skewed, slipped_codes

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


def test_pulses_that_lag_are_moved_and_keep_their_weight():
    pulse = rc_pulse([0.4, 0.2], tau_s=2e-9, samples=16)
    step_s = 40e-9 / 16

    late = skewed(pulse, (2 * step_s, 0.0), step_s)

    np.testing.assert_allclose(late[0].ravel()[2 : 2 + pulse[0].size], pulse[0].ravel(), atol=1e-12)
    np.testing.assert_allclose(late[1].ravel()[: pulse[1].size], pulse[1].ravel(), atol=1e-12)
    np.testing.assert_allclose(late.sum(axis=(1, 2)), pulse.sum(axis=(1, 2)), rtol=1e-9)


def test_pins_that_do_not_lag_are_left_alone():
    pulse = rc_pulse([0.4, 0.2], tau_s=2e-9)

    assert skewed(pulse, (0.0, 0.0), 1e-9) is pulse
    assert skewed(pulse, (), 1e-9) is pulse


@pytest.mark.parametrize("lag_s", [5e-9, 10e-9])
def test_a_late_high_bit_makes_a_glitch_at_the_major_carry(lag_s):
    pulse = rc_pulse(WEIGHTS, tau_s=1e-9, samples=32)
    kernel = pixel_kernel(LEVELS, STATES, skewed(pulse, (lag_s,), 40e-9 / 32))
    codes = np.array([15] * (kernel.history + 2) + [16, 16, 17, 17])
    out = np.empty((6, 32), np.float32)

    kernel.volts(codes, out)

    # 01111 goes off before 10000 comes on: for the lag the level is near 0 V.
    glitch = out[2] < LEVELS[8]
    assert glitch.sum() * 40e-9 / 32 == pytest.approx(lag_s, abs=3e-9)
    assert out[2].min() < LEVELS[3]
    assert out[4].min() > LEVELS[16] - 1e-4  # 16 to 17 changes one bit only: clean


def test_slips_are_values():
    assert replace(NO_SLIPS, late_pixels=0) == NO_SLIPS
    assert hash(Slips(late_pixels=1)) != hash(NO_SLIPS)
