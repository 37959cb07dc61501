"""What the pins are told to show: a test card, its colour, and the code in blanking."""

from dataclasses import dataclass
from enum import Enum

__all__ = ["Card", "Picture"]


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


@dataclass(frozen=True, slots=True)
class Picture:
    """The picture of a project."""

    card: Card = Card.COLOUR_BARS
    colour: tuple[float, float, float] = (1.0, 1.0, 1.0)
    """Colour of the solid card: red, green, blue as parts of full scale, ``0 … 1``. [1]"""
    blanking: tuple[int, int, int] = (0, 0, 0)
    """Code each channel shows outside the active picture; black is 0. [1]"""
