"""The first arrival of an edge at the monitor, before any echo: known at any instant."""

import math

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.laplace import ramp_answers
from workbench.circuit.response.line import Line
from workbench.circuit.response.path import LAGS, Path
from workbench.circuit.response.transform import ComplexArray, mix

__all__ = ["arrival_at", "arrival_instants"]

_SAMPLES = 1024
"""Samples over the ramp and over each lag, until it has settled. [1]"""
_SAMPLES_BEFORE_ECHO = 256
"""The same where echoes come after them. [1]"""
_SAMPLES_IN_SKIN = 48
"""The same on a cable with loss, where each takes longer. [1]"""
_SAMPLES_A_DECADE = 20
"""Samples of the creep of a cable with loss, ever farther apart. [1]"""
_SOON = 0.01
"""Part of the ramp, or of the skin effect's own time, that is the first to be resolved. [1]"""


def arrival_instants(path: Path) -> FloatArray:
    """Return instants that resolve the edge, as far as it is of interest before the first echo. [s]"""
    rise_s, settled = path.rise_s, LAGS * path.arrival_lags_s
    if path.line is not None and path.line.lossy:
        return _skin_instants(path, path.line, settled)
    spans = np.concatenate(([rise_s], settled, rise_s + settled))
    part = np.linspace(0.0, 1.0, _SAMPLES_BEFORE_ECHO if path.echoes else _SAMPLES)
    # Not np.unique, which would load numpy.ma: 40 ms of the start.
    return np.sort(np.outer(spans, part), axis=None)


def _skin_instants(path: Path, line: Line, settled: FloatArray) -> FloatArray:
    """Return instants that resolve the ramp, each lag after its end, and the creep after both its ends."""
    rise_s, end_s = path.rise_s, line.trip_s if path.echoes else line.crept_s
    soon_s = _SOON * (rise_s or min(line.skin_s, end_s))
    n_creep = math.ceil(_SAMPLES_A_DECADE * math.log10(end_s / soon_s))
    creep = soon_s * (end_s / soon_s) ** np.linspace(0.0, 1.0, max(2, n_creep))
    part = np.linspace(0.0, 1.0, _SAMPLES_IN_SKIN)
    after = np.concatenate((creep, np.outer(settled, part).ravel()))
    return np.sort(np.concatenate((rise_s * part, creep[creep < rise_s], rise_s + after)))


def arrival_at(path: Path, time_s: FloatArray) -> FloatArray:
    """Return the edge of each pin without any echo, shape (n_pins, n_samples). [V]

    Notes
    -----
    In closed form, unless the cable has loss: then its Laplace transform is inverted.
    """
    line = path.line
    if line is None or not line.lossy:
        arrival = path.first_arrival
        return mix(path.supply_volts * arrival.shares, arrival.ramps(time_s, path.rise_s))
    return mix(path.supply_volts * path.poles.shares, _in_skin(path, line, time_s))


def _in_skin(path: Path, line: Line, time_s: FloatArray) -> FloatArray:
    def first(omega: ComplexArray) -> ComplexArray:
        return path.poles.lagging(omega) * line.first_passage(omega)

    return ramp_answers(first, time_s, path.rise_s)
