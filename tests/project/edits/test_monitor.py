"""A monitor's limits taken from its EDID."""

import pytest

from workbench.errors import EditError
from workbench.project.document import MonitorRange, Project
from workbench.project.edits.monitor import use_limits
from workbench.timing.edid.values import Limits


def test_limits_of_an_edid_become_the_projects(project: Project) -> None:
    limits = Limits(50.0, 120.0, 30e3, 70e3, 110e6, finer_pixel_clock_hz=108.5e6)

    assert use_limits(project, limits).monitor == MonitorRange(30e3, 70e3, 50.0, 120.0, 108.5e6)


def test_a_monitor_may_say_no_highest_clock(project: Project) -> None:
    assert use_limits(project, Limits(50.0, 120.0, 30e3, 70e3)).monitor.max_pixel_clock_hz is None


def test_limits_that_run_backwards_are_refused(project: Project) -> None:
    with pytest.raises(EditError, match="exchange the two"):
        use_limits(project, Limits(120.0, 50.0, 30e3, 70e3))


def test_limits_of_which_a_part_is_damaged_are_refused(project: Project) -> None:
    with pytest.raises(EditError, match="enter the monitor's range"):
        use_limits(project, Limits(None, None, 30e3, 70e3))
