"""Published worked examples, solved by our own network and line.

Each check names where its numbers were read. "TBC" is the Scilab Textbook Companion (FOSSEE), which
codes the worked problems of the books it names.
"""

import math

import numpy as np
import pytest

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.linearity import linearity
from workbench.circuit.network import GROUND, Cable, Capacitor, Driver, Load, Network, Resistor
from workbench.circuit.response import pixel_pulse, step_figures
from workbench.circuit.response.line import Line
from workbench.circuit.solution import solve_levels

OPEN = Load(ohms=None)
BIRD = "J. Bird, Electrical Circuit Theory and Technology, worked problem"


def network(*rows, pins=("in",), output="out", farads=None):
    resistors = tuple(Resistor(f"R{i}", a, b, ohms) for i, (a, b, ohms) in enumerate(rows, 1))
    capacitors = () if farads is None else (Capacitor("C1", output, GROUND, farads),)
    return Network(pins, resistors, capacitors, output)


def levels_of(circuit, supply_volts=1.0, load=OPEN):
    return solve_levels(circuit, Driver(supply_volts), load)


SOURCE_OHMS = {
    f"{BIRD} 5.7 (TBC 608 EX5.07): 3 and 6 in parallel": ([("in", "out", 3), ("in", "out", 6)], 2.0),
    f"{BIRD} 5.10 (TBC 608 EX5.10): 1 + 2.2 + (3, 6, 18 in parallel) + 4": (
        [("in", "a", 1), ("a", "b", 2.2), ("b", "c", 3), ("b", "c", 6), ("b", "c", 18), ("c", "out", 4)],
        9.0,
    ),
    "si-list, Question about VGA termination, topology 1: 75 and 75": (
        [("in", "out", 75), ("out", GROUND, 75)],
        37.5,
    ),
    "the same, topology 3: 50 and 150": ([("in", "out", 50), ("out", GROUND, 150)], 37.5),
    "the same, topology 3: 75 and 150": ([("in", "out", 75), ("out", GROUND, 150)], 50.0),
    "forum, R-2R ladder of random resistors, 2011: 967 + 1015": (
        [("in", "a", 967), ("a", "out", 1015)],
        1982.0,
    ),
    "the same: against 973 + 1009": (
        [("in", "a", 967), ("a", "out", 1015), (GROUND, "b", 973), ("b", "out", 1009)],
        991.0,
    ),
    "the same: then + 969": (
        [("in", "a", 967), ("a", "n", 1015), (GROUND, "b", 973), ("b", "n", 1009), ("n", "out", 969)],
        1960.0,
    ),
}


@pytest.mark.parametrize(("rows", "expected"), SOURCE_OHMS.values(), ids=SOURCE_OHMS)
def test_resistance(rows, expected):
    assert levels_of(network(*rows)).source_ohms == pytest.approx(
        expected, abs=0.5 if expected > 100 else 1e-3
    )


THEVENIN = {
    "textbook passage (figure 3.3): 15 V, 10k, 20k": (
        15,
        [("in", "out", 10e3), ("out", GROUND, 20e3)],
        10.0,
        6667,
    ),
    "wyzant.com, Thevenin's theorem: 10 V, 3k, 6k, then 10k": (
        10,
        [("in", "a", 3e3), ("a", GROUND, 6e3), ("a", "out", 10e3)],
        6.667,
        12000,
    ),
    "theprimecalculator.com: 24 V, 1k, 2k": (24, [("in", "out", 1e3), ("out", GROUND, 2e3)], 16.0, 666.67),
    f"{BIRD} 5.4 (TBC 608 EX5.04): 50 V, 4 over 6": (50, [("in", "out", 4), ("out", GROUND, 6)], 30.0, 2.4),
}


@pytest.mark.parametrize(("supply", "rows", "volts", "ohms"), THEVENIN.values(), ids=THEVENIN)
def test_thevenin(supply, rows, volts, ohms):
    levels = levels_of(network(*rows), supply)

    assert levels.open_by_code[1] == pytest.approx(volts, abs=1e-3)
    assert levels.source_ohms == pytest.approx(ohms, abs=1.0)


def test_two_sources_and_a_load():
    """J. Bird, Electrical and Electronic Principles, ch. 13 problem 20 (TBC 1529 EX13.20).

    12 V through 3 ohm and 24 V through 2 ohm: 19.2 V behind 1.2 ohm; 6.4 A into 1.8 ohm.
    """
    circuit = network(("a", "out", 3), ("b", "out", 2), pins=("a", "b"))
    unloaded, loaded = levels_of(circuit), levels_of(circuit, load=Load(ohms=1.8))

    assert unloaded.weights_volts @ [12, 24] == pytest.approx(19.2)
    assert unloaded.source_ohms == pytest.approx(1.2)
    assert loaded.weights_volts @ [12, 24] / 1.8 == pytest.approx(6.4)


