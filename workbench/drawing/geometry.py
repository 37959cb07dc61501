"""Points and rectangles of a drawing, in pixels, y downward."""

from dataclasses import dataclass
from typing import NamedTuple

__all__ = ["Point", "Rect"]


class Point(NamedTuple):
    """A place on the sheet. [px]"""

    x: float
    y: float

    def moved(self, dx: float = 0.0, dy: float = 0.0) -> "Point":
        """Return the place so far away. [px]"""
        return Point(self.x + dx, self.y + dy)


@dataclass(frozen=True, slots=True)
class Rect:
    """An upright rectangle. [px]"""

    left: float
    top: float
    width: float
    height: float

    @staticmethod
    def around(centre: Point, width: float, height: float) -> "Rect":
        """Return the rectangle of a size about its middle."""
        return Rect(centre.x - width / 2, centre.y - height / 2, width, height)

    @staticmethod
    def between(left: float, top: float, right: float, bottom: float) -> "Rect":
        """Return the rectangle with these sides."""
        return Rect(left, top, right - left, bottom - top)

    @property
    def right(self) -> float:
        """Return the right side. [px]"""
        return self.left + self.width

    @property
    def bottom(self) -> float:
        """Return the lower side. [px]"""
        return self.top + self.height

    @property
    def centre(self) -> Point:
        """Return the middle."""
        return Point(self.left + self.width / 2, self.top + self.height / 2)

    def grown(self, dx: float, dy: float | None = None) -> "Rect":
        """Return the rectangle wider by ``dx`` and higher by ``dy`` on each side. [px]"""
        rise = dx if dy is None else dy
        return Rect(self.left - dx, self.top - rise, self.width + 2 * dx, self.height + 2 * rise)

    def contains(self, point: Point) -> bool:
        """Return whether a place lies inside or on the edge."""
        return self.left <= point.x <= self.right and self.top <= point.y <= self.bottom

    def overlaps(self, other: "Rect") -> bool:
        """Return whether the two share more than an edge."""
        across = self.left < other.right and other.left < self.right
        return across and self.top < other.bottom and other.top < self.bottom
