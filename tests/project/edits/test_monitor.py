"""Edits of the monitor's limits."""

import pytest

from workbench.errors import EditError
from workbench.project.document import MonitorRange, Project
from workbench.project.edits.monitor import forget_monitor, set_monitor, use_limits
from workbench.timing.edid.values import Limits


def test_limits_of_an_edid_become_the_projects(project: Project) -> None:
    limits = Limits(50.0, 120.0, 30e3, 70e3, 110e6, finer_pixel_clock_hz=108.5e6)

    assert use_limits(project, limits).monitor == MonitorRange(30e3, 70e3, 50.0, 120.0, 108.5e6)


def test_a_monitor_may_say_no_highest_clock(project: Project) -> None:
    assert use_limits(project, Limits(50.0, 120.0, 30e3, 70e3)).monitor.max_pixel_clock_hz is None


@pytest.mark.parametrize(
    ("monitor", "words"),
    [
        (MonitorRange(70e3, 30e3, 50.0, 75.0), "highest line rate is below the lowest"),
        (MonitorRange(30e3, 70e3, 75.0, 50.0), "highest field rate is below the lowest"),
        (MonitorRange(0.0, 70e3, 50.0, 75.0), "the lowest line rate cannot be 0 Hz"),
        (MonitorRange(30e3, float("nan"), 50.0, 75.0), "the highest line rate cannot be"),
        (MonitorRange(30e3, 70e3, 50.0, 75.0, -1.0), "the highest pixel clock cannot be"),
    ],
)
def test_impossible_limits_are_refused(project: Project, monitor: MonitorRange, words: str) -> None:
    with pytest.raises(EditError, match=words):
        set_monitor(project, monitor)


def test_a_monitor_is_forgotten(project: Project) -> None:
    held = set_monitor(project, MonitorRange(30e3, 70e3, 50.0, 75.0))

    assert forget_monitor(held).monitor is None
