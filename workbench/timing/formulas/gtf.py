"""The VESA GTF formula, by which older monitors and graphics cards agreed on any size.

Source: VESA Generalized Timing Formula 1.1, read second-hand in calc-gtf-cvt.cpp of v4l-utils and
xf86gtf.c, and confirmed by published results. Progressive, without margins. GTF rounds where CVT
cuts, and hits the wanted refresh exactly while its clock floats.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import floor

from workbench.errors import TimingError
from workbench.timing.formulas.result import estimated_line_us, exact_rate, formula_mode
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.request import Request
from workbench.units import format_quantity

__all__ = ["DEFAULT_CURVE", "GtfCurve", "gtf"]

_CELL = 8
_V_FRONT_PORCH = 1
_V_SYNC = 3
_MIN_SYNC_AND_BACK_US = 550


@dataclass(frozen=True, slots=True)
class GtfCurve:
    """The blanking a monitor asks for: offset and gradient against the line's length."""

    c_percent: float = 40.0
    m_percent_per_khz: float = 600.0
    k: float = 128.0
    j_percent: float = 20.0

    @property
    def offset_percent(self) -> Fraction:
        """Return C', what the duty starts from. [%]"""
        c, k, j = Fraction(self.c_percent), Fraction(self.k), Fraction(self.j_percent)
        return (c - j) * k / 256 + j

    @property
    def gradient_percent_per_khz(self) -> Fraction:
        """Return M', what the duty loses with the line's length. [%/kHz]"""
        return Fraction(self.m_percent_per_khz) * Fraction(self.k) / 256


DEFAULT_CURVE = GtfCurve()


def gtf(width: int, height: int, refresh_hz: float, *, curve: GtfCurve = DEFAULT_CURVE) -> Mode:
    """Return the mode the formula gives for a size and a refresh rate.

    Parameters
    ----------
    width, height : int
        Picture; the width is rounded to whole cells of 8 pixels. [pixel], [line]
    refresh_hz : float
        Frames a second. [Hz]
    curve : GtfCurve
        A monitor's secondary curve swaps the polarities: the sign that it was used.

    Raises
    ------
    TimingError
        If the formula gives no possible line or frame; tiny pictures leave it no front porch.

    Examples
    --------
    >>> mode = gtf(1024, 768, 60)
    >>> round(mode.pixel_clock_hz, -4), mode.h.total, mode.v.total
    (64110000, 1344, 795)
    """
    asked = Request(width, height, refresh_hz)
    active = _CELL * _nearest(Fraction(width, _CELL))
    h_polarity, v_polarity = Polarity.NEGATIVE, Polarity.POSITIVE
    if curve != DEFAULT_CURVE:
        h_polarity, v_polarity = v_polarity, h_polarity
    estimate_us = estimated_line_us(asked, height + _V_FRONT_PORCH, _MIN_SYNC_AND_BACK_US)
    sync_and_back = _nearest(_MIN_SYNC_AND_BACK_US / estimate_us)
    v = Axis(height, _V_FRONT_PORCH, _V_SYNC, sync_and_back - _V_SYNC, v_polarity)
    line_us = 1_000_000 / (exact_rate(asked) * v.total)
    duty = _blanking_duty(curve, line_us)
    blanking = 2 * _CELL * _nearest(active * duty / (1 - duty) / (2 * _CELL))
    h_sync = _CELL * _nearest(Fraction(8, 100) * (active + blanking) / _CELL)
    h = Axis(active, blanking // 2 - h_sync, h_sync, blanking // 2, h_polarity)
    return formula_mode(asked, h, v, _nearest(h.total * 1_000_000 / line_us), source="VESA GTF")


def _blanking_duty(curve: GtfCurve, line_us: Fraction) -> Fraction:
    """Return the part of a line that is blank. [1]"""
    duty_percent = curve.offset_percent - curve.gradient_percent_per_khz * line_us / 1000
    if not 0 < duty_percent < 100:
        raise TimingError(
            f"Lines of {format_quantity(float(line_us) * 1e-6, 's')} are too long for GTF's blanking curve; "
            "ask for more lines or more frames a second."
        )
    return duty_percent / 100


def _nearest(value: Fraction) -> int:
    """Round to nearest, halves up, as the standard's spreadsheet does."""
    return floor(value + Fraction(1, 2))
