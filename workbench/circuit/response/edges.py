"""Edges at the monitor: what becomes of the drivers' ramp."""

import math
from dataclasses import dataclass

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.path import Path
from workbench.circuit.response.transform import (
    MOST_SAMPLES,
    SAMPLES_PER_CHANGE,
    omega_of,
    quick_count,
    ramp_of,
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


def edges_of(path: Path) -> Edges:
    """Return the edge of every pin.

    Notes
    -----
    The ghost's size is taken from the model's own waves: the first echo alone over the first
    arrival alone, each one round trip after it has come. So the loss of the cable is in it.
    """
    return _lumped_edges(path) if path.line is None else _line_edges(path, path.line.delay_s)


def _lumped_edges(path: Path) -> Edges:
    settled = _LAGS * path.poles.lags_s
    spans = [path.rise_s, *settled, *(path.rise_s + settled)]
    # Not np.unique, which would load numpy.ma: 40 ms of the start.
    time_s = np.sort(np.concatenate([np.linspace(0.0, span, _SAMPLES_PER_LAG) for span in spans]))
    volts = path.supply_volts * path.poles.shares @ path.poles.ramps(time_s, path.rise_s)
    return Edges(time_s, volts, None)


def _line_edges(path: Path, delay_s: float) -> Edges:
    trip_s = 2.0 * delay_s
    step_s, n_samples = _grid(path, trip_s)
    ramp = ramp_of(path, n_samples, step_s)
    omega = omega_of(n_samples, step_s)
    lagging = path.poles.lagging(omega)
    first, again = path.waves(omega, lagging)
    arriving = np.fft.rfft(np.diff(ramp, prepend=0.0)) * first
    all_pins = path.poles.shares.sum(axis=0) @ lagging * arriving
    spectra = np.concatenate((lagging * (arriving / (1.0 - again)), np.stack((all_pins, all_pins * again))))
    *rows, arrival, echo = np.cumsum(np.fft.irfft(spectra, n_samples), axis=1)
    time_s = np.linspace(0.0, n_samples * step_s, n_samples, endpoint=False)
    came, came_again = np.interp(trip_s, time_s, arrival), np.interp(2.0 * trip_s, time_s, echo)
    volts = path.supply_volts * path.poles.shares @ np.array(rows)
    ghost = float(came_again / came) if abs(came_again) > _NO_ECHO * abs(came) > 0.0 else None
    return Edges(time_s, volts, ghost)


def _grid(path: Path, trip_s: float) -> tuple[float, int]:
    """Return time step and number of samples; echoes come on a sample, where their corners do not ring."""
    wanted_s = path.shortest_s / SAMPLES_PER_CHANGE
    step_s = max(trip_s / math.ceil(trip_s / wanted_s), path.settling_s / MOST_SAMPLES)
    return step_s, quick_count(path.settling_s / step_s)
