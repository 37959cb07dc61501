"""Is what hangs on the colour lines, and what a 0 does, as the ladder expects?"""

from collections.abc import Iterator

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import Group, groups, ohms_text, solved_groups
from workbench.checks.limits import TERMINATION, WHITE_VOLTS
from workbench.checks.measures import Measures
from workbench.circuit.network import Zeros
from workbench.project.document import Channel, Project
from workbench.project.edits.drive import set_load, set_monitors, set_zeros
from workbench.units import format_fixed, format_percent

__all__ = ["DRIVE_ZEROS", "LOAD_ONCE", "drive_zeros", "load", "zeros_floating"]

_OHMS = 75.0
"""Termination of one monitor; see :data:`~workbench.checks.limits.TERMINATION`. [Ω]"""


def drive_zeros(project: Project) -> Project:
    """Return a project whose pins drive a 0 to ground."""
    return set_zeros(project, Zeros.DRIVEN)


DRIVE_ZEROS = Remedy("Drive zeros to ground", drive_zeros)
"""The edit that holds every pin at every code."""


def _load_once(project: Project) -> Project:
    return set_monitors(set_load(project, _OHMS), 1)


LOAD_ONCE = Remedy("Load each line with 75 Ω", _load_once)
"""The edit that hangs one termination on every colour line."""


def load(project: Project, measures: Measures) -> Iterator[Finding]:
    """One 75 Ω termination hangs on every colour line."""
    ohms = None if project.load.siemens == 0.0 else 1.0 / project.load.siemens
    if ohms is not None and TERMINATION.holds(ohms):
        return
    yield Finding(
        id="load",
        severity=Severity.FAIL if ohms is None else Severity.WARN,
        subject="load",
        headline=_load_sentence(project, ohms, max(g.white_volts for g in groups(project, measures))),
        measured=ohms,
        unit=TERMINATION.unit,
        low=TERMINATION.low,
        high=TERMINATION.high,
        source=TERMINATION.source,
        why="The load and the ladder together make the level: the same ladder is right for one load only.",
        remedy_text="Load each line with one 75 Ω, in the monitor or as a resistor while measuring.",
        remedy=LOAD_ONCE,
        channels=tuple(Channel),
    )


def zeros_floating(project: Project, measures: Measures) -> Iterator[Finding]:
    """A 0 drives its pin to ground instead of letting it float."""
    if project.driver.zeros is Zeros.DRIVEN:
        return
    for group in solved_groups(project, measures):
        excess = _single_bits_excess(group)
        yield Finding(
            id="zeros-floating",
            severity=Severity.WARN,
            subject=group.subject,
            headline=f"A 0 lets its pin float: single bits{group.of_subject} add up to "
            f"{format_percent(excess)} more than all bits together.",
            measured=100.0 * excess,
            unit="%",
            low=None,
            high=0.0,
            source="superposition: with every pin driven the levels of single bits add up exactly",
            why="The ladder changes with the code: middle tones come out too bright though white is right.",
            remedy_text="Drive zeros to ground: set the pins as push-pull outputs.",
            remedy=DRIVE_ZEROS,
            channels=group.channels,
        )


def _load_sentence(project: Project, ohms: float | None, white: float) -> str:
    shown = format_fixed(white, "V")
    if ohms is None:
        verb = "rises to" if white > WHITE_VOLTS else "is"
        return f"Nothing loads the colour lines: white {verb} {shown}."
    if project.load.monitors > 1 and project.load.ohms is not None:
        each = ohms_text(project.load.ohms)
        return (
            f"{project.load.monitors} × {each} load every colour line as {ohms_text(ohms)}: white is {shown}."
        )
    return f"The load is {ohms_text(ohms)}, not 75 Ω: white is {shown}."


def _single_bits_excess(group: Group) -> float:
    """Return by which part the levels of the single bits exceed white. [1]"""
    volts = group.figures.levels.volts_by_code
    singles = sum(float(volts[1 << bit]) for bit in range(group.network.bits))
    return singles / group.white_volts - 1.0 if group.white_volts > 0.0 else 0.0
