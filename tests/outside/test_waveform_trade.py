"""Check values of the trade, computed by hand from its equations, met by whole waveforms."""

import numpy as np
import pytest

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, Driver, Load
from workbench.circuit.response import pixel_pulse
from workbench.circuit.solution import solve_levels
from workbench.picture.light import light_from_volts, lightness_from_light
from workbench.timing.search import find_mode
from workbench.waveform.kernel import pixel_kernel
from workbench.waveform.scanline import render_scanline
from workbench.waveform.sync import SyncDrive

MODE = find_mode("640x480@60")
# 3 bits for 0.700 V from 3.3 V: 278.571 ohm in parallel, times 7/4, then doubling.
IDEAL = weighted(3, [487.5, 975.0, 1950.0])


def white_line(load, cable=None, driver=None, samples=32):
    driver = driver or Driver(rise_s=0.5e-9)
    levels = solve_levels(IDEAL, driver, load)
    pulse = pixel_pulse(IDEAL, driver, load, cable, pixel_s=MODE.pixel_s, samples=samples)
    kernel = pixel_kernel(levels.volts_by_code, levels.states, pulse.volts)
    codes = np.zeros((3, 800), np.intp)
    codes[:, 160:] = 7
    return render_scanline(
        MODE, 1, codes, codes * 0, kernels=(kernel,) * 3, sync=SyncDrive(3.3, 3.3, driver.rise_s)
    )


@pytest.mark.parametrize(
    ("ohms", "monitors", "volts"),
    [
        (75.0, 1, 0.7000),
        (75.0, 2, 0.3915),  # a second display in parallel: 37.5 ohm
        (50.0, 1, 0.5022),  # an input of 50 ohm in place of the display
        (30.0, 1, 0.3208),  # that input beside the display
    ],
)
def test_white_at_the_usual_loads(ohms, monitors, volts):
    line = white_line(Load(ohms, monitors))

    assert line.volts[0, -1] == pytest.approx(volts, abs=5e-5)


def test_ghost_of_a_10_metre_cable_is_2_54_pixels_late_and_2_6_percent_high():
    line = white_line(Load(82.0), Cable(10.0))
    edge = line.volts[0, 160 * 32 :].astype(float)
    first = edge[2 * 32]

    # Half way between the step and the step with its ghost.
    ghost = edge[4 * 32] - first
    after = int(np.argmax(edge > first + ghost / 2)) / 32

    # 2 x 10 m / (0.66 c) = 101.1 ns; the driver's edge reaches its middle after 0.25 ns.
    assert after == pytest.approx((101.08 + 0.25) / 39.722, abs=1 / 32)
    # rho = (82 - 75) / 157 at the display, (278.57 - 75) / 353.57 at the source: 0.0257, of the first step
    assert ghost / first == pytest.approx(0.0446 * 0.5757, rel=0.02)


def test_multimeter_averages_of_the_sync_line_and_of_a_white_field():
    line = white_line(Load())

    assert line.volts[3].mean(dtype=float) == pytest.approx(2.904, abs=5e-4)
    # White for 640 of 800 pixels and 480 of 525 lines: 0.512 V where blanking is black.
    assert line.volts[0].mean(dtype=float) * 480 / 525 == pytest.approx(0.512, abs=5e-4)


def test_worksheet_of_500_1000_2000_ohm():
    levels = solve_levels(weighted(3, [500.0, 1e3, 2e3]), Driver(), Load())

    np.testing.assert_allclose(
        levels.volts_by_code[1:], [0.098, 0.196, 0.294, 0.392, 0.490, 0.588, 0.686], atol=5e-4
    )
    np.testing.assert_allclose(
        levels.open_by_code[1:], [0.471, 0.943, 1.414, 1.886, 2.357, 2.829, 3.300], atol=5e-4
    )


def test_lightness_of_even_levels():
    two, three = (lightness_from_light(light_from_volts(np.linspace(0, 0.7, n))) for n in (4, 8))

    assert np.rint(two).tolist() == [0, 36, 70, 100]
    assert np.rint(three).tolist() == [0, 12, 30, 46, 61, 75, 88, 100]
