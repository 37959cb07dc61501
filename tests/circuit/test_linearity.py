import numpy as np
import pytest

from workbench.circuit.linearity import linearity


def test_even_staircase_has_no_error():
    staircase = np.linspace(0.0, 0.7, 8)

    line = linearity(staircase)

    assert line.lsb_volts == pytest.approx(0.1)
    assert line.full_scale_volts == 0.7
    assert np.abs(line.inl_lsb).max() < 1e-12
    assert np.abs(line.dnl_lsb).max() < 1e-12
    assert line.monotonic


def test_hand_derived_errors():
    # End points 0 and 3 V: 1 V a step. Level 1 lies 0.5 LSB high, so the first step is 1.5 LSB.
    line = linearity(np.array([0.0, 1.5, 2.0, 3.0]))

    np.testing.assert_allclose(line.inl_lsb, [0.0, 0.5, 0.0, 0.0])
    np.testing.assert_allclose(line.dnl_lsb, [0.5, -0.5, 0.0])
    assert (line.max_inl_lsb, line.max_dnl_lsb) == (0.5, 0.5)


def test_offset_is_kept_out_of_the_errors():
    line = linearity(np.array([0.1, 0.2, 0.3, 0.4]))

    assert line.offset_volts == 0.1
    np.testing.assert_allclose(line.inl_lsb, 0.0, atol=1e-12)


def test_a_falling_step_is_not_monotonic():
    assert not linearity(np.array([0.0, 2.0, 1.9, 3.0])).monotonic


def test_a_level_repeated_is_still_monotonic():
    assert linearity(np.array([0.0, 1.0, 1.0, 3.0])).monotonic


@pytest.mark.parametrize(("fall", "falls"), [(4e-16, False), (0.9e-4, False), (1.1e-4, True), (0.1, True)])
def test_a_fall_within_rounding_is_a_level_repeated(fall, falls):
    line = linearity(np.array([0.0, 1.0 + fall, 1.0, 3.0]))

    assert line.monotonic is not falls
    assert line.steps_volts[1] == pytest.approx(-fall if falls else 0.0)
    assert line.steps_volts[0] == 1.0 + fall


def test_one_bit_has_no_error():
    line = linearity(np.array([0.0, 0.7]))

    np.testing.assert_array_equal(line.inl_lsb, [0.0, 0.0])
    np.testing.assert_array_equal(line.dnl_lsb, [0.0])


@pytest.mark.parametrize("n_codes", [1, 2, 32])
def test_no_rise_gives_zeros_and_no_nan(n_codes):
    line = linearity(np.zeros(n_codes))

    assert line.lsb_volts == 0.0
    assert line.inl_lsb.shape == (n_codes,)
    assert line.dnl_lsb.shape == (n_codes - 1,)
    assert line.max_inl_lsb == line.max_dnl_lsb == 0.0


def test_errors_do_not_change_with_the_supply():
    volts = np.array([0.0, 0.11, 0.19, 0.3])

    low, high = linearity(volts), linearity(volts * 5.0 / 3.3)

    np.testing.assert_allclose(low.inl_lsb, high.inl_lsb)


def test_arrays_are_read_only():
    assert not linearity(np.linspace(0, 1, 4)).inl_lsb.flags.writeable
