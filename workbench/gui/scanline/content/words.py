"""Readings as words and columns of figures, for cards, the one-line readout and the clipboard."""

from collections.abc import Sequence

from workbench.timing.frame import v_sync_asserted, v_sync_lines
from workbench.timing.mode import Mode, Region
from workbench.waveform.reading import Between, Reading

__all__ = [
    "axis_position",
    "between_words",
    "microseconds",
    "nanoseconds",
    "pointer_words",
    "reading_table",
    "refusal",
    "signed",
    "time_decimals",
    "v_sync_sentence",
    "volts",
]

_SHORT_PIXEL_S = 15e-9
"""Pixels shorter than this want four decimals of a microsecond. [s]"""
_NAMES = ("red", "green", "blue")


def signed(text: str) -> str:
    """Return a number with the minus of the house, U+2212."""
    return text.replace("-", "\u2212")


def time_decimals(mode: Mode) -> int:
    """Return the decimals of a microsecond that tell a mode's pixels apart. [1]"""
    return 4 if mode.pixel_s < _SHORT_PIXEL_S else 3


def microseconds(seconds: float, mode: Mode) -> str:
    """Return a time in microseconds, as fine as the mode's pixels need."""
    return signed(f"{seconds * 1e6:.{time_decimals(mode)}f}")


def nanoseconds(seconds: float) -> str:
    """Return a short time with its unit; a dash where nothing takes any time."""
    return f"{seconds * 1e9:.1f} ns" if seconds > 0 else "–"


def volts(value: float) -> str:
    """Return a voltage to the millivolt, without a sign on zero."""
    return signed(f"{value + 0.0:.3f}") if abs(value) >= 0.0005 else "0.000"


def axis_position(reading: Reading, mode: Mode) -> int:
    """Return a pixel counted from the picture's left edge; below 0 in blanking. [1]"""
    return reading.pixel - mode.h.blanking


def pointer_words(reading: Reading, mode: Mode) -> str:
    """Return where a reading stands, in words: region, pixel and codes."""
    codes = " ".join(str(code) for code in reading.codes)
    if reading.region is Region.ACTIVE:
        place = f"{axis_position(reading, mode)}"
    else:
        first, after = _span(reading.region, mode)
        place = f"{reading.pixel - first + 1} of {after - first}"
    return f"{reading.region.value} · pixel {place} · code {codes}"


def between_words(between: Between, mode: Mode) -> tuple[str, str]:
    """Return the time and the pixels between two readings, with their units."""
    pixels = signed(f"{between.pixels:.1f}")
    return f"{microseconds(between.seconds, mode)} µs", f"{pixels.removesuffix('.0')} px"


def reading_table(here: Reading, there: Reading, between: Between, mode: Mode) -> str:
    """Return both readings and what lies between them as a table with tabs."""
    rows: list[Sequence[object]] = [("", "unit", "here", "there", "between")]
    times = (here.time_s, there.time_s, between.seconds)
    rows.append(("time", "µs", *(microseconds(time, mode) for time in times)))
    places = (axis_position(here, mode), axis_position(there, mode))
    rows.append(("pixel", "px", *places, between_words(between, mode)[1].removesuffix(" px")))
    rows.append(("region", "", here.region.value, there.region.value, ""))
    for i, name in enumerate((*_NAMES, "H sync", "V sync")):
        rows.append((name, "V", *(volts(r.volts[i]) for r in (here, there, between))))
    for i, name in enumerate(_NAMES):
        codes = (here.codes[i], there.codes[i], signed(str(between.codes[i])))
        rows.append((f"{name} code", "", *codes))
    return "\n".join("\t".join(str(cell) for cell in row) for row in rows)


def _span(region: Region, mode: Mode) -> tuple[int, int]:
    """Return the first pixel of a region of the line and the one after its last."""
    edges = (0, *mode.h.edges)
    index = list(Region).index(region)
    return edges[index], edges[index + 1]


def v_sync_sentence(mode: Mode, number: int) -> str:
    """Return what V sync does on a line where it does not change; empty where its edge is seen."""
    before, active = v_sync_asserted(mode, number)
    if before != active:
        return ""
    lines = v_sync_lines(mode)
    high = active == (mode.v.polarity.value == "+")
    level = "high" if high else "low"
    if len(lines) == 1:
        which = f"line {lines[0]}"
    elif len(lines) == 2:
        which = f"lines {lines[0]} and {lines[1]}"
    else:
        which = f"lines {lines[0]} to {lines[-1]}"
    return f"{level} all line: V sync is active on {which}" + ("" if active else " only")


def refusal(mode: Mode) -> str:
    """Return why a mode's scanline is not drawn, and what to do."""
    return (
        f"{mode.name} is interlaced: its two fields are not simulated. "
        "Choose a progressive mode to see a scanline; the figures of this one stand on the page Timing."
    )
