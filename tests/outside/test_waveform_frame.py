"""The block product of a frame against scipy's convolution of the same pulses."""

from dataclasses import replace

import numpy as np
import pytest
from scipy import signal

from tests.waveform.pulses import rc_pulse
from workbench.circuit.codes import bits_by_code
from workbench.timing.search import find_mode
from workbench.waveform.frame import frame_slices
from workbench.waveform.kernel import pixel_kernel

VGA = find_mode("640x480@60")
SAMPLES = 8
WEIGHTS = np.array([0.4, 0.2, 0.1])


@pytest.mark.parametrize("tau_s", [5e-9, [4e-9, 9e-9, 20e-9]], ids=["one shape", "a shape a pin"])
def test_frame_is_the_convolution_of_bits_with_pulses(tau_s):
    mode = replace(VGA, h=replace(VGA.h, active=101), v=replace(VGA.v, active=200))
    pulse = rc_pulse(WEIGHTS, tau_s=tau_s, samples=SAMPLES, n_after=15)
    kernel = pixel_kernel(bits_by_code(3) @ WEIGHTS, bits_by_code(3), pulse)
    codes = np.random.default_rng(2).integers(0, 8, (3, 200, 101)).astype(np.uint8)

    volts = np.concatenate(
        [lines.volts.copy() for lines in frame_slices(mode, codes, (0, 0, 0), (kernel,) * 3)], axis=1
    )

    for channel in range(3):
        run = np.zeros((200, mode.h.total), int)
        run[:, mode.h.blanking :] = codes[channel]
        expected = np.zeros(run.size * SAMPLES)
        for pin in range(3):
            bits = np.zeros((run.size, SAMPLES))
            bits[:, 0] = (run.ravel() >> (2 - pin)) & 1
            expected += signal.oaconvolve(bits.ravel(), pulse[pin].ravel())[: len(expected)]
        # Bound: float32 sums of 3 x 15 terms below 0.4 V, and what the pulse's end leaves out.
        np.testing.assert_allclose(volts[channel].ravel(), expected, atol=4e-6)
