"""What an edge and a pixel become at the monitor.

Without a cable the answer is a sum of exponentials, taken in closed form at the very instants
asked for. With one, the echoes are summed in the frequency domain and brought back by an inverse
Fourier transform.
"""

import math
from dataclasses import dataclass

import numpy as np

from workbench.circuit.line import Line
from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.path import Path, find_path
from workbench.circuit.ports import FloatArray

__all__ = ["PixelPulse", "Step", "pixel_pulse", "step_figures"]


@dataclass(frozen=True, slots=True, eq=False)
class PixelPulse:
    """What each pin alone shows when it is 1 for one pixel; read-only."""

    volts: FloatArray
    """At the monitor from the pixel's start on, shape (n_pins, n_pixels_after, samples_per_pixel). [V]"""
    step_s: float
    """Time from one sample to the next. [s]"""


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
    """First echo over first step, negative where it dips; none without one. [1]"""
    first_ghost_s: float | None
    """Time from the edge to its first echo; none without one. [s]"""
    time_s: FloatArray
    """Time since the start of the edge, shape (n_samples,). [s]"""
    volts: FloatArray
    """The step itself, shape (n_samples,). [V]"""


_MOST_PIXELS = 1024
"""Pixels after which a pulse is cut off at the latest. [1]"""
_MOST_SAMPLES = 1 << 16
"""Samples of the inverse Fourier transform at most. [1]"""
_SAMPLES_PER_CHANGE = 16
"""Samples over the shortest time in which an edge changes. [1]"""
_SAMPLES_PER_LAG = 1024
"""Samples of a step over each of its lags, until it has settled. [1]"""
_CUT = 1e-4
"""Share of a pulse below which its tail is cut off (and added to its last pixel). [1]"""
_UNUSED = 1e-12
"""Share of the largest below which a lag does not reach the output. [1]"""
_NO_ECHO = 1e-6
_MOST_HZ = 1e12
"""A bandwidth above this is called none. [Hz]"""


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
        return PixelPulse(_read_only(np.zeros((network.bits, 1, samples))), step_s)
    volts = _pulses(path, pixel_s, samples) if path.line is None else _line_pulses(path, pixel_s, samples)
    return PixelPulse(_read_only(_cut(volts, path.weights_volts)), step_s)


def _read_only(array: FloatArray) -> FloatArray:
    array.setflags(write=False)
    return array


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
    pixel = _ramp(path, samples * n_pixels * finer, step_s)
    pixel[samples * finer :] -= pixel[: -samples * finer].copy()
    omega = _omega(len(pixel), step_s)
    lagging = path.poles.lagging(omega)
    first, again = path.waves(omega, lagging)
    shares = path.supply_volts * path.poles.shares
    used = np.abs(shares).max(axis=0) > _UNUSED * np.abs(shares).max()
    spectrum = np.fft.rfft(pixel) * first / (1.0 - again) * lagging[used]
    rows = np.fft.irfft(spectrum, len(pixel))[:, ::finer]
    return (shares[:, used] @ rows).reshape(-1, n_pixels, samples)


def _finer(step_s: float, n_samples: int, shortest_s: float) -> int:
    """Return by what power of two to divide the step, so that the shortest time is resolved. [1]"""
    wanted = math.log2(step_s * _SAMPLES_PER_CHANGE / shortest_s)
    room = math.log2(_MOST_SAMPLES / n_samples)
    return 1 << max(0, min(math.ceil(wanted), math.floor(room)))


def _ramp(path: Path, n_samples: int, step_s: float) -> FloatArray:
    """Return the drivers' edge; one shorter than two samples would ring in the transform. [1]"""
    return np.clip(np.arange(n_samples) * (step_s / max(path.rise_s, 2.0 * step_s)), 0.0, 1.0)


def _omega(n_samples: int, step_s: float) -> FloatArray:
    return np.asarray(2.0 * math.pi * np.fft.rfftfreq(n_samples, step_s))


def _cut(volts: FloatArray, weights_volts: FloatArray) -> FloatArray:
    """Drop the pixels in which nothing moves and make the rest add up to the weights.

    The last pixel is none: there the transform, which repeats, lets the first one show through.
    """
    loud = np.abs(volts[:, :-1]).max(axis=(0, 2), initial=0.0) > _CUT * np.abs(weights_volts).max(initial=0.0)
    n_kept = 1 + int(np.flatnonzero(loud).max(initial=0))
    kept = np.ascontiguousarray(volts[:, :n_kept])
    kept[:, -1] += weights_volts[:, None] - kept.sum(axis=1)
    return kept


