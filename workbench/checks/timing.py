"""Would a monitor take these counts for the mode they are meant to be?"""

from collections.abc import Iterator, Mapping
from functools import lru_cache

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import join_words
from workbench.checks.measures import Measures
from workbench.errors import TimingError
from workbench.project.document import Direction, Project
from workbench.project.edits.timing import set_mode, set_pixel_clock, set_polarity
from workbench.timing.edid.descriptor import write_descriptor
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.seen_as import LOCK_PPM, LOCK_SOURCE, Sighting, seen_as
from workbench.timing.standards import CTA, DMT
from workbench.units import format_fixed

__all__ = [
    "TUBE_LINE_RATE",
    "descriptor_limits",
    "fixed_tube",
    "line_total",
    "odd_total",
    "polarity",
    "refresh",
    "short_blanking",
    "tube_caution",
    "unknown_mode",
]

_TABLES = "the VESA DMT and CTA-861 tables"
_FOR_TUBES = tuple(mode for mode in DMT + CTA if not mode.interlaced and "RB" not in mode.name)
"""Modes that leave a tube its time: all but interlaced ones and those with reduced blanking."""
_LEAST_SECONDS = {
    "front_porch": min(mode.h.front_porch * mode.pixel_s for mode in _FOR_TUBES),
    "sync": min(mode.h.sync * mode.pixel_s for mode in _FOR_TUBES),
    "back_porch": min(mode.h.back_porch * mode.pixel_s for mode in _FOR_TUBES),
}
_LEAST_LINES = {
    "front_porch": min(mode.v.front_porch for mode in _FOR_TUBES),
    "sync": min(mode.v.sync for mode in _FOR_TUBES),
    "back_porch": min(mode.v.back_porch for mode in _FOR_TUBES),
}

TUBE_LINE_RATE = (31_469.0, 0.01)
"""Line rate of the oldest tubes with separate sync, 640x480@60 and its kin, and how far a rate may be
from it before a fixed-frequency tube must be thought of (the part is our own). [Hz], [1]"""
_TUBES = "the usual caution of the trade; X video timings HOWTO, monitor limits and overdriving"


@lru_cache(maxsize=16)
def _sighting(mode: Mode) -> Sighting:
    """Return what a monitor most likely takes the mode for; several rules ask."""
    return seen_as(mode, most=1)[0]


def short_blanking(project: Project, measures: Measures) -> Iterator[Finding]:
    """No porch and no sync is shorter than the shortest of any mode made for tubes."""
    mode = project.mode
    short = [
        *_short(mode.h, _LEAST_SECONDS, mode.pixel_s, "H"),
        *_short(mode.v, _LEAST_LINES, 1, "V"),
    ]
    if mode.interlaced or not short:
        return
    part, count, least = short[0]
    yield Finding(
        id="short-blanking",
        severity=Severity.INFO if "RB" in mode.name else Severity.WARN,
        subject=mode.name,
        headline=f"{join_words([name for name, _, _ in short])} {'is' if len(short) == 1 else 'are'} shorter "
        f"than in any mode made for tubes: {part} {_length(count, part)}, the shortest there "
        f"{_length(least, part)}.",
        measured=count,
        unit="s" if part.startswith("H") else "lines",
        low=least,
        high=None,
        source=f"shortest of {_TABLES}, reduced blanking left out",
        why="A tube's beam needs this time to fly back, and a flat monitor may miss a short sync or take "
        "its black from the picture. Flat monitors take reduced blanking where their EDID lists it.",
        remedy_text="Lengthen it, or take the counts from a table.",
    )


def _short(
    axis: Axis, least: Mapping[str, float], unit: float, letter: str
) -> Iterator[tuple[str, float, float]]:
    for field, lowest in least.items():
        length = getattr(axis, field) * unit
        if length < lowest * (1 - 1e-9):
            yield f"{letter} {field.replace('_', ' ')}", length, lowest


def _length(value: float, part: str) -> str:
    if part.startswith("H"):
        return format_fixed(value, "s", prefix="µ")
    return f"{value:.0f} {'line' if value == 1 else 'lines'}"


def odd_total(project: Project, measures: Measures) -> Iterator[Finding]:
    """The line total is even, as in every mode of the tables."""
    total = project.mode.h.total
    if total % 2 == 0:
        return
    yield Finding(
        id="odd-total",
        severity=Severity.INFO,
        subject=project.mode.name,
        headline=f"The line total of {total} px is odd; no mode of the tables has an odd one.",
        measured=float(total),
        unit="px",
        low=None,
        high=None,
        source=f"all modes of {_TABLES}",
        why="Controllers that send pixels in pairs cannot make it, and a doubled picture ends in half a one.",
        remedy_text=f"Make the line {total - 1} or {total + 1} px long.",
    )


