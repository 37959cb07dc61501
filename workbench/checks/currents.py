"""Can the chip give the current, and can the resistors take the heat?"""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import Group, join_words, solved_groups
from workbench.checks.measures import Measures
from workbench.circuit.network import PartId
from workbench.project.document import Channel, Project
from workbench.project.edits.parts import set_rating
from workbench.units import format_quantity, format_significant

__all__ = ["all_pins_current", "current_limits_missing", "dissipation", "pin_current"]

_OWN_ENTRY = "your own entry; a maker's absolute maximum is a damage limit, so enter the operating figure"
_WHERE = "in Preferences, Ctrl+, or on the card of the network's pins, Pins and supply"
"""Where a limit is entered in the window."""
_RATINGS = (0.063, 0.1, 0.125, 0.25, 0.5, 1.0, 2.0, 3.0)
"""Usual ratings of small resistors (from memory). [W]"""


class _Pin(NamedTuple):
    """A pin that carries too much."""

    name: str
    amps: float
    code: int
    parts: tuple[PartId, ...]


def pin_current(project: Project, measures: Measures) -> Iterator[Finding]:
    """No pin carries more than the user's limit."""
    limit = project.driver.pin_limit_amps
    if limit is None:
        return
    fine = True
    for group in solved_groups(project, measures):
        over = [pin for pin in _pins(project, group) if pin.amps > limit]
        if over:
            fine = False
            yield _pin_finding(group, over, limit)
    if fine:
        amps = measures.pins.worst_pin_amps
        yield _within("pin-current", f"The worst pin, {measures.pins.worst_pin},", amps, limit)


def all_pins_current(project: Project, measures: Measures) -> Iterator[Finding]:
    """All pins together carry no more than the user's limit."""
    limit, amps = project.driver.total_limit_amps, measures.pins.total_amps
    if limit is None:
        return
    if amps <= limit:
        yield _within("total-current", "All colour pins together", amps, limit)
        return
    yield Finding(
        id="total-current",
        severity=Severity.FAIL,
        subject="all pins",
        headline=f"All colour pins together give {_amps(amps)}, over your limit of {_amps(limit)}.",
        measured=amps,
        unit="A",
        low=None,
        high=limit,
        source=_OWN_ENTRY,
        why="A chip has a limit for its supply pins too; past it the levels sag and the chip may be damaged.",
        remedy_text="Drive the ladders from a buffer, or use higher values and leave the shunt out; "
        f"the limit stands {_WHERE}.",
        channels=tuple(Channel),
    )


def current_limits_missing(project: Project, measures: Measures) -> Iterator[Finding]:
    """Where a limit is not entered, say so with the present currents."""
    driver, pins = project.driver, measures.pins
    missing = [
        words
        for words, limit in (("one pin", driver.pin_limit_amps), ("all pins", driver.total_limit_amps))
        if limit is None
    ]
    if not missing or not pins.worst_pin:
        return
    missing_text = "both limits" if len(missing) > 1 else f"the limit of {missing[0]}"
    yield Finding(
        id="current-limits",
        severity=Severity.INFO,
        subject="all pins",
        headline=f"No current limit for {' or '.join(missing)} is entered: the worst pin, {pins.worst_pin}, "
        f"carries {_amps(pins.worst_pin_amps)}, all colour pins {_amps(pins.total_amps)}.",
        measured=pins.total_amps,
        unit="A",
        low=None,
        high=None,
        source="the chip maker's data: enter the recommended operating current, not the absolute maximum",
        why="Chips limit the current of each pin and of all together; only the maker knows the figures.",
        remedy_text=f"Enter {missing_text}: {_WHERE}.",
    )


