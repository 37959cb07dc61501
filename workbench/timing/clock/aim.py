"""The pixel clock a plan aims at: that of the table's mode, also where another one is in force."""

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from workbench.timing.mode import Mode
from workbench.timing.standards import KNOWN

__all__ = ["aimed_mode"]

_NEAR = 0.02
"""Part of the clock by which a mode may be off the table's and still be meant to be it. Our own. [1]"""


def aimed_mode(mode: Mode, aims: Mapping[int, int] = MappingProxyType({})) -> Mode:
    """Return the mode with the clock that its plans are measured against.

    Parameters
    ----------
    aims : mapping of int to int
        Clocks that were taken from a plan, and what each of these plans aimed at. [Hz]

    Returns
    -------
    mode : Mode
        The table's mode of the same counts, if its clock is near; else the mode with the clock
        that its plan aimed at, if its clock was taken from one; else the mode itself.

    Notes
    -----
    Taking a plan changes the clock of the mode; the next plans are still to be measured against
    the clock that a monitor expects. No table knows a mode of one's own counts.

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
    if near:
        return min(near, key=lambda known: abs(mode.pixel_clock_hz - known.pixel_clock_hz))
    return replace(mode, pixel_clock_hz=aims.get(mode.pixel_clock_hz, mode.pixel_clock_hz))


def _counts(mode: Mode) -> tuple[object, ...]:
    return replace(mode.h, border=0), replace(mode.v, border=0), mode.interlaced
