"""The first ghost: the wave that comes once more after it has been to the monitor and back."""

from dataclasses import dataclass

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.laplace import ramp_answers
from workbench.circuit.response.path import Path
from workbench.circuit.response.transform import ComplexArray, mix

__all__ = ["Ghost", "first_ghost"]

_SAMPLES = 32
"""Samples of the echo over the ramp, and over each lag from either end of it on. [1]"""
_LAGS = 4.0
"""Time constants in which a spike reaches its peak. [1]"""
_NO_ECHO = 1e-6
"""Share of the first arrival below which an echo is none. [1]"""


@dataclass(frozen=True, slots=True)
class Ghost:
    """The first echo of a step."""

    ratio: float
    """The farthest it goes, over the settled first step; negative where that is a dip. [1]"""
    delay_s: float
    """From the edge to its echo: one round trip of the cable. [s]"""


def first_ghost(path: Path) -> Ghost | None:
    """Return the first ghost of a step of all pins; none without a cable or without an echo.

    Notes
    -----
    The model's own waves are looked at one by one: the echo alone, over the first arrival alone.
    Between resistances the echo is the step once more, times the two reflections [1]_. Capacitance
    reflects an edge but no level, so the echo has a spike, which may go the other way.

    A cable with loss goes on creeping for long: either wave is followed for one round trip after it
    has come, or until the lags have settled where that takes longer. So the loss of the cable is in
    the figure.

    References
    ----------
    .. [1] W. D. Stevenson, "Elements of Power System Analysis", lattice diagrams (example 5.6).
    """
    line, pins = path.line, path.poles.shares.sum(axis=0)
    if line is None or not path.echoes:
        return None

    def waves(omega: ComplexArray) -> ComplexArray:
        lagging = path.poles.lagging(omega)
        first, again = path.waves(omega, lagging, line.passages(omega, trip_s=0.0))
        arrival = mix(pins, lagging) * first
        return np.stack((arrival, arrival * again))

    watched_s = max(line.trip_s, path.lags_settled_s)
    arrival, echo = ramp_answers(waves, np.append(_instants(path), watched_s), path.rise_s)
    farthest, came = float(echo[np.argmax(np.abs(echo))]), float(arrival[-1])
    if abs(farthest) <= _NO_ECHO * abs(came) or not came:
        return None
    return Ghost(farthest / came, line.trip_s)


def _instants(path: Path) -> FloatArray:
    """Return instants at which an echo may go farthest. [s]"""
    part = np.linspace(0.0, 1.0, _SAMPLES)
    peaks = np.outer(_LAGS * path.arrival_lags_s, part).ravel()
    return np.concatenate((path.rise_s * part, peaks, path.rise_s + peaks))
