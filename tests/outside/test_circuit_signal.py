"""The response against scipy's linear systems and integrators, and against scikit-rf's lines."""

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy import integrate, signal, special

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import GROUND, Cable, Capacitor, Driver, Load, Network, Resistor
from workbench.circuit.response import pixel_pulse, step_figures
from workbench.circuit.response.line import SPEED_OF_LIGHT, Line
from workbench.circuit.response.path import find_path

FIVE = weighted(5, [500.0 * 2**i for i in range(5)], node_farads=30e-12)
LAG_S = 30e-12 / (sum(1 / r.ohms for r in FIVE.resistors) + 1 / 75)


def test_step_of_one_lag():
    step = step_figures(FIVE, Driver(rise_s=0.0), Load())

    time_s = np.linspace(0.0, 8 * LAG_S, 400)
    _, expected = signal.step(([1.0], [LAG_S, 1.0]), T=time_s)
    np.testing.assert_allclose(
        np.interp(time_s, step.time_s, step.volts) / step.volts[-1], expected, atol=1e-4
    )


def test_bandwidth_of_one_lag():
    omega = np.linspace(0.9, 1.1, 2001) / LAG_S
    _, decibel, _ = signal.bode(([1.0], [LAG_S, 1.0]), w=omega)

    expected = np.interp(10 * math.log10(2), -decibel, omega) / (2 * math.pi)
    assert step_figures(FIVE, Driver(), Load()).bandwidth_hz == pytest.approx(expected, rel=1e-5)


def two_lags(fast_farads, slow_farads):
    """Return a pin, 200 ohm, a node with one capacitor, 300 ohm, the output with the other."""
    resistors = (Resistor("R1", "bit0", "a", 200.0), Resistor("R2", "a", "out", 300.0))
    capacitors = (Capacitor("C1", "a", GROUND, fast_farads), Capacitor("C2", "out", GROUND, slow_farads))
    return Network(("bit0",), resistors, capacitors)


def state_space(fast_farads, slow_farads):
    """Return the node equations of :func:`two_lags` with 75 ohm at the output and 1 V at the pin."""
    a = [
        [-(1 / 200 + 1 / 300) / fast_farads, 1 / 300 / fast_farads],
        [1 / 300 / slow_farads, -(1 / 300 + 1 / 75) / slow_farads],
    ]
    return np.array(a), np.array([[1 / 200 / fast_farads], [0.0]]), np.array([[0.0, 1.0]]), np.array([[0.0]])


def test_a_pixel_through_two_lags():
    system = state_space(20e-12, 47e-12)
    time_s = np.linspace(0.0, 160e-9, 16001)
    trapezoid = np.interp(time_s, [0, 2e-9, 40e-9, 42e-9], [0, 1, 1, 0])
    _, expected, _ = signal.lsim(system, trapezoid, time_s)

    volts = (
        pixel_pulse(two_lags(20e-12, 47e-12), Driver(1.0), Load(), pixel_s=40e-9, samples=16).volts[0].ravel()
    )

    np.testing.assert_allclose(volts[:32], np.interp(np.arange(32) * 2.5e-9, time_s, expected), atol=1e-5)


def test_a_stiff_pair_of_lags():
    # 0.1 ns and some 30 ns: an explicit method would need hundreds of times the steps.
    a, b, _, _ = state_space(1e-12, 500e-12)
    time_s = np.linspace(0.0, 200e-9, 101)
    answer = integrate.solve_ivp(
        lambda _, v: a @ v + b[:, 0], (0.0, 200e-9), [0.0, 0.0], "Radau", time_s, jac=a, rtol=1e-9, atol=1e-12
    )

    step = step_figures(two_lags(1e-12, 500e-12), Driver(1.0, rise_s=0.0), Load())

    np.testing.assert_allclose(np.interp(time_s, step.time_s, step.volts), answer.y[1], atol=2e-5)


def test_frequency_response_of_a_ladder_with_capacitors():
    capacitors = (
        Capacitor("C1", "out", GROUND, 22e-12),
        Capacitor("C2", "n1", GROUND, 4e-12),
        Capacitor("C3", "bit2", "out", 3e-12),
        Capacitor("C4", "n2", "x", 5e-12),
        Capacitor("C5", "x", GROUND, 7e-12),
    )
    network = replace(r2r(4, 260.0), capacitors=capacitors)
    omega = 2 * math.pi * np.geomspace(1e5, 1e10, 23)

    ours = find_path(network, Driver(high_ohms=30, low_ohms=30), Load(farads=8e-12), None).transfer(omega)

    np.testing.assert_allclose(ours, plain_nodal(network, 30.0, 1 / 75, 8e-12, omega), rtol=1e-9, atol=1e-12)


