"""The two places on the line that are read: *here* and *there*."""

from enum import Enum
from math import floor

from PySide6.QtCore import QObject, Signal

from workbench.timing.mode import Mode

__all__ = ["Cursors", "Place"]

_FIRST_PARTS = (1 / 16, 5 / 16)
"""Where the cursors stand at first, as parts of the picture's width. [1]"""


class Place(Enum):
    """One of the two cursors."""

    HERE = "here"
    THERE = "there"


class Cursors(QObject):
    """Holds where both cursors stand, in pixels from the picture's left edge.

    They keep their place in the picture when porches or the clock change. Times are seconds
    from the start of the front porch.
    """

    changed = Signal()
    """A cursor moved, or the other one is moved by the keys now."""

    def __init__(self, mode: Mode, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._mode = mode
        # In the middle of a pixel, where its level stands.
        here, there = (int(part * mode.h.active) + 0.5 for part in _FIRST_PARTS)
        self._columns = {Place.HERE: here, Place.THERE: there}
        self._active = Place.HERE

    @property
    def active(self) -> Place:
        """The cursor that was moved last, and that the keys move."""
        return self._active

    def set_mode(self, mode: Mode) -> None:
        """Stand on another line; cursors out of it come back to its ends."""
        if mode != self._mode:
            self._mode = mode
            for place in Place:
                self._columns[place] = self._clipped(self._columns[place])
            self.changed.emit()

    def time_s(self, place: Place) -> float:
        """Return the time at a cursor. [s]"""
        return (self._columns[place] + self._mode.h.blanking) * self._mode.pixel_s

    def pixel(self, place: Place) -> int:
        """Return the pixel under a cursor, from 0 at the start of the front porch. [1]"""
        return min(int(self._columns[place] + self._mode.h.blanking + 1e-9), self._mode.h.total - 1)

    def put(self, place: Place, time_s: float, *, whole: bool = False) -> None:
        """Put a cursor at a time of the line, or into the middle of the pixel there if ``whole``.

        The keys move it from now on.
        """
        column = time_s * self._mode.pixel_clock_hz - self._mode.h.blanking
        if whole:
            column = min(floor(column), self._mode.h.active - 1) + 0.5
        self._set(place, column)

    def put_on_pixel(self, place: Place, pixel: int) -> None:
        """Put a cursor into the middle of a pixel, if it is not on it already."""
        if pixel != self.pixel(place):
            self._set(place, pixel + 0.5 - self._mode.h.blanking)

    def step(self, pixels: float) -> None:
        """Move the cursor that was moved last."""
        self._set(self._active, self._columns[self._active] + pixels)

    def take(self, place: Place) -> None:
        """Let the keys move a cursor."""
        if place is not self._active:
            self._active = place
            self.changed.emit()

    def _set(self, place: Place, column: float) -> None:
        column = self._clipped(column)
        if (place, column) != (self._active, self._columns[place]):
            self._active = place
            self._columns[place] = column
            self.changed.emit()

    def _clipped(self, column: float) -> float:
        return min(max(column, float(-self._mode.h.blanking)), float(self._mode.h.active))
