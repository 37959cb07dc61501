"""Round steps for the two axes, and how time lies on the screen."""

from dataclasses import dataclass
from math import ceil, floor, log10

__all__ = ["TimeScale", "round_step", "tick_text", "ticks", "volts_top"]

_USUAL_TOP = 0.8
"""Top of the colour lane while levels stay under it: white is 0.700 V. [V]"""
_TOPS = (1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0, 6.0, 8.0, 10.0)


@dataclass(frozen=True, slots=True)
class TimeScale:
    """A stretch of time laid over a stretch of the screen."""

    first_s: float
    last_s: float
    left: float
    right: float

    def x(self, time_s: float) -> float:
        """Return where a time lies. [px]"""
        span_s = self.last_s - self.first_s
        return self.left + (time_s - self.first_s) * (self.right - self.left) / span_s

    def time_s(self, x: float) -> float:
        """Return the time at a place. [s]"""
        span_s = self.last_s - self.first_s
        return self.first_s + (x - self.left) * span_s / (self.right - self.left)

    def clipped_x(self, time_s: float) -> float:
        """Return where a time lies, the nearer end for one that is out of sight. [px]"""
        return min(max(self.x(time_s), self.left), self.right)


def round_step(span: float, room: float, least: float) -> float:
    """Return the smallest of 1, 2, 5 × 10ⁿ that keeps ticks apart.

    Parameters
    ----------
    span : float
        What the axis shows, ``0 < span``, in its own unit.
    room, least : float
        Length of the axis and the least distance of two ticks, ``0 < least``. [px]
    """
    smallest = span * least / max(room, least)
    power = 10.0 ** floor(log10(smallest))
    for factor in (1.0, 2.0, 5.0):
        if factor * power >= smallest * (1 - 1e-9):
            return factor * power
    return 10.0 * power


def ticks(low: float, high: float, step: float) -> tuple[float, ...]:
    """Return the multiples of a step from low to high."""
    first, last = ceil(low / step - 1e-6), floor(high / step + 1e-6)
    return tuple(round(number * step, 12) for number in range(first, last + 1))


def tick_text(value: float, step: float) -> str:
    """Return a tick's text with the decimals its step needs; the minus is U+2212."""
    decimals = max(0, -floor(log10(step) + 1e-9))
    text = f"{value:.{decimals}f}"
    return text.replace("-", "\u2212")


def volts_top(highest: float) -> float:
    """Return the top of the colour lane for the highest level on it. [V]"""
    if highest <= _USUAL_TOP:
        return _USUAL_TOP
    return next((top for top in _TOPS if highest <= top), highest * 1.1)