CURRENTS = {
    f"{BIRD} 5.7 (TBC 608 EX5.07): 12 V on 3 and 6": (
        12,
        [("in", GROUND, 3), ("in", GROUND, 6)],
        0,
        4.0,
        6.0,
    ),
    f"{BIRD} 5.8 (TBC 608 EX5.08): 60 V on 10, 20, 60": (
        60,
        [("in", GROUND, 10), ("in", GROUND, 20), ("in", GROUND, 60)],
        1,
        3.0,
        10.0,
    ),
    f"{BIRD} 5.6 (TBC 608 EX5.06): 40 V on 5, 40, 20": (
        40,
        [("in", GROUND, 5), ("in", GROUND, 40), ("in", GROUND, 20)],
        0,
        8.0,
        11.0,
    ),
    f"{BIRD} 5.5 (TBC 608 EX5.05): 24 V on 2 + 6": (24, [("in", "a", 2), ("a", GROUND, 6)], 0, 3.0, 3.0),
}


@pytest.mark.parametrize(("supply", "rows", "part", "branch", "total"), CURRENTS.values(), ids=CURRENTS)
def test_currents(supply, rows, part, branch, total):
    levels = levels_of(network(*rows, output="in"), supply)

    assert levels.resistor_amps[1, part] == pytest.approx(branch)
    assert levels.pin_amps[1, 0] == pytest.approx(total)


CHARGING = {
    f"{BIRD} 17.1 (TBC 608 EX17.01): one time constant": (120, 47e3, 15e-6, 0.705, 75.85, 0.01),
    f"{BIRD} 17.1: half after 0.489 s (0.5 s printed)": (120, 47e3, 15e-6, 0.489, 60.0, 0.1),
    f"{BIRD} 17.3 (TBC 608 EX17.03): after 2 s": (20, 50e3, 20e-6, 2.0, 17.3, 0.05),
    f"{BIRD} 17.3: 0.147 mA after 1 s": (20, 50e3, 20e-6, 1.0, 20 - 0.147e-3 * 50e3, 0.025),
    f"{BIRD} 17.3: 15 V at the resistor after 0.288 s": (20, 50e3, 20e-6, 0.288, 5.0, 0.01),
}


@pytest.mark.parametrize(
    ("supply", "ohms", "farads", "at_s", "volts", "within"), CHARGING.values(), ids=CHARGING
)
def test_charging_a_capacitor(supply, ohms, farads, at_s, volts, within):
    circuit = network(("in", "out", ohms), farads=farads)
    pulse = pixel_pulse(circuit, Driver(supply, rise_s=0.0), OPEN, pixel_s=2 * at_s, samples=2)

    assert pulse.volts[0, 0, 1] == pytest.approx(volts, abs=within)


@pytest.mark.parametrize(
    ("level", "time_constants"),
    [(0.1, 0.105), (0.9, 2.302)],
    ids=["ljmayes, Rise time of an RC circuit: 10 %", "90 %"],
)
def test_time_to_a_level(level, time_constants):
    step = step_figures(network(("in", "out", 1e3), farads=1e-9), Driver(1.0, rise_s=0.0), OPEN)

    assert np.interp(level, step.volts, step.time_s) / 1e-6 == pytest.approx(time_constants, abs=1e-3)


def single_pole(bandwidth_hz):
    circuit = network(("in", "out", 50.0), farads=1 / (2 * math.pi * bandwidth_hz * 50.0))
    return step_figures(circuit, Driver(1.0, rise_s=0.0), OPEN)


@pytest.mark.parametrize(
    ("bandwidth_hz", "rise_s", "within"),
    [(100e6, 3.5e-9, 0.05e-9), (350e6, 1e-9, 0.003e-9), (3e9, 117e-12, 1e-12)],
    ids=["ljmayes: 100 MHz", "oscilloscope tutorial: 1 ns and 350 MHz", "time of an input edge: 3 GHz"],
)
def test_rise_time_and_bandwidth(bandwidth_hz, rise_s, within):
    step = single_pole(bandwidth_hz)

    assert step.rise_s == pytest.approx(rise_s, abs=within)
    assert step.bandwidth_hz == pytest.approx(bandwidth_hz, rel=1e-5)
    # 2.197 time constants (ljmayes) and 0.35 (tek.com, "Where does the formula BW = 0.35 / t come from").
    assert step.rise_s * 2 * math.pi * bandwidth_hz == pytest.approx(2.197, abs=1e-3)
    assert step.rise_s * step.bandwidth_hz == pytest.approx(0.35, abs=1e-3)


def arrivals(supply, source_ohms, load_ohms, line_ohms, count):
    """Return the settled volts at the far end between one arrival and the next."""
    source = [] if source_ohms == 0 else [("in", "out", source_ohms)]
    circuit = network(*source, pins=("in",) if source else ("out",))
    cable = Cable(1.0, ohms=line_ohms, velocity=2 / 3)  # 5 ns
    step = step_figures(circuit, Driver(supply, rise_s=0.5e-9), Load(ohms=load_ohms), cable)
    trip_s = 2 * Line(cable, OPEN).delay_s
    return np.interp((np.arange(count) + 0.5) * trip_s, step.time_s, step.volts)


