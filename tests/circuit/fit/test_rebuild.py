import pytest

from workbench.circuit.fit.drawer import Arrangement, Leg, OwnedPart
from workbench.circuit.fit.rebuild import with_branches
from workbench.circuit.ladders import analyse, r2r, weighted
from workbench.circuit.network import Driver, Load
from workbench.circuit.solution import solve_levels

THREE = weighted(3, [500.0, 1000.0, 2000.0], shunt_ohms=390.0, node_farads=1e-12)
VALUES = (100.0, 220.0, 470.0)
EXPECTED = {
    Arrangement.SINGLE: 100.0,
    Arrangement.SERIES: 320.0,
    Arrangement.PARALLEL: 68.75,
    Arrangement.SERIES_OF_THREE: 790.0,
    Arrangement.PARALLEL_OF_THREE: 1 / (1 / 100 + 1 / 220 + 1 / 470),
    Arrangement.SERIES_WITH_PAIR: 100 + 220 * 470 / 690,
    Arrangement.PARALLEL_WITH_PAIR: 100 * 690 / 790,
}


@pytest.mark.parametrize("kind", Arrangement)
def test_a_leg_conducts_what_its_arrangement_says(kind):
    ohms = EXPECTED[kind]
    n_parts = sum(letter in "abc" for letter in kind.value)
    leg = Leg(ohms, kind, tuple(OwnedPart(value) for value in VALUES[:n_parts]))

    network = with_branches(THREE, {analyse(THREE).legs[1]: leg})

    found = analyse(network)
    assert found.legs[1].ohms == pytest.approx(leg.ohms)
    assert len(found.legs[1].parts) == n_parts
    assert solve_levels(network, Driver(), Load()).problems == ()


def test_parts_keep_name_place_and_rating_and_take_the_new_tolerance():
    leg = Leg(1020.0, Arrangement.SERIES, (OwnedPart(1000.0, tolerance=0.05), OwnedPart(20.0)))

    network = with_branches(THREE, {analyse(THREE).legs[1]: leg})

    assert [part.id for part in network.resistors] == ["R1", "R2", "R2b", "R3", "RS"]
    assert network.resistors[1].tolerance == 0.05
    assert network.capacitors == THREE.capacitors


def test_putting_single_parts_back_removes_the_inner_nodes():
    single = Leg(1000.0, Arrangement.SINGLE, (OwnedPart(1000.0),))
    pair = Leg(1020.0, Arrangement.SERIES, (OwnedPart(1000.0), OwnedPart(20.0)))
    split = with_branches(THREE, {analyse(THREE).legs[1]: pair})

    assert with_branches(split, {analyse(split).legs[1]: single}) == THREE


def test_every_branch_of_an_r2r_ladder_may_be_a_pair():
    ladder = r2r(4, 256.0)
    shape = analyse(ladder)
    pair = Leg(300.0, Arrangement.SERIES, (OwnedPart(100.0), OwnedPart(200.0)))

    network = with_branches(ladder, dict.fromkeys((*shape.legs, *shape.rungs, shape.terminator), pair))

    assert len({part.id for part in network.resistors}) == 16
    assert {branch.ohms for branch in (*analyse(network).legs, *analyse(network).rungs)} == {300.0}
