"""Wild but valid values: everything stays finite, nothing warns, nothing raises."""

import math

import numpy as np
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from workbench.circuit.linearity import linearity
from workbench.circuit.network import GROUND, Cable, Capacitor, Driver, Load, Network, Resistor, Zeros
from workbench.circuit.response import glitches, pixel_pulse, step_figures
from workbench.circuit.solution import solve_levels

NODES = st.sampled_from(["p0", "p1", "p2", "out", "a", "b", "c", GROUND])
wide = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def decades(low, high):
    return st.floats(low, high).map(lambda power: 10.0**power)


@st.composite
def networks(draw):
    ends = st.tuples(NODES, NODES)
    resistors = [
        Resistor(f"R{i}", a, b, draw(decades(-4, 10))) for i, (a, b) in enumerate(draw(st.lists(ends)))
    ]
    capacitors = [
        Capacitor(f"C{i}", a, b, draw(decades(-18, 0)))
        for i, (a, b) in enumerate(draw(st.lists(ends, max_size=5)))
    ]
    pins = draw(st.lists(NODES, max_size=4) | st.permutations(["p0", "p1", "p2"]))
    return Network(tuple(pins), tuple(resistors), tuple(capacitors), draw(st.just("out") | NODES))


@st.composite
def drivers(draw):
    ohms = st.just(0.0) | decades(-6, 12)
    return Driver(
        draw(st.floats(0.0, 1e3)),
        draw(ohms),
        draw(ohms),
        draw(st.sampled_from(Zeros)),
        draw(st.just(0.0) | decades(-15, -3)),
    )


loads = st.builds(Load, st.none() | decades(-3, 9), st.integers(1, 4), st.just(0.0) | decades(-18, -3))
cables = st.none() | st.builds(
    Cable, decades(-4, 5), decades(-1, 4), st.floats(0.01, 1.0), st.just(0.0) | decades(-6, 2), decades(3, 10)
)


@wide
@given(networks(), drivers(), loads)
def test_levels(network, driver, load):
    levels = solve_levels(network, driver, load)

    arrays = (
        levels.volts_by_code,
        levels.open_by_code,
        levels.node_volts,
        levels.pin_amps,
        levels.resistor_watts,
    )
    assert all(np.isfinite(array).all() for array in arrays)
    assert math.isfinite(levels.source_ohms)
    line = linearity(levels.volts_by_code)
    assert np.isfinite(line.inl_lsb).all()
    assert np.isfinite(line.dnl_lsb).all()


@wide
@given(networks(), drivers(), loads, cables, decades(-9, -6))
def test_response(network, driver, load, cable, pixel_s):
    way = (network, driver, load, cable)

    pulse = pixel_pulse(*way, pixel_s=pixel_s, samples=8)
    step = step_figures(*way)

    assert np.isfinite(pulse.volts).all()
    assert np.isfinite(step.volts).all()
    figures = (
        step.rise_s,
        step.settle_s,
        step.overshoot,
        step.bandwidth_hz or 0.0,
        step.first_ghost_ratio or 0.0,
    )
    assert all(math.isfinite(figure) for figure in figures)
    for glitch in glitches(*way, [1e-9 * i for i in range(network.bits)]):
        assert math.isfinite(glitch.area_volt_s)
