"""Which line of the frame does what.

Lines are numbered from 1 at the first line of the picture and each starts with its front porch.
V sync changes level at the leading edge of H sync, so a line of the vertical interval holds the
old level in its front porch and the new one after it.
"""

from workbench.timing.mode import Mode, Region

__all__ = ["line_region", "v_sync_asserted", "v_sync_lines"]


def line_region(mode: Mode, number: int) -> Region:
    """Return the part of the frame a line belongs to.

    Parameters
    ----------
    number : int
        Line, from 1 at the first line of the picture; counts on past the frame's end. [1]

    Examples
    --------
    >>> from workbench.timing.standards import dmt_mode
    >>> line_region(dmt_mode(0x04), 491).value
    'sync'
    """
    return mode.v.region((number - 1 - mode.v.active) % mode.v.total)


def v_sync_lines(mode: Mode) -> range:
    """Return the numbers of the lines that start a V sync line at their H sync edge.

    >>> from workbench.timing.standards import dmt_mode
    >>> list(v_sync_lines(dmt_mode(0x04)))
    [491, 492]
    """
    first = mode.v.active + mode.v.front_porch + 1
    return range(first, first + mode.v.sync)


def v_sync_asserted(mode: Mode, number: int) -> tuple[bool, bool]:
    """Return whether V sync is on before and after the H sync edge of a line."""
    before = line_region(mode, number - 1) is Region.SYNC
    return before, line_region(mode, number) is Region.SYNC
