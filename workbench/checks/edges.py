"""Are edges fast enough for a pixel, and do the pins of a code change together?"""

from collections.abc import Iterator

from workbench.checks.finding import Finding, Severity
from workbench.checks.groups import join_words, solved_groups
from workbench.checks.limits import GLITCH, RISE
from workbench.checks.measures import Measures
from workbench.circuit.response import Glitch
from workbench.project.document import Channel, Project
from workbench.units import format_fixed, format_significant

__all__ = ["glitch", "rise_time"]


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


def glitch(project: Project, measures: Measures) -> Iterator[Finding]:
    """Late pins leave no spike that could be seen in a pixel."""
    found: dict[Glitch, list[Channel]] = {}
    for channel in Channel:
        spike = measures.channels[channel].glitch
        if spike is not None:
            found.setdefault(spike, []).append(channel)
    for spike, channels in found.items():
        lsb_volts = abs(measures.channels[channels[0]].linearity.lsb_volts)
        steps = abs(spike.area_volt_s) / (lsb_volts * project.mode.pixel_s) if lsb_volts else 0.0
        if GLITCH.holds(steps):
            continue
        subject = join_words(channel.value for channel in channels)
        way = "below" if spike.peak_volts < 0.0 else "above"
        yield Finding(
            id="glitch",
            severity=Severity.WARN,
            subject=subject,
            headline=f"Late pins of {subject} make a spike between codes {spike.before} and {spike.after}, "
            f"{format_fixed(abs(spike.peak_volts), 'V')} {way} both levels.",
            measured=steps,
            unit=GLITCH.unit,
            low=GLITCH.low,
            high=GLITCH.high,
            source=GLITCH.source,
            why="While some bits are new and others old, the pins show another code: a thin line at some "
            "edges of colour.",
            remedy_text="Write all bits in one access to one register, with equal paths; or take "
            "a segmented ladder, whose highest bits never change at once.",
            channels=tuple(channels),
        )
