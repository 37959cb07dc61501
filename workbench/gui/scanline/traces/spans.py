"""What a trace covers on the screen, column by column, as plain arrays.

A trace is drawn as one upright span a column of device pixels: the range of the samples that
fall into it. No glitch is lost however many samples a column holds, and the work depends on the
width of the window, not on the length of the record.
"""

import numpy as np
from numpy.typing import NDArray

__all__ = [
    "Runs",
    "bands",
    "column_runs",
    "column_spans",
    "dash_gaps",
    "widened",
    "with_gaps",
]

FloatArray = NDArray[np.floating]
BoolArray = NDArray[np.bool_]
IntArray = NDArray[np.intp]

Spans = tuple[FloatArray, FloatArray]
"""Lowest and highest value of every column."""
Runs = tuple[IntArray, IntArray]
"""First column of each run of equal spans, and the column after its last."""

_RESTLESS = 2.5
"""A trace that travels more than this many times the height of its range is up and down in it. [1]"""
_SAME = 0.02
"""Spans that differ by less belong to one run: no eye sees a fiftieth of a pixel. [px]"""


def column_spans(
    samples: FloatArray, start: float, stop: float, columns: int
) -> tuple[FloatArray, FloatArray]:
    """Return the lowest and highest value in every column.

    Parameters
    ----------
    samples : float array, shape (n_traces, n_samples)
        Evenly spaced samples, joined by straight lines; ``2 <= n_samples``.
    start, stop : float
        Sample positions at the left and right edge, ``0 <= start < stop <= n_samples - 1``. [1]
    columns : int
        Columns between the two edges, ``1 <= columns``. [1]

    Returns
    -------
    low, high : float array, shape (n_traces, columns)
        Every sample inside a column and the signal at its edges lie within. Neighbours touch.
    """
    last = samples.shape[1] - 1
    edges = np.clip(np.linspace(start, stop, columns + 1), 0, last)
    left = np.minimum(edges.astype(np.intp), last - 1)
    part = (edges - left).astype(samples.dtype)
    at_edge = samples[:, left]
    at_edge = at_edge + (samples[:, left + 1] - at_edge) * part
    low = np.minimum(at_edge[:, :-1], at_edge[:, 1:])
    high = np.maximum(at_edge[:, :-1], at_edge[:, 1:])
    if stop - start > columns:
        _cover_many(samples, left, low, high)
    else:
        _cover_few(samples, start, stop, low, high)
    return low, high


def _cover_many(samples: FloatArray, left: IntArray, low: FloatArray, high: FloatArray) -> None:
    """Widen the spans to all the samples inside, where a column holds several."""
    end = int(min(left[-1] + 1, samples.shape[1]))
    first = (left[:-1] + 1).clip(max=end - 1)
    np.minimum(low, np.minimum.reduceat(samples[:, :end], first, axis=1), out=low)
    np.maximum(high, np.maximum.reduceat(samples[:, :end], first, axis=1), out=high)


def _cover_few(samples: FloatArray, start: float, stop: float, low: FloatArray, high: FloatArray) -> None:
    """Widen the spans to the corner inside, where a column holds at most one sample."""
    columns = low.shape[1]
    inside = np.arange(max(0, int(np.ceil(start))), min(samples.shape[1] - 1, int(stop)) + 1)
    column = np.minimum(((inside - start) * (columns / (stop - start))).astype(np.intp), columns - 1)
    low[:, column] = np.minimum(low[:, column], samples[:, inside])
    high[:, column] = np.maximum(high[:, column], samples[:, inside])


def widened(low: FloatArray, high: FloatArray, width: int) -> Spans:
    """Return spans of a pen ``width`` columns wide: each covers its own and the next columns.

    Shape (n_traces, columns) becomes (n_traces, columns - width + 1), so that an upright edge is
    as thick as a level line.
    """
    columns = low.shape[1] - width + 1
    wide_low, wide_high = low[:, :columns].copy(), high[:, :columns].copy()
    for shift in range(1, width):
        np.minimum(wide_low, low[:, shift : shift + columns], out=wide_low)
        np.maximum(wide_high, high[:, shift : shift + columns], out=wide_high)
    return wide_low, wide_high


def dash_gaps(columns: int, phase: int, pattern: tuple[int, ...]) -> BoolArray:
    """Return which columns fall into the gaps of a dash pattern, shape (columns,).

    Parameters
    ----------
    columns : int
        Columns on the screen. [1]
    phase : int
        Columns from the pattern's origin to the first column: the pattern stays with the signal
        when the view moves. [1]
    pattern : tuple of int
        Lengths of dash, gap, dash, gap ... in columns; empty for a solid line. [1]
    """
    if not pattern:
        return np.zeros(columns, np.bool_)
    ends = np.cumsum(pattern)
    place = (np.arange(columns) + phase) % ends[-1]
    return np.searchsorted(ends, place, side="right") % 2 == 1


def with_gaps(low: FloatArray, high: FloatArray, gaps: BoolArray, *, steep: float) -> Spans:
    """Return the spans of one trace without its gaps: an empty span has ``low > high``.

    Spans taller than ``steep`` are kept whole, so that an edge never falls into a gap.
    """
    open_ = gaps & (high - low <= steep)
    return np.where(open_, np.inf, low), np.where(open_, -np.inf, high)


def column_runs(low: FloatArray, high: FloatArray) -> Runs:
    """Return the runs of columns with one and the same span, empty ones left out."""
    with np.errstate(invalid="ignore"):
        changes = (np.abs(np.diff(low)) > _SAME) | (np.abs(np.diff(high)) > _SAME)
    cuts = np.flatnonzero(changes) + 1
    first = np.concatenate(([0], cuts))
    after = np.concatenate((cuts, [len(low)]))
    filled = low[first] <= high[first]
    return first[filled], after[filled]


def bands(
    low: FloatArray, high: FloatArray, *, reach: int, tall: float
) -> tuple[BoolArray, FloatArray, FloatArray]:
    """Return where a trace goes up and down too often to be a line, and the band it fills there.

    Parameters
    ----------
    low, high : float array, shape (columns,)
        Spans of one trace.
    reach : int
        Columns to each side that are looked at together, ``1 <= reach``. [1]
    tall : float
        Lower bands are left to be a line, in the unit of the spans.

    Returns
    -------
    banded : bool array, shape (columns,)
        Whether a column belongs to a band. One edge, or a slope, is none.
    band_low, band_high : float array, shape (columns,)
        The range of the columns within reach.
    """
    window = 2 * reach + 1
    around = (np.pad(span, reach, mode="edge")[None] for span in (low, high))
    (band_low,), (band_high,) = widened(next(around), next(around), window)
    extent = band_high - band_low
    travelled = np.convolve(np.pad(high - low, reach, mode="edge"), np.ones(window), mode="valid")
    restless = (extent > tall) & (travelled > _RESTLESS * extent)
    steps = np.diff(np.concatenate(([0], restless.astype(np.int8), [0])))
    first, after = np.flatnonzero(steps == 1), np.flatnonzero(steps == -1)
    # What begins or ends within reach of the edge of the screen goes on beyond it.
    first, after = np.where(first <= reach, 0, first), np.where(after >= len(low) - reach, len(low), after)
    long = after - first >= window
    marks = np.zeros(len(low) + 1, np.intp)
    marks[first[long]] += 1
    marks[after[long]] -= 1
    return np.cumsum(marks[:-1]) > 0, band_low, band_high
