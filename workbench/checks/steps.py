"""Do the steps from black to white all go up, and are they even?"""

from collections.abc import Iterator
from functools import lru_cache
from math import inf

import numpy as np
from numpy.typing import NDArray

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import Group, join_words, ohms_text, small_volts, solved_groups
from workbench.checks.limits import LINEARITY, MONOTONIC, WHITE, WHITE_VOLTS
from workbench.checks.loads import DRIVE_ZEROS, drive_zeros
from workbench.checks.measures import Measures
from workbench.checks.offers import exact_offers, first_that, series_offers, trials, values_remedy
from workbench.checks.values import Trial, legs_below, try_values
from workbench.circuit.codes import rising_pin
from workbench.circuit.ladders import analyse
from workbench.circuit.linearity import EVEN_LSB, ROUNDING_LSB
from workbench.circuit.network import Network, PartId, Zeros
from workbench.project.document import Project
from workbench.units import format_fixed

__all__ = ["differential_linearity", "integral_linearity", "monotonic"]

_NOTE_LSB = 0.25
"""A step this far off is worth a note (our own). [LSB]"""
_EVEN_LEGS = "Make the legs double exactly, the pins' resistance included, or use closer parts."
_DRIVEN_ZEROS = "Drive zeros to ground: the ladder is even only while every pin is held."


def monotonic(project: Project, measures: Measures) -> Iterator[Finding]:
    """A higher code is never darker."""
    for group in solved_groups(project, measures):
        steps = group.figures.linearity.steps_volts
        place = int(np.argmin(steps))
        smallest = float(steps[place])
        fine = group.figures.linearity.monotonic
        yield Finding(
            id="monotonic",
            severity=Severity.INFO if fine else Severity.FAIL,
            subject=group.subject,
            headline=_steps_sentence(group, steps, place),
            measured=smallest,
            unit=MONOTONIC.unit,
            low=MONOTONIC.low,
            high=MONOTONIC.high,
            source=MONOTONIC.source,
            why="A ramp that steps back shows as a dark notch, worst where the top bit takes over.",
            remedy_text="" if fine else _advice(project),
            remedy=None if fine else _steps_remedy(project, group, place, inf),
            channels=group.channels,
            parts=() if fine else _moving_parts(group, place),
        )


def differential_linearity(project: Project, measures: Measures) -> Iterator[Finding]:
    """Every step is within one LSB of one LSB."""
    for group in solved_groups(project, measures):
        place = _worst_step(group)
        worst = float(group.figures.linearity.dnl_lsb[place])
        severity = _severity(abs(worst))
        if severity is None:
            continue
        parts = _moving_parts(group, place)
        remedy = None if severity is Severity.INFO else _steps_remedy(project, group, place, EVEN_LSB)
        yield Finding(
            id="dnl",
            severity=severity,
            subject=group.subject,
            headline=_step_sentence(project, group, place, worst),
            measured=worst,
            unit=LINEARITY.unit,
            low=LINEARITY.low,
            high=LINEARITY.high,
            source=LINEARITY.source,
            why=_step_why(worst),
            remedy_text="" if severity is Severity.INFO else _advice(project),
            remedy=remedy,
            channels=group.channels,
            parts=parts,
        )


def integral_linearity(project: Project, measures: Measures) -> Iterator[Finding]:
    """Every level lies within one LSB of the straight line from black to white."""
    for group in solved_groups(project, measures):
        inl = group.figures.linearity.inl_lsb
        code = int(np.argmax(np.abs(inl).round(9)))
        worst = float(inl[code])
        if LINEARITY.holds(worst):
            continue
        side = "above" if worst > 0 else "below"
        yield Finding(
            id="inl",
            severity=Severity.FAIL,
            subject=group.subject,
            headline=f"Level {code}{group.of_subject} lies {abs(worst):.2f} LSB {side} the straight line "
            "from black to white.",
            measured=worst,
            unit=LINEARITY.unit,
            low=LINEARITY.low,
            high=LINEARITY.high,
            source=LINEARITY.source,
            why="Middle tones are shown too bright or too dark, though black and white are right.",
            remedy_text=_advice(project),
            remedy=_steps_remedy(project, group, _worst_step(group), LINEARITY.high or 0.0),
            channels=group.channels,
        )


def _advice(project: Project) -> str:
    return _DRIVEN_ZEROS if project.driver.zeros is Zeros.FLOATING else _EVEN_LEGS


def _worst_step(group: Group) -> int:
    """Return the code below the most uneven step, the first of equal ones."""
    return int(np.argmax(np.abs(group.figures.linearity.dnl_lsb).round(9)))