def plain_nodal(network, on_ohms, load_siemens, load_farads, omega):
    """Return the transfer from each pin by one complex nodal solve a frequency."""
    parts = (*network.resistors, *network.capacitors)
    nodes = sorted({node for part in parts for node in (part.a, part.b)} - {GROUND})
    index = {node: i for i, node in enumerate(nodes)}
    out = []
    for w in omega:
        matrix = np.zeros((len(nodes), len(nodes)), complex)
        for part in parts:
            siemens = 1 / part.ohms if isinstance(part, Resistor) else 1j * w * part.farads
            ends = [index[node] for node in (part.a, part.b) if node != GROUND]
            matrix[ends, ends] += siemens
            if len(ends) == 2:
                matrix[ends, ends[::-1]] -= siemens
        pins = [index[pin] for pin in network.pins]
        matrix[pins, pins] += 1 / on_ohms
        matrix[index["out"], index["out"]] += load_siemens + 1j * w * load_farads
        out.append(np.linalg.inv(matrix)[index["out"], pins] / on_ohms)
    return np.array(out).T


@pytest.fixture(scope="module")
def skrf():
    return pytest.importorskip("skrf")


LINES = {
    "mismatched at both ends": (Load(ohms=82.0), Cable(10.0)),
    "capacitance at the far end": (Load(farads=12e-12), Cable(2.0)),
    "another impedance": (Load(), Cable(3.0, ohms=93.0, velocity=0.85)),
    "two monitors": (Load(monitors=2, farads=5e-12), Cable(1.0, ohms=50.0)),
}


def lines_of(skrf, cable, frequency):
    gamma = 1j * frequency.w / (cable.velocity * SPEED_OF_LIGHT)
    nepers = cable.loss_db_per_m * math.log(10) / 20 * np.sqrt(frequency.f / cable.loss_at_hz)
    medium = skrf.media.DefinedGammaZ0(frequency, z0=cable.ohms, gamma=gamma + (1 + 1j) * nepers)
    return medium.line(cable.metres, "m")


@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize(("load", "cable"), LINES.values(), ids=LINES)
@pytest.mark.parametrize("loss", [0.0, 0.3])
def test_transfer_over_a_line(skrf, load, cable, loss):
    cable = replace(cable, loss_db_per_m=loss)
    frequency = skrf.Frequency.from_f(np.geomspace(1e6, 2e9, 57), unit="Hz")
    network = Network(("bit0",), (Resistor("R1", "bit0", "out", 278.571),))

    ours = find_path(network, Driver(1.0), load, cable).transfer(frequency.w)[0]

    # Chain matrix of the line between the source's resistance and the load's admittance.
    (a, b), (c, d) = np.moveaxis(lines_of(skrf, cable, frequency).a, 0, -1)
    admittance = load.siemens + 1j * frequency.w * load.farads * load.monitors
    expected = 1 / (a + b * admittance + 278.571 * (c + d * admittance))
    delay = np.exp(-1j * frequency.w * cable.metres / (cable.velocity * SPEED_OF_LIGHT))
    np.testing.assert_allclose(ours * delay, expected, rtol=1e-9, atol=1e-12)


@pytest.mark.filterwarnings("ignore")
def test_reflection_of_a_load(skrf):
    frequency = skrf.Frequency.from_f(np.geomspace(1e6, 2e9, 57), unit="Hz")
    medium = skrf.media.DefinedGammaZ0(frequency, z0=75.0)
    load = (
        medium.shunt(medium.resistor(82.0) ** medium.short())
        ** medium.shunt_capacitor(12e-12)
        ** medium.open()
    )

    ours = Line(Cable(1.0), Load(ohms=82.0, farads=12e-12)).load_reflection(frequency.w)

    np.testing.assert_allclose(ours, load.s[:, 0, 0], rtol=1e-6)


def test_step_through_the_skin_effect():
    """``exp(-sqrt(k s))`` answers a step with ``erfc(sqrt(k / t) / 2)``.

    M. Abramowitz, I. A. Stegun, "Handbook of Mathematical Functions", 29.3.83. Both ends are matched.
    """
    network = Network(("bit0",), (Resistor("R1", "bit0", "out", 75.0),))
    cable = Cable(10.0, loss_db_per_m=0.2, loss_at_hz=100e6)
    nepers = 2.0 * math.log(10) / 20
    k = nepers**2 / (math.pi * 100e6)

    step = step_figures(network, Driver(1.0, rise_s=0.2e-9), Load(), cable)

    time_s = np.linspace(1e-9, 60e-9, 60)
    expected = 0.5 * special.erfc(np.sqrt(k / time_s) / 2)
    # A ramp is a step half its length later. The last hundredth creeps in over a microsecond.
    np.testing.assert_allclose(np.interp(time_s + 0.1e-9, step.time_s, step.volts), expected, atol=4e-3)
