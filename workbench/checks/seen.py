"""Would a monitor take the mode for what it is meant to be, and show it where it belongs?"""

from collections.abc import Iterator
from functools import lru_cache

from workbench.checks.finding import Finding, Severity
from workbench.checks.groups import join_words
from workbench.project.document import MonitorRange
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.seen_as import LOCK_PPM, LOCK_SOURCE, Placing, Sighting, seen_as

__all__ = ["line_total", "picture_place", "polarity", "refresh", "sighting", "unknown_mode"]

_TABLES = "the VESA DMT and CTA-861 tables, and the classic modes"
_PLACED = 1.0
"""Shift or crop from which a picture is said to lie in the wrong place. Our own. [px], [lines]"""


@lru_cache(maxsize=256)
def sighting(mode: Mode) -> Sighting:
    """Return what a monitor most likely takes a mode for; several rules ask."""
    return seen_as(mode, most=1)[0]


def polarity(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """Both sync polarities are those of the mode it is taken for."""
    found = sighting(mode)
    if not found.is_known or not found.within_lock or mode.interlaced:
        return
    turned = found.turned
    if not turned:
        return
    row = found.row
    yield Finding(
        id="polarity",
        severity=Severity.WARN,
        subject=mode.name,
        headline=f"{join_words([f'{name} sync' for name in turned])} "
        f"{'is' if len(turned) == 1 else 'are'} of the other polarity than in {row.name} "
        f"({_sign(row.h)}/{_sign(row.v)}).",
        measured=None,
        unit="",
        low=None,
        high=None,
        source=row.source,
        why="Monitors tell modes of equal rates apart by their polarities: with 449 lines at 31.469 kHz "
        "nothing else tells a picture of 350 (+/\u2212) from one of 400 (\u2212/+), by a monitor manual's "
        "table of presets; 480 (\u2212/\u2212) have 525. With the wrong ones the picture is shifted or has "
        "another height.",
        remedy_text="Turn the sync over.",
    )


def refresh(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """Field rate and line rate are within 0.5 % of the mode it is taken for."""
    found = sighting(mode)
    if not found.is_known or found.within_lock or mode.interlaced:
        return
    row = found.row
    because = f": {mode.v.total} lines a frame, not {row.v.total}" if found.lines_off else ""
    yield Finding(
        id="refresh",
        severity=Severity.WARN,
        subject=mode.name,
        headline=f"The field rate of {mode.field_rate_hz:.3f} Hz is {found.field_rate_ppm / 1e4:+.2f} % off "
        f"{row.name}, the line rate {found.line_rate_ppm / 1e4:+.2f} %{because}.".replace("-", "\u2212"),
        measured=max(found.field_rate_ppm, found.line_rate_ppm, key=abs) * 1e-4,
        unit="%",
        low=-LOCK_PPM * 1e-4,
        high=LOCK_PPM * 1e-4,
        source=f"clock tolerance of ±0.5 %; {LOCK_SOURCE}",
        why="A monitor finds its row by line rate and field rate; more than 0.5 % off either it need not "
        "lock, though many still do.",
        remedy_text=f"Bring pixel clock and totals to those of {row.name}: {row.h.total} px a line, "
        f"{row.v.total} lines a frame.",
    )


def line_total(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """The line total is the one a flat monitor assumes."""
    found = sighting(mode)
    if not found.is_known or found.bands.per_line == 0 or mode.interlaced:
        return
    row = found.row
    yield Finding(
        id="line-total",
        severity=Severity.WARN,
        subject=mode.name,
        headline=f"A flat monitor takes this for {row.name} and samples {row.h.total} times a line; the line "
        f"has {mode.h.total} px: {len(found.bands.centres_px)} soft bands across the picture.",
        measured=float(mode.h.total),
        unit="px",
        low=float(row.h.total),
        high=float(row.h.total),
        source=row.source,
        why="Its samples drift from the middle of the pixels to their edges and back, once for each pixel "
        "of difference.",
        remedy_text=f"Make the line {row.h.total} px long.",
    )


def picture_place(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """The picture starts and ends where the mode it is taken for has its own."""
    found = sighting(mode)
    if not found.is_known or mode.interlaced:
        return
    places = ((found.horizontal, "left", "right", "px"), (found.vertical, "top", "foot", "lines"))
    starts = [words for place in places if (words := _start_words(*place))]
    losses = [words for place in places if (words := _loss_words(*place))]
    if not starts and not losses:
        return
    lost = max(max(place.cropped_before, place.cropped_after) for place, *_ in places)
    said = ([f"starts {join_words(starts)}"] if starts else []) + (
        [f"loses {join_words(losses)}"] if losses else []
    )
    yield Finding(
        id="picture-place",
        severity=Severity.WARN if lost >= _PLACED else Severity.INFO,
        subject=mode.name,
        headline=f"Taken for {found.row.name}, the picture {join_words(said)}.",
        measured=lost,
        unit="px or lines lost at one edge",
        low=None,
        high=_PLACED,
        source=f"{found.row.source}; that it is seen from one pixel or line on is our own",
        why="A monitor counts from the sync pulse to the picture as its table says. What lies before or past "
        "the place it looks at is lost until it is adjusted by hand or by itself.",
        remedy_text="Give porches and picture the lengths of that mode.",
    )


def _start_words(placing: Placing, before: str, _after: str, unit: str) -> str:
    """Say how far off a picture starts along one axis; nothing where it is not worth a word."""
    if abs(placing.shift) < _PLACED:
        return ""
    return f"{abs(placing.shift):.0f} {unit} {'from' if placing.shift > 0 else 'past'} the {before}"


def _loss_words(placing: Placing, _before: str, after: str, unit: str) -> str:
    """Say how much of a picture is lost at its end; nothing where it is not worth a word."""
    return f"{placing.cropped_after:.0f} {unit} at the {after}" if placing.cropped_after >= _PLACED else ""


def unknown_mode(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """A monitor's table is likely to hold the mode."""
    found = sighting(mode)
    if found.is_known or mode.interlaced:
        return
    yield Finding(
        id="unknown-mode",
        severity=Severity.WARN,
        subject=mode.name,
        headline=f"No mode of the tables has {mode.v.total} lines at {mode.line_rate_hz / 1e3:.3f} kHz: the "
        f"nearest, {found.row.name}, has {found.row.v.total} at {found.row.line_rate_hz / 1e3:.3f} kHz.",
        measured=mode.line_rate_hz,
        unit="Hz",
        low=None,
        high=None,
        source=_TABLES,
        why="A monitor that does not find the mode guesses the width of its picture, or stays black.",
        remedy_text="Choose a mode of the tables or of the monitor's own list.",
    )


def _sign(axis: Axis) -> str:
    return "+" if axis.polarity is Polarity.POSITIVE else "\u2212"
