"""Tolerances: how far values stray from board to board, and how they lie in between."""

from dataclasses import dataclass, field
from enum import Enum

__all__ = ["Band", "Distribution", "Tolerances"]


class Distribution(Enum):
    """How values lie in their tolerance band."""

    UNIFORM = "uniform"
    """Anywhere in the band alike."""
    NORMAL = "normal"
    """Bell-shaped, with the band's edge at three standard deviations; 0.3 % lie outside."""


@dataclass(frozen=True, slots=True)
class Band:
    """A tolerance and how values lie in it."""

    half_width: float | None = None
    """Largest relative deviation, ``0 <= half_width < 1``; none takes each resistor's own. [1]"""
    distribution: Distribution = Distribution.UNIFORM


_EXACT = Band(0.0)


@dataclass(frozen=True, slots=True)
class Tolerances:
    """What varies from board to board."""

    resistors: Band = field(default_factory=Band)
    supply: Band = _EXACT
    load: Band = _EXACT
    on_resistance: Band = _EXACT
