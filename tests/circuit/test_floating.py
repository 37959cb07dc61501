import pytest

from workbench.circuit.floating import levels_at
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load
from workbench.circuit.solution import solve_levels

TIDE = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])
DRIVER, LOAD = Driver(), Load()
LEVELS = solve_levels(TIDE, DRIVER, LOAD)


def test_without_floating_pins_the_levels_are_those_that_were_solved() -> None:
    at = levels_at(TIDE, LEVELS, DRIVER, LOAD, 22)

    assert at.levels is LEVELS
    assert (at.row, at.pins) == (22, (0, 1, 2, 3, 4))


def test_a_pin_that_is_let_go_leaves_the_rest_to_divide() -> None:
    at = levels_at(TIDE, LEVELS, DRIVER, LOAD, 22, {0})

    # The node equation of the four legs that stay, and 75 Ω; code 22 is 10110.
    every = 1 / 1e3 + 1 / 2e3 + 1 / 4e3 + 1 / 8e3 + 1 / 75
    assert at.volts == pytest.approx(3.3 * (1 / 2e3 + 1 / 4e3) / every)
    assert at.pins == (1, 2, 3, 4)


def test_the_bit_of_a_floating_pin_does_not_matter() -> None:
    one, other = (levels_at(TIDE, LEVELS, DRIVER, LOAD, code, {2}).volts for code in (0b10010, 0b10110))

    assert one == other


def test_all_pins_let_go_give_no_volts_and_no_error() -> None:
    assert levels_at(TIDE, LEVELS, DRIVER, LOAD, 31, range(5)).volts == 0.0
