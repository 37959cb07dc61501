"""Segmented, matched and equal-part ladders against plain nodal analysis, code by code."""

import numpy as np
import pytest

from workbench.circuit.ladders import Topology, recognise, segmented
from workbench.circuit.linearity import linearity
from workbench.circuit.network import GROUND, Driver, Load, Network, Zeros
from workbench.circuit.series import Series
from workbench.circuit.solution import solve_levels
from workbench.circuit.tolerance.boards import Design
from workbench.circuit.wish import LadderWish, Shape, make_ladder

LOAD = Load()


def solved_by_hand(network: Network, driver: Driver, told: list[int], load_ohms: float) -> float:
    """Return the output for pins told 0 or 1: one nodal matrix, each pin a source behind its resistance."""
    nodes = [*{n for r in network.resistors for n in (r.a, r.b)} - {GROUND}]
    place = {node: i for i, node in enumerate(nodes)}
    matrix, currents = np.zeros((len(nodes), len(nodes))), np.zeros(len(nodes))
    wires = [(r.a, r.b, r.ohms) for r in network.resistors]
    for a, b, ohms in [*wires, (network.output, GROUND, load_ohms)]:
        for node, other in ((a, b), (b, a)):
            if node in place:
                matrix[place[node], place[node]] += 1 / ohms
                if other in place:
                    matrix[place[node], place[other]] -= 1 / ohms
    for pin, high in zip(network.pins, told, strict=True):
        if high or driver.zeros is Zeros.DRIVEN:
            ohms = driver.high_ohms if high else driver.low_ohms
            matrix[place[pin], place[pin]] += 1 / ohms
            currents[place[pin]] += high * driver.supply_volts / ohms
    return float(np.linalg.solve(matrix, currents)[place[network.output]])


def told(code: int, bits: int, thermometer: int) -> list[int]:
    """Return the pins of a code, written out anew."""
    tail = bits - thermometer
    top = code >> tail
    return [int(top > i) for i in range(2**thermometer - 1)] + [code >> k & 1 for k in reversed(range(tail))]


@pytest.mark.parametrize(
    "driver",
    [
        Driver(3.3, 20.0, 20.0),
        Driver(3.3, 40.0, 25.0),
        Driver(3.3, 30.0, 30.0, zeros=Zeros.FLOATING),
    ],
    ids=["equal", "unequal", "floating"],
)
@pytest.mark.parametrize(("bits", "thermometer"), [(3, 2), (5, 2), (6, 3), (2, 2)])
def test_levels_of_every_code(driver: Driver, bits: int, thermometer: int) -> None:
    ohms = [1100.0, *(2300.0 * 1.9**i for i in range(bits - thermometer))]
    network = segmented(bits, thermometer, ohms, shunt_ohms=180.0, series_ohms=12.0)

    levels = solve_levels(network, driver, LOAD)

    expected = [
        solved_by_hand(network, driver, told(code, bits, thermometer), 75.0) for code in range(2**bits)
    ]
    assert levels.volts_by_code == pytest.approx(expected)
    assert len(levels.pin_amps[-1]) == 2**thermometer - 1 + bits - thermometer


@pytest.mark.parametrize("driver", [Driver(3.3, 20.0, 20.0), Driver(3.3, 40.0, 25.0)])
def test_figures_of_boards_are_those_of_their_levels(driver: Driver) -> None:
    network = segmented(6, 3, (1500.0, 3000.0, 6000.0, 12000.0))
    factors = np.random.default_rng(5).uniform(0.8, 1.2, (len(network.resistors) + 3, 200))
    design = Design(network, driver, LOAD)

    figures, levels = design.figures(factors), design.levels(factors)

    lines = [linearity(column) for column in levels.T]
    assert figures.max_inl_lsb == pytest.approx([line.max_inl_lsb for line in lines])
    assert figures.max_dnl_lsb == pytest.approx([line.max_dnl_lsb for line in lines])
    assert figures.monotonic.tolist() == [line.monotonic for line in lines]
    assert not figures.monotonic.all()


