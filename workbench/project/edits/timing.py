"""Edits of the display mode: another mode, own counts, edges moved on the line ruler."""

from dataclasses import replace

from workbench.errors import EditError, TimingError
from workbench.project.document import Direction, Project
from workbench.timing.custom import make_mode
from workbench.timing.mode import Axis, Mode, Polarity

__all__ = ["move_edge", "set_counts", "set_mode", "set_pixel_clock", "set_polarity"]

_REGIONS = ("front_porch", "sync", "back_porch", "active")
"""The counts of an axis in the order of the time axis; edge i lies after the i-th."""


def set_mode(project: Project, mode: Mode) -> Project:
    """Choose another display mode; the scanline stays the same one, or the nearest there is."""
    if mode.interlaced:
        raise EditError(f"{mode.name} is interlaced, which is not simulated here: choose a progressive mode")
    return replace(project, mode=mode, scanline=_carried(project.scanline, project.mode.v, mode.v))


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
    return _set_axis(
        project, direction, replace(new, border=old.border) if new == replace(old, border=0) else new
    )


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
    return _set_axis(project, direction, replace(_axis(project.mode, direction), polarity=polarity))


def set_pixel_clock(project: Project, pixel_clock_hz: int) -> Project:
    """Change the pixel clock, a whole number of hertz; the mode becomes one's own. [Hz]"""
    mode = project.mode
    if pixel_clock_hz == mode.pixel_clock_hz:
        return project
    return set_mode(project, _own(mode.h, mode.v, pixel_clock_hz))


def _set_axis(project: Project, direction: Direction, axis: Axis) -> Project:
    mode = project.mode
    if axis == _axis(mode, direction):
        return project
    h, v = (axis, mode.v) if direction is Direction.HORIZONTAL else (mode.h, axis)
    return set_mode(project, _own(h, v, mode.pixel_clock_hz))


def _own(h: Axis, v: Axis, pixel_clock_hz: int) -> Mode:
    try:
        return make_mode(h, v, pixel_clock_hz)
    except TimingError as error:
        raise EditError(str(error)) from error


def _axis(mode: Mode, direction: Direction) -> Axis:
    return mode.h if direction is Direction.HORIZONTAL else mode.v


def _carried(scanline: int, old: Axis, new: Axis) -> int:
    """Return the scanline of a new frame: a picture line stays one, a blank one as far below."""
    if scanline <= old.active:
        return min(scanline, new.active)
    return min(new.active + (scanline - old.active), new.total)
