"""The first ghost: the wave that comes once more after it has been to the monitor and back."""

from dataclasses import dataclass

import numpy as np

from workbench.circuit.response.line import Line, passages_on
from workbench.circuit.response.path import Path
from workbench.circuit.response.ramp import grid_for, ramp_on
from workbench.circuit.response.transform import mix

__all__ = ["Ghost", "first_ghost"]

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
    line = path.line
    if line is None or not path.echoes:
        return None
    ratio = _ratio(path, line)
    return Ghost(ratio, line.trip_s) if abs(ratio) > _NO_ECHO else None


def _ratio(path: Path, line: Line) -> float:
    """Return the farthest of the echo, each wave seen from its own arrival on. [1]"""
    watched_s = max(line.trip_s if line.lossy else 0.0, path.lags_settled_s)
    grid = grid_for(path, 2.0 * watched_s + line.creep_s)
    ramp, early_s = ramp_on(grid, path)
    lagging = grid.lagging(path.poles.lags_s)
    first, again = path.waves(grid.omega, lagging, passages_on(line, grid, trip_s=0.0))
    sent = np.fft.rfft(np.diff(ramp, prepend=0.0)) * mix(path.poles.shares.sum(axis=0), lagging)
    waves = np.stack((sent * first, sent * first * again))
    n_watched = min(int((watched_s + early_s) / grid.step_s) + 1, grid.n_samples)
    arrival, echo = np.cumsum(np.fft.irfft(waves, grid.n_samples), axis=1)[:, :n_watched]
    farthest, came = float(echo[np.argmax(np.abs(echo))]), float(arrival[-1])
    return farthest / came if came else 0.0
