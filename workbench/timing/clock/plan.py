"""The clock plans of a mode: what a chip's closest settings mean for the picture."""

from dataclasses import dataclass, replace
from enum import Enum
from fractions import Fraction
from math import gcd

from workbench.errors import TimingError
from workbench.progress import SILENT, Progress
from workbench.timing.clock.chip import Chip
from workbench.timing.clock.settings import Grid, closest_settings, divide_by
from workbench.timing.custom import MAX_CLOCK_HZ, MIN_CLOCK_HZ, make_mode
from workbench.timing.mode import Mode
from workbench.units import format_quantity

__all__ = ["Jitter", "Plan", "clock_object", "plan_clock", "planned_mode"]

_SPARE = 4
"""Settings looked through for each plan listed, as equal errors are told apart exactly. [1]"""


class Jitter(Enum):
    """What a clock does to the picture, from the best to the worst."""

    NONE = "none"
    """Every pixel is as long as the next."""
    PIXEL = "pixel"
    """Pixels differ by one system clock; every line is as long as the next."""
    LINE = "line"
    """Lines differ by one system clock too: the picture's edges are ragged."""


@dataclass(frozen=True, slots=True)
class Plan:
    """One setting of a chip, and what comes of it."""

    multiply: int
    dividers: tuple[int, ...]
    system_hz: Fraction
    divider: Fraction
    """System clocks a pixel. [1]"""
    wanted_hz: int
    """The pixel clock aimed at. [Hz]"""
    jitter: Jitter

    @property
    def pixel_hz(self) -> Fraction:
        """Return the pixel clock that comes out, on average where pixels are uneven. [Hz]"""
        return self.system_hz / self.divider

    @property
    def error_ppm(self) -> float:
        """Return how far the pixel clock is off, in parts in a million. [ppm]"""
        return float((self.pixel_hz / self.wanted_hz - 1) * 1_000_000)

    @property
    def uneven_divider(self) -> float | None:
        """Return the divider, exact in binary, where it makes pixels uneven; none where it is whole. [1]"""
        return None if self.divider.denominator == 1 else float(self.divider)

    @property
    def uneven_s(self) -> float:
        """Return how much longer the longest pixel is than the shortest. [s]"""
        return 0.0 if self.jitter is Jitter.NONE else float(1 / self.system_hz)


def plan_clock(mode: Mode, chip: Chip, *, most: int = 10, progress: Progress = SILENT) -> tuple[Plan, ...]:
    """Return the settings that come closest to a mode's pixel clock, best first.

    Parameters
    ----------
    mode : Mode
        Its pixel clock is aimed at; its line total decides whether lines stay even.
    most : int
        Plans listed of each kind of jitter. [1]
    progress : Progress
        Told about every chunk of settings; raises `Cancelled` to stop.

    Returns
    -------
    plans : tuple of Plan
        By kind of jitter, then by the size of the error; of equal ones the faster system clock
        first. Settings that give the same clock are listed once.

    Raises
    ------
    TimingError
        If no setting is allowed, none gives a possible pixel clock, or there are too many to try.

    Notes
    -----
    A fractional divider counts n system clocks for some pixels and n + 1 for the others. A line
    of H pixels stays even if H times the divider is a whole number.

    Examples
    --------
    >>> from workbench.timing.clock.chip import read_chip
    >>> from workbench.timing.search import find_mode
    >>> chip = read_chip(reference="12M", multiply="126", divide="60", max_system="133M")
    >>> [round(plan.error_ppm, 2) for plan in plan_clock(find_mode("640x480@60"), chip)]
    [993.05]
    """
    grids = _grids(mode.h.total, chip.fraction_bits)
    found = closest_settings(
        chip, mode.pixel_clock_hz, tuple(grids.values()), most=most * _SPARE, progress=progress
    )
    plans: list[Plan] = []
    for (jitter, grid), settings in zip(grids.items(), found, strict=True):
        of_kind = [
            Plan(
                multiply,
                divide_by(divide, chip.dividers) or (),
                Fraction(chip.reference_hz * multiply, divide),
                Fraction(count, grid.steps),
                mode.pixel_clock_hz,
                jitter,
            )
            for multiply, divide, count in settings.tolist()
        ]
        plans += _ranked(of_kind)[:most]
    if not plans:
        raise TimingError(
            f"No setting keeps the system clock under {format_quantity(chip.max_system_hz, 'Hz')}; widen the "
            "divide range or lower the multiply range."
        )
    possible = tuple(plan for plan in plans if MIN_CLOCK_HZ <= plan.pixel_hz <= MAX_CLOCK_HZ)
    if not possible:
        raise TimingError(
            f"The nearest pixel clock, {format_quantity(float(plans[0].pixel_hz), 'Hz')}, is outside "
            "100 kHz … 1 GHz; check the chip's values."
        )
    return possible


def _grids(h_total: int, fraction_bits: int) -> dict[Jitter, Grid]:
    """Return the dividers of each kind of jitter that the chip's fraction can make."""
    finest = 1 << fraction_bits
    even_lines = gcd(h_total, finest)
    grids = {Jitter.NONE: Grid(1, 0)}
    if even_lines > 1:
        grids[Jitter.PIXEL] = Grid(even_lines, 1)
    if finest > even_lines:
        grids[Jitter.LINE] = Grid(finest, even_lines)
    return grids


def _ranked(plans: list[Plan]) -> list[Plan]:
    """Order plans by the size of their error; of equal ones the faster system clock comes first."""
    return sorted(plans, key=lambda plan: (abs(plan.pixel_hz - plan.wanted_hz), -plan.system_hz))


def planned_mode(mode: Mode, plan: Plan) -> Mode:
    """Return the mode as the plan's clock makes it, with the rates that result.

    Raises
    ------
    TimingError
        If the clock is no possible pixel clock.
    """
    made = make_mode(mode.h, mode.v, round(plan.pixel_hz), name=mode.name, source=mode.source)
    return replace(made, interlaced=mode.interlaced)


def clock_object(chip: Chip, plans: tuple[Plan, ...]) -> dict[str, object]:
    """Return what ``backporch clock --json`` prints; SI units, best first."""
    return {
        "plans": [
            {
                "system_hz": float(plan.system_hz),
                "divider": float(plan.divider),
                "pixel_hz": float(plan.pixel_hz),
                "error_ppm": plan.error_ppm,
                "jitter": plan.jitter.value,
                "uneven_s": plan.uneven_s,
                "settings": {
                    "reference_hz": chip.reference_hz,
                    "multiply": plan.multiply,
                    "divide": list(plan.dividers),
                    "vco_hz": chip.reference_hz * plan.multiply,
                    "whole": int(plan.divider),
                    "fraction": int(plan.divider % 1 * (1 << chip.fraction_bits)),
                    "fraction_bits": chip.fraction_bits,
                },
            }
            for plan in plans
        ]
    }