def test_equal_legs_need_less_of_their_parts() -> None:
    """At a tolerance where the worst weighted board falls, the worst segmented one with it does not.

    Own arithmetic: a top leg must outdo the others, ``t < 1 / (2^n - 1)`` = 6.7 % for 4 bits; a
    thermometer leg only the two legs below, ``4 (1 - t) > 3 (1 + t)``, t < 1/7 = 14.3 %.
    """
    weighted, parted = (make_ladder(LadderWish(shape, 4), Driver(), LOAD) for shape in (
        Shape.WEIGHTED, Shape.SEGMENTED
    ))  # fmt: skip

    def falls(network: Network, tolerance: float) -> bool:
        corners = np.random.default_rng(1).choice((-1.0, 1.0), (len(network.resistors) + 3, 4000))
        corners[-3:] = 0.0
        return not Design(network, Driver(), LOAD).figures(1.0 / (1.0 + tolerance * corners)).monotonic.all()

    assert falls(weighted, 0.10)
    assert not falls(parted, 0.14)
    assert falls(parted, 0.15)


# Own arithmetic (trade check values): legs in parallel, shunt, current of a channel.
@pytest.mark.parametrize(
    ("supply", "legs", "shunt", "amps"),
    [(3.3, 176.786, 130.263, 14.707e-3), (5.0, 267.857, 104.167, 16.053e-3)],
)
@pytest.mark.parametrize("shape", [Shape.WEIGHTED, Shape.SEGMENTED, Shape.EQUAL])
def test_matched_ladders(shape: Shape, supply: float, legs: float, shunt: float, amps: float) -> None:
    driver = Driver(supply)
    network = make_ladder(LadderWish(shape, 4, matched=True), driver, LOAD)

    levels = solve_levels(network, driver, LOAD)
    assert next(r.ohms for r in network.resistors if r.id == "RS") == pytest.approx(shunt, abs=1e-3)
    assert 1 / (1 / levels.source_ohms - 1 / shunt) == pytest.approx(legs, abs=1e-2)
    assert levels.source_ohms == pytest.approx(75.0)
    assert levels.volts_by_code[-1] == pytest.approx(0.7)
    assert levels.supply_amps.max() == pytest.approx(amps, rel=1e-3)


def test_a_matched_r2r_ladder_is_75_ohms_too() -> None:
    levels = solve_levels(make_ladder(LadderWish(Shape.R2R, 4, matched=True), Driver(), LOAD), Driver(), LOAD)

    assert (levels.source_ohms, levels.volts_by_code[-1]) == pytest.approx((75.0, 0.7))


# Own arithmetic: one value only, with its full scale and the number of parts.
@pytest.mark.parametrize(
    ("bits", "ohms", "volts", "parts"), [(3, 1000.0, 0.686, 5), (4, 1000.0, 0.724, 9), (2, 820.0, 0.711, 3)]
)
def test_ladders_of_one_value(bits: int, ohms: float, volts: float, parts: int) -> None:
    network = make_ladder(LadderWish(Shape.EQUAL, bits, values=(ohms,)), Driver(), LOAD)

    line = linearity(solve_levels(network, Driver(), LOAD).volts_by_code)
    assert line.full_scale_volts == pytest.approx(volts, abs=5e-4)
    assert line.max_dnl_lsb == pytest.approx(0.0, abs=1e-9)
    assert {r.ohms for r in network.resistors} == {ohms}
    assert len(network.resistors) == parts
    assert recognise(network) is Topology.WEIGHTED


def test_one_value_with_pins_of_40_ohms() -> None:
    driver = Driver(3.3, 40.0, 40.0)
    network = make_ladder(LadderWish(Shape.EQUAL, 3, values=(1000.0,)), driver, LOAD)

    line = linearity(solve_levels(network, driver, LOAD).volts_by_code)
    assert line.full_scale_volts == pytest.approx(0.655, abs=5e-4)
    assert line.dnl_lsb.min() == pytest.approx(-0.15, abs=5e-3)


@pytest.mark.parametrize("shape", [Shape.WEIGHTED, Shape.R2R, Shape.SEGMENTED])
@pytest.mark.parametrize("bits", range(2, 9))
@pytest.mark.parametrize("series", [Series.E12, Series.E24, Series.E48])
def test_sized_ladders_climb(shape: Shape, bits: int, series: Series) -> None:
    network = make_ladder(LadderWish(shape, bits, series=series), Driver(), LOAD)

    line = linearity(solve_levels(network, Driver(), LOAD).volts_by_code)
    assert line.monotonic
    assert line.full_scale_volts == pytest.approx(0.7, rel=0.05)


def test_names_do_not_matter_but_the_coding_does() -> None:
    network = segmented(5, 2, (1e3, 2e3, 4e3, 8e3), shunt_ohms=130.0, series_ohms=10.0)

    assert recognise(network) is Topology.SEGMENTED
    assert recognise(Network(network.pins, network.resistors)) is Topology.WEIGHTED
