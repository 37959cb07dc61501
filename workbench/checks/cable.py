"""Does the cable send edges back, and is it one that a picture can come over?"""

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import Group, ohms_text, solved_groups
from workbench.checks.limits import CABLE_LENGTH, GHOST, TERMINATION
from workbench.checks.loads import LOAD_ONCE
from workbench.checks.measures import Measures
from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.response.ghost import first_ghost
from workbench.circuit.response.path import find_path
from workbench.project.document import Project
from workbench.project.edits.drive import set_cable
from workbench.units import format_percent, format_quantity

__all__ = ["cable_length", "ghost"]

_OHMS = 75.0
"""What a cable and its load should have; see :data:`~workbench.checks.limits.TERMINATION`. [Ω]"""


def ghost(project: Project, measures: Measures) -> Iterator[Finding]:
    """The first ghost is small beside its edge."""
    cable = project.cable
    for group in solved_groups(project, measures) if cable is not None else ():
        step = group.figures.step
        ratio, delay_s = step.first_ghost_ratio, step.first_ghost_s
        if cable is None or ratio is None or delay_s is None or GHOST.holds(100.0 * abs(ratio)):
            continue
        kind = "negative ghost" if ratio < 0.0 else "ghost"
        yield Finding(
            id="ghost",
            severity=Severity.WARN,
            subject=group.subject,
            headline=f"Every edge{group.of_subject} has a {kind} of {format_percent(abs(ratio))}, "
            f"{format_quantity(delay_s, 's', 3)} ({delay_s / project.mode.pixel_s:.2f} px) after it.",
            measured=100.0 * abs(ratio),
            unit=GHOST.unit,
            low=GHOST.low,
            high=GHOST.high,
            source=GHOST.source,
            why="What the monitor's end does not take goes back, turns at the ladder and comes once more: "
            "a pale line or shade right of every edge.",
            remedy_text=f"End the cable of {ohms_text(cable.ohms)} with {ohms_text(cable.ohms)}, once and at "
            "its far end, with little capacitance there; or match the ladder to it.",
            remedy=_remedy(project, group),
            channels=group.channels,
        )


def cable_length(project: Project, _measures: Measures) -> Iterator[Finding]:
    """The cable is no longer than such cables usually are."""
    cable = project.cable
    if cable is None or CABLE_LENGTH.holds(cable.metres):
        return
    yield Finding(
        id="cable-length",
        severity=Severity.WARN,
        subject="cable",
        headline=f"The cable is {format_quantity(cable.metres, 'm')} long: analog pictures seldom come over "
        f"more than {format_quantity(CABLE_LENGTH.high or 0.0, 'm')}.",
        measured=cable.metres,
        unit=CABLE_LENGTH.unit,
        low=CABLE_LENGTH.low,
        high=CABLE_LENGTH.high,
        source=CABLE_LENGTH.source,
        why="A real cable of that length takes fine detail and part of the level; what is shown is only as "
        "true as the loss that was entered.",
        remedy_text="Check the length and the loss; for such a way take a line amplifier that evens out "
        "the cable.",
        from_memory=CABLE_LENGTH.from_memory,
    )


def _remedy(project: Project, group: Group) -> Remedy | None:
    """Return the first edit that makes the ghost small; none where capacitance is what sends it back."""
    matched = Remedy("Take a cable of 75 Ω", _take_matched_cable)
    offers = (LOAD_ONCE,) if TERMINATION.holds(_cable_ohms(project)) else (matched, LOAD_ONCE)
    for offer in offers:
        mended = offer.edit(project)
        network = mended.channels[group.channels[0]]
        if GHOST.holds(_ghost_percent(network, mended.driver, mended.load, mended.cable)):
            return offer
    return None


def _cable_ohms(project: Project) -> float:
    return _OHMS if project.cable is None else project.cable.ohms


def _take_matched_cable(project: Project) -> Project:
    return project if project.cable is None else set_cable(project, replace(project.cable, ohms=_OHMS))


@lru_cache(maxsize=64)
def _ghost_percent(network: Network, driver: Driver, load: Load, cable: Cable | None) -> float:
    """Return how large the first ghost of a board is, 0 without one. [%]"""
    path = find_path(network, driver, load, cable)
    echo = first_ghost(path) if path is not None else None
    return 100.0 * abs(echo.ratio) if echo is not None else 0.0
