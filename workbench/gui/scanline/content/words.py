"""Readings as words and columns of figures, for cards, the one-line readout and the clipboard."""

from collections.abc import Sequence

from workbench.timing.frame import v_sync_asserted, v_sync_lines
from workbench.timing.mode import Mode, Region
from workbench.units import format_significant
from workbench.waveform.reading import Between, Reading

__all__ = [
    "between_words",
    "microseconds",
    "nanoseconds",
    "own_pixel",
    "pixel_words",
    "pointer_words",
    "position_words",
    "reading_table",
    "refusal",
    "signed",
    "time_decimals",
    "uneven_words",
    "v_sync_sentence",
    "volts",
    "volts_between",
]

_SHORT_PIXEL_S = 15e-9
"""Pixels shorter than this want four decimals of a microsecond. [s]"""
_NAMES = ("red", "green", "blue")
_SHORT = {Region.FRONT_PORCH: "front ", Region.SYNC: "sync ", Region.BACK_PORCH: "back ", Region.ACTIVE: ""}
"""Names of the regions where a column is narrow; a pixel of the picture needs none."""
_WHOLE = 1e-3
"""Cursors this near to whole pixels apart are whole pixels apart. [1]"""


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


def uneven_words(mode: Mode, divider: float | None) -> tuple[str, str]:
    """Return how uneven pixels are, shortly and in a sentence; both empty where all are alike.

    Parameters
    ----------
    divider : float, optional
        System clocks a pixel, where a fractional divider makes pixels uneven. [1]
    """
    if divider is None:
        return "", ""
    clock_s, low = mode.pixel_s / divider, int(divider)
    lines = "all lines are alike" if mode.h.total * divider % 1 == 0 else "lines differ by one too"
    return (
        f"uneven pixels ±{format_significant(clock_s / 2, 's', 3)}",
        f"Pixels last {low} or {low + 1} system clocks of {format_significant(clock_s, 's', 3)}; {lines}.",
    )


def own_pixel(pixel: int, mode: Mode) -> int:
    """Return a pixel's number in its own region, from 0: the picture counts its own, each porch too. [1]

    Parameters
    ----------
    pixel : int
        From the start of the front porch, ``0 <= pixel < h.total``. [1]
    """
    return pixel - _start(mode.h.region(pixel), mode)


def pixel_words(pixel: int, mode: Mode) -> str:
    """Return which pixel one is that is counted from the start of the front porch."""
    region = mode.h.region(pixel)
    words = f"pixel {own_pixel(pixel, mode)}"
    return words if region is Region.ACTIVE else f"{words} of the {region.value}"


def pointer_words(reading: Reading, mode: Mode) -> str:
    """Return where a reading stands, in words: region, pixel and codes."""
    codes = " ".join(str(code) for code in reading.codes)
    return f"{reading.region.value} · pixel {own_pixel(reading.pixel, mode)} · code {codes}"


def position_words(here: Reading, there: Reading, mode: Mode) -> tuple[str, str, str]:
    """Return the pixels of two readings and what lies between, all as fine as these need.

    Whole pixels apart, whole pixels are told; else tenths, cut and not rounded, as a pixel lasts to
    its end. A reading in blanking has the region's name before its own count.
    """
    apart = (there.time_s - here.time_s) * mode.pixel_clock_hz
    if abs(apart - round(apart)) < _WHOLE:
        texts = [f"{_SHORT[r.region]}{own_pixel(r.pixel, mode)}" for r in (here, there)]
        return texts[0], texts[1], signed(str(there.pixel - here.pixel))
    tenths = [int(reading.time_s * mode.pixel_clock_hz * 10 + _WHOLE) for reading in (here, there)]
    texts = [
        f"{_SHORT[r.region]}{tenth / 10 - _start(r.region, mode):.1f}"
        for r, tenth in zip((here, there), tenths, strict=True)
    ]
    return texts[0], texts[1], signed(f"{(tenths[1] - tenths[0]) / 10:.1f}")


def between_words(here: Reading, there: Reading, mode: Mode) -> tuple[str, str]:
    """Return the time and the pixels between two readings as they are told, with their units."""
    decimals = time_decimals(mode)
    first, second = (round(reading.time_s * 1e6, decimals) for reading in (here, there))
    return (
        f"{signed(f'{second - first + 0.0:.{decimals}f}')} µs",
        f"{position_words(here, there, mode)[2]} px",
    )


def volts_between(here: Reading, there: Reading) -> tuple[str, ...]:
    """Return the differences of the voltages as they are told, so that the figures add up."""
    return tuple(
        volts(round(second, 3) - round(first, 3))
        for first, second in zip(here.volts, there.volts, strict=True)
    )


def reading_table(here: Reading, there: Reading, between: Between, mode: Mode) -> str:
    """Return both readings and what lies between them as a table with tabs."""
    rows: list[Sequence[object]] = [("", "unit", "here", "there", "between")]
    times = (microseconds(reading.time_s, mode) for reading in (here, there))
    rows.append(("time", "µs", *times, between_words(here, there, mode)[0].removesuffix(" µs")))
    rows.append(("pixel", "px", *position_words(here, there, mode)))
    rows.append(("region", "", here.region.value, there.region.value, ""))
    apart = volts_between(here, there)
    for i, name in enumerate((*_NAMES, "H sync", "V sync")):
        rows.append((name, "V", *(volts(r.volts[i]) for r in (here, there)), apart[i]))
    for i, name in enumerate(_NAMES):
        codes = (here.codes[i], there.codes[i], signed(str(between.codes[i])))
        rows.append((f"{name} code", "", *codes))
    return "\n".join("\t".join(str(cell) for cell in row) for row in rows)


def _start(region: Region, mode: Mode) -> int:
    """Return the first pixel of a region of the line."""
    return (0, *mode.h.edges)[list(Region).index(region)]


def v_sync_sentence(mode: Mode, number: int) -> tuple[str, ...]:
    """Return what V sync does on a line where it does not change, longest wording first.

    Nothing where its edge is seen. It changes with the leading edge of H sync, not with a line.
    """
    before, active = v_sync_asserted(mode, number)
    if before != active:
        return ()
    lines = v_sync_lines(mode)
    after = (lines.stop - 1) % mode.v.total + 1
    level = "high" if active == (mode.v.polarity.value == "+") else "low"
    when = f"from H sync of line {lines.start} to H sync of line {after}"
    only = "" if active else "only "
    return (
        f"{level} all line: V sync is active {only}{when}",
        f"active {only}{when}",
        f"{level} all line",
    )


def refusal(mode: Mode) -> str:
    """Return why a mode's scanline is not drawn, and what to do."""
    return (
        f"{mode.name} is interlaced: its two fields are not simulated. "
        "Choose a progressive mode to see a scanline; the figures of this one stand on the page Timing."
    )
