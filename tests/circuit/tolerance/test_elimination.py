import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import GROUND, Driver, Load, Network, Resistor, Zeros
from workbench.circuit.solution import solve_levels
from workbench.circuit.tolerance.elimination import PinState, elimination


@st.composite
def meshes(draw):
    pins = [f"p{i}" for i in range(draw(st.integers(1, 4)))]
    nodes = [*pins, "out", *(f"n{i}" for i in range(draw(st.integers(0, 4)))), GROUND]
    pairs = draw(st.lists(st.tuples(st.sampled_from(nodes), st.sampled_from(nodes)), min_size=1, max_size=14))
    ohms = st.floats(1.0, 1e5)
    return Network(tuple(pins), tuple(Resistor(f"R{i}", a, b, draw(ohms)) for i, (a, b) in enumerate(pairs)))


def weights(network, on_ohms, dtype=np.float64):
    states = (PinState.RESISTIVE if on_ohms else PinState.IDEAL,) * network.bits
    siemens = np.array([[1 / r.ohms] for r in network.resistors], dtype)
    return elimination(network, states).weights(
        siemens, [1 / on_ohms if on_ohms else 0.0] * network.bits, 1 / 75
    )


@settings(deadline=None, max_examples=150)
@given(meshes(), st.sampled_from([0.0, 0.5, 40.0]))
def test_same_weights_as_the_nodal_solution(network, on_ohms):
    expected = solve_levels(network, Driver(1.0, on_ohms, on_ohms), Load()).weights_volts

    np.testing.assert_allclose(weights(network, on_ohms)[:, 0], expected, rtol=1e-6, atol=1e-9)


@pytest.mark.parametrize(
    "ladder", [weighted(8, [560.0 * 2**i for i in range(8)]), r2r(8, 273.0)], ids=["weighted", "R-2R"]
)
def test_single_precision_is_enough(ladder):
    single, double = weights(ladder, 30.0, np.float32), weights(ladder, 30.0)

    assert single.dtype == np.float32
    np.testing.assert_allclose(single, double, rtol=2e-6)


def test_a_floating_pin_is_an_ordinary_node():
    network = weighted(2, [1e3, 2e3])
    plan = elimination(network, (PinState.IDEAL, PinState.FLOATING))

    shares = plan.weights(np.array([[1e-3], [0.5e-3]]), [0.0, 0.0], 1 / 75)

    expected = solve_levels(network, Driver(1.0, zeros=Zeros.FLOATING), Load()).volts_by_code[0b10]
    assert shares[0, 0] == pytest.approx(expected)
    assert shares[1, 0] == 0.0


def test_a_pin_that_is_the_output():
    network = Network(("out", "bit0"), (Resistor("R1", "bit0", "out", 100.0),))
    plan = elimination(network, (PinState.IDEAL,) * 2)

    np.testing.assert_array_equal(plan.weights(np.array([[0.01, 0.02]]), [0, 0], 1 / 75), [[1, 1], [0, 0]])


def test_an_r2r_ladder_is_taken_out_from_its_far_end():
    plan = elimination(r2r(5, 270.0), (PinState.IDEAL,) * 5)

    assert all(len(others) == 1 for _, others in plan.steps)
