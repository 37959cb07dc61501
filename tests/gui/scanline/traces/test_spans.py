"""Column spans against the plain definition: nothing inside a column may be left out."""

import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.gui.scanline.traces.spans import (
    bands,
    column_runs,
    column_spans,
    dash_gaps,
    widened,
    with_gaps,
)


def plain_spans(trace: np.ndarray, start: float, stop: float, columns: int) -> list[tuple[float, float]]:
    """Return lowest and highest of the polyline in each column, one column at a time."""
    edges = np.linspace(start, stop, columns + 1)
    spans = []
    for left, right in itertools.pairwise(edges):
        inside = trace[np.arange(int(np.ceil(left)), int(np.floor(right)) + 1)]
        ends = np.interp([left, right], np.arange(len(trace)), trace)
        values = np.concatenate((inside, ends))
        spans.append((float(values.min()), float(values.max())))
    return spans


@given(
    seed=st.integers(0, 1000),
    n=st.integers(4, 400),
    columns=st.integers(1, 60),
    part=st.tuples(st.floats(0, 0.4), st.floats(0.6, 1)),
)
def test_spans_are_those_of_the_line(seed: int, n: int, columns: int, part: tuple[float, float]) -> None:
    trace = np.random.default_rng(seed).standard_normal(n)
    start, stop = part[0] * (n - 1), part[1] * (n - 1)

    low, high = column_spans(trace[None], start, stop, columns)

    expected = np.array(plain_spans(trace, start, stop, columns))
    # A column may reach into its neighbour by a sample that lies on their edge, never less.
    assert (low[0] <= expected[:, 0] + 1e-9).all()
    assert (high[0] >= expected[:, 1] - 1e-9).all()
    assert low[0].min() >= trace.min() - 1e-9
    assert high[0].max() <= trace.max() + 1e-9


def test_a_glitch_of_one_sample_is_never_lost() -> None:
    trace = np.zeros((1, 26_000), np.float32)
    trace[0, 13_337] = 0.7

    _, high = column_spans(trace, 0, 25_999, 1000)

    assert high.max() == pytest.approx(0.7)


def test_neighbouring_columns_touch() -> None:
    trace = np.linspace(0, 1, 50)[None] ** 2

    low, high = column_spans(trace, 3, 40, 25)

    assert (low[0, 1:] <= high[0, :-1] + 1e-12).all()


def test_each_trace_keeps_its_own_spans() -> None:
    traces = np.stack((np.zeros(100), np.ones(100)))

    low, high = column_spans(traces, 0, 99, 10)

    assert (low[0] == 0).all()
    assert (high[0] == 0).all()
    assert (low[1] == 1).all()


def test_a_wide_pen_makes_an_edge_as_thick_as_a_level() -> None:
    low = np.array([[0.0, 0.0, 0.0, 1.0, 1.0]])
    high = np.array([[0.0, 0.0, 1.0, 1.0, 1.0]])

    wide_low, wide_high = widened(low, high, 2)

    assert wide_low.tolist() == [[0.0, 0.0, 0.0, 1.0]]
    assert wide_high.tolist() == [[0.0, 1.0, 1.0, 1.0]]


@pytest.mark.parametrize(
    ("pattern", "expected"),
    [
        ((), "------------"),
        ((3, 2), "---  ---  --"),
        ((4, 1, 1, 1), "---- - ---- "),
    ],
    ids=["solid", "dash", "dash-dot"],
)
def test_gaps_follow_the_pattern(pattern: tuple[int, ...], expected: str) -> None:
    gaps = dash_gaps(12, 0, pattern)

    assert "".join(" " if gap else "-" for gap in gaps) == expected


@pytest.mark.parametrize("phase", [-7, -1, 0, 3, 1000])
def test_dashes_stay_with_the_signal_when_the_view_moves(phase: int) -> None:
    whole = dash_gaps(3000, -1000, (5, 2, 1, 2))

    assert (dash_gaps(40, phase, (5, 2, 1, 2)) == whole[1000 + phase : 1040 + phase]).all()


def test_an_edge_is_whole_where_a_gap_falls_on_it() -> None:
    low, high = np.zeros(6), np.array([0.0, 0.0, 9.0, 0.0, 0.0, 0.0])
    gaps = np.array([False, True, True, True, False, False])

    kept_low, kept_high = with_gaps(low, high, gaps, steep=3.0)

    assert (kept_low <= kept_high).tolist() == [True, False, True, False, True, True]
    assert kept_high[2] == 9.0


def test_runs_join_equal_spans_and_leave_gaps_out() -> None:
    low = np.array([1.0, 1.0, 1.0, np.inf, np.inf, 1.0, 0.0])
    high = np.array([1.0, 1.0, 1.0, -np.inf, -np.inf, 1.0, 1.0])

    first, after = column_runs(low, high)

    assert list(zip(first, after, strict=True)) == [(0, 3), (5, 6), (6, 7)]


def test_stripes_are_a_band_and_a_single_edge_is_none() -> None:
    level = np.concatenate((np.zeros(100), np.tile([0.0, 50.0], 100), np.zeros(100)))
    low, high = np.minimum(level[:-1], level[1:]), np.maximum(level[:-1], level[1:])

    banded, band_low, band_high = bands(low, high, reach=4, tall=6.0)

    assert banded[110:290].all()
    assert not banded[:90].any()
    assert not banded[310:].any()
    assert (band_low[110:290] == 0).all()
    assert (band_high[110:290] == 50).all()


@pytest.mark.parametrize("rise", [1.0, 3.0, 20.0])
def test_a_slope_is_no_band_however_steep(rise: float) -> None:
    level = np.arange(200) * rise

    banded, _, _ = bands(level[:-1], level[1:], reach=4, tall=6.0)

    assert not banded.any()


def test_a_lone_edge_is_no_band() -> None:
    low, high = np.zeros(200), np.zeros(200)
    high[100:] = low[101:] = 300.0

    banded, _, _ = bands(low, high, reach=4, tall=6.0)

    assert not banded.any()
