"""What goes wrong between the picture and the pins: wrong or late codes.

A project says what was meant. A slip is what a board does beside that: a bit stuck, bits or colours
in another order, pixels a clock late. Levels, response and timing stay those of the project; only what
the pins are told differs. Bits are those of the code, whatever pins show them.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

__all__ = ["NO_SLIPS", "Slips", "slipped_codes"]


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
