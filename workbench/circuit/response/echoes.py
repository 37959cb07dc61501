"""All echoes of an edge, summed in the frequency domain."""

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.laplace import ramp_answers
from workbench.circuit.response.line import Line, passages_on
from workbench.circuit.response.path import Path
from workbench.circuit.response.ramp import grid_for, ramp_on
from workbench.circuit.response.transform import ComplexArray, mix

__all__ = ["with_echoes"]

_CREEPING = 48
"""Samples of the creep of a cable with loss, ever farther apart. [1]"""


def with_echoes(path: Path, line: Line) -> tuple[FloatArray, FloatArray]:
    """Return instants and the edge of each pin with all its echoes, shape (n_pins, n_samples). [s], [V]

    Instants are even until the echoes have died away; there the creep of a cable with loss goes on.
    """
    grid = grid_for(path, line)
    ramp, early_s = ramp_on(grid, path, line)
    lagging = grid.lagging(path.poles.lags_s)
    first, again = path.waves(grid.omega, lagging, passages_on(line, grid))
    arriving = np.fft.rfft(np.diff(ramp, prepend=0.0)) * (first / (1.0 - again))
    rows = np.cumsum(np.fft.irfft(lagging * arriving, grid.n_samples), axis=1)
    time_s = grid.step_s * np.arange(grid.n_samples, dtype=np.float64) - early_s
    if line.lossy:
        time_s, rows = _creeping(path, line, time_s, rows)
    return time_s, mix(path.supply_volts * path.poles.shares, rows)


def _creeping(path: Path, line: Line, time_s: FloatArray, rows: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Take out what a transform, which repeats, puts at the start of the creep that it cuts off; add that.

    Notes
    -----
    An edge that lacks ``a / sqrt(t)`` late shows, at ``x`` of the transform's length, too much by the sum
    of ``1 / sqrt(n) - 1 / sqrt(n + x)`` over all repetitions ``n``, times what it lacks at the end. The
    polynomial has the sum's values and slopes at both ends, zeta(3/2) / 2 and (zeta(3/2) - 1) / 2.
    """

    def settling(omega: ComplexArray) -> ComplexArray:
        lagging = path.poles.lagging(omega)
        first, again = path.waves(omega, lagging)
        return lagging * (first / (1.0 - again))

    end_s = float(time_s[-1])
    late_s = end_s * max(line.crept_s / end_s, 2.0) ** np.linspace(0.0, 1.0, _CREEPING)
    late = ramp_answers(settling, late_s, path.rise_s)
    x = np.maximum(time_s / end_s, 0.0)
    repeated = x + x * (1.0 - x) * (0.306 - 0.112 * x)
    rows -= np.outer(path.settled_line - late[:, 0], repeated)
    return np.concatenate((time_s[:-1], late_s)), np.concatenate((rows[:, :-1], late), axis=1)
