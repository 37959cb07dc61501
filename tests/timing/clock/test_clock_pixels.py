from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.timing.clock.pixels import line_clocks, pixel_clocks

DIVIDERS = st.builds(Fraction, st.integers(256, 20_000), st.just(256))


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
