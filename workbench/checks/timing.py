"""Are the counts of a mode ones that tubes, controllers and descriptors can live with?"""

from collections.abc import Iterator, Mapping

from workbench.checks.finding import Finding, Severity
from workbench.checks.groups import join_words
from workbench.errors import TimingError
from workbench.project.document import MonitorRange
from workbench.timing.edid.descriptor import write_descriptor
from workbench.timing.mode import Axis, Mode
from workbench.timing.standards import CTA, DMT
from workbench.units import format_fixed

__all__ = [
    "TUBE_LINE_RATE",
    "descriptor_limits",
    "fixed_tube",
    "odd_total",
    "short_blanking",
    "tube_caution",
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


def short_blanking(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """No porch and no sync is shorter than the shortest of any mode made for tubes."""
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


def odd_total(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """The line total is even, as in every mode of the tables."""
    total = mode.h.total
    if total % 2 == 0:
        return
    yield Finding(
        id="odd-total",
        severity=Severity.INFO,
        subject=mode.name,
        headline=f"The line total of {total} px is odd; no mode of the tables has an odd one.",
        measured=float(total),
        unit="px",
        low=None,
        high=None,
        source=f"all modes of {_TABLES}",
        why="Controllers that send pixels in pairs cannot make it, and a doubled picture ends in half a one.",
        remedy_text=f"Make the line {total - 1} or {total + 1} px long.",
    )


def fixed_tube(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """An old tube of one line rate is not driven at another."""
    if monitor is not None or not (caution := tube_caution(mode)):
        return
    yield Finding(
        id="fixed-tube",
        severity=Severity.INFO,
        subject=mode.name,
        headline=caution,
        measured=mode.line_rate_hz,
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


def descriptor_limits(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """The mode fits the 18 bytes of a detailed timing."""
    try:
        write_descriptor(mode)
    except TimingError as error:
        yield Finding(
            id="descriptor",
            severity=Severity.INFO,
            subject=mode.name,
            headline="An EDID cannot describe this mode.",
            measured=None,
            unit="",
            low=None,
            high=None,
            source="VESA E-EDID 1.3, detailed timing descriptor; read second-hand in the Linux kernel",
            why=str(error),
        )
