"""How long the response of one channel takes, and how that grows with samples, bits and parts."""

from dataclasses import replace
from itertools import pairwise

import pytest

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import GROUND, Cable, Capacitor, Driver, Load, Network
from workbench.circuit.response import glitches, pixel_pulse, step_figures
from workbench.circuit.response.path import find_path

pytestmark = pytest.mark.benchmark

PIXEL_S = 1 / 25_175_000


def ladder(bits, node_farads=30e-12):
    return weighted(bits, [500.0 * 2**i for i in range(bits)], node_farads=node_farads)


def with_capacitors(count):
    """Return an 8-bit R-2R ladder with a capacitor at each of its first nodes."""
    network = r2r(8, 273.0)
    nodes = ["out", *(f"n{i}" for i in range(1, 8))]
    parts = (Capacitor(f"C{i}", node, GROUND, 10e-12) for i, node in enumerate(nodes[:count]))
    return Network(network.pins, network.resistors, tuple(parts))


def in_series(network, count):
    """Return the network with its resistors cut into so many, one after the other."""
    each = count // len(network.resistors)
    parts = []
    for leg in network.resistors:
        nodes = [leg.a, *(f"{leg.id}m{i}" for i in range(1, each)), leg.b]
        parts += [
            replace(leg, id=f"{leg.id}.{i}", a=a, b=b, ohms=leg.ohms / each)
            for i, (a, b) in enumerate(pairwise(nodes))
        ]
    return replace(network, resistors=tuple(parts))


def afresh(network, load, cable, samples=16, skews_s=()):
    """Return the figures of a channel as after an edit of it."""
    find_path.cache_clear()
    way = (network, Driver(high_ohms=30, low_ohms=30), load, cable)
    spikes = glitches(*way, skews_s) if skews_s else ()
    return pixel_pulse(*way, pixel_s=PIXEL_S, samples=samples, skews_s=skews_s), step_figures(*way), spikes


CABLES = {
    "no cable": (Load(), None),
    "2 m, matched": (Load(), Cable(2.0)),
    "2 m with loss, 82 Ω and 10 pF": (Load(ohms=82.0, farads=10e-12), Cable(2.0, loss_db_per_m=0.1)),
    "10 m with loss, 82 Ω and 10 pF": (Load(ohms=82.0, farads=10e-12), Cable(10.0, loss_db_per_m=0.1)),
    "1 km with loss": (Load(ohms=82.0), Cable(1000.0, loss_db_per_m=0.1)),
}


def add(figures, what, work):
    figures.add(
        "Response: growth", f"pixel pulse and step of one channel: {what}", figures.median_s(work) * 1e3, "ms"
    )


@pytest.mark.parametrize("name", CABLES)
def test_with_the_cable(figures, name):
    load, cable = CABLES[name]

    add(figures, f"5 bits, {name}", lambda: afresh(ladder(5), load, cable))


@pytest.mark.parametrize("late", [1, 2, 5])
def test_with_skew(figures, late):
    load, cable = CABLES["10 m with loss, 82 Ω and 10 pF"]
    skews_s = tuple(1e-9 * (1 + pin) for pin in range(late))

    add(
        figures,
        f"5 bits, 10 m with loss, {late} pins late, spikes included",
        lambda: afresh(ladder(5), load, cable, 32, skews_s),
    )


@pytest.mark.parametrize("parts", [10, 30, 60, 120])
def test_with_the_parts(figures, parts):
    load, cable = CABLES["2 m, matched"]

    add(
        figures, f"5 bits in {parts} resistors, 2 m", lambda: afresh(in_series(ladder(5), parts), load, cable)
    )


@pytest.mark.parametrize("samples", [8, 16, 32, 64])
def test_with_the_samples(figures, samples):
    load, cable = CABLES["2 m, matched"]

    add(figures, f"5 bits, 2 m, {samples} samples a pixel", lambda: afresh(ladder(5), load, cable, samples))


@pytest.mark.parametrize("bits", [1, 2, 4, 8])
def test_with_the_bits(figures, bits):
    load, cable = CABLES["2 m, matched"]

    add(figures, f"{bits} bits, 2 m", lambda: afresh(ladder(bits), load, cable))


@pytest.mark.parametrize("count", [1, 2, 4, 8])
def test_with_the_capacitors(figures, count):
    load, cable = CABLES["2 m, matched"]

    add(
        figures,
        f"8-bit R-2R with {count} capacitors, 2 m",
        lambda: afresh(with_capacitors(count), load, cable),
    )
