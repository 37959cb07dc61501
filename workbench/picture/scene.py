"""What the pins are told to show: a test card or an image, and the code in blanking."""

from dataclasses import dataclass
from enum import Enum

__all__ = ["MOST_TRANSFER", "REPEATS", "Card", "Dither", "Fit", "Image", "Measure", "Picture"]

REPEATS = (1, 2, 4)
"""How often a column or a row of a picture may be sent: once, doubled, four times. [1]"""


MOST_TRANSFER = 256
"""Values of the longest transfer table: one for each byte. [1]"""


class Card(Enum):
    """A picture computed at the size of the mode."""

    COLOUR_BARS = "colour bars"
    GREY_RAMP = "grey ramp"
    CHANNEL_RAMPS = "one ramp a channel"
    ALL_CODES = "all codes"
    CHECKERBOARD = "checkerboard"
    STRIPES = "one-pixel stripes"
    BORDER = "one-pixel border"
    SOLID = "solid colour"
    HALF_SCALE = "half-scale toggle"


class Dither(Enum):
    """How a value between two levels is shown."""

    NEAREST = "nearest"
    ORDERED_4 = "ordered 4 × 4"
    ORDERED_8 = "ordered 8 × 8"
    DIFFUSED = "error diffusion"

    @property
    def side(self) -> int:
        """Return the side of the ordered matrix, 1 where there is none. [1]"""
        return {Dither.ORDERED_4: 4, Dither.ORDERED_8: 8}.get(self, 1)


class Measure(Enum):
    """In what distances between levels, and means of pixels, are taken."""

    VOLTS = "volts"
    LIGHT = "light"


class Fit(Enum):
    """What is done with an image whose size or shape is not that of the mode."""

    LETTERBOX = "whole, with black bars"
    FILL = "filled, edges cropped"
    STRETCH = "stretched"
    AS_IT_IS = "pixel for pixel"
    HALVED = "halved"
    DOUBLED = "doubled"


@dataclass(frozen=True, slots=True)
class Image:
    """An image of the user's: its pixels, or where they are."""

    name: str
    """What it is called, usually the name of its file."""
    width: int
    height: int
    content: bytes = b""
    """Its pixels: rows from the top, red, green, blue bytes, deflated; empty if kept by reference."""
    path: str | None = None
    """Where its file was, of an image that is kept by reference."""
    sha256: str | None = None
    """Digest of that file, in hexadecimal: another file of that name is another image."""


@dataclass(frozen=True, slots=True)
class Picture:
    """The picture of a project."""

    card: Card = Card.COLOUR_BARS
    """Shown where there is no image."""
    colour: tuple[float, float, float] = (1.0, 1.0, 1.0)
    """Colour of the solid card: red, green, blue as parts of full scale, ``0 … 1``. [1]"""
    blanking: tuple[int, int, int] = (0, 0, 0)
    """Code each channel shows outside the active picture; black is 0. [1]"""
    repeat_pixels: int = 1
    """Pixels of the line for each column of the picture, one of `REPEATS`. [1]"""
    repeat_lines: int = 1
    """Lines of the frame for each row of the picture, one of `REPEATS`. [1]"""
    image: Image | None = None
    fit: Fit = Fit.LETTERBOX
    smooth: bool = True
    """Whether scaling takes means and straight lines, or the nearest pixel."""
    dither: Dither = Dither.ORDERED_4
    measure: Measure = Measure.VOLTS
    transfer: tuple[float, ...] = ()
    """Curve over an image's values from 0 to 1, evenly spaced, each ``0 … 1``; empty leaves them. [1]"""

    def size(self, width: int, height: int) -> tuple[int, int]:
        """Return the columns and rows that fill an active part of pixels and lines. [1]"""
        return -(-width // self.repeat_pixels), -(-height // self.repeat_lines)
