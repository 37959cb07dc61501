"""Few points draw the same line; dashes break only what is level."""

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from workbench.gui.scanline.traces.strokes import broken_line, corners, thinned


def settling(n: int = 400) -> np.ndarray:
    """Return a level, an edge that settles, and a level again."""
    t = np.arange(n)
    return np.where(t < 100, 0.0, 0.743 * (1 - np.exp(-np.maximum(t - 100, 0) / 9.0)))


def test_corners_draw_the_samples_exactly() -> None:
    trace = settling().astype(np.float32)

    (kept,) = corners(trace[None])

    again = np.interp(np.arange(len(trace)), kept, trace[kept])
    assert np.abs(again - trace).max() < 1e-3 * 0.743
    assert len(kept) < 200


def test_a_flat_line_is_its_two_ends() -> None:
    kept = corners(np.full((2, 5000), 0.7, np.float32))

    assert [row.tolist() for row in kept] == [[0, 4999], [0, 4999]]


def test_thinned_points_stay_within_a_tenth_of_a_pixel() -> None:
    trace = settling()
    (kept,) = corners(trace[None])
    y = 500 - trace[kept] * 600

    seen = thinned(kept, y)

    again = np.interp(np.arange(len(trace)), kept[seen], y[seen])
    assert np.abs(again - (500 - trace * 600)).max() < 0.2


def test_level_parts_are_dashed_and_edges_whole() -> None:
    x = np.array([0.0, 30.0, 31.0, 60.0])
    y = np.array([10.0, 10.0, 90.0, 90.0])

    cut_x, cut_y, joined = broken_line(x, y, (4.0, 2.0), 0.0)

    lengths = np.diff(cut_x)
    steep = np.abs(np.diff(cut_y)) > lengths
    assert joined[:-1][steep].all()
    assert not joined[:-1][~steep].all()
    drawn = lengths[joined[:-1] & ~steep].sum()
    assert 0.6 < drawn / lengths[~steep].sum() < 0.75


def test_no_pattern_joins_every_point() -> None:
    x, y, joined = broken_line(np.arange(5.0), np.zeros(5), (), 0.0)

    assert joined.all()
    assert len(x) == len(y) == 5


@given(st.floats(-500, 500))
def test_dashes_stay_with_the_origin(origin: float) -> None:
    x, y = np.array([0.0, 200.0]), np.zeros(2)
    cut_x, _, joined = broken_line(x, y, (6.0, 3.0), origin)

    starts = cut_x[:-1][joined[:-1] & np.append([False], ~joined[:-2])]

    assert np.allclose((starts - origin + 1e-6) % 9.0, 1e-6, atol=1e-5)
