import math

import numpy as np
import pytest

from workbench.circuit.codes import bits_by_code
from workbench.circuit.ladders import r2r, segmented, weighted
from workbench.circuit.linearity import linearity
from workbench.circuit.network import GROUND, Capacitor, Driver, Load, Network, Resistor, Zeros
from workbench.circuit.solution import ProblemKind, solve_levels

THREE = weighted(3, [500.0, 1000.0, 2000.0])


def resistors(*rows):
    return tuple(Resistor(f"R{i}", a, b, ohms) for i, (a, b, ohms) in enumerate(rows, 1))


def kinds(levels):
    return [problem.kind for problem in levels.problems]


def test_bits_are_most_significant_first():
    np.testing.assert_array_equal(bits_by_code(3)[[1, 4, 6]], [[0, 0, 1], [1, 0, 0], [1, 1, 0]])


def test_levels_follow_the_conductances():
    # V = 3.3 sum(b G) / (sum G + 1/75), by hand.
    siemens = np.array([1 / 500, 1 / 1000, 1 / 2000])
    expected = 3.3 * bits_by_code(3) @ siemens / (siemens.sum() + 1 / 75)

    levels = solve_levels(THREE, Driver(), Load())

    np.testing.assert_allclose(levels.volts_by_code, expected)
    np.testing.assert_allclose(levels.weights_volts, expected[[4, 2, 1]])
    np.testing.assert_allclose(levels.open_by_code, 3.3 * np.arange(8) / 7)
    assert levels.source_ohms == pytest.approx(1 / siemens.sum())
    assert levels.problems == ()


def test_pin_currents_have_signs_and_add_up_to_the_load():
    levels = solve_levels(THREE, Driver(), Load())

    top_bit = levels.pin_amps[4]
    assert top_bit[0] > 0 > max(top_bit[1:])
    np.testing.assert_allclose(levels.pin_amps.sum(axis=1), levels.load_amps, atol=1e-15)
    assert levels.load_amps[7] == pytest.approx(levels.volts_by_code[7] / 75)
    assert levels.supply_amps[4] == pytest.approx(top_bit[0])


def test_power_in_a_leg_is_its_current_squared_times_its_ohms():
    levels = solve_levels(THREE, Driver(high_ohms=40, low_ohms=30), Load())

    ohms = [resistor.ohms for resistor in THREE.resistors]
    np.testing.assert_allclose(levels.resistor_watts, levels.resistor_amps**2 * ohms, atol=1e-18)


def test_on_resistance_high_and_low_differ():
    # Code 100 by hand: pin 0 through 500 + 40 to 3.3 V, the others through 55 to ground.
    up, down = 1 / 540, 1 / 1055 + 1 / 2055 + 1 / 75

    levels = solve_levels(THREE, Driver(high_ohms=40, low_ohms=55), Load())

    assert levels.volts_by_code[4] == pytest.approx(3.3 * up / (up + down))
    assert levels.source_ohms_by_code[4] == pytest.approx(1 / (1 / 540 + 1 / 1055 + 1 / 2055))
    assert levels.source_ohms == pytest.approx(1 / (1 / 540 + 1 / 1040 + 1 / 2040))


@pytest.mark.parametrize(
    "driver",
    [
        pytest.param(Driver(), id="ideal"),
        pytest.param(Driver(high_ohms=40, low_ohms=40), id="alike"),
        pytest.param(Driver(high_ohms=40, low_ohms=55), id="unlike"),
        pytest.param(Driver(high_ohms=40, zeros=Zeros.FLOATING), id="floating"),
    ],
)
@pytest.mark.parametrize("network", [THREE, r2r(4, 267.5), segmented(4, 2, [2e3, 4e3, 8e3])])
def test_a_load_takes_from_each_level_what_the_source_resistance_says(network, driver):
    levels = solve_levels(network, driver, Load())

    expected = levels.open_by_code / (1 + levels.source_ohms_by_code / 75)
    np.testing.assert_allclose(levels.volts_by_code, expected, rtol=1e-12)


def test_at_black_floating_zeros_hold_nothing_but_a_shunt():
    shunted = weighted(3, [500.0, 1000.0, 2000.0], shunt_ohms=130.0)
    driver = Driver(zeros=Zeros.FLOATING)

    bare, held = (solve_levels(network, driver, Load()) for network in (THREE, shunted))

    assert bare.source_ohms_by_code[0] == math.inf
    assert held.source_ohms_by_code[0] == pytest.approx(130.0)
    assert bare.source_ohms_by_code[1] == pytest.approx(2000.0)
    assert bare.source_ohms == pytest.approx(2000 / 7)


