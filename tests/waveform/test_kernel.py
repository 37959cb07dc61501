"""The kernel: the same volts as summing every pin's pulse over every pixel, only quicker."""

import numpy as np
import pytest

from tests.waveform.pulses import rc_pulse
from workbench.circuit.codes import bits_by_code
from workbench.waveform.kernel import pixel_kernel

WEIGHTS = [0.40, 0.20, 0.10]
STATES = bits_by_code(3)
LEVELS = STATES @ WEIGHTS


def slow_convolution(codes, pulses, n_pixels):
    """Sum pulse by pulse; the first codes are history."""
    n_pins, n_after, samples = pulses.shape
    history = len(codes) - n_pixels
    line = np.zeros((len(codes) + n_after) * samples)
    for pixel, code in enumerate(codes):
        for pin in range(n_pins):
            if (code >> (n_pins - 1 - pin)) & 1:
                line[pixel * samples : (pixel + n_after) * samples] += pulses[pin].ravel()
    return line[history * samples : (history + n_pixels) * samples].reshape(n_pixels, samples)


def run(kernel, codes):
    out = np.empty((len(codes) - kernel.history, kernel.samples_per_pixel), np.float32)
    kernel.volts(np.asarray(codes), out)
    return out


@pytest.mark.parametrize("tau_s", [2e-9, [2e-9, 5e-9, 9e-9]], ids=["one shape", "a shape a pin"])
def test_volts_are_those_of_the_slow_sum(tau_s):
    pulses = rc_pulse(WEIGHTS, tau_s=tau_s)
    codes = np.random.default_rng(1).integers(0, 8, 60)
    kernel = pixel_kernel(LEVELS, STATES, pulses)

    volts = run(kernel, codes)

    # Bound: 24 terms of at most 0.4 V in float32, and shapes left out below a millionth.
    np.testing.assert_allclose(volts, slow_convolution(codes, pulses, 60 - kernel.history), atol=2e-6)


def test_pins_of_one_time_constant_share_one_shape():
    assert pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=3e-9)).shapes.shape[0] == 1


def test_pins_of_different_time_constants_do_not():
    assert pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=[2e-9, 5e-9, 9e-9])).shapes.shape[0] == 3


def test_a_held_code_settles_to_its_exact_level_though_pulses_add_up_to_another():
    exact = np.array([0.0, 0.119, 0.230, 0.334, 0.430, 0.521, 0.606, 0.686])  # zeros let go of their pins
    kernel = pixel_kernel(exact, bits_by_code(3), rc_pulse(WEIGHTS, tau_s=[2e-9, 3e-9, 4e-9]))

    for code, volts in enumerate(exact):
        settled = run(kernel, np.full(kernel.history + 1, code))
        np.testing.assert_allclose(settled, volts, atol=1e-6)


def test_a_pulse_cut_off_early_still_settles_flat():
    kernel = pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=30e-9, n_after=3))

    settled = run(kernel, np.full(kernel.history + 1, 7))

    assert np.ptp(settled) < 1e-6
    assert settled[0, 0] == pytest.approx(0.7, abs=1e-6)


def test_an_edge_stays_inside_its_levels_and_rises():
    kernel = pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=4e-9))

    edge = run(kernel, [0] * kernel.history + [7, 7]).ravel()

    assert (np.diff(edge) >= -1e-6).all()
    assert edge[0] == pytest.approx(0.0, abs=1e-6)
    assert edge[-1] == pytest.approx(0.7, abs=1e-4)


def test_pins_that_do_nothing_give_a_flat_staircase():
    kernel = pixel_kernel(np.zeros(8), bits_by_code(3), np.zeros((3, 4, 16)))

    volts = run(kernel, [0, 1, 2, 3, 4, 5, 6, 7])

    assert not volts.any()


def test_one_dead_pin_leaves_the_others_alone():
    weights = [0.40, 0.0, 0.10]
    kernel = pixel_kernel(bits_by_code(3) @ weights, bits_by_code(3), rc_pulse(weights, tau_s=2e-9))

    assert run(kernel, np.full(kernel.history + 1, 7))[0, 8] == pytest.approx(0.5, abs=1e-6)


def test_a_single_pixel_without_trail():
    kernel = pixel_kernel(np.array([0.0, 0.7]), bits_by_code(1), np.full((1, 1, 4), 0.7))

    np.testing.assert_allclose(run(kernel, [1, 0, 1]), [[0.7] * 4, [0.0] * 4, [0.7] * 4], atol=1e-6)


@pytest.mark.parametrize("n_pins", [0, 9])
def test_a_network_that_was_not_solved_shows_its_one_level_for_every_code(n_pins):
    kernel = pixel_kernel(np.zeros(1), np.zeros((1, n_pins)), np.zeros((n_pins, 2, 4)))

    assert not run(kernel, [0, 1, 31]).any()