def dissipation(project: Project, measures: Measures) -> Iterator[Finding]:
    """No resistor turns more power into heat than its rating."""
    for group in solved_groups(project, measures):
        worst = np.asarray(group.figures.levels.resistor_watts).max(axis=0)
        hot = [
            (r.id, float(watts), r.rating_watts)
            for r, watts in zip(group.network.resistors, worst, strict=True)
            if watts > r.rating_watts
        ]
        if not hot:
            continue
        part, watts, rating = max(hot, key=lambda row: row[1] / row[2])
        parts = tuple(row[0] for row in hot)
        yield Finding(
            id="dissipation",
            severity=Severity.FAIL,
            subject=group.subject,
            headline=f"{part}{group.of_subject} turns {format_quantity(watts, 'W', 3)} into heat, "
            f"over its {format_quantity(rating, 'W', 3)}{_and_more(parts)}.",
            measured=watts,
            unit="W",
            low=None,
            high=rating,
            source="the rating entered for the part; makers state it at 70 °C",
            why="An overheated resistor drifts, then burns.",
            remedy_text="Fit a part with a higher rating, or a higher value.",
            remedy=_rating_remedy(group.channels, {row[0]: row[1] for row in hot}),
            channels=group.channels,
            parts=parts,
        )


def _pins(project: Project, group: Group) -> list[_Pin]:
    """Return what each pin of a group carries at its worst code, either way."""
    amps = np.abs(group.figures.levels.pin_amps)
    names = project.wiring[group.channels[0]]
    codes = amps.argmax(axis=0)
    return [
        _Pin(names[i], float(amps[codes[i], i]), int(codes[i]), group.parts_at(pin))
        for i, pin in enumerate(group.network.pins)
    ]


def _pin_finding(group: Group, over: list[_Pin], limit: float) -> Finding:
    worst = max(over, key=lambda pin: pin.amps)
    others = f", and {len(over) - 1} more" if len(over) > 1 else ""
    return Finding(
        id="pin-current",
        severity=Severity.FAIL,
        subject=group.subject,
        headline=f"{worst.name}{others}{group.of_subject} carries {_amps(worst.amps)} at code {worst.code}, "
        f"over your limit of {_amps(limit)}.",
        measured=worst.amps,
        unit="A",
        low=None,
        high=limit,
        source=_OWN_ENTRY,
        why="A pin past its limit sags, heats its chip and may be damaged.",
        remedy_text="Put a buffer between pin and ladder, split the bit over two pins, or use higher values; "
        f"the limit stands {_WHERE}.",
        channels=group.channels,
        parts=tuple(part for pin in over for part in pin.parts),
    )


def _within(rule: str, subject: str, amps: float, limit: float) -> Finding:
    return Finding(
        id=rule,
        severity=Severity.INFO,
        subject="all pins",
        headline=f"{subject} carries {_amps(amps)}, within your limit of {_amps(limit)}."
        if rule == "pin-current"
        else f"{subject} give {_amps(amps)}, within your limit of {_amps(limit)}.",
        measured=amps,
        unit="A",
        low=None,
        high=limit,
        source=_OWN_ENTRY,
        why="Worst over all codes.",
    )


def _rating_remedy(channels: tuple[Channel, ...], watts: dict[PartId, float]) -> Remedy | None:
    """Return the edit that gives each hot part the next rating that holds."""
    ratings = {part: min((r for r in _RATINGS if r >= w), default=None) for part, w in watts.items()}
    fitting = {part: rating for part, rating in ratings.items() if rating is not None}
    if len(fitting) < len(watts):
        return None

    def edit(project: Project) -> Project:
        for channel in channels:
            for part, rating in fitting.items():
                project = set_rating(project, channel, part, rating)
        return project

    largest = format_quantity(max(fitting.values()), "W", 3)
    return Remedy(f"Fit {largest} for {join_words(fitting)}", edit)


def _and_more(parts: tuple[PartId, ...]) -> str:
    return f"; so do {len(parts) - 1} more" if len(parts) > 1 else ""


def _amps(amps: float) -> str:
    return format_significant(amps, "A", 3)