def _severity(lsb: float) -> Severity | None:
    if lsb > 1.0 + ROUNDING_LSB:
        return Severity.FAIL
    if lsb > EVEN_LSB:
        return Severity.WARN
    return Severity.INFO if lsb > _NOTE_LSB else None


def _steps_sentence(group: Group, steps: NDArray[np.float64], place: int) -> str:
    smallest = small_volts(abs(float(steps[place])))
    if steps[place] < 0.0:
        return f"Step {place} to {place + 1}{group.of_subject} goes down by {smallest}: not monotonic."
    if steps[place] == 0.0:
        return f"Step {place} to {place + 1}{group.of_subject} does not move; no step goes down."
    if len(steps) == 1:
        return f"The one step{group.of_subject} goes up by {smallest}."
    return f"All {len(steps)} steps{group.of_subject} go up, the smallest by {smallest}."


def _step_sentence(project: Project, group: Group, place: int, dnl: float) -> str:
    size = format_fixed(1.0 + dnl, "LSB", decimals=2)
    start = f"Step {place} to {place + 1}{group.of_subject} is {size}, {_size_words(dnl)}"
    cause = _cause(project, group, place, dnl)
    return f"{start}: {cause}." if cause else f"{start}."


def _size_words(dnl: float) -> str:
    if dnl > 1.0:
        return "more than two steps in one"
    if dnl > EVEN_LSB:
        return "nearly two steps in one"
    if dnl >= -EVEN_LSB:
        return "still upward"
    if dnl < -1.0 - ROUNDING_LSB:
        return "a step down"
    return "less than half a step" if dnl > -1.0 + ROUNDING_LSB else "no step at all"


def _step_why(dnl: float) -> str:
    if dnl < -1.0 - ROUNDING_LSB:
        return "The brighter code is shown darker."
    if dnl < 0.0:
        return "Two neighbouring codes look nearly alike."
    return "A smooth ramp shows an edge here, and one level between is missing."


def _cause(project: Project, group: Group, place: int, dnl: float) -> str:
    """Say which leg pulls too hard or too weakly, where the ladder makes that plain."""
    ladder, pin = analyse(group.network), rising_pin(group.network, place + 1)
    below = legs_below(group.network, ladder, pin)
    if not below:
        return ""
    leg = ladder.legs[pin]
    pin_ohms = project.driver.high_ohms
    behind = f" with {ohms_text(pin_ohms)} in the pin" if pin_ohms > 0.0 else ""
    lower = [part for branch in below for part in branch.parts]
    others = join_words(lower) if len(lower) <= 2 else f"{lower[0]} … {lower[-1]}"
    pulls = f"pull{'s' if len(leg.parts) == 1 else ''} too {'hard' if dnl > 0 else 'weakly'}"
    return f"{join_words(leg.parts)} {ohms_text(leg.ohms)}{behind} {pulls} against {others}"


def _moving_parts(group: Group, place: int) -> tuple[PartId, ...]:
    return group.parts_at(group.network.pins[rising_pin(group.network, place + 1)])


def _steps_remedy(project: Project, group: Group, place: int, allowed_lsb: float) -> Remedy | None:
    """Return the smallest change that mends the steps.

    Where zeros float, holding them is the change if it brings the steps within ``allowed_lsb``;
    else it is values that leave no step worth a warning.
    """
    if project.driver.zeros is Zeros.FLOATING:
        trial = try_values(drive_zeros(project), group.network, {})
        return DRIVE_ZEROS if _mends(group.white_volts, trial, allowed_lsb) else None
    white = group.white_volts if group.white_volts > 0.0 else WHITE_VOLTS
    best = _even_values(project, group.network, white, rising_pin(group.network, place + 1))
    return None if best is None else values_remedy(group, best, project.series)


@lru_cache(maxsize=8)
def _even_values(project: Project, network: Network, white: float, pin: int) -> Trial | None:
    """Return values that make a network even and let white be; several rules ask the same."""
    asked = project, network, white, pin
    for offers in (series_offers(*asked), exact_offers(*asked)):
        tried = trials(project, network, offers)
        best = first_that(tried, lambda trial: _mends(white, trial, EVEN_LSB))
        if best is not None:
            return best
    return None


def _mends(white: float, trial: Trial, allowed_lsb: float) -> bool:
    keeps_white = WHITE.holds(trial.white_volts) or not WHITE.holds(white)
    return trial.sound and keeps_white and trial.linearity.monotonic and trial.worst_lsb <= allowed_lsb
