"""Where things lie, and names that do not cover each other."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.gui.scanline.lanes.places import arrange, spread


def px(design: float) -> int:
    return round(design)


@given(st.integers(300, 2600), st.integers(240, 1600))
def test_nothing_overlaps_at_any_size(width: int, height: int) -> None:
    places = arrange(width, height, px)

    rows = (places.names, places.strip, places.colour, places.sync, places.axis)
    for upper, lower in itertools.pairwise(rows):
        assert upper.bottom() <= lower.top()
        assert (upper.left(), upper.right()) == (lower.left(), lower.right())
    assert places.colour.height() >= 60
    assert places.margin.left() == places.colour.right()


@pytest.mark.parametrize(("width", "folded"), [(1120, False), (740, True)])
def test_narrow_plots_fold(width: int, folded: bool) -> None:
    assert arrange(width, 700, px).folded is folded


@given(
    st.lists(st.tuples(st.floats(0, 500), st.floats(10, 36)), max_size=8),
)
def test_spread_things_do_not_cover_each_other(things: list[tuple[float, float]]) -> None:
    wanted, sizes = [place for place, _ in things], [size for _, size in things]

    places = spread(wanted, sizes, 0.0, 500.0)

    order = sorted(range(len(things)), key=lambda i: (wanted[i], i))
    for upper, lower in itertools.pairwise(order):
        gap = (places[lower] - sizes[lower] / 2) - (places[upper] + sizes[upper] / 2)
        assert gap >= -1e-6
    assert all(place - size / 2 >= -1e-6 for place, size in zip(places, sizes, strict=True))
    assert all(place + size / 2 <= 500 + 1e-6 for place, size in zip(places, sizes, strict=True))


def test_things_far_apart_stay_where_they_are() -> None:
    assert spread([300.0, 100.0, 200.0], [18.0] * 3, 0.0, 500.0) == [300.0, 100.0, 200.0]


def test_things_at_one_place_lie_around_it() -> None:
    assert spread([100.0, 100.0, 100.0], [18.0] * 3, 0.0, 500.0) == [82.0, 100.0, 118.0]