def polarity(project: Project, measures: Measures) -> Iterator[Finding]:
    """Both sync polarities are those of the mode it is taken for."""
    found = _sighting(project.mode)
    if not found.is_known or not found.within_lock or project.mode.interlaced:
        return
    turned = [
        (direction, name)
        for direction, name, agrees in (
            (Direction.HORIZONTAL, "H", found.h_polarity_agrees),
            (Direction.VERTICAL, "V", found.v_polarity_agrees),
        )
        if not agrees
    ]
    if not turned:
        return
    row = found.row
    yield Finding(
        id="polarity",
        severity=Severity.WARN,
        subject=project.mode.name,
        headline=f"{join_words([f'{name} sync' for _, name in turned])} "
        f"{'is' if len(turned) == 1 else 'are'} of the other polarity than in {row.name} "
        f"({_sign(row.h)}/{_sign(row.v)}).",
        measured=None,
        unit="",
        low=None,
        high=None,
        source=row.source,
        why="Monitors tell modes of equal rates apart by their polarities: 350, 400 and 480 lines at "
        "31.5 kHz differ in nothing else. With the wrong ones the picture is shifted or has another height.",
        remedy_text="Turn the sync over.",
        remedy=Remedy(
            f"Turn {join_words([f'{name} sync' for _, name in turned])} over",
            lambda edited: _turned(edited, [direction for direction, _ in turned], row),
        ),
    )


def _turned(project: Project, directions: list[Direction], row: Mode) -> Project:
    for direction in directions:
        wanted = row.h.polarity if direction is Direction.HORIZONTAL else row.v.polarity
        project = set_polarity(project, direction, wanted)
    return project


def refresh(project: Project, measures: Measures) -> Iterator[Finding]:
    """Field rate and line rate are within 0.5 % of the mode it is taken for."""
    mode, found = project.mode, _sighting(project.mode)
    if not found.is_known or found.within_lock or mode.interlaced:
        return
    clock_hz = round(found.row.field_rate_hz * mode.h.total * mode.v.total)
    yield Finding(
        id="refresh",
        severity=Severity.WARN,
        subject=mode.name,
        headline=f"The field rate of {mode.field_rate_hz:.3f} Hz is {found.field_rate_ppm / 1e4:+.2f} % off "
        f"{found.row.name}, the line rate {found.line_rate_ppm / 1e4:+.2f} %.".replace("-", "\u2212"),
        measured=found.field_rate_ppm * 1e-4,
        unit="%",
        low=-LOCK_PPM * 1e-4,
        high=LOCK_PPM * 1e-4,
        source=f"clock tolerance of ±0.5 %; {LOCK_SOURCE}",
        why="Outside it a monitor need not lock, though many still do.",
        remedy_text=f"A pixel clock of {clock_hz / 1e6:.4g} MHz brings the field rate back.",
        remedy=Remedy(
            f"Use a pixel clock of {clock_hz / 1e6:.6g} MHz", lambda edited: set_pixel_clock(edited, clock_hz)
        ),
    )


def line_total(project: Project, measures: Measures) -> Iterator[Finding]:
    """The line total is the one a flat monitor assumes."""
    mode, found = project.mode, _sighting(project.mode)
    bands = found.bands.per_line
    if not found.is_known or bands == 0 or mode.interlaced:
        return
    row = found.row
    same_size = (row.h.active, row.v.active) == (mode.h.active, mode.v.active)
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
        remedy=Remedy(f"Use the counts of {row.name}", lambda edited: set_mode(edited, row))
        if same_size
        else None,
    )


def unknown_mode(project: Project, measures: Measures) -> Iterator[Finding]:
    """A monitor's table is likely to hold the mode."""
    found = _sighting(project.mode)
    if found.is_known or project.mode.interlaced:
        return
    yield Finding(
        id="unknown-mode",
        severity=Severity.INFO,
        subject=project.mode.name,
        headline=f"No mode of the tables is near: {found.row.name} has {found.row.v.total} lines at "
        f"{found.row.line_rate_hz / 1e3:.3f} kHz.",
        measured=project.mode.line_rate_hz,
        unit="Hz",
        low=None,
        high=None,
        source=_TABLES,
        why="A monitor that does not find the mode guesses the width of its picture, or shows none.",
        remedy_text="Choose a mode of the tables or of the monitor's own list.",
    )


def fixed_tube(project: Project, measures: Measures) -> Iterator[Finding]:
    """An old tube of one line rate is not driven at another."""
    if project.monitor is not None or not (caution := tube_caution(project.mode)):
        return
    yield Finding(
        id="fixed-tube",
        severity=Severity.INFO,
        subject=project.mode.name,
        headline=caution,
        measured=project.mode.line_rate_hz,
        unit="Hz",
        low=None,
        high=None,
        source=_TUBES,
        why="Its line stage and high voltage are tuned to one rate. Switch off at once if it whistles or "
        "stays dark.",
        remedy_text="Enter your monitor's range, from its manual or its EDID, to have every mode checked.",
    )


def tube_caution(mode: Mode) -> str:
    """Return what a mode's line rate does to an old fixed-frequency tube; empty where it suits one."""
    hz, part = TUBE_LINE_RATE
    if abs(mode.line_rate_hz / hz - 1) <= part:
        return ""
    return (
        f"{mode.line_rate_hz / 1e3:.3f} kHz lines can damage an old tube that is built for another line rate."
    )


def descriptor_limits(project: Project, measures: Measures) -> Iterator[Finding]:
    """The mode fits the 18 bytes of a detailed timing."""
    try:
        write_descriptor(project.mode)
    except TimingError as error:
        yield Finding(
            id="descriptor",
            severity=Severity.INFO,
            subject=project.mode.name,
            headline="An EDID cannot describe this mode.",
            measured=None,
            unit="",
            low=None,
            high=None,
            source="VESA E-EDID 1.3, detailed timing descriptor; read second-hand in the Linux kernel",
            why=str(error),
        )


def _sign(axis: Axis) -> str:
    return "+" if axis.polarity is Polarity.POSITIVE else "\u2212"
