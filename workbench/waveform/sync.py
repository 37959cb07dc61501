"""The two sync lines: their level at the monitor and their edges.

A sync line is a pin, a series resistor and the monitor's input; no capacitance is known of
it, so an edge is the driver's own linear ramp.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.circuit.network import Driver
from workbench.timing.frame import v_sync_asserted
from workbench.timing.mode import Mode, Polarity

__all__ = ["SyncDrive", "sync_high_volts", "write_h_sync", "write_v_sync"]

Float32Array = NDArray[np.float32]

_ON_SAMPLE = 1e-9
"""An edge this near after a sample is on it: it is only rounding. [1]"""


@dataclass(frozen=True, slots=True)
class SyncDrive:
    """What the sync lines carry at the monitor; low is 0 V."""

    h_high_volts: float
    v_high_volts: float
    rise_s: float
    """Length of the linear ramp of an edge, 0 to 100 %. [s]"""


def sync_high_volts(driver: Driver, series_ohms: float, input_ohms: float | None) -> float:
    """Return the level of a high sync line at the monitor. [V]

    Parameters
    ----------
    driver : Driver
        The pin behind the line: supply and on-resistance when high.
    series_ohms : float
        Resistor between pin and connector, ``0 <= series_ohms``. [Ω]
    input_ohms : float or None
        Input resistance of the monitor, ``0 < input_ohms``; none draws no current. [Ω]

    Examples
    --------
    >>> round(sync_high_volts(Driver(supply_volts=3.3), 330.0, 1000.0), 2)
    2.48
    """
    if input_ohms is None:
        return driver.supply_volts
    return driver.supply_volts * input_ohms / (input_ohms + series_ohms + driver.high_ohms)


def write_h_sync(
    mode: Mode, drive: SyncDrive, samples: int, out: Float32Array, *, early: tuple[float, float] = (0.0, 0.0)
) -> None:
    """Write H sync of one line, from the start of its front porch.

    Parameters
    ----------
    mode : Mode
        Place and polarity of the pulse.
    drive : SyncDrive
        Levels and ramp.
    samples : int
        Samples a pixel, ``1 <= samples``. [1]
    out : float32 array, shape (h.total * samples,)
        Where the voltage at the monitor is written. [V]
    early : tuple of 2 float
        By how much its two edges lie before their even places, in a line of uneven pixels. [pixels]
    """
    leading, trailing = ((edge - by) * samples for edge, by in zip(mode.h.edges[:2], early, strict=True))
    pulse, rest = _levels(mode.h.polarity, drive.h_high_volts)
    step_s = mode.pixel_s / samples
    out[:] = rest
    _add_step(out, leading, pulse - rest, drive.rise_s / step_s)
    _add_step(out, trailing, rest - pulse, drive.rise_s / step_s)


def write_v_sync(
    mode: Mode, number: int, drive: SyncDrive, samples: int, out: Float32Array, *, early: float = 0.0
) -> None:
    """Write V sync of line ``number``; it changes at the leading edge of H sync.

    The other parameters are those of :func:`write_h_sync`.
    """
    pulse, rest = _levels(mode.v.polarity, drive.v_high_volts)
    before, after = (pulse if asserted else rest for asserted in v_sync_asserted(mode, number))
    out[:] = before
    start = (mode.h.front_porch - early) * samples
    _add_step(out, start, after - before, drive.rise_s * samples / mode.pixel_s)


def _levels(polarity: Polarity, high_volts: float) -> tuple[float, float]:
    """Return the levels during the pulse and at rest. [V]"""
    return (high_volts, 0.0) if polarity is Polarity.POSITIVE else (0.0, high_volts)


def _add_step(out: Float32Array, start: float, by_volts: float, ramp_samples: float) -> None:
    """Add a step that begins at, or between, samples and takes a ramp of some samples."""
    if by_volts == 0.0:
        return
    first = max(0, math.ceil(start - _ON_SAMPLE))
    ramp = out[first : max(first, math.ceil(start + ramp_samples))]
    if len(ramp):
        ramp += (by_volts / ramp_samples) * (np.arange(len(ramp), dtype=np.float32) + (first - start))
    out[first + len(ramp) :] += np.float32(by_volts)
