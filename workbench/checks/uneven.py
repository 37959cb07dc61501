"""Pixels that a fractional divider makes uneven."""

from collections.abc import Iterator
from fractions import Fraction

from workbench.checks.finding import Finding, Severity
from workbench.checks.measures import Measures
from workbench.project.document import Project
from workbench.units import format_percent, format_quantity

__all__ = ["uneven_pixels"]


def uneven_pixels(project: Project, _measures: Measures) -> Iterator[Finding]:
    """All pixels last alike, or at least all lines do."""
    if project.pixel_divider is None:
        return
    divider, mode = Fraction(project.pixel_divider), project.mode
    steady = (divider * mode.h.total).denominator == 1
    clock_s = mode.pixel_s / float(divider)
    low, clock_text = int(divider), format_quantity(clock_s, "s", 3)
    lines = "all lines alike" if steady else "lines differ by one clock too"
    yield Finding(
        id="uneven-pixels",
        severity=Severity.INFO if steady else Severity.WARN,
        subject="Clock",
        headline=f"Pixels last {low} or {low + 1} system clocks, uneven by {clock_text} "
        f"({format_percent(1 / float(divider), 2)} of a pixel), {lines}.",
        measured=clock_s,
        unit="s",
        low=None,
        high=None,
        source="arithmetic of a fractional divider",
        why="A panel samples at an even rate: near edges it takes the pixel beside. "
        + ("" if steady else "Lines of uneven length make upright edges waver, frame by frame. ")
        + "A tube shows pixels of two widths.",
        remedy_text="Take a plan with even pixels on the page Clock, or a faster system clock.",
    )
