"""The pixel clock a plan aims at: that of the table's mode, also where another one is in force."""

from dataclasses import replace

from workbench.timing.mode import Mode
from workbench.timing.standards import KNOWN

__all__ = ["aimed_mode"]

_NEAR = 0.02
"""Part of the clock by which a mode may be off the table's and still be meant to be it. Our own. [1]"""


def aimed_mode(mode: Mode) -> Mode:
    """Return the table's mode of the same counts, if its clock is near; else the mode itself.

    Taking a plan changes the clock of the mode; the next plans are still to be measured against
    the clock that a monitor expects.

    Examples
    --------
    >>> from workbench.timing.edges import with_counts
    >>> from workbench.timing.search import find_mode
    >>> aimed_mode(with_counts(find_mode("640x480@60"), pixel_clock_hz=25_200_000)).pixel_clock_hz
    25175000
    """
    counts = _counts(mode)
    alike = [known for known in KNOWN if _counts(known) == counts]
    near = [known for known in alike if abs(mode.pixel_clock_hz / known.pixel_clock_hz - 1) <= _NEAR]
    return min(near, key=lambda known: abs(mode.pixel_clock_hz - known.pixel_clock_hz), default=mode)


def _counts(mode: Mode) -> tuple[object, ...]:
    return replace(mode.h, border=0), replace(mode.v, border=0), mode.interlaced
