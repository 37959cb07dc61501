"""Is white as bright as a monitor expects, and equally bright in the three channels?"""

from collections.abc import Iterator
from functools import partial

import numpy as np

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import Group, join_words, solved_groups
from workbench.checks.limits import CHANNEL_MISMATCH, LINEARITY, WHITE, WHITE_VOLTS
from workbench.checks.measures import Measures
from workbench.checks.offers import (
    changes_text,
    exact_offers,
    first_that,
    series_offers,
    trials,
    values_remedy,
)
from workbench.checks.values import Trial, set_values, try_values
from workbench.circuit.codes import rising_pin
from workbench.circuit.linearity import EVEN_LSB
from workbench.project.document import Channel, Project
from workbench.units import format_fixed, format_percent

__all__ = ["channel_mismatch", "luminance", "white_level"]

_EYE = 2.2
"""Power from volts to luminance that a display applies (common practice, no source). [1]"""
_SLACK_LSB = 1e-6
"""What rounding may add to an evenness that is kept. [LSB]"""


def luminance(volts: float) -> float:
    """Return how bright a level is shown, as a part of full brightness; 0.700 V is full. [1]"""
    return float(min(1.0, max(0.0, volts / WHITE_VOLTS)) ** _EYE)


def white_level(project: Project, measures: Measures) -> Iterator[Finding]:
    """Full scale into the monitor lies in 0.665 … 0.770 V."""
    for group in solved_groups(project, measures):
        white = group.white_volts
        fine = WHITE.holds(white)
        trial = None if fine else _to_white(project, group)
        yield Finding(
            id="full-scale",
            severity=Severity.INFO if fine else Severity.FAIL,
            subject=group.subject,
            headline=f"White{group.of_subject} is {format_fixed(white, 'V')}, {_place(white)}.",
            measured=white,
            unit=WHITE.unit,
            low=WHITE.low,
            high=WHITE.high,
            source=WHITE.source,
            why=_white_why(white),
            remedy_text="" if fine else _white_advice(project, group, trial),
            remedy=None if trial is None else values_remedy(group, trial, project.series),
            channels=group.channels,
        )


def channel_mismatch(project: Project, measures: Measures) -> Iterator[Finding]:
    """The whites of the three channels differ by at most 6 %."""
    found = solved_groups(project, measures)
    if len(found) < 2 or sum(len(g.channels) for g in found) < len(Channel):
        return
    whites = {c: g.white_volts for g in found for c in g.channels}
    mean = sum(whites.values()) / len(whites)
    if mean <= 0.0:
        return
    percent = 100.0 * (max(whites.values()) - min(whites.values())) / mean
    fine = CHANNEL_MISMATCH.holds(percent)
    remedy = None if fine else _mismatch_remedy(project, found)
    listed = ", ".join(f"{c.value} {format_fixed(whites[c], 'V')}" for c in Channel)
    yield Finding(
        id="channel-mismatch",
        severity=Severity.INFO if fine else Severity.FAIL,
        subject=join_words(c.value for c in Channel),
        headline=f"The whites differ by {format_percent(percent / 100)}"
        f"{', within 6 %' if fine else ''}: {listed}.",
        measured=percent,
        unit=CHANNEL_MISMATCH.unit,
        low=CHANNEL_MISMATCH.low,
        high=CHANNEL_MISMATCH.high,
        source=CHANNEL_MISMATCH.source + "; in percent of the mean white",
        why="White and the greys take the tint of the strongest channel.",
        remedy_text="" if fine else "Bring every channel's white to 0.700 V.",
        remedy=remedy,
        channels=tuple(Channel),
    )


def _place(white: float) -> str:
    if WHITE.low is not None and white < WHITE.low:
        return "below 0.665 V"
    if WHITE.high is not None and white > WHITE.high:
        return "above 0.770 V"
    return "inside 0.665 … 0.770 V"


def _white_why(white: float) -> str:
    if _place(white).startswith("above"):
        return "Everything above 0.700 V looks alike, so the brightest codes run together."
    if _place(white).startswith("below"):
        return f"The picture is dim: this white has {format_percent(luminance(white), 0)} of full brightness."
    return "0.700 V is full brightness; a monitor takes 5 % less to 10 % more as white."


def _white_advice(project: Project, group: Group, trial: Trial | None) -> str:
    if trial is not None:
        changes = changes_text(group.network, trial.values)
        return f"Change {changes}: white is then {format_fixed(trial.white_volts, 'V')}."
    if project.load.ohms is None:
        return "Fit the 75 Ω load first: without it no value of the legs sets the level."
    return "No values of these legs reach 0.700 V: raise the supply, or take out the shunt."


def _to_white(project: Project, group: Group) -> Trial | None:
    """Return the first values that put white inside: even steps, or steps no worse than they are."""
    present = try_values(project, group.network, {})
    worst = int(np.argmax(np.abs(group.figures.linearity.dnl_lsb).round(9)))
    asked = project, group.network, WHITE_VOLTS, rising_pin(group.network, worst + 1)
    bounds = (EVEN_LSB, max(LINEARITY.high or 0.0, present.worst_lsb + _SLACK_LSB))
    demands = [partial(_mends, present, bound) for bound in bounds]
    for offers in (series_offers(*asked), exact_offers(*asked)):
        found = first_that(trials(project, group.network, offers), *demands)
        if found is not None:
            return found
    return None


def _mends(present: Trial, bound_lsb: float, trial: Trial) -> bool:
    upward = trial.linearity.monotonic or not present.linearity.monotonic
    return WHITE.holds(trial.white_volts) and upward and trial.worst_lsb <= bound_lsb


def _mismatch_remedy(project: Project, found: tuple[Group, ...]) -> Remedy | None:
    trials = [(group.channels, _to_white(project, group)) for group in found]
    whites = [trial.white_volts for _, trial in trials if trial is not None]
    if len(whites) < len(trials) or not whites:
        return None
    if not CHANNEL_MISMATCH.holds(100.0 * (max(whites) - min(whites)) * len(whites) / sum(whites)):
        return None

    def edit(changed: Project) -> Project:
        for channels, trial in trials:
            if trial is not None:
                changed = set_values(changed, channels, trial.values)
        return changed

    return Remedy("Bring the three whites near 0.700 V", edit)
