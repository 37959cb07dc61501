"""Edges at the monitor: what becomes of the drivers' ramp."""

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.line import Line, passages_on
from workbench.circuit.response.path import Path
from workbench.circuit.response.transform import (
    MOST_SAMPLES,
    SAMPLES_PER_CHANGE,
    Grid,
    mix,
    quick_count,
)

__all__ = ["Edges", "edges_of"]

_SAMPLES_PER_LAG = 1024
"""Samples of an edge over each of its lags, until it has settled. [1]"""
_LAGS = 16.0
"""Time constants after which a lag has settled. [1]"""
_NO_ECHO = 1e-6
"""Share of the first arrival below which an echo is none. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class Edges:
    """A ramp from 0 to 1 at each pin, as it comes to the monitor."""

    time_s: FloatArray
    """Since the start of the ramp, rising but not evenly spaced, shape (n_samples,). [s]"""
    volts: FloatArray
    """Of each pin alone, shape (n_pins, n_samples). [V]"""
    ghost: float | None
    """First echo over first arrival of all pins together; none without one. [1]"""


@lru_cache(maxsize=8)
def edges_of(path: Path) -> Edges:
    """Return the edge of every pin.

    Notes
    -----
    The ghost's size is taken from the model's own waves: the first echo alone over the first
    arrival alone, each one round trip after it has come. So the loss of the cable is in it.
    """
    return _lumped_edges(path) if path.line is None else _line_edges(path, path.line)


def _lumped_edges(path: Path) -> Edges:
    settled = _LAGS * path.poles.lags_s
    spans = [path.rise_s, *settled, *(path.rise_s + settled)]
    # Not np.unique, which would load numpy.ma: 40 ms of the start.
    time_s = np.sort(np.concatenate([np.linspace(0.0, span, _SAMPLES_PER_LAG) for span in spans]))
    volts = mix(path.supply_volts * path.poles.shares, path.poles.ramps(time_s, path.rise_s))
    return Edges(time_s, volts, None)


def _line_edges(path: Path, line: Line) -> Edges:
    trip_s = 2.0 * line.delay_s
    grid = _grid(path, trip_s)
    omega = grid.omega
    lagging = path.poles.lagging(omega)
    first, again = path.waves(omega, lagging, passages_on(line, grid))
    arriving = np.fft.rfft(np.diff(grid.ramp(path.rise_s), prepend=0.0)) * first
    all_pins = mix(path.poles.shares.sum(axis=0), lagging) * arriving
    spectra = np.concatenate((lagging * (arriving / (1.0 - again)), np.stack((all_pins, all_pins * again))))
    rows = np.cumsum(np.fft.irfft(spectra, grid.n_samples), axis=1)
    arrival, echo = rows[-2:]
    time_s = grid.step_s * np.arange(grid.n_samples, dtype=np.float64)
    came, came_again = np.interp(trip_s, time_s, arrival), np.interp(2.0 * trip_s, time_s, echo)
    volts = mix(path.supply_volts * path.poles.shares, rows[:-2])
    ghost = float(came_again / came) if abs(came_again) > _NO_ECHO * abs(came) > 0.0 else None
    return Edges(time_s, volts, ghost)


def _grid(path: Path, trip_s: float) -> Grid:
    """Return the grid; echoes come on a sample, where their corners do not ring.

    Samples of a round trip are one of 16 numbers an octave, so that most edits stay on the same grid.
    """
    wanted = max(1.0, trip_s * SAMPLES_PER_CHANGE / path.shortest_s)
    per_trip = math.ceil(2.0 ** (math.ceil(16.0 * math.log2(wanted)) / 16.0))
    step_s = max(trip_s / per_trip, path.settling_s / MOST_SAMPLES)
    return Grid(quick_count(path.settling_s / step_s), step_s)
