"""Modes of one's own: counts checked before they become a mode."""

from dataclasses import replace

from workbench.errors import TimingError
from workbench.timing.mode import Axis, Mode
from workbench.units import format_quantity

__all__ = ["MAX_CLOCK_HZ", "MAX_TOTAL", "MIN_CLOCK_HZ", "checked", "make_mode"]

MIN_CLOCK_HZ = 100_000
"""Slowest pixel clock taken: even 15 kHz lines of 6 pixels are faster. Our own bound. [Hz]"""
MAX_CLOCK_HZ = 1_000_000_000
"""Fastest pixel clock taken: past it nothing here is an analog picture. Our own bound. [Hz]"""
MAX_TOTAL = 8192
"""Most pixels of a line, and most lines of a frame, taken. Our own bound. [1]"""


def make_mode(
    h: Axis, v: Axis, pixel_clock_hz: int, *, name: str = "", source: str = "custom", interlaced: bool = False
) -> Mode:
    """Return a mode of any counts a monitor could be sent.

    Parameters
    ----------
    h, v : Axis
        Pixels of a line and lines of a frame; active and sync at least 1, porches at least 0.
    pixel_clock_hz : int
        Whole number of hertz, ``MIN_CLOCK_HZ <= pixel_clock_hz <= MAX_CLOCK_HZ``. [Hz]
    name : str
        What to call it; left empty it is named by size and rate.

    Raises
    ------
    TimingError
        If a count or the clock is impossible.

    Examples
    --------
    >>> from workbench.timing.mode import Polarity
    >>> h = Axis(640, 16, 96, 48, Polarity.NEGATIVE)
    >>> v = Axis(480, 10, 2, 33, Polarity.NEGATIVE)
    >>> make_mode(h, v, 25_200_000).name
    '640x480@60'
    """
    mode = checked(Mode(name, source, pixel_clock_hz, h, v, interlaced))
    if name:
        return mode
    suffix = "i" if interlaced else ""
    return replace(mode, name=f"{h.active}x{v.active}@{round(mode.field_rate_hz, 2):.10g}{suffix}")


def checked(mode: Mode) -> Mode:
    """Return the mode itself, or raise `TimingError` naming what is impossible in it."""
    _check_axis(mode.h, "line", "pixel")
    _check_axis(mode.v, "frame", "line")
    _check_clock(mode.pixel_clock_hz)
    return mode


def _check_clock(pixel_clock_hz: int) -> None:
    if isinstance(pixel_clock_hz, bool) or not isinstance(pixel_clock_hz, int):
        raise TimingError(f"The pixel clock is a whole number of hertz, not {pixel_clock_hz!r}.")
    if not MIN_CLOCK_HZ <= pixel_clock_hz <= MAX_CLOCK_HZ:
        raise TimingError(
            f"A pixel clock of {format_quantity(pixel_clock_hz, 'Hz', 6)} is outside 100 kHz … 1 GHz; "
            "clocks are written in hertz or with M, as in 25.175M."
        )


def _check_axis(axis: Axis, whole: str, unit: str) -> None:
    least = {"active": 1, "sync": 1, "front_porch": 0, "back_porch": 0, "border": 0}
    for field, minimum in least.items():
        count = getattr(axis, field)
        if isinstance(count, bool) or not isinstance(count, int):
            raise TimingError(f"The {whole}'s {_words(field)} is a whole number of {unit}s, not {count!r}.")
        if count < minimum:
            raise TimingError(f"The {whole}'s {_words(field)} is {count}; it needs at least {minimum}.")
    if axis.total > MAX_TOTAL:
        raise TimingError(f"A {whole} of {axis.total} {unit}s is more than the {MAX_TOTAL} taken here.")
    if axis.border > min(axis.front_porch, axis.back_porch):
        raise TimingError(f"The {whole}'s border of {axis.border} does not fit in its shorter porch.")


def _words(field: str) -> str:
    return field.replace("_", " ")
