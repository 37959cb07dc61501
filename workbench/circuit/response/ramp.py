"""The drivers' ramp on the samples of a transform, and a grid on which it ends on a sample."""

import math

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.path import Path
from workbench.circuit.response.transform import MOST_SAMPLES, SAMPLES_PER_CHANGE, Grid, quick_count

__all__ = ["grid_for", "ramp_on"]

_COUNTS_TRIED = 16
"""Numbers of samples of a round trip that are tried, to find one that suits the ramp. [1]"""
_FEWEST_PER_TRIP = 16
"""Samples of a round trip at least. [1]"""
_FINER = 2.0
"""How many times as fine a grid may be that has few samples. [1]"""
_FEW_SAMPLES = 4096


def grid_for(path: Path, length_s: float, *, trip_s: float | None = None) -> Grid:
    """Return a grid on which the ramp ends on a sample.

    Parameters
    ----------
    path : Path
        The way to the monitor.
    length_s : float
        How long to look, ``0 < length_s``. [s]
    trip_s : float, optional
        A round trip of the cable that has to end on a sample; then the ramp does so as nearly as it
        can. [s]

    Notes
    -----
    Steps are sought among 16 an octave, so that most edits stay on the same grid.
    """
    coarsest_s = path.shortest_s / SAMPLES_PER_CHANGE
    wanted_s = min(max(coarsest_s / _FINER, length_s / _FEW_SAMPLES), coarsest_s)
    step_s = 2.0 ** (math.floor(16.0 * math.log2(wanted_s)) / 16.0)
    if trip_s is not None:
        fewest = max(math.ceil(trip_s / step_s), _FEWEST_PER_TRIP)
        counts = np.arange(fewest, fewest + _COUNTS_TRIED)
        ends = path.rise_s / trip_s * counts
        step_s = trip_s / int(counts[np.argmin(np.abs(ends - np.rint(ends)))])
    elif path.rise_s > step_s:
        step_s = path.rise_s / math.ceil(path.rise_s / step_s)
    step_s = max(step_s, length_s / MOST_SAMPLES)
    return Grid(quick_count(max(length_s / step_s, SAMPLES_PER_CHANGE)), step_s)


def ramp_on(grid: Grid, path: Path) -> tuple[FloatArray, float]:
    """Return the ramp in whole samples, and how much before the drivers' own it begins. [1], [s]

    The middles of both fall together. A step is a ramp of one sample where a lag or the cable's loss
    softens it all the same, and a step where nothing does.
    """
    softened = path.longest_lag_s > 0.0 or (path.line is not None and path.line.lossy)
    length = max(round(path.rise_s / grid.step_s), int(softened))
    ramp = np.minimum(np.arange(grid.n_samples) / length, 1.0) if length else np.ones(grid.n_samples)
    return ramp, 0.5 * (length * grid.step_s - path.rise_s)
