"""Is an edge fast enough for a pixel?"""

from collections.abc import Iterator

from workbench.checks.finding import Finding, Severity
from workbench.checks.groups import solved_groups
from workbench.checks.limits import RISE
from workbench.checks.measures import Measures
from workbench.project.document import Project
from workbench.units import format_significant

__all__ = ["rise_time"]


def rise_time(project: Project, measures: Measures) -> Iterator[Finding]:
    """The rise time at the monitor is at most half a pixel."""
    for group in solved_groups(project, measures):
        rise_s = group.figures.step.rise_s
        pixels = rise_s / project.mode.pixel_s
        if RISE.holds(pixels):
            continue
        yield Finding(
            id="rise-time",
            severity=Severity.WARN,
            subject=group.subject,
            headline=f"An edge{group.of_subject} takes {format_significant(rise_s, 's', 3)}, "
            f"{pixels:.2f} of a pixel.",
            measured=pixels,
            unit=RISE.unit,
            low=RISE.low,
            high=RISE.high,
            source=RISE.source,
            why="Single pixels no longer reach their level: fine detail turns soft and stripes turn grey.",
            remedy_text="Less capacitance at the node, a lower source resistance, or a slower pixel clock.",
            channels=group.channels,
            from_memory=RISE.from_memory,
        )
