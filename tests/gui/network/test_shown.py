import pytest

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load, Network, Zeros
from workbench.circuit.solution import solve_levels
from workbench.gui.network.shown import PinState, Source, pick_code, shown_figures, sync_volts
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channel, Project

TIDE = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])
DRIVER, LOAD = Driver(), Load()


def shown(code: int, driver: Driver = DRIVER, floating: frozenset[int] = frozenset()):
    return shown_figures(TIDE, solve_levels(TIDE, driver, LOAD), driver, LOAD, code, floating)


def test_code_22_of_the_demo_ladder_reads_as_in_the_pictures() -> None:
    figures = shown(22)

    # V = 3.3 V · (1/500 + 1/2k + 1/4k) / (sum of all legs + 1/75 Ω), by the node equation.
    siemens = 1 / 500 + 1 / 2000 + 1 / 4000
    every = sum(1 / ohms for ohms in (500, 1e3, 2e3, 4e3, 8e3))
    volts = 3.3 * siemens / (every + 1 / 75)
    assert figures.loaded_volts == pytest.approx(volts)
    assert figures.open_volts == pytest.approx(3.3 * siemens / every)
    assert figures.leg_amps[0] == pytest.approx((3.3 - volts) / 500)
    assert figures.leg_amps[1] == pytest.approx(-volts / 1e3)
    assert figures.load_amps == pytest.approx(volts / 75)
    assert [state.value for state in figures.states] == list("10110")


def test_a_pin_that_is_let_go_draws_nothing_and_leaves_the_rest_to_divide() -> None:
    figures = shown(22, floating=frozenset({0}))

    kept = 1 / 1e3 + 1 / 2e3 + 1 / 4e3 + 1 / 8e3
    assert figures.states[0] is PinState.FLOATING
    assert figures.leg_amps[0] == 0.0
    assert figures.loaded_volts == pytest.approx(3.3 * (1 / 2e3 + 1 / 4e3) / (kept + 1 / 75))
    assert figures.code == 22


def test_all_pins_let_go_show_nothing_and_no_error() -> None:
    figures = shown(31, floating=frozenset(range(5)))

    assert figures.loaded_volts == 0.0
    assert set(figures.states) == {PinState.FLOATING}


def test_zeros_that_float_are_written_so() -> None:
    figures = shown(16, Driver(zeros=Zeros.FLOATING))

    assert [state.value for state in figures.states] == ["1", "–", "–", "–", "–"]


def test_white_of_07_volts_is_as_light_as_can_be() -> None:
    assert shown(31).lightness == pytest.approx(100.0)
    assert shown(0).lightness == 0.0
    assert (shown(31).grey, shown(0).grey) == (255, 0)


def test_a_network_without_pins_is_shown_without_a_crash() -> None:
    network = Network((), ())

    figures = shown_figures(network, solve_levels(network, DRIVER, LOAD), DRIVER, LOAD, 0)

    assert (figures.states, figures.loaded_volts) == ((), 0.0)


def test_the_held_code_wins_over_the_pixel_and_the_pixel_over_white(project: Project) -> None:
    result = Pipeline().run(project)
    pixel = project.mode.h.blanking

    assert pick_code(Channel.RED, result, None, None) == (31, Source.WHITE)
    assert pick_code(Channel.RED, result, None, 0) == (0, Source.PIXEL)
    assert pick_code(Channel.RED, result, None, pixel)[1] is Source.PIXEL
    assert pick_code(Channel.RED, result, 22, pixel) == (22, Source.HELD)
    assert pick_code(Channel.RED, result, 99, None) == (31, Source.HELD)
    assert pick_code(Channel.RED, result, None, 10**6) == (31, Source.WHITE)


def test_negative_syncs_rest_high_and_fall_in_their_pulse(project: Project) -> None:
    result = Pipeline().run(project)

    assert sync_volts(project, result, None) == (3.3, 3.3)
    h, v = sync_volts(project, result, project.mode.h.front_porch + 20)
    assert h == pytest.approx(0.0, abs=1e-6)
    assert v == pytest.approx(3.3, abs=1e-6)
