"""Modes worth offering where a mode is faulted: little changes before much, each tried before it is offered.

What is found about a mode follows from the mode and the monitor's range alone; whether its pixels are even
and long enough for the edges, from edges that no mode changes. So an offer is tried by asking the rules of
the project it makes.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from workbench.checks.blanking import back_porch
from workbench.checks.edges import glitch, rise_time
from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import join_words
from workbench.checks.measures import Measures
from workbench.checks.rates import interlaced, monitor_range
from workbench.checks.seen import line_total, picture_place, polarity, refresh, sighting, unknown_mode
from workbench.checks.timing import descriptor_limits, fixed_tube, odd_total, short_blanking
from workbench.checks.uneven import uneven_pixels
from workbench.errors import TimingError
from workbench.project.document import MonitorRange, Project
from workbench.project.edits.timing import set_mode
from workbench.timing.edges import with_counts
from workbench.timing.mode import Axis, Mode
from workbench.timing.standards import KNOWN

__all__ = ["MODE_RULES", "mode_findings"]

ModeRule = Callable[[Mode, MonitorRange | None], Iterator[Finding]]

MODE_RULES: tuple[ModeRule, ...] = (
    monitor_range,
    interlaced,
    unknown_mode,
    refresh,
    polarity,
    picture_place,
    line_total,
    back_porch,
    short_blanking,
    odd_total,
    fixed_tube,
    descriptor_limits,
)
"""What is asked about a mode; of equal weight, what may leave the screen black first."""

_LEAST_FRONT_PX = 8
"""Front porch that is left standing when the back porch takes from it (our own). [px]"""
_ALIKE = 0.05
"""Part by which a picture's size may differ from a row's and still be meant to have it. Our own. [1]"""


@dataclass(frozen=True, slots=True)
class _Offer:
    """Another mode, and what the button says that brings it."""

    label: str
    mode: Mode


_Trial = tuple[_Offer, tuple[Finding, ...]]
"""An offer, and what would be found with it."""


def mode_findings(project: Project, measures: Measures) -> Iterator[Finding]:
    """The mode is one that the monitor takes, finds in its table and shows whole and sharp."""
    found = _asked(project.mode, project.monitor)
    trials: list[_Trial] = []
    before = found
    if any(finding.severity is not Severity.INFO for finding in found):
        before = _with_pixels(project, measures)
        trials = [
            (offer, _with_pixels(set_mode(project, offer.mode), measures)) for offer in _offers(project.mode)
        ]
    for finding in found:
        offer = _best(finding, before, trials)
        yield finding if offer is None else replace(finding, remedy=_remedy(offer))


def _remedy(offer: _Offer) -> Remedy:
    return Remedy(offer.label, lambda project: set_mode(project, offer.mode))


@lru_cache(maxsize=256)
def _asked(mode: Mode, monitor: MonitorRange | None) -> tuple[Finding, ...]:
    """Return what the rules find about a mode, without remedies."""
    return tuple(finding for rule in MODE_RULES for finding in rule(mode, monitor))


def _with_pixels(project: Project, measures: Measures) -> tuple[Finding, ...]:
    """Return what is found about a project's mode, and whether its pixels are even and long enough."""
    pixels = (finding for rule in (uneven_pixels, rise_time, glitch) for finding in rule(project, measures))
    # How much too short they are is no matter of the mode: only that they were not so before counts.
    return (*_asked(project.mode, project.monitor), *(replace(each, measured=None) for each in pixels))


def _best(finding: Finding, before: tuple[Finding, ...], trials: Iterable[_Trial]) -> _Offer | None:
    """Return the offer that mends a finding and leaves the least; of equal ones the smaller change.

    None for a note, which asks for nothing, and where no offer mends without bringing what weighs as
    much, or making worse what is there.
    """
    if finding.severity is Severity.INFO:
        return None
    mending = [(_weight(after), offer) for offer, after in trials if _mends(finding, before, after)]
    return min(mending, key=lambda each: each[0])[1] if mending else None


def _mends(finding: Finding, before: tuple[Finding, ...], after: tuple[Finding, ...]) -> bool:
    known = {each.id: each for each in before}
    return all(
        each.id != finding.id
        and (
            _is_no_worse(each, known[each.id])
            if each.id in known
            else each.severity.rank > finding.severity.rank
        )
        for each in after
    )


def _is_no_worse(after: Finding, before: Finding) -> bool:
    return after.severity.rank >= before.severity.rank and _excess(after) <= _excess(before)


def _excess(finding: Finding) -> float:
    """Return how far outside its limits a finding is, in its unit; 0 where nothing is measured."""
    measured, low, high = finding.measured, finding.low, finding.high
    if measured is None:
        return 0.0
    return max(
        0.0,
        0.0 if low is None else low - measured,
        0.0 if high is None else measured - high,
    )


def _weight(found: tuple[Finding, ...]) -> tuple[int, int]:
    """Return how many findings fail and how many warn. [1]"""
    severities = [finding.severity for finding in found]
    return severities.count(Severity.FAIL), severities.count(Severity.WARN)


