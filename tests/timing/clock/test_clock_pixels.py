from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.timing.clock.pixels import (
    edge_phases,
    line_clocks,
    mean_early,
    pixel_clocks,
    pixel_starts,
)

DIVIDERS = st.builds(Fraction, st.integers(256, 20_000), st.just(256))
FINE_DIVIDERS = st.builds(Fraction, st.integers(1 << 24, 1 << 41), st.just(1 << 24))
TOTALS = st.integers(2, 8192)
LINES = st.integers(-1, 8191)


@given(DIVIDERS, st.integers(1, 2000))
def test_pixels_are_one_of_two_lengths_and_add_up(divider: Fraction, count: int) -> None:
    clocks = pixel_clocks(divider, count)

    assert set(clocks.tolist()) <= {int(divider), int(divider) + 1}
    assert clocks.sum() == count * divider // 1


@given(DIVIDERS, st.integers(1, 500), st.integers(1, 500))
def test_pixels_run_on_from_line_to_line(divider: Fraction, first: int, count: int) -> None:
    whole = pixel_clocks(divider, first + count)

    assert pixel_clocks(divider, count, first=first).tolist() == whole[first:].tolist()


def test_a_whole_divider_makes_even_pixels() -> None:
    assert set(pixel_clocks(Fraction(5), 800).tolist()) == {5}


@pytest.mark.parametrize(
    ("divider", "lengths"), [(Fraction(1352, 256), {4225}), (Fraction(1353, 256), {4228, 4229})]
)
def test_lines_are_steady_where_their_clocks_are_whole(divider: Fraction, lengths: set[int]) -> None:
    assert set(line_clocks(divider, 800, 525).tolist()) == lengths


@given(FINE_DIVIDERS | DIVIDERS, TOTALS, LINES)
def test_starts_are_whole_clocks_never_late_and_early_by_less_than_one(
    divider: Fraction, h_total: int, line: int
) -> None:
    first = line * h_total
    starts = pixel_starts(divider, first, h_total)

    for pixel in (0, 1, h_total // 2, h_total - 1, h_total):
        exact = (first + pixel) * divider // 1 / divider - first
        assert starts[pixel] == pytest.approx(float(exact), abs=1e-9)
    early = np.arange(h_total + 1) - starts
    assert early.min() >= 0.0
    assert early.max() < 1 / divider


@given(DIVIDERS, TOTALS, LINES)
def test_the_pixels_of_a_line_are_of_two_lengths_and_add_up_to_it(
    divider: Fraction, h_total: int, line: int
) -> None:
    starts = pixel_starts(divider, line * h_total, h_total)
    clocks = np.diff(starts) * float(divider)

    assert np.abs(clocks - np.round(clocks)).max() < 1e-6
    assert set(np.round(clocks).astype(int).tolist()) <= {int(divider), int(divider) + 1}
    length = (line + 1) * h_total * divider // 1 - line * h_total * divider // 1
    assert clocks.sum() == pytest.approx(length)


@given(DIVIDERS, TOTALS, LINES)
def test_a_line_starts_where_the_one_before_ends(divider: Fraction, h_total: int, line: int) -> None:
    this, after = (pixel_starts(divider, n * h_total, h_total) for n in (line, line + 1))

    assert this[-1] - h_total == pytest.approx(after[0], abs=1e-9)


@given(st.integers(1, 40), st.integers(1, 11), TOTALS, st.integers(0, 100))
def test_the_mean_is_that_of_all_lines_until_they_repeat(
    whole: int, fraction: int, h_total: int, pixel: int
) -> None:
    divider = whole + Fraction(fraction, 12)
    lines = np.arange(divider.denominator)

    early = edge_phases(divider, lines * h_total + pixel) / divider.numerator

    assert mean_early(divider, h_total, pixel) == pytest.approx(early.mean(), abs=1e-12)
    assert (np.ptp(early) == 0.0) == (h_total % divider.denominator == 0)
