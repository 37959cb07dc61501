"""The codes of a picture, whatever it shows: row by row of a card, whole of an image."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.picture.cards import Bits, Label, card_codes, card_labels, card_row
from workbench.picture.dither import Levels3, codes_from_image
from workbench.picture.fit import fit_image
from workbench.picture.scene import Picture

__all__ = ["PictureCodes", "card_source", "fitted_image", "image_source"]

ByteArray = NDArray[np.uint8]


@dataclass(frozen=True, slots=True, eq=False)
class PictureCodes:
    """What the pins show in the active part of the frame."""

    picture: Picture
    width: int
    height: int
    bits: Bits
    image_codes: ByteArray | None = None
    """Codes of an image, shape (3, height, width); none where a card is shown. [1]"""

    def row(self, row: int) -> NDArray[np.intp]:
        """Return the codes of a row, ``0 <= row < height``, shape (3, width). [1]"""
        if self.image_codes is not None:
            return self.image_codes[:, row].astype(np.intp)
        return card_row(self.picture, self.width, self.height, self.bits, row)

    def frame(self) -> ByteArray:
        """Return the codes of all rows, shape (3, height, width). [1]"""
        if self.image_codes is not None:
            return self.image_codes
        return card_codes(self.picture, self.width, self.height, self.bits)

    def labels(self, row: int) -> tuple[Label, ...]:
        """Return what the areas of a row show, from left to right."""
        if self.image_codes is not None and self.picture.image is not None:
            return (Label(0, self.width, self.picture.image.name),)
        return card_labels(self.picture, self.width, self.height, self.bits, row)


def card_source(picture: Picture, width: int, height: int, bits: Bits) -> PictureCodes:
    """Return the codes of a picture's test card, computed when asked for."""
    return PictureCodes(picture, width, height, bits)


def fitted_image(picture: Picture, width: int, height: int, pixels: ByteArray) -> ByteArray:
    """Return an image at the columns and rows that fill the active part, shape (rows, columns, 3). [1]"""
    columns, rows = picture.size(width, height)
    return fit_image(pixels, columns, rows, picture.fit, smooth=picture.smooth)


def image_source(
    picture: Picture, width: int, height: int, bits: Bits, fitted: ByteArray, levels: Levels3
) -> PictureCodes:
    """Return the codes of an image, by the levels that the board makes.

    Parameters
    ----------
    picture : Picture
        How it is dithered, and how often columns and rows are sent.
    width, height : int
        Active pixels and lines. [1]
    bits : tuple of 3 int
        Bits of red, green and blue. [1]
    fitted : uint8 array, shape (rows, columns, 3)
        See :func:`fitted_image`. [1]
    levels : tuple of 3 float arrays
        Level of every code, loaded. [V]
    """
    codes = codes_from_image(fitted, levels, dither=picture.dither, measure=picture.measure)
    for axis, count in ((1, picture.repeat_lines), (2, picture.repeat_pixels)):
        codes = np.repeat(codes, count, axis=axis) if count > 1 else codes
    codes = np.ascontiguousarray(codes[:, :height, :width])
    codes.setflags(write=False)
    return PictureCodes(picture, width, height, bits, codes)
