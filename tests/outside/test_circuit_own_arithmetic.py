"""Check values of the trade, by our own arithmetic: no published example gives them."""

import numpy as np
import pytest

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.linearity import linearity
from workbench.circuit.network import GROUND, Capacitor, Driver, Load, Network, Resistor, Zeros
from workbench.circuit.response import step_figures
from workbench.circuit.solution import solve_levels

THREE = weighted(3, [500.0, 1000.0, 2000.0])


def test_three_bits_into_75_ohm():
    # 3.3 G / (G + 1/75) with G = 1/500 + 1/1000 + 1/2000
    assert solve_levels(THREE, Driver(), Load()).volts_by_code[7] == pytest.approx(0.6861, abs=5e-5)


def test_pins_of_40_ohm():
    volts = solve_levels(THREE, Driver(high_ohms=40, low_ohms=40), Load()).volts_by_code

    assert volts[7] == pytest.approx(0.6553, abs=5e-5)
    assert linearity(volts).dnl_lsb.min() == pytest.approx(-0.152, abs=5e-4)


def test_floating_zeros():
    volts = solve_levels(THREE, Driver(zeros=Zeros.FLOATING), Load()).volts_by_code

    np.testing.assert_allclose(volts[1:], [0.1193, 0.2302, 0.3337, 0.4304, 0.5211, 0.6061, 0.6861], atol=5e-5)


def test_five_bits():
    """Common practice without a source: 500/1k/2k/4k/8k at 3.3 V gives 258 ohm and 0.743 V white."""
    levels = solve_levels(weighted(5, [500, 1e3, 2e3, 4e3, 8e3]), Driver(), Load())

    assert levels.source_ohms == pytest.approx(258, abs=0.5)
    assert levels.volts_by_code[31] == pytest.approx(0.743, abs=5e-4)


def test_r2r_currents():
    levels = solve_levels(r2r(3, 234.375), Driver(), Load())

    assert levels.volts_by_code[7] == pytest.approx(0.7)
    assert levels.pin_amps.max() == pytest.approx(6.19e-3, abs=5e-6)
    assert levels.supply_amps.max() == pytest.approx(12.79e-3, abs=5e-6)


@pytest.mark.parametrize(("ohms", "expected"), [(37.5, 0.3915), (50.0, 0.5022), (30.0, 0.3208)])
def test_other_loads(ohms, expected):
    """White of a network of 278.571 ohm, 0.700 V into 75 ohm: two monitors, an instrument's 50 ohm, both."""
    source = Network(("bit0",), (Resistor("R1", "bit0", "out", 278.571),))

    assert solve_levels(source, Driver(), Load(ohms=ohms)).volts_by_code[1] == pytest.approx(
        expected, abs=5e-5
    )


def test_three_volt_parts_on_five_volts():
    source = Network(("bit0",), (Resistor("R1", "bit0", "out", 278.571),))
    reverse = Network(("bit0",), (Resistor("R1", "bit0", "out", 460.714),))

    assert solve_levels(source, Driver(5.0), Load()).volts_by_code[1] == pytest.approx(
        0.7 * 5 / 3.3, abs=5e-5
    )
    assert solve_levels(reverse, Driver(3.3), Load()).volts_by_code[1] == pytest.approx(
        0.7 * 3.3 / 5, abs=5e-5
    )


def test_matched_source():
    """Legs of 176.786 ohm together with 130.263 ohm to ground: 75 ohm source, 0.7 V, 14.707 mA."""
    rows = (Resistor("R1", "bit0", "out", 176.786), Resistor("RS", "out", GROUND, 130.263))

    levels = solve_levels(Network(("bit0",), rows), Driver(), Load())

    assert levels.source_ohms == pytest.approx(75.0, abs=1e-3)
    assert levels.volts_by_code[1] == pytest.approx(0.7, abs=1e-5)
    assert levels.pin_amps[1, 0] == pytest.approx(14.707e-3, abs=1e-6)


def test_thirty_picofarads():
    """tau 1.773 ns, rise 3.895 ns, 89.8 MHz with a source of 278.571 ohm."""
    parts = (Resistor("R1", "bit0", "out", 278.571),)
    step = step_figures(
        Network(("bit0",), parts, (Capacitor("C1", "out", GROUND, 30e-12),)), Driver(rise_s=0.0), Load()
    )

    assert step.rise_s == pytest.approx(3.895e-9, abs=1e-12)
    assert step.bandwidth_hz == pytest.approx(89.8e6, abs=0.05e6)


@pytest.mark.parametrize(
    ("bits", "on_ohms", "dnl"),
    [
        (3, 66, -0.25),
        (3, 145, -0.5),
        (4, 29, -0.25),
        (4, 60, -0.5),
        (5, 14, -0.25),
        (5, 28, -0.5),
        (6, 7, -0.25),
    ],
)
def test_pin_resistance_that_costs_a_part_of_a_step(bits, on_ohms, dnl):
    top = 75 * (3.3 - 0.7) / 0.7 * (2**bits - 1) / 2 ** (bits - 1)
    ladder = weighted(bits, [top * 2**i for i in range(bits)])

    line = linearity(solve_levels(ladder, Driver(high_ohms=on_ohms, low_ohms=on_ohms), Load()).volts_by_code)

    assert line.dnl_lsb.min() == pytest.approx(dnl, abs=0.012)


@pytest.mark.parametrize(
    ("ohms", "expected"),
    [
        ([430, 820], 0.693),
        ([510, 1e3, 2e3], 0.680),
        ([510, 1e3, 2e3, 4.3e3], 0.716),
        ([390, 820], 0.729),
        ([470, 1e3, 1.8e3], 0.714),
        ([560, 1.2e3, 2.2e3, 4.7e3], 0.653),
    ],
    ids=str,
)
def test_full_scale_of_preferred_values(ohms, expected):
    volts = solve_levels(weighted(len(ohms), ohms), Driver(), Load()).volts_by_code

    assert volts[-1] == pytest.approx(expected, abs=1e-3)
