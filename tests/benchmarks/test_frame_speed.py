"""How fast a whole frame is simulated, against the hardware and against other ways."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from scipy import signal

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, Driver, Load
from workbench.circuit.response import pixel_pulse
from workbench.circuit.solution import solve_levels
from workbench.picture.cards import card_codes
from workbench.picture.scene import Card, Picture
from workbench.timing.search import find_mode
from workbench.waveform.frame import frame_slices
from workbench.waveform.kernel import pixel_kernel

pytestmark = pytest.mark.benchmark
TOPIC = "Whole frames"
SAMPLES = 8
NETWORK = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])
LOAD = Load(farads=10e-12)


def kernels_of(mode, samples=SAMPLES):
    pulse = pixel_pulse(NETWORK, Driver(), LOAD, Cable(2.0), pixel_s=mode.pixel_s, samples=samples)
    levels = solve_levels(NETWORK, Driver(), LOAD)
    return (pixel_kernel(levels.volts_by_code, levels.states, pulse.volts),) * 3


def codes_of(mode):
    return card_codes(Picture(Card.ALL_CODES), mode.h.active, mode.v.active, (5, 5, 5))


def simulate(mode, codes, kernels):
    """Render every line and read every sample once, as a monitor does."""
    brightest = 0.0
    for lines in frame_slices(mode, codes, (0, 0, 0), kernels, blank_lines=mode.v.blanking):
        brightest = max(brightest, lines.volts[:, :, -1].max())
    return brightest


@pytest.mark.parametrize(("name", "factor"), [("640x480@60", 2.0), ("1280x720@60", 1.0)])
def test_real_time_factor(figures, name, factor):
    mode = find_mode(name)
    codes, kernels = codes_of(mode), kernels_of(mode)

    taken_s = figures.median_s(lambda: simulate(mode, codes, kernels))

    what = f"{name}, 3 channels, 8 samples a pixel, 2 m of cable: frame time over computing time"
    figures.add(TOPIC, what, mode.frame_s / taken_s, at_least=factor)


# Of 5 bits 4 kinds of block are met, of 8 bits 32, of 16 bits some hundred.
@pytest.mark.parametrize("bits", [5, 8, 16])
def test_uneven_pixels_against_even_ones(figures, bits):
    mode = find_mode("640x480@60")
    codes, kernels = codes_of(mode), kernels_of(mode)
    divider = Fraction(5 * 2**bits + 9, 2**bits)
    # As finely as the scanline's shapes are.
    uneven = tuple(replace(kernel, divider=divider, finer=16) for kernel in kernels_of(mode, 16 * SAMPLES))

    even_s = figures.median_s(lambda: simulate(mode, codes, kernels))
    uneven_s = figures.median_s(lambda: simulate(mode, codes, uneven), repeats=5)

    what = f"640x480@60, pixels made uneven by a divider of {bits} fractional bits, against even ones"
    figures.add(TOPIC, what, uneven_s / even_s)


def test_against_filling_and_against_overlap_add(figures):
    mode = find_mode("640x480@60")
    codes, kernels = codes_of(mode), kernels_of(mode)
    frame = np.empty((3, mode.v.total * mode.h.total * SAMPLES), np.float32)
    pulse = kernels[0].shapes[0].ravel()
    impulses = np.zeros((3, mode.v.total, mode.h.total, SAMPLES), np.float32)
    impulses[:, : mode.v.active, mode.h.blanking :, 0] = kernels[0].drive_by_code[:, 0][codes]

    ours_s = figures.median_s(lambda: simulate(mode, codes, kernels))
    fill_s = figures.median_s(lambda: frame.fill(0.35))
    overlap_s = figures.median_s(
        lambda: signal.oaconvolve(impulses.reshape(3, -1), pulse[None], axes=1), repeats=5, warm=1
    )

    figures.add(
        TOPIC, "640x480@60 against filling the same array with a constant", ours_s / fill_s, at_most=8
    )
    figures.add(TOPIC, "640x480@60: scipy.signal.oaconvolve over ours", overlap_s / ours_s, at_least=5)
