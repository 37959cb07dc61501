"""How the step from black to white arrives at the monitor."""

import math
from dataclasses import dataclass

import numpy as np

from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.ports import FloatArray
from workbench.circuit.response.edges import edges_of
from workbench.circuit.response.ghost import first_ghost
from workbench.circuit.response.path import Path, find_path
from workbench.circuit.response.transform import mix, read_only

__all__ = ["Step", "step_figures"]

_NO_STEP = 1e-9
"""Part of the supply below which white is black. [1]"""
_MOST_HZ = 1e12
"""A bandwidth above this is called none. [Hz]"""


@dataclass(frozen=True, slots=True, eq=False)
class Step:
    """How the step from code 0 to the last code arrives at the monitor; read-only arrays."""

    rise_s: float
    """Time from 10 to 90 % of the step. [s]"""
    bandwidth_hz: float | None
    """Where the pins' signal has fallen by 3 dB, the driver's ramp left aside; none if nowhere. [Hz]"""
    settle_s: float
    """Time from the start of the edge until it stays within half an LSB. [s]"""
    overshoot: float
    """How far the step goes past its end, as part of the step. [1]"""
    first_ghost_ratio: float | None
    """The farthest the first echo alone goes, over the settled first step, negative where that is a dip;
    none without one. [1]"""
    first_ghost_s: float | None
    """Time from the edge to its first echo, one round trip of the cable; none without one. [s]"""
    time_s: FloatArray
    """Time since the start of the edge, shape (n_samples,). [s]"""
    volts: FloatArray
    """The step itself, shape (n_samples,). [V]"""


def step_figures(network: Network, driver: Driver, load: Load, cable: Cable | None = None) -> Step:
    """Return how the step from code 0 to all ones arrives at the monitor.

    Parameters
    ----------
    network, driver, load, cable
        The way to the monitor; ``cable`` is none where there is none.

    Notes
    -----
    The ghost is that of :func:`.ghost.first_ghost`.
    """
    path = find_path(network, driver, load, cable)
    end = 0.0 if path is None else float(path.weights_volts.sum())
    if path is None or abs(end) <= _NO_STEP * driver.supply_volts:
        return Step(0.0, None, 0.0, 0.0, None, None, *(read_only(np.zeros(2)) for _ in range(2)))
    edges, ghost = edges_of(path), first_ghost(path)
    time_s, volts = edges.time_s, edges.volts.sum(axis=0)
    share = volts / end
    return Step(
        rise_s=_first_time(time_s, share, 0.9) - _first_time(time_s, share, 0.1),
        bandwidth_hz=_bandwidth_hz(path),
        settle_s=_last_time(time_s, np.abs(share - 1.0), 0.5 / (network.n_codes - 1)),
        overshoot=max(0.0, float(share.max()) - 1.0),
        first_ghost_ratio=None if ghost is None else ghost.ratio,
        first_ghost_s=None if ghost is None else ghost.delay_s,
        time_s=read_only(time_s),
        volts=read_only(volts),
    )


def _first_time(time_s: FloatArray, share: FloatArray, level: float) -> float:
    """Return when the step first reaches a level, straight between two samples. [s]"""
    late = int(np.argmax(share >= level))
    if late == 0:
        return float(time_s[0] if share[0] >= level else time_s[-1])
    early = late - 1
    part = (level - share[early]) / (share[late] - share[early])
    return float(time_s[early] + part * (time_s[late] - time_s[early]))


def _last_time(time_s: FloatArray, distance: FloatArray, half_lsb: float) -> float:
    """Return when the step is last as far as half an LSB from its end. [s]"""
    return float(time_s[-1]) - _first_time(float(time_s[-1]) - time_s[::-1], distance[::-1], half_lsb)


def _bandwidth_hz(path: Path) -> float | None:
    """Return the lowest frequency at which half the power of a steady signal is left. [Hz]"""
    pins = path.poles.shares.sum(axis=0)

    def excess(hz: FloatArray) -> FloatArray:
        omega = 2.0 * math.pi * hz
        lagging = path.poles.lagging(omega)
        first, again = path.waves(omega, lagging)
        left: FloatArray = np.abs(mix(pins, lagging) * (first / (1.0 - again)))
        return left - math.sqrt(0.5) * abs(float(pins.sum()) * path.settled_line)

    hz = _probing_hz(path)
    for _ in range(2):
        over = excess(hz)
        late = int(np.argmax(over < 0.0))
        if over[late] >= 0.0:
            return None
        early = max(late - 1, 0)
        corner = float(np.interp(0.0, -over[[early, late]], hz[[early, late]]))
        hz = np.linspace(hz[early], hz[late], 257)
    return corner


def _probing_hz(path: Path) -> FloatArray:
    """Return frequencies close enough to see each lag, and each ripple that a cable's echoes make. [Hz]"""
    decades = np.geomspace(1.0, _MOST_HZ, 193)
    if path.line is None:
        return decades
    eighth_hz = 0.5 / path.line.delay_s / 8.0
    return np.sort(np.concatenate((decades, np.arange(1, 1025) * eighth_hz)))
