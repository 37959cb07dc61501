"""Moving the edges of a line or a frame, and typing its counts as times.

The edges lie between the regions of an axis, in the order of our time axis: front porch, sync,
back porch, active. Moving one gives to the region before it; either the region behind gives way and
the total stays, or everything behind moves along and the total changes.
"""

from dataclasses import replace

from workbench.errors import TimingError
from workbench.timing.custom import MAX_TOTAL, checked, make_mode
from workbench.timing.mode import Axis, Mode, Region
from workbench.timing.standards import KNOWN
from workbench.units import format_quantity

__all__ = ["lines_of", "move_edge", "pixels_of", "same_signal", "with_counts"]

_FIELDS = {
    Region.FRONT_PORCH: "front_porch",
    Region.SYNC: "sync",
    Region.BACK_PORCH: "back_porch",
    Region.ACTIVE: "active",
}


def move_edge(axis: Axis, before: Region, by: int, *, keep_total: bool) -> Axis:
    """Return the axis with an edge moved as far as it can go.

    Parameters
    ----------
    before : Region
        The region that ends at the edge; active ends where the next front porch starts.
    by : int
        How far, positive to make that region longer. [1]
    keep_total : bool
        Whether the region behind the edge gives way.

    Returns
    -------
    axis : Axis
        Porches are left at least their border, sync and active at least 1.

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> h = find_mode("640x480@60").h
    >>> moved = move_edge(h, Region.FRONT_PORCH, -100, keep_total=True)
    >>> moved.front_porch, moved.sync, moved.total
    (8, 104, 800)
    """
    regions = list(Region)
    grows = _FIELDS[before]
    shrinks = _FIELDS[regions[(regions.index(before) + 1) % len(regions)]]
    room = getattr(axis, shrinks) - _least(axis, shrinks) if keep_total else MAX_TOTAL - axis.total
    by = max(_least(axis, grows) - getattr(axis, grows), min(by, room))
    counts = {grows: getattr(axis, grows) + by}
    if keep_total:
        counts[shrinks] = getattr(axis, shrinks) - by
    return replace(axis, **counts)


def _least(axis: Axis, field: str) -> int:
    return axis.border if field.endswith("porch") else 1


def with_counts(
    mode: Mode, *, h: Axis | None = None, v: Axis | None = None, pixel_clock_hz: int | None = None
) -> Mode:
    """Return the mode with some of its counts or its clock changed.

    It becomes a custom mode that says what it was made from, or, where it now equals a mode of
    the tables, that mode again.

    Raises
    ------
    TimingError
        If the result is no possible mode.
    """
    clock_hz = mode.pixel_clock_hz if pixel_clock_hz is None else pixel_clock_hz
    changed = replace(mode, h=h or mode.h, v=v or mode.v, pixel_clock_hz=clock_hz)
    if changed == mode:
        return checked(mode)
    if known := _BY_SIGNAL.get(_signal(changed)):
        return known
    origin = mode.source if mode.source.startswith("custom") else f"custom, from {mode.source}"
    return make_mode(changed.h, changed.v, clock_hz, source=origin, interlaced=mode.interlaced)


def same_signal(mode: Mode, other: Mode) -> bool:
    """Return whether two modes are one and the same on the cable, whatever they are called."""
    return _signal(mode) == _signal(other)


def _signal(mode: Mode) -> tuple[object, ...]:
    """Return what of a mode can be seen on the cable; what is called border cannot."""
    return replace(mode.h, border=0), replace(mode.v, border=0), mode.pixel_clock_hz, mode.interlaced


_BY_SIGNAL = {_signal(mode): mode for mode in reversed(KNOWN)}
"""The modes of the tables by what is seen of them; of look-alikes the one listed first."""


def pixels_of(mode: Mode, seconds: float) -> int:
    """Return the pixels of the line nearest to a time.

    Raises
    ------
    TimingError
        If the time is negative, or longer than any line.

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> pixels_of(find_mode("640x480@60"), 3.81e-6)
    96
    """
    return _nearest(seconds, mode.pixel_s)


def lines_of(mode: Mode, seconds: float) -> int:
    """Return the lines of the frame nearest to a time; errors as in `pixels_of`."""
    return _nearest(seconds, mode.line_s)


def _nearest(seconds: float, unit_s: float) -> int:
    if not 0 <= seconds <= MAX_TOTAL * unit_s:
        raise TimingError(
            f"{format_quantity(seconds, 's')} is outside 0 … {format_quantity(MAX_TOTAL * unit_s, 's')}, the "
            "longest taken here."
        )
    return round(seconds / unit_s)
