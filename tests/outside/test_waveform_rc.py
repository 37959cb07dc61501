"""A real network's scanline against scipy's solution of the same circuit."""

from dataclasses import replace

import numpy as np
import pytest
from scipy import signal

from workbench.circuit.ladders import weighted
from workbench.circuit.network import OUTPUT, Capacitor, Driver, Load, PartId
from workbench.circuit.response import pixel_pulse
from workbench.circuit.solution import solve_levels
from workbench.picture.scene import Card, Picture
from workbench.picture.source import card_source
from workbench.timing.search import find_mode
from workbench.waveform.kernel import pixel_kernel
from workbench.waveform.scanline import line_codes, render_scanline
from workbench.waveform.sync import SyncDrive

MODE = find_mode("640x480@60")
SAMPLES = 32
FINE = 4
"""Steps of the outside solution for each sample of ours."""
RAMP_STEPS = 6
"""Length of a driver's ramp in those steps: scipy takes the drive as straight between steps."""
LOAD = Load(farads=10e-12)


def ladder(farads):
    network = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])
    return replace(network, capacitors=(Capacitor(PartId("C1"), OUTPUT, "gnd", farads),))


def line_of(network, driver, card):
    levels = solve_levels(network, driver, LOAD)
    pulse = pixel_pulse(network, driver, LOAD, None, pixel_s=MODE.pixel_s, samples=SAMPLES)
    kernel = pixel_kernel(levels.volts_by_code, levels.states, pulse.volts)
    codes = line_codes(MODE, card_source(Picture(card), 640, 480, (5, 5, 5)), 100)
    return render_scanline(
        MODE, 100, codes, codes * 0, kernels=(kernel,) * 3, sync=SyncDrive(3.3, 3.3, driver.rise_s)
    ), levels


@pytest.mark.parametrize("farads", [20e-12, 290e-12], ids=["quick", "slow"])
@pytest.mark.parametrize("card", [Card.STRIPES, Card.HALF_SCALE, Card.GREY_RAMP], ids=lambda card: card.value)
def test_a_line_is_what_scipy_makes_of_one_pole(farads, card):
    step_s = MODE.pixel_s / SAMPLES / FINE
    driver = Driver(rise_s=RAMP_STEPS * step_s)
    line, levels = line_of(ladder(farads), driver, card)

    # The network by hand: one node, all legs and the load in parallel with all capacitance.
    siemens = sum(1 / ohms for ohms in (500.0, 1e3, 2e3, 4e3, 8e3)) + 1 / 75
    tau_s = (farads + 10e-12) / siemens
    edges = np.arange(800) * MODE.pixel_s
    target = levels.volts_by_code[line.codes[0]]
    time_s = np.arange(800 * SAMPLES * FINE) * step_s
    # Ramps of the driver, as a polyline through the start and the end of each edge.
    before = np.concatenate([[0.0], target[:-1]])
    drive = np.interp(
        time_s, np.stack([edges, edges + driver.rise_s], 1).ravel(), np.stack([before, target], 1).ravel()
    )
    _, expected, _ = signal.lsim(signal.lti([1.0], [tau_s, 1.0]), drive, time_s)

    # Bound: the tail of a pulse is cut off below 1e-5 of it, and the line is in float32.
    np.testing.assert_allclose(line.volts[0], expected[::FINE], atol=1e-5)


def test_a_white_edge_rises_in_2_2_time_constants():
    line, _ = line_of(ladder(290e-12), Driver(rise_s=0.0), Card.SOLID)
    siemens = sum(1 / ohms for ohms in (500.0, 1e3, 2e3, 4e3, 8e3)) + 1 / 75
    tau_s = 300e-12 / siemens

    edge = line.volts[0, 160 * SAMPLES :].astype(float)
    time_s = np.arange(len(edge)) * line.step_s
    low, high = (np.interp(part * edge[-1], edge[:400], time_s[:400]) for part in (0.1, 0.9))

    assert high - low == pytest.approx(2.197 * tau_s, rel=0.002)  # ln 9
