"""Levels against exact rational arithmetic and against graph theory."""

import networkx
import numpy as np
import pytest
import sympy

from workbench.circuit.codes import bits_by_code
from workbench.circuit.network import GROUND, Driver, Load, Network, Resistor, Zeros
from workbench.circuit.solution import solve_levels

SEEDS = range(12)


def random_network(seed):
    """Return a connected network of whole ohms: a random tree over all nodes and some more parts."""
    random = np.random.default_rng(seed)
    pins = tuple(f"p{i}" for i in range(random.integers(1, 5)))
    nodes = [*pins, "out", GROUND, *(f"n{i}" for i in range(random.integers(0, 5)))]
    pairs = [(nodes[i], nodes[random.integers(i)]) for i in range(1, len(nodes))]
    pairs += [tuple(random.choice(nodes, 2, replace=False)) for _ in range(random.integers(1, 8))]
    ohms = random.integers(1, 2000, len(pairs))
    parts = (
        Resistor(f"R{i}", str(a), str(b), float(r))
        for i, ((a, b), r) in enumerate(zip(pairs, ohms, strict=True))
    )
    return Network(pins, tuple(parts))


def exact_levels(network, driver, load, code):
    """Return node voltages by Kirchhoff's current law in rational numbers, one unknown a node."""
    nodes = sorted({node for r in network.resistors for node in (r.a, r.b)} - {GROUND})
    volts = {node: sympy.Symbol(f"v_{node}") for node in nodes} | {GROUND: sympy.Integer(0)}
    leaving = dict.fromkeys(nodes, sympy.Integer(0)) | {GROUND: sympy.Integer(0)}
    for r in network.resistors:
        amps = (volts[r.a] - volts[r.b]) / sympy.Rational(r.ohms)
        leaving[r.a] += amps
        leaving[r.b] -= amps
    if load.ohms is not None:
        leaving["out"] += volts["out"] * load.monitors / sympy.Rational(load.ohms)
    bits = bits_by_code(network.bits)[code]
    for pin, bit in zip(network.pins, bits, strict=True):
        ohms = sympy.Rational(driver.high_ohms if bit else driver.low_ohms)
        if bit == 0 and driver.zeros is Zeros.FLOATING:
            continue
        source = sympy.Rational(driver.supply_volts) * int(bit)
        if ohms:
            leaving[pin] += (volts[pin] - source) / ohms
        else:
            leaving[pin] = volts[pin] - source  # the node is known: this takes the place of its law
    unknowns = [volts[node] for node in nodes]
    (answer,) = sympy.linsolve([leaving[node] for node in nodes], unknowns)
    return dict(zip(nodes, answer, strict=True))


DRIVERS = {
    "ideal": Driver(supply_volts=3.25),
    "on-resistance": Driver(supply_volts=3.25, high_ohms=40.0, low_ohms=40.0),
    "unequal": Driver(supply_volts=5.0, high_ohms=40.0, low_ohms=25.0),
    "ideal up, weak down": Driver(supply_volts=5.0, high_ohms=0.0, low_ohms=25.0),
    "floating": Driver(supply_volts=5.0, high_ohms=10.0, zeros=Zeros.FLOATING),
}


@pytest.mark.parametrize("driver", DRIVERS.values(), ids=DRIVERS)
@pytest.mark.parametrize("seed", SEEDS)
def test_every_node_of_a_random_network(seed, driver):
    network, load = random_network(seed), Load(ohms=75.0)
    levels = solve_levels(network, driver, load)
    code = int(np.random.default_rng(seed).integers(network.n_codes))

    exact = exact_levels(network, driver, load, code)

    for node, volts in zip(levels.nodes, levels.node_volts[code], strict=True):
        assert volts == pytest.approx(float(exact[node]), abs=1e-11)


@pytest.mark.parametrize("seed", SEEDS)
def test_open_levels_of_a_random_network(seed):
    network, driver = random_network(seed), DRIVERS["unequal"]
    levels = solve_levels(network, driver, Load())

    for code in range(network.n_codes):
        exact = exact_levels(network, driver, Load(ohms=None), code)
        assert levels.open_by_code[code] == pytest.approx(float(exact["out"]), abs=1e-11)


@pytest.mark.parametrize("seed", range(40))
def test_source_resistance_is_the_resistance_distance(seed):
    """D. J. Klein, M. Randić, "Resistance distance", Journal of Mathematical Chemistry 12, 1993."""
    network = random_network(seed)
    levels = solve_levels(network, Driver(high_ohms=40.0, low_ohms=40.0), Load())

    graph = networkx.MultiGraph()
    graph.add_edges_from((r.a, r.b, {"ohms": r.ohms}) for r in network.resistors)
    graph.add_edges_from((pin, GROUND, {"ohms": 40.0}) for pin in network.pins)
    distance = networkx.resistance_distance(graph, "out", GROUND, weight="ohms")

    assert levels.source_ohms == pytest.approx(distance, rel=1e-9)
