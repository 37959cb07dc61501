"""Edges at the monitor: what becomes of the drivers' ramp."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.line import Line, passages_on
from workbench.circuit.response.path import LAGS, Path
from workbench.circuit.response.poles import Poles
from workbench.circuit.response.ramp import grid_for, ramp_on
from workbench.circuit.response.transform import mix

__all__ = ["Edges", "edges_of"]

_SAMPLES_PER_LAG = 1024
"""Samples of an edge over each of its lags, until it has settled. [1]"""
_SAMPLES_BEFORE_ECHO = 256
"""The same where echoes come after it. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class Edges:
    """A ramp from 0 to 1 at each pin, as it comes to the monitor."""

    time_s: FloatArray
    """Since the start of the ramp, rising but not evenly spaced, shape (n_samples,). [s]"""
    volts: FloatArray
    """Of each pin alone, shape (n_pins, n_samples). [V]"""
    even: bool
    """Whether the instants resolve an edge whenever it starts; else only one that starts at 0."""


@lru_cache(maxsize=8)
def edges_of(path: Path) -> Edges:
    """Return the edge of every pin.

    Notes
    -----
    What comes before the first echo is known in closed form, unless the cable has loss. Echoes are
    summed in the frequency domain.
    """
    if path.line is not None and (path.echoes or path.line.lossy):
        return _line_edges(path, path.line)
    arrival = path.first_arrival
    time_s = _crowded(arrival.lags_s, path.rise_s, _SAMPLES_PER_LAG)
    return Edges(time_s, _before_echoes(path, arrival, time_s), even=False)


def _crowded(lags_s: FloatArray, rise_s: float, samples: int) -> FloatArray:
    """Return instants that resolve a ramp, and each lag from its start and from its end on. [s]"""
    settled = LAGS * lags_s
    spans = [rise_s, *settled, *(rise_s + settled)]
    # Not np.unique, which would load numpy.ma: 40 ms of the start.
    return np.sort(np.concatenate([np.linspace(0.0, span, samples) for span in spans]))


def _before_echoes(path: Path, arrival: Poles, time_s: FloatArray) -> FloatArray:
    """Return the edges without any echo, shape (n_pins, n_samples). [V]"""
    return mix(path.supply_volts * arrival.shares, arrival.ramps(time_s, path.rise_s))


def _line_edges(path: Path, line: Line) -> Edges:
    grid = grid_for(path, path.settling_s, trip_s=line.trip_s)
    ramp, early_s = ramp_on(grid, path)
    lagging = grid.lagging(path.poles.lags_s)
    first, again = path.waves(grid.omega, lagging, passages_on(line, grid))
    arriving = np.fft.rfft(np.diff(ramp, prepend=0.0)) * (first / (1.0 - again))
    rows = np.cumsum(np.fft.irfft(lagging * arriving, grid.n_samples), axis=1)
    time_s = grid.step_s * np.arange(grid.n_samples, dtype=np.float64) - early_s
    volts = mix(path.supply_volts * path.poles.shares, rows)
    return Edges(time_s, volts, even=True) if line.lossy else _sharpened(path, line, time_s, volts)


def _sharpened(path: Path, line: Line, time_s: FloatArray, volts: FloatArray) -> Edges:
    """Put the closed form, at more instants, in place of what comes before the first echo."""
    arrival = path.first_arrival
    until_s = min(line.trip_s, path.lags_settled_s)
    crowded = _crowded(arrival.lags_s, path.rise_s, _SAMPLES_BEFORE_ECHO)
    n_even, n_crowded = np.searchsorted(time_s, until_s), np.searchsorted(crowded, until_s)
    early_s = np.sort(np.concatenate((time_s[:n_even], crowded[:n_crowded])))
    early_volts = _before_echoes(path, arrival, early_s)
    return Edges(
        np.concatenate((early_s, time_s[n_even:])),
        np.concatenate((early_volts, volts[:, n_even:]), axis=1),
        even=True,
    )
