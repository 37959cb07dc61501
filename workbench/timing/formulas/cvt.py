"""The VESA CVT formula: standard blanking, and reduced blanking versions 1 and 2.

Source: VESA Coordinated Video Timings 1.1 (2003) and 1.2, read second-hand in two open
implementations (calc-gtf-cvt.cpp of v4l-utils, fbcvt.c of the Linux kernel) and settled by the
DMT's own CVT-coded modes, which these functions give exactly. Progressive, without margins.
Everything is reckoned in exact fractions, because the formula cuts down at many places.
"""

from dataclasses import replace
from fractions import Fraction
from math import floor

from workbench.timing.formulas.result import estimated_line_us, exact_rate, formula_mode
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.request import Request

__all__ = ["cvt", "cvt_rb", "cvt_rb2"]

_CELL = 8
"""Character cell. [pixel]"""
_CLOCK_STEP_HZ = 250_000
_V_FRONT_PORCH = 3
_MIN_V_BACK_PORCH = 6
"""CVT 1.1; later errata have 7, which changes no mode of the DMT."""
_MIN_SYNC_AND_BACK_US = 550
_MIN_RB_BLANKING_US = 460


def cvt(width: int, height: int, refresh_hz: float) -> Mode:
    """Return the mode with standard blanking, as a picture tube needs it.

    Parameters
    ----------
    width, height : int
        Picture; the width is cut down to whole cells of 8 pixels. [pixel], [line]
    refresh_hz : float
        Wanted frames a second; the result is a little lower, as the clock is cut to 0.25 MHz. [Hz]

    Raises
    ------
    TimingError
        If the formula gives no possible line or frame.

    Examples
    --------
    >>> mode = cvt(1440, 900, 60)
    >>> mode.pixel_clock_hz, mode.h.front_porch, mode.h.sync, mode.h.back_porch
    (106500000, 80, 152, 232)
    """
    asked = Request(width, height, refresh_hz)
    active = width // _CELL * _CELL
    line_us = estimated_line_us(asked, height + _V_FRONT_PORCH, _MIN_SYNC_AND_BACK_US)
    v_sync = _v_sync(active, height)
    sync_and_back = max(floor(_MIN_SYNC_AND_BACK_US / line_us) + 1, v_sync + _MIN_V_BACK_PORCH)
    # Blanking offset 30 %, gradient 300 % per kHz, at least 20 % of the line.
    duty_percent = max(30 - Fraction(3, 10) * line_us, Fraction(20))
    blanking = 2 * _CELL * floor(active * duty_percent / (100 - duty_percent) / (2 * _CELL))
    total = active + blanking
    h_sync = _CELL * floor(Fraction(8, 100) * total / _CELL)
    h = Axis(active, blanking // 2 - h_sync, h_sync, blanking // 2, Polarity.NEGATIVE)
    v = Axis(height, _V_FRONT_PORCH, v_sync, sync_and_back - v_sync, Polarity.POSITIVE)
    clock_hz = _CLOCK_STEP_HZ * floor(total * 1_000_000 / line_us / _CLOCK_STEP_HZ)
    return formula_mode(asked, h, v, clock_hz, source="VESA CVT 1.1")


def cvt_rb(width: int, height: int, refresh_hz: float) -> Mode:
    """Return the mode with reduced blanking, version 1: 160 pixels, and at least 460 µs.

    The standard keeps it for displays without a tube and for multiples of 60 Hz. Parameters and
    errors are those of `cvt`.

    >>> cvt_rb(800, 600, 120).pixel_clock_hz
    73250000
    """
    asked = Request(width, height, refresh_hz, "RB")
    active = width // _CELL * _CELL
    v_sync = _v_sync(active, height)
    blank_lines = _reduced_blank_lines(asked, _V_FRONT_PORCH + v_sync + _MIN_V_BACK_PORCH)
    h = Axis(active, 48, 32, 80, Polarity.POSITIVE)
    v = Axis(height, _V_FRONT_PORCH, v_sync, blank_lines - _V_FRONT_PORCH - v_sync, Polarity.NEGATIVE)
    # From the wanted rate, not from the estimated line: DMT 0x0d settles it.
    clock_hz = _CLOCK_STEP_HZ * floor(exact_rate(asked) * h.total * v.total / _CLOCK_STEP_HZ)
    return formula_mode(asked, h, v, clock_hz, source="VESA CVT 1.1 reduced blanking")


def cvt_rb2(width: int, height: int, refresh_hz: float, *, video: bool = False) -> Mode:
    """Return the mode with reduced blanking, version 2: 80 pixels, a clock in steps of 1 kHz.

    Parameters
    ----------
    video : bool
        Whether the clock is slowed by 1000/1001, as for 59.94 Hz instead of 60.

    Notes
    -----
    The width is not cut to cells. The other parameters and the errors are those of `cvt`.

    Examples
    --------
    >>> cvt_rb2(4096, 2160, 60, video=True).pixel_clock_hz
    556188000
    """
    asked = Request(width, height, refresh_hz, "RB2")
    v_sync, v_back = 8, 6
    blank_lines = _reduced_blank_lines(asked, 1 + v_sync + v_back)
    h = Axis(width, 8, 32, 40, Polarity.POSITIVE)
    v = Axis(height, blank_lines - v_sync - v_back, v_sync, v_back, Polarity.NEGATIVE)
    rate_hz = exact_rate(asked) * (Fraction(1000, 1001) if video else 1)
    clock_hz = 1000 * floor(rate_hz * h.total * v.total / 1000)
    named = replace(asked, rate_hz=round(float(rate_hz), 2))
    return formula_mode(named, h, v, clock_hz, source="VESA CVT 1.2 reduced blanking v2")


def _reduced_blank_lines(asked: Request, least: int) -> int:
    line_us = estimated_line_us(asked, asked.height, _MIN_RB_BLANKING_US)
    return max(floor(_MIN_RB_BLANKING_US / line_us) + 1, least)


def _v_sync(active: int, height: int) -> int:
    """Return the lines of V sync, by which the standard codes the shape of the picture."""
    shapes = ((4, 3, 4), (16, 9, 5), (16, 10, 6), (5, 4, 7), (15, 9, 7))
    for wide, high, lines in shapes:
        if active == _CELL * (height * wide // high // _CELL):
            return lines
    return 10
