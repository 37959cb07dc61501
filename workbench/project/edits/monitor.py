"""Edits of what the user's monitor takes."""

from dataclasses import replace

from workbench.errors import EditError
from workbench.project.document import MonitorRange, Project
from workbench.project.limits import RATE_HZ
from workbench.timing.edid.values import Limits

__all__ = ["forget_monitor", "set_monitor", "use_limits"]


def set_monitor(project: Project, monitor: MonitorRange) -> Project:
    """Hold the mode to what a monitor takes, as its manual says."""
    for noun, low, high in (
        ("line rate", monitor.h_min_hz, monitor.h_max_hz),
        ("field rate", monitor.v_min_hz, monitor.v_max_hz),
    ):
        RATE_HZ.check(low, f"the lowest {noun}")
        RATE_HZ.check(high, f"the highest {noun}")
        if high < low:
            raise EditError(f"the highest {noun} is below the lowest: exchange the two")
    if monitor.max_pixel_clock_hz is not None:
        RATE_HZ.check(monitor.max_pixel_clock_hz, "the highest pixel clock")
    return replace(project, monitor=monitor)


def use_limits(project: Project, limits: Limits) -> Project:
    """Hold the mode to the range limits that a monitor's EDID gives."""
    clock_hz = limits.finer_pixel_clock_hz or limits.max_pixel_clock_hz
    return set_monitor(
        project,
        MonitorRange(limits.h_min_hz, limits.h_max_hz, limits.v_min_hz, limits.v_max_hz, clock_hz),
    )


def forget_monitor(project: Project) -> Project:
    """Hold the mode to no monitor's limits."""
    return replace(project, monitor=None)
