"""A display mode: counts of pixels and lines, a pixel clock, and the rates that follow.

Counts are integers and the pixel clock is a whole number of hertz; every time is derived, so
nothing is rounded before it is shown.
"""

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

__all__ = ["Axis", "Mode", "Polarity", "Region"]


class Polarity(Enum):
    """The level of a sync pulse against its rest level."""

    POSITIVE = "+"
    NEGATIVE = "-"


class Region(Enum):
    """A part of the line (or of the frame), in the order of our time axis."""

    FRONT_PORCH = "front porch"
    SYNC = "sync"
    BACK_PORCH = "back porch"
    ACTIVE = "active"


@dataclass(frozen=True, slots=True)
class Axis:
    """One direction of a mode: pixels of a line, or lines of a frame."""

    active: int
    front_porch: int
    sync: int
    back_porch: int
    polarity: Polarity
    border: int = 0
    """The part of each porch, next to the picture, that the standard calls border. [1]"""

    @property
    def blanking(self) -> int:
        """Return front porch, sync and back porch together. [1]"""
        return self.front_porch + self.sync + self.back_porch

    @property
    def total(self) -> int:
        """Return the whole count. [1]"""
        return self.active + self.blanking

    @property
    def edges(self) -> tuple[int, int, int, int]:
        """Return where front porch, sync, back porch and active end, from the front porch's start. [1]"""
        sync = self.front_porch
        back = sync + self.sync
        active = back + self.back_porch
        return sync, back, active, self.total

    def region(self, position: int) -> Region:
        """Return the region of a position counted from the start of the front porch."""
        for edge, region in zip(self.edges, Region, strict=True):
            if position < edge:
                return region
        return Region.ACTIVE


@dataclass(frozen=True, slots=True)
class Mode:
    """A display mode; horizontal counts in pixels, vertical counts in lines."""

    name: str
    source: str
    pixel_clock_hz: int
    h: Axis
    v: Axis
    interlaced: bool = False

    @property
    def line_rate_hz(self) -> float:
        """Return the number of lines a second. [Hz]"""
        return self.pixel_clock_hz / self.h.total

    @property
    def frame_rate_hz(self) -> float:
        """Return the number of frames a second. [Hz]"""
        return float(Fraction(self.pixel_clock_hz, self.h.total * self.v.total))

    @property
    def field_rate_hz(self) -> float:
        """Return how often V sync comes: twice a frame when interlaced, else once. [Hz]"""
        return self.frame_rate_hz * (2 if self.interlaced else 1)

    @property
    def pixel_s(self) -> float:
        """Return the length of a pixel. [s]"""
        return 1.0 / self.pixel_clock_hz

    @property
    def line_s(self) -> float:
        """Return the length of a line. [s]"""
        return self.h.total / self.pixel_clock_hz

    @property
    def frame_s(self) -> float:
        """Return the length of a frame. [s]"""
        return float(Fraction(self.h.total * self.v.total, self.pixel_clock_hz))
