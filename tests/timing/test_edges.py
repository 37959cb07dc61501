from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.errors import TimingError
from workbench.timing.custom import MAX_TOTAL
from workbench.timing.edges import lines_of, move_edge, pixels_of, with_counts
from workbench.timing.mode import Axis, Polarity, Region
from workbench.timing.search import find_mode

MODE = find_mode("640x480@60")
PLAIN = replace(MODE.h, border=0)
AXES = st.builds(
    Axis,
    st.integers(1, 2000),
    st.integers(0, 2000),
    st.integers(1, 2000),
    st.integers(0, 2000),
    st.sampled_from(Polarity),
)


@pytest.mark.parametrize(
    ("before", "by", "counts", "total"),
    [
        (Region.FRONT_PORCH, 4, (20, 92, 48, 640), 800),
        (Region.SYNC, -6, (16, 90, 54, 640), 800),
        (Region.BACK_PORCH, 8, (16, 96, 56, 632), 800),
        (Region.ACTIVE, 8, (8, 96, 48, 648), 800),
        (Region.ACTIVE, 100, (0, 96, 48, 656), 800),
        (Region.SYNC, -1000, (16, 1, 143, 640), 800),
    ],
)
def test_neighbour_gives_way_when_the_total_stays(before, by, counts, total) -> None:
    moved = move_edge(PLAIN, before, by, keep_total=True)

    assert (moved.front_porch, moved.sync, moved.back_porch, moved.active) == counts
    assert moved.total == total


@pytest.mark.parametrize(
    ("before", "by", "counts"),
    [
        (Region.FRONT_PORCH, 4, (20, 96, 48, 640)),
        (Region.FRONT_PORCH, -40, (0, 96, 48, 640)),
        (Region.ACTIVE, -700, (16, 96, 48, 1)),
        (Region.BACK_PORCH, 100_000, (16, 96, 48 + MAX_TOTAL - 800, 640)),
    ],
)
def test_everything_behind_moves_along_when_it_does_not(before, by, counts) -> None:
    moved = move_edge(PLAIN, before, by, keep_total=False)

    assert (moved.front_porch, moved.sync, moved.back_porch, moved.active) == counts


def test_porches_keep_their_border() -> None:
    assert move_edge(MODE.h, Region.FRONT_PORCH, -100, keep_total=False).front_porch == 8


@given(AXES, st.sampled_from(Region), st.integers(-10_000, 10_000), st.booleans())
def test_any_move_leaves_a_possible_axis(axis: Axis, before: Region, by: int, keep_total: bool) -> None:
    moved = move_edge(axis, before, by, keep_total=keep_total)

    assert min(moved.active, moved.sync) >= 1
    assert min(moved.front_porch, moved.back_porch) >= 0
    assert moved.total <= MAX_TOTAL
    assert moved.total == axis.total or not keep_total


def test_a_changed_mode_says_what_it_was_made_from_and_finds_back() -> None:
    wider = with_counts(MODE, h=replace(MODE.h, back_porch=50))
    wider_still = with_counts(wider, pixel_clock_hz=25_200_000)

    assert (wider.source, wider.name) == ("custom, from VESA DMT 0x04", "640x480@59.79")
    assert wider_still.source == "custom, from VESA DMT 0x04"
    assert with_counts(wider, h=MODE.h) == MODE
    assert with_counts(MODE) is MODE


def test_impossible_counts_are_refused() -> None:
    with pytest.raises(TimingError, match="sync is 0"):
        with_counts(MODE, v=replace(MODE.v, sync=0))


def test_times_become_counts() -> None:
    assert pixels_of(MODE, 1.907e-6) == 48
    assert lines_of(MODE, 64e-6) == 2


@pytest.mark.parametrize("seconds", [-1e-9, 1.0, float("nan"), float("inf")])
def test_impossible_times_are_refused(seconds: float) -> None:
    with pytest.raises(TimingError, match="outside 0"):
        pixels_of(MODE, seconds)
