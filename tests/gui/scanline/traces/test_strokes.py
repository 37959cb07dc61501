"""Few points draw the same line; dashes break only what is level."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.gui.scanline.traces.strokes import broken_line, corners, thinned


def settling(n: int = 6000) -> np.ndarray:
    """Return a level, an edge that settles, and a level again."""
    after = np.maximum(np.arange(n) - n // 2, 0)
    return (0.743 * (1 - np.exp(-after / 9.0))).astype(np.float32)


def test_corners_draw_the_samples_exactly() -> None:
    trace = settling()

    (kept,) = corners(trace[None])

    again = np.interp(np.arange(len(trace)), kept, trace[kept])
    assert np.abs(again - trace).max() < 1e-3 * 0.743
    assert len(kept) < 200


def test_a_flat_line_is_its_two_ends() -> None:
    kept = corners(np.full((2, 5000), 0.7, np.float32))

    assert [row.tolist() for row in kept] == [[0, 4999], [0, 4999]]


@pytest.mark.parametrize("step", [0.04, 0.5, 3.0, 20.0])
def test_thinned_points_draw_the_same_line(step: float) -> None:
    trace = settling()
    (kept,) = corners(trace[None])
    y = 500 - trace[kept] * 600

    seen = thinned(kept, y, step)

    again = np.interp(np.arange(len(trace)), kept[seen], y[seen])
    # Off by a fifth of a pixel upward, or within what a pixel sideways brings.
    reach = int(1.0 / step) + 1
    true = np.pad(500 - trace.astype(float) * 600, reach, mode="edge")
    windows = np.lib.stride_tricks.sliding_window_view(true, 2 * reach + 1)
    assert (again >= windows.min(axis=1) - 0.2).all()
    assert (again <= windows.max(axis=1) + 0.2).all()


@pytest.mark.parametrize("pulse", [(0.3, 0.7, 0.3), (0.7, 0.7, 0.7), (0.7,), (0.2, 0.7, 0.7, 0.1)])
def test_a_pulse_within_a_pixel_keeps_its_height(pulse: tuple[float, ...]) -> None:
    trace = np.zeros(1000)
    trace[500 : 500 + len(pulse)] = pulse
    (kept,) = corners(trace[None])

    seen = thinned(kept, -trace[kept] * 600, 0.04)

    assert trace[kept[seen]].max() == 0.7
    assert trace[kept[seen]][[0, -1]].tolist() == [0.0, 0.0]


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
