"""Answers in time from a transfer that is known everywhere, one instant at a time.

A cable's skin effect moves over picoseconds at first and creeps for microseconds after: no evenly
spaced samples see both. Here every instant is found by itself.
"""

import math
from collections.abc import Callable

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.transform import ComplexArray

__all__ = ["Transfer", "ramp_answers"]

Transfer = Callable[[ComplexArray], ComplexArray]
"""From angular frequencies, which are complex here, to rows of shape (n_rows, n_frequencies)."""

_NODES = 10
"""Points of the contour: about 0.6 digits each. [1]"""
_LATE = 16.0
"""Ramps after which a ramp is as good as a step at its middle. [1]"""


def _contour() -> tuple[ComplexArray, ComplexArray]:
    """Return the points, times the instant, and their weights."""
    theta = np.arange(1, _NODES) * math.pi / _NODES
    cot = 1.0 / np.tan(theta)
    points = np.append(0.4 * _NODES, 0.4 * _NODES * theta * (cot + 1j))
    weights = np.append(0.5, 1.0 + 1j * (theta + (theta * cot - 1.0) * cot))
    return points, 0.4 * weights * np.exp(points)


_POINTS, _WEIGHTS = _contour()


def ramp_answers(transfer: Transfer, time_s: FloatArray, rise_s: float) -> FloatArray:
    """Return each row's answer to a ramp from 0 to 1.

    Parameters
    ----------
    transfer : callable
        Smooth for all ``s = j omega`` but the negative real axis: lags and skin effect, no delay.
    time_s : float array, shape (n_samples,)
        Since the start of the ramp; before it all is 0. [s]
    rise_s : float
        Length of the ramp, ``0 <= rise_s``; 0 is a step. [s]

    Returns
    -------
    float array, shape (n_rows, n_samples)

    Notes
    -----
    Inverts the Laplace transform by summing it over a contour around its singularities, scaled with the
    instant [1]_. A ramp is the difference of two slopes.

    References
    ----------
    .. [1] J. Abate, P. P. Valkó, "Multi-precision Laplace transform inversion", International Journal
       for Numerical Methods in Engineering 60, 2004, section 2 (fixed Talbot). From memory.
    """
    late = time_s > _LATE * rise_s
    up, down = (time_s > 0.0) & ~late, (time_s > rise_s) & ~late
    instants = np.concatenate((time_s[late] - 0.5 * rise_s, time_s[up], time_s[down] - rise_s))
    n_late, n_up = int(late.sum()), int(up.sum())
    weights = np.tile((_WEIGHTS / _POINTS)[:, None], len(instants))
    weights[:, n_late:] *= instants[n_late:] / (_POINTS[:, None] * (rise_s or 1.0))
    rows = transfer((-1j * _POINTS[:, None] / instants).ravel())
    answers = (rows.reshape(len(rows), *weights.shape) * weights).sum(axis=1).real
    out = np.zeros((len(rows), len(time_s)))
    out[:, late], out[:, up] = answers[:, :n_late], answers[:, n_late : n_late + n_up]
    out[:, down] -= answers[:, n_late + n_up :]
    return out