def test_the_exact_path_agrees_with_the_linear_one():
    ladder = r2r(5, 267.5)

    linear = solve_levels(ladder, Driver(high_ohms=40, low_ohms=40), Load())
    exact = solve_levels(ladder, Driver(high_ohms=40, low_ohms=40 * (1 + 1e-12)), Load())

    np.testing.assert_allclose(exact.volts_by_code, linear.volts_by_code, atol=1e-11)
    np.testing.assert_allclose(exact.pin_amps, linear.pin_amps, atol=1e-13)
    np.testing.assert_allclose(exact.node_volts, linear.node_volts, atol=1e-11)


def test_floating_zeros_leave_the_open_output_at_the_supply():
    levels = solve_levels(THREE, Driver(zeros=Zeros.FLOATING), Load())

    np.testing.assert_allclose(levels.open_by_code[1:], 3.3)
    assert levels.open_by_code[0] == 0.0
    np.testing.assert_allclose(levels.pin_amps[bits_by_code(3) == 0], 0.0, atol=1e-15)


def test_floating_zeros_without_any_load_are_finite():
    levels = solve_levels(THREE, Driver(zeros=Zeros.FLOATING), Load(ohms=None))

    np.testing.assert_allclose(levels.volts_by_code, [0.0, *[3.3] * 7])
    assert linearity(levels.volts_by_code).monotonic
    assert not levels.pin_amps.any(), "no current is left of rounding"
    assert not levels.resistor_amps.any()


def test_a_pin_may_be_the_output():
    wire = Network(("out",), resistors(("out", GROUND, 100.0)))

    levels = solve_levels(wire, Driver(high_ohms=25, low_ohms=25), Load())

    assert levels.volts_by_code[1] == pytest.approx(3.3 * (300 / 7) / (300 / 7 + 25))
    assert levels.source_ohms == pytest.approx(20.0)


def test_an_ideal_pin_as_output_has_no_source_resistance():
    wire = Network(("out",), resistors(("out", GROUND, 100.0)))

    levels = solve_levels(wire, Driver(), Load())

    assert levels.volts_by_code[1] == 3.3
    assert levels.source_ohms == 0.0
    assert levels.pin_amps[1, 0] == pytest.approx(3.3 / 100 + 3.3 / 75)


def test_two_monitors_halve_the_load():
    two = solve_levels(THREE, Driver(), Load(monitors=2))
    half = solve_levels(THREE, Driver(), Load(ohms=37.5))

    np.testing.assert_allclose(two.volts_by_code, half.volts_by_code)


def test_capacitors_are_open_at_rest():
    with_capacitor = Network(THREE.pins, THREE.resistors, (Capacitor("C1", "out", GROUND, 30e-12),))

    levels = solve_levels(with_capacitor, Driver(), Load())

    np.testing.assert_allclose(
        levels.volts_by_code, solve_levels(THREE, Driver(), Load()).volts_by_code, rtol=1e-13
    )
    assert levels.problems == ()


