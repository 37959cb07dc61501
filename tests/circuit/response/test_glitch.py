import numpy as np
import pytest

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.response.glitch import glitches
from workbench.circuit.solution import solve_levels

THREE = weighted(3, [500.0, 1000.0, 2000.0])
SHARP = Driver(rise_s=0.0)
LATE_MSB = (5e-9, 0.0, 0.0)


def test_a_late_most_significant_bit_drops_the_level_to_black():
    weights = solve_levels(THREE, SHARP, Load()).weights_volts

    *_, worst = glitches(THREE, SHARP, Load(), None, LATE_MSB)

    # 011 to 100: for 5 ns only zeros are there, below both levels by that of 011.
    assert (worst.before, worst.after) == (3, 4)
    assert worst.peak_volts == pytest.approx(-weights[1:].sum())
    assert worst.area_volt_s == pytest.approx(-weights[1:].sum() * 5e-9, rel=0.01)


def test_late_lower_bits_raise_the_level():
    weights = solve_levels(THREE, SHARP, Load()).weights_volts

    *_, worst = glitches(THREE, SHARP, Load(), None, (0.0, 5e-9, 5e-9))

    assert worst.peak_volts == pytest.approx(weights[1:].sum())


@pytest.mark.parametrize("cable", [None, Cable(2.0)], ids=["no cable", "matched cable"])
def test_bits_that_change_together_leave_no_spike(cable):
    driver = Driver(rise_s=2e-9)

    for glitch in glitches(THREE, driver, Load(), cable, (3e-9,) * 3):
        assert abs(glitch.peak_volts) < 1e-6
        assert abs(glitch.area_volt_s) < 1e-15


def test_the_net_area_does_not_depend_on_the_way():
    # The integral of the difference to a change without skew is the sum of weight times skew.
    network = weighted(3, [500.0, 1000.0, 2000.0], node_farads=47e-12)
    skews = (4e-9, 1e-9, 0.0)
    weights = solve_levels(network, SHARP, Load()).weights_volts

    skewed, together = (
        glitches(network, Driver(rise_s=2e-9), Load(), None, s)[-1] for s in (skews, (0.0, 0.0, 0.0))
    )

    straight = np.interp(skewed.time_s, together.time_s, together.volts)
    area = np.trapezoid(skewed.volts - straight, skewed.time_s)
    assert area == pytest.approx(-(weights[0] * 4e-9 - weights[1] * 1e-9), rel=1e-3)


def test_capacitance_flattens_the_spike():
    slow = weighted(3, [500.0, 1000.0, 2000.0], node_farads=100e-12)

    sharp, flat = (glitches(network, SHARP, Load(), None, LATE_MSB)[-1] for network in (THREE, slow))

    assert abs(flat.peak_volts) < 0.9 * abs(sharp.peak_volts)


def test_each_bit_has_its_change():
    found = glitches(THREE, SHARP, Load(), None, LATE_MSB)

    assert [(glitch.before, glitch.after) for glitch in found] == [(0, 1), (1, 2), (3, 4)]
    assert found[0].peak_volts == pytest.approx(0.0, abs=1e-12)


def test_a_network_without_voltages_has_none():
    assert glitches(Network(("bit0",), ()), SHARP, Load(), None, (0.0,)) == ()
