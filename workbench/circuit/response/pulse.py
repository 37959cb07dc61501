"""What one pixel becomes at the monitor."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.ports import FloatArray
from workbench.circuit.response.line import Line, passages_on
from workbench.circuit.response.path import Path, find_path
from workbench.circuit.response.transform import (
    MOST_SAMPLES,
    SAMPLES_PER_CHANGE,
    Grid,
    all_skews,
    mix,
    read_only,
)

__all__ = ["PixelPulse", "pixel_pulse"]

_MOST_PIXELS = 1024
"""Pixels after which a pulse is cut off at the latest. [1]"""
_CUT = 1e-4
"""Share of a pulse below which its tail is cut off (and added to its last pixel). [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class PixelPulse:
    """What each pin alone shows when it is 1 for one pixel; read-only."""

    volts: FloatArray
    """At the monitor from the pixel's start on, shape (n_pins, n_pixels_after, samples_per_pixel). [V]"""
    step_s: float
    """Time from one sample to the next. [s]"""


def pixel_pulse(
    network: Network,
    driver: Driver,
    load: Load,
    cable: Cable | None = None,
    *,
    pixel_s: float,
    samples: int,
    skews_s: Sequence[float] = (),
) -> PixelPulse:
    """Return what becomes of one pixel, pin by pin.

    Parameters
    ----------
    network, driver, load, cable
        The way to the monitor; ``cable`` is none where there is none.
    pixel_s : float
        Length of a pixel, ``0 < pixel_s``. [s]
    samples : int
        Samples of each pixel, ``1 <= samples``. [1]
    skews_s : sequence of float, shape (n_pins,), optional
        How late each pin changes, most significant first, ``0 <= skews_s``; pins that are left out are
        in time. [s]

    Returns
    -------
    PixelPulse
        A pixel sampled at ``k pixel_s / samples``. For every such instant within a pixel, the
        samples of all pixels add up to the settled level of the pin. All 0 where no pin
        reaches the monitor.

    Notes
    -----
    A tail that goes on for more than 1024 pixels, or that a cable of hundreds of metres leaves, is
    cut off; what was cut is put into the last pixel.
    """
    path = find_path(network, driver, load, cable)
    step_s = pixel_s / samples
    if path is None:
        return PixelPulse(read_only(np.zeros((network.n_pins, 1, samples))), step_s)
    skews = all_skews(network, skews_s)
    n_pixels = min(2 + math.ceil((path.settling_s + skews.max()) / pixel_s), _MOST_PIXELS)
    pulses = _pulses(path, skews, pixel_s, n_pixels * samples, samples)
    volts = pulses.reshape(-1, n_pixels, samples)
    return PixelPulse(read_only(_cut(volts, path.weights_volts)), step_s)


def _pulses(path: Path, skews_s: FloatArray, pixel_s: float, n_samples: int, samples: int) -> FloatArray:
    """Return the pulses, in closed form where there is no cable, shape (n_pins, n_samples). [V]"""
    if path.line is not None:
        return _line_pulses(path, path.line, skews_s, pixel_s, n_samples, samples)
    time_s = np.arange(n_samples) * (pixel_s / samples)
    volts = np.empty((len(skews_s), n_samples))
    for skew in set(skews_s.tolist()):
        edges = path.poles.ramps(time_s - skew, path.rise_s)
        edges[:, samples:] -= edges[:, :-samples].copy()
        late = skews_s == skew
        volts[late] = mix(path.supply_volts * path.poles.shares[late], edges)
    return volts


def _line_pulses(
    path: Path, line: Line, skews_s: FloatArray, pixel_s: float, n_samples: int, samples: int
) -> FloatArray:
    finer = _finer(pixel_s / samples, n_samples, path.shortest_s)
    grid = Grid(n_samples * finer, pixel_s / (samples * finer))
    pixel = grid.ramp(path.rise_s)
    pixel[samples * finer :] -= pixel[: -samples * finer].copy()
    omega = grid.omega
    lagging = grid.lagging(path.poles.lags_s)
    first, again = path.waves(omega, lagging, passages_on(line, grid))
    spectra = np.fft.rfft(pixel) * (first / (1.0 - again)) * lagging
    volts = np.empty((len(skews_s), n_samples))
    for skew in np.unique(skews_s):
        moved = spectra * np.exp(-1j * omega * skew) if skew else spectra
        rows = np.fft.irfft(moved, grid.n_samples)[:, ::finer]
        late = skews_s == skew
        volts[late] = mix(path.supply_volts * path.poles.shares[late], rows)
    return volts


def _finer(step_s: float, n_samples: int, shortest_s: float) -> int:
    """Return by what power of two to divide the step, so that the shortest time is resolved. [1]"""
    wanted = math.log2(step_s * SAMPLES_PER_CHANGE / shortest_s)
    room = math.log2(MOST_SAMPLES / n_samples)
    return 1 << max(0, min(math.ceil(wanted), math.floor(room)))


def _cut(volts: FloatArray, weights_volts: FloatArray) -> FloatArray:
    """Drop the pixels in which nothing moves and make the rest add up to the weights.

    The last pixel is none: there the transform, which repeats, lets the first one show through.
    """
    loud = np.abs(volts[:, :-1]).max(axis=(0, 2), initial=0.0) > _CUT * np.abs(weights_volts).max(initial=0.0)
    n_kept = 1 + int(np.flatnonzero(loud).max(initial=0))
    kept = np.ascontiguousarray(volts[:, :n_kept])
    kept[:, -1] += weights_volts[:, None] - kept.sum(axis=1)
    return kept
