"""Edits of the two sync lines."""

from dataclasses import replace

from workbench.project.document import Direction, Project, SyncLine
from workbench.project.limits import OHMS, SERIES_OHMS

__all__ = ["set_sync_input", "set_sync_series"]


def set_sync_series(project: Project, line: Direction, ohms: float) -> Project:
    """Change the resistor between a sync pin and the connector; 0 is a plain wire. [Ω]"""
    checked = SERIES_OHMS.check(ohms, f"the {line.value.upper()} sync resistor")
    return _put(project, line, replace(project.sync[line], series_ohms=checked))


def set_sync_input(project: Project, line: Direction, ohms: float | None) -> Project:
    """Say what input resistance the monitor has on a sync line; none draws nothing. [Ω]"""
    checked = None if ohms is None else OHMS.check(ohms, f"the {line.value.upper()} sync input")
    return _put(project, line, replace(project.sync[line], input_ohms=checked))


def _put(project: Project, line: Direction, sync_line: SyncLine) -> Project:
    h, v = (sync_line, project.sync.v) if line is Direction.HORIZONTAL else (project.sync.h, sync_line)
    return replace(project, sync=replace(project.sync, h=h, v=v))