PINS = ("bit1", "bit0")
LEGS = (("bit1", "out", 1e3), ("bit0", "out", 2e3))
CASES = {
    "no pins": (Network((), resistors(("out", GROUND, 75.0))), ProblemKind.NO_PINS),
    "nothing at all": (Network((), ()), ProblemKind.NO_PINS),
    "pins without parts": (Network(PINS, ()), ProblemKind.FLOATING_OUTPUT),
    "floating output": (
        Network(PINS, resistors(("bit1", "a", 1e3), ("bit0", "a", 1e3))),
        ProblemKind.FLOATING_OUTPUT,
    ),
    "output held by ground only": (
        Network(PINS, resistors(("bit1", GROUND, 1e3), ("bit0", GROUND, 1e3), ("out", GROUND, 50.0))),
        ProblemKind.UNDRIVEN_OUTPUT,
    ),
    "capacitors only": (
        Network(PINS, (), (Capacitor("C1", "bit1", "out", 1e-9), Capacitor("C2", "bit0", "out", 1e-9))),
        ProblemKind.FLOATING_OUTPUT,
    ),
    "pin at ground": (Network(("bit1", GROUND), resistors(*LEGS[:1])), ProblemKind.SHORT),
    "pins joined": (Network(("bit0", "bit0"), resistors(*LEGS[1:])), ProblemKind.SHORT),
    "output at ground": (Network(PINS, resistors(*LEGS), output=GROUND), ProblemKind.SHORT),
    "island": (Network(PINS, resistors(*LEGS, ("x", "y", 1e3))), ProblemKind.ISLAND),
    "dangling part": (Network(PINS, resistors(*LEGS, ("out", "x", 1e3))), ProblemKind.DEAD_PART),
    "dangling loop": (
        Network(PINS, resistors(*LEGS, ("out", "x", 1e3), ("x", "y", 1e3), ("y", "z", 1e3), ("z", "x", 1e3))),
        ProblemKind.DEAD_PART,
    ),
    "both ends at one node": (Network(PINS, resistors(*LEGS, ("out", "out", 1e3))), ProblemKind.DEAD_PART),
    "dead pin": (Network(PINS, resistors(*LEGS[:1], ("bit0", GROUND, 1e3))), ProblemKind.DEAD_PIN),
    "too many pins": (
        Network(tuple(f"p{i}" for i in range(1000)), resistors(("p0", "out", 1e3))),
        ProblemKind.TOO_BIG,
    ),
    "too many parts": (Network(PINS, resistors(*LEGS * 600)), ProblemKind.TOO_BIG),
    "nan": (Network(PINS, resistors(LEGS[0], ("bit0", "out", math.nan))), ProblemKind.BAD_VALUE),
    "negative": (Network(PINS, resistors(LEGS[0], ("bit0", "out", -5.0))), ProblemKind.BAD_VALUE),
    "far apart": (
        Network(
            PINS, resistors(("bit1", "a", 1e300), ("bit0", "a", 1e300), ("a", "b", 1e-300), ("b", "out", 1.0))
        ),
        ProblemKind.UNSOLVABLE,
    ),
}
DRIVERS = {
    "ideal": Driver(),
    "on-resistance": Driver(high_ohms=40, low_ohms=55),
    "floating": Driver(zeros=Zeros.FLOATING),
}


@pytest.mark.parametrize("driver", DRIVERS.values(), ids=DRIVERS)
@pytest.mark.parametrize(("network", "kind"), CASES.values(), ids=CASES)
def test_what_is_wrong_is_said_and_figures_stay_finite(network, kind, driver):
    for load in (Load(), Load(ohms=None)):
        levels = solve_levels(network, driver, load)

        assert kind in kinds(levels)
        assert all(problem.sentence.endswith(".") for problem in levels.problems)
        for array in (levels.volts_by_code, levels.open_by_code, levels.node_volts, levels.pin_amps):
            assert np.isfinite(array).all()
        assert math.isfinite(levels.source_ohms)
        linearity(levels.volts_by_code)


def test_an_undriven_output_stays_at_ground():
    levels = solve_levels(CASES["floating output"][0], Driver(), Load())

    assert not levels.volts_by_code.any()
    assert levels.node_volts[:, levels.nodes.index("a")].max() == pytest.approx(3.3)


def test_a_dead_part_is_named():
    levels = solve_levels(CASES["dangling part"][0], Driver(), Load())

    (problem,) = levels.problems
    assert problem.parts == ("R3",)
    assert "R3" in problem.sentence


@pytest.mark.parametrize("bits", range(1, 9))
@pytest.mark.parametrize(
    "make", [lambda n: weighted(n, [500.0 * 2**i for i in range(n)]), lambda n: r2r(n, 270.0)]
)
def test_whole_ladders_have_no_problem(make, bits):
    assert solve_levels(make(bits), Driver(), Load(ohms=None)).problems == ()


def test_hundreds_of_parts_are_solved():
    chain = [("bit0", "n0", 1.0), *((f"n{i}", f"n{i + 1}", 1.0) for i in range(398)), ("n398", "out", 1.0)]

    levels = solve_levels(Network(("bit0",), resistors(*chain)), Driver(), Load())

    assert levels.source_ohms == pytest.approx(400.0)
    assert levels.problems == ()


def test_arrays_are_read_only():
    levels = solve_levels(THREE, Driver(), Load())

    with pytest.raises(ValueError, match="read-only"):
        levels.volts_by_code[0] = 1.0