def _offers(mode: Mode) -> Iterator[_Offer]:
    """Yield modes that a faulted one may be meant to be, little changes first."""
    if not mode.interlaced:
        yield from _changed(mode)
    yield from (_Offer(f"Use {row.name}", row) for row in _of_size(mode))


def _changed(mode: Mode) -> Iterator[_Offer]:
    """Yield the mode with its sync, clock, porches or totals set right."""
    for offer in (*_turned_or_clocked(mode), *_longer_back_porch(mode), *_recounted(mode)):
        h, v, clock_hz = offer.mode.h, offer.mode.v, offer.mode.pixel_clock_hz
        try:
            made = with_counts(mode, h=h, v=v, pixel_clock_hz=clock_hz)
        except TimingError:
            continue
        if made != mode:
            yield replace(offer, mode=made)


def _turned_or_clocked(mode: Mode) -> Iterator[_Offer]:
    """Yield the polarities of the row it is taken for, and the clock that brings its line rate."""
    seen = sighting(mode)
    row = seen.row
    h, v = (replace(sent, polarity=axis.polarity) for sent, axis in ((mode.h, row.h), (mode.v, row.v)))
    pulses = join_words(f"{name} sync" for name in seen.turned)
    yield _Offer(f"Turn {pulses} over", replace(mode, h=h, v=v))
    clock_hz = round(row.line_rate_hz * mode.h.total)
    yield _Offer(f"Use a pixel clock of {clock_hz / 1e6:.6g} MHz", replace(mode, pixel_clock_hz=clock_hz))


def _longer_back_porch(mode: Mode) -> Iterator[_Offer]:
    """Yield what gives the back porch what it lacks from what the front porch can spare."""
    for finding in back_porch(mode, None):
        least = int(finding.low or 0)
        front = mode.h.front_porch - (least - mode.h.back_porch)
        if front >= max(_LEAST_FRONT_PX, mode.h.border):
            line = replace(mode.h, front_porch=front, back_porch=least)
            yield _Offer(f"Lengthen the back porch to {least} px", replace(mode, h=line))


def _recounted(mode: Mode) -> Iterator[_Offer]:
    """Yield the line, the frame or both of the row it is taken for; or only their totals."""
    row = sighting(mode).row
    line = _line_of(row, mode)
    line_px, lines = row.h.total // _samples_a_pixel(row, mode), row.v.total
    if line is not None and _nearly(mode.h.active, line.active) and _nearly(mode.v.active, row.v.active):
        yield _Offer(f"Use the line of {row.name}", replace(mode, h=line))
        yield _Offer(f"Use the frame of {row.name}", replace(mode, v=row.v))
        yield _Offer(f"Use line and frame of {row.name}", replace(mode, h=line, v=row.v))
    if line is not None:
        placed = replace(mode, h=_placed_like(mode.h, line), v=_placed_like(mode.v, row.v))
        yield _Offer("Move the picture into place", placed)
    yield _Offer(f"Make the line {line_px} px long", replace(mode, h=_of_total(mode.h, line_px)))
    yield _Offer(f"Make the frame {lines} lines long", replace(mode, v=_of_total(mode.v, lines)))


def _placed_like(axis: Axis, row: Axis) -> Axis:
    """Return an axis whose picture starts as long after the start of sync as the row's; the total stays."""
    later = row.sync + row.back_porch - axis.sync - axis.back_porch
    return replace(axis, front_porch=axis.front_porch - later, back_porch=axis.back_porch + later)


def _of_total(axis: Axis, total: int) -> Axis:
    """Return an axis of another total: the front porch gives or takes, and what it lacks the back porch."""
    lacking = total - axis.total
    front = max(axis.front_porch + lacking, axis.border)
    return replace(axis, front_porch=front, back_porch=axis.back_porch + lacking - (front - axis.front_porch))


def _line_of(row: Mode, mode: Mode) -> Axis | None:
    """Return a row's line counted in the pixels of a mode; none where they do not divide it."""
    per_pixel, line = _samples_a_pixel(row, mode), row.h
    counts = (line.active, line.front_porch, line.sync, line.back_porch)
    if any(count % per_pixel for count in counts):
        return None
    active, front_porch, sync, back_porch = (count // per_pixel for count in counts)
    return Axis(active, front_porch, sync, back_porch, line.polarity, line.border // per_pixel)


def _samples_a_pixel(row: Mode, mode: Mode) -> int:
    return max(1, round(row.h.total / mode.h.total))


def _nearly(active: int, row_active: int) -> bool:
    return abs(active / row_active - 1) <= _ALIKE


def _of_size(mode: Mode) -> list[Mode]:
    """Return the progressive modes of the tables that have the picture's size, the nearest rate first."""
    size = (mode.h.active, mode.v.active)
    alike = [row for row in KNOWN if (row.h.active, row.v.active) == size and not row.interlaced]
    return sorted(alike, key=lambda row: abs(row.field_rate_hz - mode.field_rate_hz))
