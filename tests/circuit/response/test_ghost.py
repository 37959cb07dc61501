import math

import pytest

from workbench.circuit.network import Cable, Driver, Load, Network, Resistor
from workbench.circuit.response.ghost import first_ghost
from workbench.circuit.response.path import find_path

ONE = Network(("bit0",), (Resistor("R1", "bit0", "out", 278.571),))
SOURCE = (278.571 - 75) / (278.571 + 75)


def ghost(load, cable, rise_s=2e-9):
    return first_ghost(find_path(ONE, Driver(rise_s=rise_s), load, cable))


def test_there_is_none_without_a_cable():
    assert ghost(Load(ohms=82.0), None) is None


@pytest.mark.parametrize("metres", [0.01, 0.3, 30.0])
def test_between_resistances_it_is_the_two_reflections_however_short_the_cable(metres):
    found = ghost(Load(ohms=82.0), Cable(metres))

    assert found.ratio == pytest.approx(SOURCE * (82 - 75) / (82 + 75), rel=1e-6)
    assert found.delay_s == pytest.approx(2 * metres / (0.66 * 299_792_458))


@pytest.mark.parametrize("metres", [0.1, 10.0])
def test_capacitance_alone_sends_a_spike_back(metres):
    # Of a step, seen behind the lag it makes: -(t / lag) exp(-t / lag), at its farthest after one lag.
    found = ghost(Load(farads=20e-12), Cable(metres), rise_s=0.0)

    assert found.ratio == pytest.approx(-SOURCE / math.e, rel=1e-3)


def test_a_slow_edge_makes_a_small_spike():
    # A slope of 1 / rise on a capacitor: lag / rise, before the settled echo of 82 ohm.
    lag_s = 5e-12 * 37.5
    found = ghost(Load(farads=5e-12), Cable(10.0), rise_s=50e-9)

    assert found.ratio == pytest.approx(-SOURCE * lag_s / 50e-9, rel=1e-3)


def test_loss_weakens_it_by_the_two_passages_more():
    # Late an edge lacks sqrt(k / (pi t)); k grows with the square of the passages.
    cable = Cable(10.0, loss_db_per_m=0.05)
    k = (0.5 * math.log(10) / 20) ** 2 / (math.pi * 100e6)
    trip_s = 20 / (0.66 * 299_792_458)
    late = [math.erfc(passages * math.sqrt(k / (trip_s - 1e-9)) / 2) for passages in (1, 3)]

    found = ghost(Load(ohms=90.0), cable)

    assert found.ratio == pytest.approx(SOURCE * 15 / 165 * late[1] / late[0], rel=1e-4)
