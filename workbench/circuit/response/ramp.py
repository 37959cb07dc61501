"""The drivers' ramp on the samples of a transform, and a grid on which it ends on a sample."""

import math

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.line import Line
from workbench.circuit.response.path import Path
from workbench.circuit.response.transform import MOST_SAMPLES, SAMPLES_PER_CHANGE, Grid, quick_count

__all__ = ["grid_for", "ramp_on"]

_COUNTS_TRIED = 16
"""Numbers of samples of a round trip that are tried, to find one that suits the ramp. [1]"""
_FEWEST_PER_TRIP = 16
"""Samples of a round trip at least. [1]"""
_FINER = 2.0
"""How many times as fine a grid may be that has few samples. [1]"""
_FEW_SAMPLES = 2048


def grid_for(path: Path, line: Line) -> Grid:
    """Return a grid on which echoes come on a sample, and the ramp ends on one as nearly as it can.

    Notes
    -----
    Steps are sought among 16 an octave, so that most edits stay on the same grid.
    """
    length_s, trip_s = path.settling_s, line.trip_s
    coarsest_s = path.shortest_s / SAMPLES_PER_CHANGE
    wanted_s = min(max(coarsest_s / _FINER, length_s / _FEW_SAMPLES), coarsest_s)
    fewest = math.ceil(trip_s / 2.0 ** (math.floor(16.0 * math.log2(wanted_s)) / 16.0))
    counts = max(fewest, _FEWEST_PER_TRIP) + np.arange(_COUNTS_TRIED)
    ends = path.rise_s / trip_s * counts
    per_trip = int(counts[np.argmin(np.abs(ends - np.rint(ends)))])
    step_s = max(trip_s / per_trip, length_s / MOST_SAMPLES)
    return Grid(quick_count(length_s / step_s), step_s)


def ramp_on(grid: Grid, path: Path, line: Line) -> tuple[FloatArray, float]:
    """Return the ramp in whole samples, and how much before the drivers' own it begins. [1], [s]

    The middles of both fall together. A step is a ramp of one sample where a lag or the cable's loss
    softens it all the same, and a step where nothing does.
    """
    softened = path.longest_lag_s > 0.0 or line.lossy
    length = max(round(path.rise_s / grid.step_s), int(softened))
    ramp = np.minimum(np.arange(grid.n_samples) / length, 1.0) if length else np.ones(grid.n_samples)
    return ramp, 0.5 * (length * grid.step_s - path.rise_s)
