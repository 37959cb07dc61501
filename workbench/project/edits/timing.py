"""Edits of the display mode: another mode, own counts, edges moved on the line ruler, a planned clock."""

from dataclasses import replace
from typing import TYPE_CHECKING

from workbench.errors import EditError, TimingError
from workbench.project.document import Direction, Project
from workbench.timing.edges import with_counts
from workbench.timing.mode import Axis, Mode, Polarity

if TYPE_CHECKING:
    from workbench.timing.clock.plan import Plan

__all__ = [
    "move_edge",
    "set_axis",
    "set_counts",
    "set_mode",
    "set_pixel_clock",
    "set_polarity",
    "take_plan",
]

_REGIONS = ("front_porch", "sync", "back_porch", "active")
"""The counts of an axis in the order of the time axis; edge i lies after the i-th."""


def set_mode(project: Project, mode: Mode) -> Project:
    """Choose another display mode; the scanline stays the same one, or the nearest there is.

    With another pixel clock pixels are even, until a plan with a fractional divider is taken again.
    """
    if mode.interlaced:
        raise EditError(f"{mode.name} is interlaced, which is not simulated here: choose a progressive mode")
    kept = project.pixel_divider if mode.pixel_clock_hz == project.mode.pixel_clock_hz else None
    scanline = _carried(project.scanline, project.mode.v, mode.v)
    return replace(project, mode=mode, scanline=scanline, pixel_divider=kept)


def set_counts(
    project: Project,
    direction: Direction,
    *,
    active: int | None = None,
    front_porch: int | None = None,
    sync: int | None = None,
    back_porch: int | None = None,
) -> Project:
    """Change counts of a line (in pixels) or of a frame (in lines); the mode becomes one's own."""
    old = _axis(project.mode, direction)
    new = Axis(
        old.active if active is None else active,
        old.front_porch if front_porch is None else front_porch,
        old.sync if sync is None else sync,
        old.back_porch if back_porch is None else back_porch,
        old.polarity,
    )
    return set_axis(project, direction, replace(new, border=old.border))


def move_edge(project: Project, direction: Direction, edge: int, position: int) -> Project:
    """Move the edge after front porch (0), sync (1) or back porch (2); the total stays.

    ``position`` counts from the start of the front porch, in pixels or lines. What lies on both
    sides of the edge gives and takes; a sync pulse keeps at least one.
    """
    axis = _axis(project.mode, direction)
    bounds = (0, *axis.edges)
    least = [1 if _REGIONS[side] in ("sync", "active") else 0 for side in (edge, edge + 1)]
    place = min(max(position, bounds[edge] + least[0]), bounds[edge + 2] - least[1])
    widths = {_REGIONS[edge]: place - bounds[edge], _REGIONS[edge + 1]: bounds[edge + 2] - place}
    moved = place != bounds[edge + 1]
    return set_counts(project, direction, **widths) if moved else project


def set_polarity(project: Project, direction: Direction, polarity: Polarity) -> Project:
    """Turn a sync pulse over."""
    return set_axis(project, direction, replace(_axis(project.mode, direction), polarity=polarity))


def set_pixel_clock(project: Project, pixel_clock_hz: int) -> Project:
    """Change the pixel clock, a whole number of hertz; the mode becomes one's own. [Hz]"""
    return _changed(project, pixel_clock_hz=pixel_clock_hz)


def take_plan(project: Project, plan: "Plan") -> Project:
    """Send the pixels at the clock that a chip's plan makes, to the nearest hertz, and as unevenly."""
    return replace(set_pixel_clock(project, round(plan.pixel_hz)), pixel_divider=plan.uneven_divider)


def set_axis(project: Project, direction: Direction, axis: Axis) -> Project:
    """Take all counts of a line or a frame as given; where a table has them, its mode is back.

    A border that no longer fits in the porches is border no more.
    """
    if axis.border > min(axis.front_porch, axis.back_porch):
        axis = replace(axis, border=0)
    if direction is Direction.HORIZONTAL:
        return _changed(project, h=axis)
    return _changed(project, v=axis)


def _changed(
    project: Project, *, h: Axis | None = None, v: Axis | None = None, pixel_clock_hz: int | None = None
) -> Project:
    try:
        mode = with_counts(project.mode, h=h, v=v, pixel_clock_hz=pixel_clock_hz)
    except TimingError as error:
        raise EditError(str(error)) from error
    return project if mode == project.mode else set_mode(project, mode)


def _axis(mode: Mode, direction: Direction) -> Axis:
    return mode.h if direction is Direction.HORIZONTAL else mode.v


def _carried(scanline: int, old: Axis, new: Axis) -> int:
    """Return the scanline of a new frame: a picture line stays one, a blank one as far below."""
    if scanline <= old.active:
        return min(scanline, new.active)
    return min(new.active + (scanline - old.active), new.total)
