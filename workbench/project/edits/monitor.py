"""The edit that takes a monitor's limits from its EDID."""

from workbench.errors import EditError
from workbench.project.document import MonitorRange, Project
from workbench.project.edits.drive import set_monitor
from workbench.timing.edid.values import Limits

__all__ = ["holds_limits", "use_limits"]


def use_limits(project: Project, limits: Limits) -> Project:
    """Hold the mode to the range limits that a monitor's EDID gives.

    Raises
    ------
    EditError
        If the EDID gives only some of them, as a damaged one may.
    """
    if limits.lines is None or limits.fields is None:
        raise EditError("this EDID's limits are damaged: enter the monitor's range on the page Timing")
    clock_hz = limits.finer_pixel_clock_hz or limits.max_pixel_clock_hz
    return set_monitor(project, MonitorRange(*limits.lines, *limits.fields, clock_hz))


def holds_limits(project: Project, limits: Limits) -> bool:
    """Return whether the range a project holds is that of an EDID; errors as in `use_limits`."""
    return use_limits(project, limits).monitor == project.monitor
