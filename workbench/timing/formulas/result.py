"""What CVT and GTF share: the wanted rate, the time left, the resulting mode."""

from dataclasses import replace
from fractions import Fraction

from workbench.errors import TimingError
from workbench.timing.custom import make_mode
from workbench.timing.mode import Axis, Mode
from workbench.timing.request import Request

__all__ = ["estimated_line_us", "exact_rate", "formula_mode"]

_FARTHEST = Fraction(5, 100)
"""Part of the wanted rate by which a result may miss it and still bear its name. Our own. [1]"""


def exact_rate(asked: Request) -> Fraction:
    """Return the refresh rate asked for as the decimal number a person wrote. [Hz]

    Raises
    ------
    TimingError
        Outside 1 … 1000 Hz, our own bounds.
    """
    if not 1 <= asked.rate_hz <= 1000:
        raise TimingError(
            f"{asked.rate_hz:.10g} frames a second is outside 1 … 1000; write a rate, as in @60."
        )
    return Fraction(str(asked.rate_hz))


def estimated_line_us(asked: Request, lines: int, blanking_us: int) -> Fraction:
    """Return the length of a line when ``lines`` of them share what blanking leaves of a frame. [µs]

    Something is always left: `exact_rate` takes no frame shorter than a millisecond.
    """
    return (1_000_000 / exact_rate(asked) - blanking_us) / lines


def formula_mode(asked: Request, h: Axis, v: Axis, pixel_clock_hz: int, *, source: str) -> Mode:
    """Return a formula's result as a mode, named by its own width, which may be cut to cells.

    Raises
    ------
    TimingError
        If the formula's result is no possible mode, as for tiny pictures, or misses the wanted rate
        because its clock comes in steps.
    """
    name = str(replace(asked, width=h.active))
    try:
        mode = make_mode(h, v, pixel_clock_hz, name=name, source=source)
    except TimingError as error:
        raise TimingError(f"{asked} is outside what {source} can make. {error}") from None
    if abs(mode.frame_rate_hz / asked.rate_hz - 1) > _FARTHEST:
        raise TimingError(
            f"{asked} is outside what {source} can make: its clock steps make {mode.frame_rate_hz:.4g} Hz of "
            "it; ask for more frames a second."
        )
    return mode
