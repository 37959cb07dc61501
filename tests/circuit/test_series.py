"""Preferred values: nearest, neighbours and steps."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.circuit.series import Series, coarser, is_in, nearest, neighbours, series_values, step

OHMS = st.floats(min_value=1e-3, max_value=1e9)
SERIES = st.sampled_from(Series)


@pytest.mark.parametrize(
    ("ohms", "steps", "reached"),
    [
        (510.0, 1, 560.0),
        (510.0, -1, 470.0),
        (500.0, 1, 510.0),
        (500.0, -1, 470.0),
        (500.0, 0, 500.0),
        (910.0, 1, 1000.0),
        (1000.0, -1, 910.0),
        (500.0, 2, 560.0),
        (4.7e-3, -24, 4.7e-4),
    ],
)
def test_steps_along_e24(ohms: float, steps: int, reached: float) -> None:
    assert step(ohms, Series.E24, steps) == reached


def test_nearest_has_the_smallest_error() -> None:
    assert nearest(4000.0, Series.E24) == 3900.0
    assert nearest(4178.6, Series.E24) == 4300.0
    assert nearest(500.0, Series.E96) == 499.0
    assert nearest(1050.0, Series.E24) == 1000.0  # as far from 1100; the lower wins


def test_membership_ignores_rounding_noise() -> None:
    assert is_in(0.1 + 0.2, Series.E24)
    assert is_in(4700 * (1 - 1e-12), Series.E24)
    assert not is_in(4000.0, Series.E24)


def test_shift_steps_along_the_series_with_half_the_steps() -> None:
    assert [coarser(series) for series in Series] == [
        Series.E3,
        Series.E3,
        Series.E6,
        Series.E12,
        Series.E24,
        Series.E48,
        Series.E96,
    ]


@given(ohms=OHMS, series=SERIES)
def test_neighbours_enclose_the_value(ohms: float, series: Series) -> None:
    low, high = neighbours(ohms, series)

    assert low < ohms < high
    assert is_in(low, series)
    assert is_in(high, series)
    assert high / low < 10.0 ** (2.2 / series.value) * 1.05


@given(ohms=OHMS, series=SERIES)
def test_nearest_is_a_member_and_no_member_is_nearer(ohms: float, series: Series) -> None:
    found = nearest(ohms, series)

    assert is_in(found, series)
    assert all(abs(found - ohms) <= abs(other - ohms) * (1 + 1e-12) for other in neighbours(found, series))


@given(series=SERIES, place=st.integers(0, 191), decade=st.integers(-3, 8), steps=st.integers(-400, 400))
def test_a_step_there_and_back_is_exact(series: Series, place: int, decade: int, steps: int) -> None:
    start = float(f"{round(series_values(series)[place % series.value] * 100)}e{decade - 2}")

    assert step(step(start, series, steps), series, -steps) == start


@given(series=SERIES, ohms=OHMS)
def test_a_decade_is_as_many_steps_as_the_series_is_named_for(series: Series, ohms: float) -> None:
    start = nearest(ohms, series)

    assert math.isclose(step(start, series, series.value), 10.0 * start)
