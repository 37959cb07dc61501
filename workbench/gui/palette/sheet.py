"""How the colours of a board are laid out: a tile for each code of blue, red across, green down."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.picture.dither import Levels3
from workbench.picture.light import light_from_volts, srgb_bytes

__all__ = ["MOST_STEPS", "Sheet", "sheet_of"]

ByteArray = NDArray[np.uint8]
IntArray = NDArray[np.intp]

MOST_STEPS = 64
"""Codes of one channel that are shown; of more, every second or fourth one. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class Sheet:
    """Every colour that is shown, and where it lies."""

    codes: tuple[IntArray, IntArray, IntArray]
    """Codes shown of red, green and blue, rising. [1]"""
    columns: int
    """Tiles side by side. [1]"""
    rgb: ByteArray
    """One dot a colour, sRGB bytes, shape (rows * n_green, columns * n_red, 3). [1]"""

    @property
    def thinned(self) -> bool:
        """Return whether some codes are left out."""
        return any(len(codes) > 1 and codes[1] - codes[0] > 1 for codes in self.codes)

    def colour_at(self, x: int, y: int) -> tuple[int, int, int] | None:
        """Return the codes of the dot at a place; none beside the last tile."""
        red, green, blue = self.codes
        tile = (y // len(green)) * self.columns + x // len(red)
        if tile >= len(blue):
            return None
        return int(red[x % len(red)]), int(green[y % len(green)]), int(blue[tile])

    @property
    def last_row(self) -> float:
        """Part of the last row that tiles fill. [1]"""
        return 1.0 - (-len(self.codes[2]) % self.columns) / self.columns

    def place_of(self, colour: tuple[int, int, int]) -> tuple[int, int]:
        """Return the dot nearest to a colour's codes, x and y."""
        red, green, blue = (
            int(np.abs(codes - code).argmin()) for codes, code in zip(self.codes, colour, strict=True)
        )
        down, across = divmod(blue, self.columns)
        return across * len(self.codes[0]) + red, down * len(self.codes[1]) + green


def sheet_of(levels: Levels3, aspect: float) -> Sheet:
    """Return the colours of a board.

    Parameters
    ----------
    levels : tuple of 3 float arrays
        Level of every code, loaded. [V]
    aspect : float
        Width over height of the room there is. [1]
    """
    shown = [_shown(len(volts)) for volts in levels]
    red, green, blue = (
        srgb_bytes(light_from_volts(volts[codes])) for volts, codes in zip(levels, shown, strict=True)
    )
    columns = _columns(len(blue), aspect * len(green) / len(red))
    rows = -(-len(blue) // columns)
    rgb = np.zeros((rows * len(green), columns * len(red), 3), np.uint8)
    for tile, value in enumerate(blue):
        down, across = divmod(tile, columns)
        part = rgb[down * len(green) : (down + 1) * len(green), across * len(red) : (across + 1) * len(red)]
        part[:, :, 0], part[:, :, 1], part[:, :, 2] = red[None, :], green[:, None], value
    return Sheet((shown[0], shown[1], shown[2]), columns, rgb)


def _shown(n_codes: int) -> IntArray:
    step = max(1, n_codes // MOST_STEPS)
    codes = np.arange(0, n_codes, step)
    codes[-1] = n_codes - 1
    return codes


def _columns(tiles: int, aspect: float) -> int:
    """Return how many tiles side by side can be drawn largest in a room of a shape."""

    def size(columns: int) -> tuple[float, int]:
        rows = -(-tiles // columns)
        return min(aspect / columns, 1.0 / rows), -(rows * columns - tiles)

    return max(range(1, tiles + 1), key=size)
