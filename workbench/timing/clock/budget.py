"""How many processor cycles a mode leaves for each pixel, line and frame."""

from dataclasses import dataclass

from workbench.errors import TimingError
from workbench.timing.mode import Mode
from workbench.units import format_quantity

__all__ = ["CycleBudget", "WholeLine", "cycle_budget", "whole_line"]


@dataclass(frozen=True, slots=True)
class CycleBudget:
    """Processor cycles; none of them whole unless the clocks are locked. [1]"""

    per_pixel: float
    per_line: float
    active: float
    """While a line's pixels are sent."""
    blanking: float
    """While a line is blank."""
    v_blanking: float
    """While the whole vertical interval passes."""
    per_frame: float


@dataclass(frozen=True, slots=True)
class WholeLine:
    """A line of a whole number of processor cycles: steady sync from a clock unlike the pixels'."""

    cycles: int
    line_rate_hz: float
    error_ppm: float


def cycle_budget(mode: Mode, cpu_hz: float) -> CycleBudget:
    """Return the cycles of a processor in each part of a mode.

    Parameters
    ----------
    cpu_hz : float
        The processor's clock, ``0 < cpu_hz``. [Hz]

    Raises
    ------
    TimingError
        If the clock is not above zero.

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> round(cycle_budget(find_mode("640x480@60"), 125e6).per_line, 1)
    3972.2
    """
    _check(cpu_hz)
    per_pixel = cpu_hz / mode.pixel_clock_hz
    per_line = per_pixel * mode.h.total
    return CycleBudget(
        per_pixel=per_pixel,
        per_line=per_line,
        active=per_pixel * mode.h.active,
        blanking=per_pixel * mode.h.blanking,
        v_blanking=per_line * mode.v.blanking,
        per_frame=per_line * mode.v.total,
    )


def whole_line(mode: Mode, cpu_hz: float) -> WholeLine:
    """Return the whole number of cycles nearest to a line, and the line rate it gives.

    Raises
    ------
    TimingError
        If the clock is not above zero, or a line is shorter than half a cycle.

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> whole_line(find_mode("640x480@60"), 16e6).cycles
    508
    """
    _check(cpu_hz)
    cycles = round(cpu_hz / mode.line_rate_hz)
    if cycles == 0:
        raise TimingError(
            f"A clock of {format_quantity(cpu_hz, 'Hz')} is slower than the lines of {mode.name}."
        )
    line_rate_hz = cpu_hz / cycles
    return WholeLine(cycles, line_rate_hz, (line_rate_hz / mode.line_rate_hz - 1) * 1e6)


def _check(cpu_hz: float) -> None:
    if not 0 < cpu_hz < float("inf"):
        raise TimingError(
            f"A processor clock of {format_quantity(cpu_hz, 'Hz')} is impossible; write it as in 125M."
        )
