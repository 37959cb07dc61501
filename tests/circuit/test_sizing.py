"""Sized ladders: the closed forms, and near values that beat plain rounding."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.linearity import linearity
from workbench.circuit.near import near_r2r, near_weighted
from workbench.circuit.network import Driver, Load, Network
from workbench.circuit.series import Series, is_in, nearest
from workbench.circuit.sizing import ideal_r2r, ideal_weighted
from workbench.circuit.solution import solve_levels
from workbench.circuit.wish import LadderWish, Shape, make_ladder
from workbench.errors import NetworkError

LOAD = Load()
V33, V5 = Driver(3.3), Driver(5.0)


def worst_error(network: Network, driver: Driver) -> float:
    """Return the largest distance from the even staircase 0 … 0.700 V. [V]"""
    volts = solve_levels(network, driver, LOAD).volts_by_code
    return float(np.abs(volts - np.linspace(0.0, 0.7, network.n_codes)).max())


def climbs(network: Network) -> bool:
    """Return whether no step falls."""
    return linearity(solve_levels(network, V33, LOAD).volts_by_code).monotonic


def is_sound(network: Network) -> bool:
    """Return whether all steps are even to half an LSB and white is right within 5 %."""
    line = linearity(solve_levels(network, V33, LOAD).volts_by_code)
    return line.max_dnl_lsb <= 0.5 and abs(line.full_scale_volts - 0.7) <= 0.035


# Own arithmetic: with 75 Ω and 3.3 V all legs together are 75 · 2.6 / 0.7 = 278.571 Ω, and leg k
# of n is that times (2^n - 1) / 2^k; with 5 V they are 460.714 Ω.
@pytest.mark.parametrize(
    ("bits", "driver", "ohms"),
    [
        (2, V33, (417.857, 835.714)),
        (3, V33, (487.5, 975.0, 1950.0)),
        (4, V33, (522.321, 1044.643, 2089.286, 4178.571)),
        (3, V5, (806.25, 1612.5, 3225.0)),
        (3, Driver(3.3, 40.0, 40.0), (447.5, 935.0, 1910.0)),
    ],
)
def test_ideal_weighted_legs(bits: int, driver: Driver, ohms: tuple[float, ...]) -> None:
    assert ideal_weighted(bits, driver, LOAD) == pytest.approx(ohms, abs=5e-4)


# Own arithmetic: R = 75 · (3.3 · (1 - 2^-n) / 0.7 - 1).
@pytest.mark.parametrize(("bits", "r_ohms"), [(3, 234.375), (4, 256.473), (5, 267.522), (6, 273.047)])
def test_ideal_r2r_values(bits: int, r_ohms: float) -> None:
    assert ideal_r2r(bits, V33, LOAD) == pytest.approx((r_ohms, 2.0 * r_ohms), abs=1e-3)


def test_a_shunt_can_match_the_source_to_the_cable() -> None:
    # Own arithmetic: legs of 176.786 Ω together beside a shunt of 130.263 Ω make 75 Ω.
    legs = ideal_weighted(3, V33, LOAD, shunt_ohms=130.263)

    levels = solve_levels(weighted(3, legs, shunt_ohms=130.263), V33, LOAD)
    assert 1.0 / sum(1.0 / leg for leg in legs) == pytest.approx(176.786, abs=1e-3)
    assert levels.source_ohms == pytest.approx(75.0, abs=1e-3)
    assert levels.volts_by_code[-1] == pytest.approx(0.7)


@given(
    bits=st.integers(1, 8),
    supply=st.floats(2.0, 12.0),
    shunt=st.none() | st.floats(100.0, 1e4),
    series=st.sampled_from([0.0, 20.0]),
)
def test_ideal_values_give_an_even_staircase_to_700_millivolts(bits, supply, shunt, series) -> None:
    driver = Driver(supply)
    given_series = series or None
    legs = ideal_weighted(bits, driver, LOAD, shunt_ohms=shunt, series_ohms=series)
    pair = ideal_r2r(bits, driver, LOAD, shunt_ohms=shunt, series_ohms=series)

    for network in (
        weighted(bits, legs, shunt_ohms=shunt, series_ohms=given_series),
        r2r(bits, *pair, shunt_ohms=shunt, series_ohms=given_series),
    ):
        assert worst_error(network, driver) < 1e-9


def test_pins_of_some_ohms_are_allowed_for() -> None:
    driver = Driver(3.3, 25.0, 25.0)
    levels = solve_levels(make_ladder(LadderWish(Shape.WEIGHTED, 6), driver, LOAD), driver, LOAD)

    assert levels.volts_by_code[-1] == pytest.approx(0.7)
    assert np.abs(linearity(levels.volts_by_code).dnl_lsb).max() < 1e-9


def test_two_monitors_take_lighter_legs() -> None:
    load = Load(75.0, monitors=2)
    levels = solve_levels(make_ladder(LadderWish(Shape.R2R, 4), V33, load), V33, load)

    assert levels.volts_by_code[-1] == pytest.approx(0.7)


def test_without_a_termination_values_are_for_75_ohms() -> None:
    assert ideal_weighted(3, V33, Load(None)) == ideal_weighted(3, V33, LOAD)


@pytest.mark.parametrize("series", [Series.E6, Series.E12, Series.E24, Series.E96])
@pytest.mark.parametrize("bits", [1, 2, 5, 8])
def test_near_legs_are_in_the_series_and_climb(bits: int, series: Series) -> None:
    ideal = ideal_weighted(bits, V33, LOAD)
    rounded = weighted(bits, [nearest(ohms, series) for ohms in ideal])

    near = near_weighted(ideal, series, V33, LOAD)

    assert all(is_in(ohms, series) for ohms in near)
    assert climbs(weighted(bits, near))
    assert worst_error(weighted(bits, near), V33) <= worst_error(rounded, V33) + 1e-12 or not is_sound(
        rounded
    )


@pytest.mark.parametrize("series", [Series.E12, Series.E24, Series.E96])
@pytest.mark.parametrize("bits", [2, 4, 8])
def test_near_r2r_is_in_the_series_and_climb(bits: int, series: Series) -> None:
    ideal = ideal_r2r(bits, V33, LOAD)
    rounded = r2r(bits, *(nearest(ohms, series) for ohms in ideal))

    near = near_r2r(bits, ideal, series, V33, LOAD)

    assert all(is_in(ohms, series) for ohms in near)
    assert climbs(r2r(bits, *near))
    assert worst_error(r2r(bits, *near), V33) <= worst_error(rounded, V33) + 1e-12 or not is_sound(rounded)


@pytest.mark.parametrize(
    ("driver", "shape"),
    [
        (Driver(0.7), Shape.WEIGHTED),
        (Driver(1.0), Shape.R2R),
        (Driver(3.3, 600.0, 600.0), Shape.WEIGHTED),
        (Driver(3.3, 600.0, 600.0), Shape.R2R),
    ],
)
def test_what_cannot_reach_white_is_refused(driver: Driver, shape: Shape) -> None:
    with pytest.raises(NetworkError, match="no resistors bring white to the wanted level"):
        make_ladder(LadderWish(shape, 1), driver, LOAD)


@pytest.mark.parametrize("bits", range(2, 6))
def test_near_r2r_has_even_steps_where_there_are_pairs_with_even_steps(bits: int) -> None:
    pair = near_r2r(bits, ideal_r2r(bits, V33, LOAD), Series.E24, V33, LOAD)

    steps = linearity(solve_levels(r2r(bits, *pair), V33, LOAD).volts_by_code)
    assert steps.max_dnl_lsb <= 0.5
