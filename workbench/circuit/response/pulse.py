"""What one pixel becomes at the monitor."""

import math
from dataclasses import dataclass

import numpy as np

from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.ports import FloatArray
from workbench.circuit.response.path import Path, find_path
from workbench.circuit.response.transform import (
    MOST_SAMPLES,
    SAMPLES_PER_CHANGE,
    omega_of,
    ramp_of,
    read_only,
)

__all__ = ["PixelPulse", "pixel_pulse"]

_MOST_PIXELS = 1024
"""Pixels after which a pulse is cut off at the latest. [1]"""
_CUT = 1e-4
"""Share of a pulse below which its tail is cut off (and added to its last pixel). [1]"""
_UNUSED = 1e-12
"""Share of the largest below which a lag does not reach the output. [1]"""


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
        return PixelPulse(read_only(np.zeros((network.bits, 1, samples))), step_s)
    volts = _pulses(path, pixel_s, samples) if path.line is None else _line_pulses(path, pixel_s, samples)
    return PixelPulse(read_only(_cut(volts, path.weights_volts)), step_s)


def _pulses(path: Path, pixel_s: float, samples: int) -> FloatArray:
    n_pixels = min(1 + math.ceil(path.settling_s / pixel_s), _MOST_PIXELS)
    time_s = np.linspace(0.0, (n_pixels + 1) * pixel_s, (n_pixels + 1) * samples, endpoint=False)
    edges = path.poles.ramps(time_s, path.rise_s)
    edges[:, samples:] -= edges[:, :-samples].copy()
    return (path.supply_volts * path.poles.shares @ edges).reshape(-1, n_pixels + 1, samples)


def _line_pulses(path: Path, pixel_s: float, samples: int) -> FloatArray:
    n_pixels = min(2 + math.ceil(path.settling_s / pixel_s), _MOST_PIXELS)
    finer = _finer(pixel_s / samples, samples * n_pixels, path.shortest_s)
    step_s = pixel_s / (samples * finer)
    pixel = ramp_of(path, samples * n_pixels * finer, step_s)
    pixel[samples * finer :] -= pixel[: -samples * finer].copy()
    omega = omega_of(len(pixel), step_s)
    lagging = path.poles.lagging(omega)
    first, again = path.waves(omega, lagging)
    shares = path.supply_volts * path.poles.shares
    used = np.abs(shares).max(axis=0) > _UNUSED * np.abs(shares).max()
    spectrum = np.fft.rfft(pixel) * first / (1.0 - again) * lagging[used]
    rows = np.fft.irfft(spectrum, len(pixel))[:, ::finer]
    return (shares[:, used] @ rows).reshape(-1, n_pixels, samples)


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