def step_figures(network: Network, driver: Driver, load: Load, cable: Cable | None = None) -> Step:
    """Return how the step from code 0 to all ones arrives at the monitor.

    Parameters
    ----------
    network, driver, load, cable
        The way to the monitor; ``cable`` is none where there is none.

    Notes
    -----
    The ghost's size is taken from the model's own waves: the first echo alone over the first
    arrival alone, each one round trip after it has come. So the loss of the cable is in it. With
    resistances at both ends and no loss it is the product of the two reflections; it comes after
    two passages of the cable [1]_.

    References
    ----------
    .. [1] W. D. Stevenson, "Elements of Power System Analysis", lattice diagrams (example 5.6).
    """
    path = find_path(network, driver, load, cable)
    if path is None or not (end := float(path.weights_volts.sum())):
        return Step(0.0, None, 0.0, 0.0, None, None, *(_read_only(np.zeros(2)) for _ in range(2)))
    time_s, volts, ghost = _line_step(path, path.line) if path.line else _lumped_step(path)
    share = volts / end
    return Step(
        rise_s=_first_time(time_s, share, 0.9) - _first_time(time_s, share, 0.1),
        bandwidth_hz=_bandwidth_hz(path),
        settle_s=_last_time(time_s, np.abs(share - 1.0), 0.5 / (network.n_codes - 1)),
        overshoot=max(0.0, float(share.max()) - 1.0),
        first_ghost_ratio=ghost,
        first_ghost_s=None if ghost is None or path.line is None else 2.0 * path.line.delay_s,
        time_s=_read_only(time_s),
        volts=_read_only(volts),
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


def _lumped_step(path: Path) -> tuple[FloatArray, FloatArray, None]:
    time_s = _fine_where_it_moves(path)
    return (
        time_s,
        path.supply_volts * path.poles.shares.sum(axis=0) @ path.poles.ramps(time_s, path.rise_s),
        None,
    )


def _fine_where_it_moves(path: Path) -> FloatArray:
    """Return instants that resolve the ramp and each lag, however far apart they are. [s]"""
    spans = [path.rise_s, *(16.0 * path.poles.lags_s), *(path.rise_s + 16.0 * path.poles.lags_s)]
    return np.unique(np.concatenate([np.linspace(0.0, span, _SAMPLES_PER_LAG) for span in spans]))


def _line_step(path: Path, line: Line) -> tuple[FloatArray, FloatArray, float | None]:
    settling_s = path.settling_s
    n_samples = 1 << math.ceil(
        math.log2(min(settling_s / path.shortest_s * _SAMPLES_PER_CHANGE, _MOST_SAMPLES))
    )
    step_s = settling_s / n_samples
    ramp = _ramp(path, n_samples, step_s)
    omega = _omega(n_samples, step_s)
    lagging = path.poles.lagging(omega)
    first, again = path.waves(omega, lagging)
    at_end = (
        path.supply_volts * path.poles.shares.sum(axis=0) @ lagging * np.fft.rfft(np.diff(ramp, prepend=0.0))
    )
    waves = at_end * np.stack((first / (1.0 - again), first, first * again))
    volts, arrival, echo = np.cumsum(np.fft.irfft(waves, n_samples), axis=1)
    time_s = np.linspace(0.0, settling_s, n_samples, endpoint=False)
    trip = 2.0 * line.delay_s
    ratio = float(np.interp(2.0 * trip, time_s, echo) / np.interp(trip, time_s, arrival))
    return time_s, volts, ratio if abs(ratio) > _NO_ECHO else None


def _bandwidth_hz(path: Path) -> float | None:
    """Return the lowest frequency at which half the power of a steady signal is left. [Hz]"""
    pins = path.poles.shares.sum(axis=0)

    def excess(hz: FloatArray) -> FloatArray:
        omega = 2.0 * math.pi * hz
        lagging = path.poles.lagging(omega)
        first, again = path.waves(omega, lagging)
        left: FloatArray = np.abs(pins @ lagging * (first / (1.0 - again)))
        return left - math.sqrt(0.5) * abs(float(pins.sum()) * path.settled_line)

    hz = _probing_hz(path)
    for _ in range(3):
        low = excess(hz) < 0.0
        late = int(np.argmax(low))
        if not low[late]:
            return None
        early = max(late - 1, 0)
        hz = np.linspace(hz[early], hz[late], 65)
    return float(hz[32])


def _probing_hz(path: Path) -> FloatArray:
    """Return frequencies close enough to see each lag, and each ripple that a cable's echoes make. [Hz]"""
    decades = np.geomspace(1.0, _MOST_HZ, 481)
    if path.line is None:
        return decades
    ripple_hz = 0.5 / path.line.delay_s
    return np.unique(np.concatenate((decades, np.arange(1, 4097) * (ripple_hz / 16.0))))