def test_bounce_diagram():
    """Problem 2.75 with solution (studylib.net 18335340): 60 V, 100 ohm source, 50 ohm line, 25 ohm load.

    Forward 20 V, then -6.67, -2.22, 0.74, 0.25, -0.08 V; midpoint 13.34, 11.86 V after the load's waves.
    """
    at_load = arrivals(60.0, 100.0, 25.0, 50.0, 3)

    np.testing.assert_allclose(at_load, np.cumsum([20 - 6.67, -2.22 + 0.74, 0.25 - 0.08]), atol=0.02)
    np.testing.assert_allclose(at_load[:2], [13.34, 11.86], atol=0.015)


def test_lattice_diagram():
    """W. D. Stevenson, Elements of Power System Analysis, example 5.6 case 1 (scilab.in book 14)."""
    at_load = arrivals(120.0, 0.0, 90.0, 30.0, 5)

    np.testing.assert_allclose(at_load, [180, 90, 135, 112.5, 123.75], atol=1.0)  # printed in whole volts


REFLECTIONS = {
    "Problem 2.75 (studylib.net 18335340): 25 ohm on 50 ohm": (50, 25 + 0j, 0.3333, 5e-4),
    f"{BIRD} 44.16 (TBC 608 EX44.16): 400 + j250 on 600": (600, 400 - 250j, 0.3106, 1e-3),
    f"{BIRD} 44.15 (TBC 608 EX44.15): 320 + j240 on 500": (500, 320 - 240j, 0.351, 5e-4),
    "TBC 2210 EX2.7: 80 - j10 on 50": (50, 80 - 10j, 0.24, 5e-3),
}


@pytest.mark.parametrize(
    ("line_ohms", "impedance", "expected", "within"), REFLECTIONS.values(), ids=REFLECTIONS
)
def test_magnitude_of_a_reflection(line_ohms, impedance, expected, within):
    # Our load is a resistor with a capacitor in parallel; the conjugate of a load reflects as much as itself.
    omega = 2 * math.pi * 1e6
    admittance = 1 / impedance
    load = Load(ohms=1 / admittance.real, farads=admittance.imag / omega)

    reflection = Line(Cable(1.0, ohms=line_ohms), load).load_reflection(np.array([omega]))

    assert abs(reflection[0]) == pytest.approx(expected, abs=within)


def test_source_reflection_of_the_bounce_diagram():
    """Problem 2.75 (studylib.net 18335340): 100 ohm on 50 ohm, +1/3 at the source, -1/3 at the load."""
    step = step_figures(network(("in", "out", 100.0)), Driver(), Load(ohms=25.0), Cable(1.0, ohms=50.0))

    assert step.first_ghost_ratio == pytest.approx(-1 / 9, abs=5e-4)


def test_echo_of_two_metres():
    """people.csail.mit.edu/jaffer/Gamma/video-bw.html: 2 m of coax, 0.66 c, 20 ns there and back."""
    step = step_figures(network(("in", "out", 279.0)), Driver(), OPEN, Cable(2.0))

    assert step.first_ghost_s == pytest.approx(20e-9, abs=0.5e-9)


def test_r2r_unloaded():
    """curioustab.com 58911: 4 bits, 5 V, code 1010 gives 3.125 V; edaboard.com 104843: half and quarter."""
    levels = levels_of(r2r(4, 10e3), 5.0)

    assert levels.open_by_code[0b1010] == pytest.approx(3.125)
    np.testing.assert_allclose(levels.weights_volts[:2], [2.5, 1.25])


def test_eight_bit_step_and_half_scale():
    """Public converter primer: one step is Vref / 256, 0.0195 V of 5 V; code 128 is 2.5 V."""
    levels = levels_of(r2r(8, 10e3), 5.0)

    assert levels.open_by_code[1] == pytest.approx(0.0195, abs=1e-4)
    assert levels.open_by_code[128] == pytest.approx(2.5)


@pytest.mark.parametrize(
    ("bits", "full_scale", "step"),
    [(4, 12.0, 0.8), (8, 2.55, 0.01)],
    ids=["TBC 1757 EX11.3", "TBC 1133 EX9.32"],
)
def test_step_of_a_full_scale(bits, full_scale, step):
    ladder = weighted(bits, [1e3 * 2**i for i in range(bits)])

    assert linearity(levels_of(ladder, full_scale).volts_by_code).lsb_volts == pytest.approx(step)


def test_weighted_converter_into_a_summing_node():
    """TBC 1757 EX11.5: 12 V, 10k, 20k, 40k, feedback 40k: 84 V; EX11.7: 8 V through 5k is 1.6 mA.

    The summing node of an amplifier is at 0 V: here a load of next to nothing.
    """
    node = Load(ohms=1e-3)

    all_on = levels_of(weighted(3, [10e3, 20e3, 40e3]), 12.0, node)
    heaviest = levels_of(weighted(1, [5e3]), 8.0, node)

    assert all_on.load_amps[7] * 40e3 == pytest.approx(84.0, abs=1e-3)
    assert heaviest.pin_amps[1, 0] == pytest.approx(1.6e-3, rel=1e-5)
