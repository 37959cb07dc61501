"""What goes wrong between the picture and the network: wrong, late or uneven bits.

A project says what was meant. A slip is what a board does beside that: a pin stuck, bits or colours
wired in another order, pixels a clock late, pins that do not switch together. Levels, response and
timing stay those of the project; only what the pins are told, and when, differs.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

__all__ = ["NO_SLIPS", "Slips", "skewed", "slipped_codes"]

FloatArray = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Slips:
    """The slips of a board; the default has none."""

    stuck_high: tuple[int, int, int] = (0, 0, 0)
    """Bits of red, green and blue that are always 1, as a mask. [1]"""
    stuck_low: tuple[int, int, int] = (0, 0, 0)
    """Bits that are always 0, as a mask. [1]"""
    reversed_bits: tuple[bool, bool, bool] = (False, False, False)
    """Channels whose pins are wired, or told, in the reverse order."""
    shown_by: tuple[int, int, int] = (0, 1, 2)
    """Whose codes the red, green and blue lines carry: 0 red, 1 green, 2 blue. [1]"""
    late_pixels: int = 0
    """By how many pixels colour lags behind sync, ``0 <= late_pixels``. [1]"""
    mirrored: int = 1
    """Pixels of a group that leave in reverse order, as by a wrong order of packing; 1 for none. [1]"""
    skew_s: tuple[tuple[float, ...], ...] = ((), (), ())
    """By how much each pin lags, red, green and blue, most significant first; empty for not. [s]"""


NO_SLIPS = Slips()


def slipped_codes(
    slips: Slips, lines: NDArray[np.integer], bits: Sequence[int], blanking: int
) -> NDArray[np.intp]:
    """Return what the pins do, told the codes of some lines.

    Parameters
    ----------
    slips : Slips
    lines : int array, shape (3, ..., h.total)
        Codes of red, green and blue, from the start of the front porch. [1]
    bits : sequence of 3 int
        Bits of each channel. [1]
    blanking : int
        Pixels of a line before its picture. [1]

    Returns
    -------
    codes : int array, shape (3, ..., h.total)
    """
    told = np.stack([_fitted(lines[of], bits[of], bits[on]) for on, of in enumerate(slips.shown_by)])
    if slips.mirrored > 1:
        _mirror(told[..., blanking:], slips.mirrored)
    if slips.late_pixels:
        late = min(slips.late_pixels, told.shape[-1] - 1)
        # The lines before are taken to end like these: what ran over is in the front porch.
        told = np.roll(told, late, axis=-1)
    for channel, n_bits in enumerate(bits):
        if slips.reversed_bits[channel]:
            told[channel] = _reversed(n_bits).take(told[channel], mode="clip")
        told[channel] = (told[channel] | slips.stuck_high[channel]) & ~slips.stuck_low[channel]
    return told


def skewed(pulse_volts: FloatArray, skew_s: Sequence[float], step_s: float) -> FloatArray:
    """Return pixel pulses of pins that lag.

    Parameters
    ----------
    pulse_volts : float array, shape (n_pins, n_pixels_after, samples_per_pixel)
        Pulses of pins that switch together. [V]
    skew_s : sequence of float
        Lag of each pin, ``0 <= lag``; missing ones do not lag. [s]
    step_s : float
        Time from one sample to the next. [s]

    Returns
    -------
    pulse_volts : float array, shape (n_pins, n_pixels_after + n, samples_per_pixel)
        Straight between samples. [V]
    """
    if not any(skew_s):
        return pulse_volts
    n_pins, n_after, samples = pulse_volts.shape
    more = int(np.ceil(max(skew_s) / (step_s * samples)))
    at = np.arange((n_after + more) * samples, dtype=np.float64)
    lags = [*skew_s, *[0.0] * n_pins][:n_pins]
    known = np.arange(-1, n_after * samples + 1)
    rows = [
        np.interp(at - lag / step_s, known, np.pad(pulse.ravel(), 1))
        for lag, pulse in zip(lags, pulse_volts, strict=True)
    ]
    return np.reshape(rows, (n_pins, n_after + more, samples))


def _fitted(codes: NDArray[np.integer], bits: int, line_bits: int) -> NDArray[np.intp]:
    """Bring codes of one channel to the bits of the line that carries them, high bit to high bit."""
    wide = codes.astype(np.intp)
    return wide << (line_bits - bits) if line_bits >= bits else wide >> (bits - line_bits)


def _mirror(active: NDArray[np.intp], group: int) -> None:
    """Reverse the order of the pixels in each whole group."""
    whole = active.shape[-1] // group * group
    groups = active[..., :whole].reshape(*active.shape[:-1], -1, group)
    active[..., :whole] = groups[..., ::-1].reshape(*active.shape[:-1], whole)


def _reversed(bits: int) -> NDArray[np.intp]:
    """Return the code with its bits in reverse order, for every code."""
    codes = np.arange(1 << bits)
    return np.array(
        sum(((codes >> bit & 1) << (bits - 1 - bit) for bit in range(bits)), np.zeros_like(codes))
    )
