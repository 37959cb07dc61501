"""Laws that hold for every linear network."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from workbench.circuit.codes import bits_by_code
from workbench.circuit.network import GROUND, Capacitor, Driver, Load, Network, Resistor, Zeros
from workbench.circuit.response import pixel_pulse
from workbench.circuit.solution import solve_levels

OHMS = st.floats(1.0, 1e5)
quick = settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])


@st.composite
def meshes(draw, min_pins=1):
    """Draw a network that hangs together: a tree over all nodes and some more parts."""
    pins = [f"p{i}" for i in range(draw(st.integers(min_pins, 4)))]
    nodes = [*pins, "out", *(f"n{i}" for i in range(draw(st.integers(0, 4)))), GROUND]
    pairs = [(nodes[i], nodes[draw(st.integers(0, i - 1))]) for i in range(1, len(nodes))]
    pairs += draw(st.lists(st.tuples(st.sampled_from(nodes), st.sampled_from(nodes)), max_size=6))
    return Network(tuple(pins), tuple(Resistor(f"R{i}", a, b, draw(OHMS)) for i, (a, b) in enumerate(pairs)))


@st.composite
def drivers(draw):
    high, low = draw(st.floats(0.0, 200.0)), draw(st.floats(0.0, 200.0))
    return Driver(3.3, high, draw(st.sampled_from([high, low])), zeros=draw(st.sampled_from(Zeros)))


def linear(ohms):
    return Driver(3.3, ohms, ohms)


@quick
@given(meshes(), st.floats(0.0, 200.0))
def test_superposition(network, on_ohms):
    levels = solve_levels(network, linear(on_ohms), Load())

    summed = bits_by_code(network.bits) @ levels.weights_volts
    np.testing.assert_allclose(levels.volts_by_code, summed, atol=1e-9)


@quick
@given(meshes(), drivers(), st.floats(0.01, 100.0))
def test_scaling_every_resistance_changes_no_voltage(network, driver, factor):
    scaled = replace(network, resistors=tuple(replace(r, ohms=r.ohms * factor) for r in network.resistors))
    scaled_driver = replace(driver, high_ohms=driver.high_ohms * factor, low_ohms=driver.low_ohms * factor)

    before = solve_levels(network, driver, Load(ohms=75.0))
    after = solve_levels(scaled, scaled_driver, Load(ohms=75.0 * factor))

    np.testing.assert_allclose(after.volts_by_code, before.volts_by_code, atol=1e-9)
    np.testing.assert_allclose(after.pin_amps * factor, before.pin_amps, atol=1e-9)
    assert after.source_ohms == pytest.approx(before.source_ohms * factor, rel=1e-6)


@quick
@given(meshes(), drivers(), st.floats(0.1, 12.0))
def test_voltages_are_proportional_to_the_supply(network, driver, volts):
    before = solve_levels(network, driver, Load())
    after = solve_levels(network, replace(driver, supply_volts=volts), Load())

    np.testing.assert_allclose(after.volts_by_code, before.volts_by_code * volts / 3.3, atol=1e-9)


@quick
@given(meshes(), drivers(), st.randoms(use_true_random=False))
def test_names_and_order_of_parts_do_not_matter(network, driver, random):
    nodes = sorted({node for r in network.resistors for node in (r.a, r.b)} - {GROUND})
    new = dict(zip(nodes, random.sample([f"x{i}" for i in range(len(nodes))], len(nodes)), strict=True))
    new[GROUND] = GROUND
    shuffled = random.sample(network.resistors, len(network.resistors))
    turned = tuple(Resistor(r.id, new[r.b], new[r.a], r.ohms) for r in shuffled)

    before = solve_levels(network, driver, Load())
    after = solve_levels(
        Network(tuple(new[p] for p in network.pins), turned, output=new["out"]), driver, Load()
    )

    np.testing.assert_allclose(after.volts_by_code, before.volts_by_code, atol=1e-9)
    np.testing.assert_allclose(after.pin_amps, before.pin_amps, atol=1e-9)


@quick
@given(meshes(min_pins=2), st.floats(0.1, 200.0))
def test_reciprocity(network, ohms):
    # A volt at pin 0 drives through pin 1 (held at 0 V) what a volt at pin 1 drives through pin 0.
    n = network.bits
    levels = solve_levels(network, linear(ohms), Load())

    alone = levels.pin_amps[1 << np.arange(n - 1, -1, -1)]
    np.testing.assert_allclose(alone, alone.T, atol=1e-9)


@quick
@given(meshes(), drivers())
def test_power_from_the_supply_is_turned_into_heat(network, driver):
    levels = solve_levels(network, driver, Load())

    bits = bits_by_code(network.bits)
    in_pins = (levels.pin_amps**2 * np.where(bits == 1, driver.high_ohms, driver.low_ohms)).sum(axis=1)
    if driver.zeros is Zeros.FLOATING:
        in_pins = (levels.pin_amps**2 * bits * driver.high_ohms).sum(axis=1)
    heat = levels.resistor_watts.sum(axis=1) + levels.volts_by_code * levels.load_amps + in_pins
    np.testing.assert_allclose(heat, levels.supply_amps * 3.3, rtol=1e-6, atol=1e-9)


@quick
@given(meshes(), drivers())
def test_no_node_leaves_the_range_of_the_supply(network, driver):
    volts = solve_levels(network, driver, Load()).node_volts

    assert volts.min() >= -1e-9
    assert volts.max() <= 3.3 + 1e-9


@quick
@given(meshes(), drivers())
def test_figures_are_finite(network, driver):
    levels = solve_levels(network, driver, Load(ohms=None))

    assert all(np.isfinite(a).all() for a in (levels.volts_by_code, levels.open_by_code, levels.pin_amps))


@quick
@given(meshes(), drivers(), st.floats(1e-13, 1e-9), st.data())
def test_pixels_add_up_whatever_the_capacitors(network, driver, farads, data):
    nodes = st.sampled_from(
        sorted({*network.pins, "out", GROUND, *(r.a for r in network.resistors), "loose"})
    )
    ends = data.draw(st.lists(st.tuples(nodes, nodes), max_size=4))
    parts = tuple(Capacitor(f"C{i}", a, b, farads) for i, (a, b) in enumerate(ends))

    pulse = pixel_pulse(replace(network, capacitors=parts), driver, Load(), pixel_s=40e-9, samples=4)

    settled = pixel_pulse(network, driver, Load(), pixel_s=40e-9, samples=4).volts.sum(axis=1)
    np.testing.assert_allclose(pulse.volts.sum(axis=1), settled, atol=1e-9)
