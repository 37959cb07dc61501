"""Spikes at code changes, where some bits arrive later than others."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from workbench.circuit.codes import first_codes, pin_states
from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.ports import FloatArray
from workbench.circuit.response.edges import Edges, edges_of
from workbench.circuit.response.path import find_path
from workbench.circuit.response.transform import all_skews, mix, read_only

__all__ = ["Glitch", "glitches"]


@dataclass(frozen=True, slots=True, eq=False)
class Glitch:
    """What the change from one code to the next looks like at the monitor; read-only arrays."""

    before: int
    after: int
    peak_volts: float
    """Farthest excursion beyond the two levels, negative below them. [V]"""
    area_volt_s: float
    """Area of all excursions beyond the two levels, negative below them. [V s]"""
    time_s: FloatArray
    """Since the first bit changes, shape (n_samples,). [s]"""
    volts: FloatArray
    """Shape (n_samples,). [V]"""


def glitches(
    network: Network, driver: Driver, load: Load, cable: Cable | None, skews_s: Sequence[float]
) -> tuple[Glitch, ...]:
    """Return the spike at each step of the staircase that needs more bits than the one before.

    Parameters
    ----------
    network, driver, load, cable
        The way to the monitor.
    skews_s : sequence of float, shape (n_pins,)
        How late each pin changes, most significant first, ``0 <= skews_s``; pins that are left out are
        in time. [s]

    Returns
    -------
    tuple of Glitch
        The step up to the first code that raises each pin, lowest code first (from ``2**k - 1`` to
        ``2**k`` for bit ``k``); empty where no pin reaches the monitor. The same steps down show the
        mirror image, and other steps change no more pins than one of these.

    Notes
    -----
    The network is linear, so the change is the sum of the pins' own edges, each shifted by its skew.
    Excursions beyond both levels are spikes of the skew, or ringing of the cable where there is one.
    """
    path = find_path(network, driver, load, cable)
    if path is None:
        return ()
    skews = all_skews(network, skews_s)
    edges = edges_of(path)
    time_s = _joined(edges, skews)
    moving = np.array(
        [
            np.interp(time_s - skew, edges.time_s, volts, left=0.0)
            for skew, volts in zip(skews, edges.volts, strict=True)
        ]
    )
    states = pin_states(network)
    steps = sorted(first_codes(network))
    return tuple(_glitch(code, states, path.weights_volts, time_s, moving) for code in steps)


def _joined(edges: Edges, skews_s: FloatArray) -> FloatArray:
    """Return instants that resolve every pin's edge, and the moment before it in case it is a step. [s]

    Where there are no even ones, an edge's own instants are taken as late as each edge is.
    """
    starts = np.unique(np.append(skews_s, 0.0))
    even = len(edges.even_s) > 0
    grids = [edges.time_s, edges.even_s] if even else [edges.time_s + start for start in starts]
    return np.unique(np.concatenate((np.nextafter(starts, -1.0), starts, *grids)))


def _glitch(
    after: int, states: FloatArray, weights_volts: FloatArray, time_s: FloatArray, moving: FloatArray
) -> Glitch:
    start, end = (float(states[code] @ weights_volts) for code in (after - 1, after))
    volts = start + mix(states[after] - states[after - 1], moving)
    low, high = min(start, end), max(start, end)
    beyond = np.maximum(volts - high, 0.0) + np.minimum(volts - low, 0.0)
    peak = float(beyond[np.argmax(np.abs(beyond))])
    return Glitch(
        after - 1, after, peak, float(np.trapezoid(beyond, time_s)), read_only(time_s), read_only(volts)
    )
