"""The range limits descriptor, read and written, and what a mode is measured against it."""

from math import ceil, floor

from workbench.errors import TimingError
from workbench.timing.edid.values import Limits
from workbench.timing.formulas.gtf import GtfCurve
from workbench.timing.mode import Mode
from workbench.units import format_quantity

__all__ = ["outside", "read_limits", "write_limits"]

_SECONDARY_GTF = 0x02
_CVT = 0x04
_ROUNDING_HZ = 500.0
"""Line rate limits are whole kilohertz, so half a one is forgiven. [Hz]"""


def read_limits(data: bytes, *, revision: int) -> tuple[Limits, tuple[str, ...]]:
    """Read the 18 bytes of a range limits descriptor.

    Parameters
    ----------
    revision : int
        Of EDID version 1; from 4 on, limits may be raised by 255.

    Returns
    -------
    limits : Limits
        A pair whose highest value is below its lowest one, or zero, is left out.
    damages : tuple of str
        Each pair that is left out, a sentence each.
    """
    raised = data[4] if revision >= 4 else 0
    v_min, v_max = _raised(data[5], data[6], raised & 3)
    h_min, h_max = _raised(data[7], data[8], raised >> 2 & 3)
    rates = (("field rate", "Hz", v_min, v_max), ("line rate", "kHz", h_min, h_max))
    damages = tuple(
        f"The range limits give {high} {unit} as highest and {low} {unit} as lowest {what}; both are "
        "left out."
        for what, unit, low, high in rates
        if _impossible(low, high)
    )
    v_low, v_high = (None, None) if _impossible(v_min, v_max) else (float(v_min), float(v_max))
    h_low, h_high = (None, None) if _impossible(h_min, h_max) else (h_min * 1e3, h_max * 1e3)
    curve, start_hz = _secondary_curve(data) if data[10] == _SECONDARY_GTF else (None, 0.0)
    # 00 and, in old monitors, FF mean that no highest clock is given.
    max_clock_hz = None if data[9] in (0x00, 0xFF) else data[9] * 10e6
    finer_hz = max_clock_hz - (data[12] >> 2) * 0.25e6 if max_clock_hz and data[10] == _CVT else None
    return Limits(v_low, v_high, h_low, h_high, max_clock_hz, finer_hz, curve, start_hz), damages


def _impossible(low: int, high: int) -> bool:
    return high < low or high == 0


def _raised(low: int, high: int, bits: int) -> tuple[int, int]:
    """Return the limits of EDID 1.4, whose two bits add 255 to the highest or to both."""
    return low + (255 if bits == 3 else 0), high + (255 if bits >= 2 else 0)


def _secondary_curve(data: bytes) -> tuple[GtfCurve, float]:
    m = int.from_bytes(data[14:16], "little")
    curve = GtfCurve(c_percent=data[13] / 2, m_percent_per_khz=m, k=data[16], j_percent=data[17] / 2)
    return curve, data[12] * 2e3


def write_limits(limits: Limits) -> bytes:
    """Return the 18 bytes of a range limits descriptor, widened to the whole units it is kept in.

    Raises
    ------
    TimingError
        If a limit is above what the descriptor holds or not known, or a highest one is below its
        lowest.
    """
    if limits.fields is None or limits.lines is None:
        raise TimingError("The range limits need a lowest and a highest field rate and line rate.")
    (v_min_hz, v_max_hz), (h_min_hz, h_max_hz) = limits.fields, limits.lines
    counts = [
        floor(v_min_hz),
        ceil(v_max_hz),
        floor(h_min_hz / 1e3),
        ceil(h_max_hz / 1e3),
        ceil((limits.max_pixel_clock_hz or 0) / 10e6),
    ]
    names = (
        "lowest field rate",
        "highest field rate",
        "lowest line rate",
        "highest line rate",
        "highest clock",
    )
    for name, count, unit in zip(names, counts, ("Hz", "Hz", "kHz", "kHz", "× 10 MHz"), strict=True):
        if not 0 <= count <= 254:
            raise TimingError(
                f"The {name} of {count} {unit} does not fit the range limits, which hold 0 … 254."
            )
    if v_max_hz < v_min_hz or h_max_hz < h_min_hz:
        raise TimingError("A highest rate of the range limits is below its lowest one.")
    return bytes((0, 0, 0, 0xFD, 0, *counts, *_curve_bytes(limits)))


def _curve_bytes(limits: Limits) -> bytes:
    curve = limits.gtf_curve
    if curve is None:
        return b"\x00\x0a" + 6 * b"\x20"
    c, j = round(curve.c_percent * 2), round(curve.j_percent * 2)
    m = round(curve.m_percent_per_khz)
    return bytes(
        (_SECONDARY_GTF, 0, round(limits.gtf_start_hz / 2e3), c, m & 0xFF, m >> 8, round(curve.k), j)
    )


def outside(mode: Mode, limits: Limits) -> tuple[str, ...]:
    """Return why a monitor with these limits does not take a mode, a sentence each; empty if it does.

    Interlaced modes are measured by their field rate [from memory].
    """
    reasons = []
    if limits.lines and not _inside(mode.line_rate_hz, limits.lines, _ROUNDING_HZ):
        low, high = limits.lines
        reasons.append(
            f"The line rate of {mode.line_rate_hz / 1e3:.3f} kHz is outside the monitor's "
            f"{low / 1e3:g} … {high / 1e3:g} kHz."
        )
    if limits.fields and not _inside(mode.field_rate_hz, limits.fields, 0.5):
        low, high = limits.fields
        reasons.append(
            f"The field rate of {mode.field_rate_hz:.2f} Hz is outside the monitor's {low:g} … {high:g} Hz."
        )
    max_clock_hz = limits.finer_pixel_clock_hz or limits.max_pixel_clock_hz
    if max_clock_hz is not None and mode.pixel_clock_hz > max_clock_hz:
        reasons.append(
            f"The pixel clock of {format_quantity(mode.pixel_clock_hz, 'Hz', 6)} is above the monitor's "
            f"{max_clock_hz / 1e6:g} MHz."
        )
    return tuple(reasons)


def _inside(rate_hz: float, ends_hz: tuple[float, float], rounding_hz: float) -> bool:
    low, high = ends_hz
    return low - rounding_hz <= rate_hz <= high + rounding_hz
