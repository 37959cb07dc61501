"""The edit that takes a monitor's limits from its EDID."""

from workbench.project.document import MonitorRange, Project
from workbench.project.edits.drive import set_monitor
from workbench.timing.edid.values import Limits

__all__ = ["use_limits"]


def use_limits(project: Project, limits: Limits) -> Project:
    """Hold the mode to the range limits that a monitor's EDID gives."""
    clock_hz = limits.finer_pixel_clock_hz or limits.max_pixel_clock_hz
    return set_monitor(
        project,
        MonitorRange(limits.h_min_hz, limits.h_max_hz, limits.v_min_hz, limits.v_max_hz, clock_hz),
    )
