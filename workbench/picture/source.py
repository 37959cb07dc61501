"""The codes of a picture, whatever it shows: any row at once, the whole frame when it is asked for."""

import numpy as np
from numpy.typing import NDArray

from workbench.picture.cards import Bits, Label, card_codes, card_labels, card_rows
from workbench.picture.dither import Levels3, codes_from_image
from workbench.picture.fit import fit_image
from workbench.picture.scene import Dither, Picture
from workbench.picture.shape import pixel_aspect

__all__ = ["FittedImage", "PictureCodes", "card_source", "fitted_image", "image_source"]

ByteArray = NDArray[np.uint8]
IntArray = NDArray[np.integer]

_QUICK_PIXELS = 300_000
"""Images of fewer pixels are scaled smoothly while one waits. [1]"""
_STAND_IN = Dither.ORDERED_8
"""What is shown while errors are being diffused, which needs all rows from the top."""


class FittedImage:
    """An image at the size of the picture: roughly at once, as it was asked for when there is time."""

    def __init__(self, picture: Picture, width: int, height: int, pixels: ByteArray) -> None:
        self._picture, self._pixels = picture, pixels
        self._columns, self._rows = picture.size(width, height)
        # Of a column that is sent twice the pixel on the screen is twice as wide.
        repeated = picture.repeat_pixels / picture.repeat_lines
        self._aspect = pixel_aspect(width, height) * repeated
        self._rough: ByteArray | None = None
        self._exact: ByteArray | None = None
        if not picture.smooth or pixels.shape[0] * pixels.shape[1] <= _QUICK_PIXELS:
            self.exact()

    @property
    def settled(self) -> bool:
        """Return whether the image is there as it was asked for."""
        return self._exact is not None

    def exact(self) -> ByteArray:
        """Return the image as it was asked for, shape (rows, columns, 3). [1]"""
        if self._exact is None:
            self._exact = self._fit(smooth=self._picture.smooth)
        return self._exact

    def best(self) -> ByteArray:
        """Return the image as well as can be had at once, shape (rows, columns, 3). [1]"""
        if self._exact is not None:
            return self._exact
        if self._rough is None:
            self._rough = self._fit(smooth=False)
        return self._rough

    def _fit(self, *, smooth: bool) -> ByteArray:
        return fit_image(
            self._pixels,
            self._columns,
            self._rows,
            self._picture.fit,
            smooth=smooth,
            aspect=self._aspect,
        )


class PictureCodes:
    """What the pins show in the active part of the frame.

    Rows come at once, so that a scanline never waits for a frame. Where only the whole frame gives
    the right answer, they are near to it until :meth:`frame` has been asked for, by any thread.
    """

    def __init__(
        self,
        picture: Picture,
        width: int,
        height: int,
        bits: Bits,
        fitted: FittedImage | None = None,
        levels: Levels3 | None = None,
    ) -> None:
        """Hold a picture, and of an image its pixels and the levels of the board."""
        self.picture, self.width, self.height, self.bits = picture, width, height, bits
        self._fitted, self._levels = fitted, levels
        self._frame: ByteArray | None = None

    @property
    def settled(self) -> bool:
        """Return whether rows are those of the frame."""
        if self._fitted is None or self._frame is not None:
            return True
        return self._fitted.settled and self.picture.dither is not Dither.DIFFUSED

    def row(self, row: int) -> NDArray[np.intp]:
        """Return the codes of a row, ``0 <= row < height``, shape (3, width). [1]"""
        return self.rows(np.array([row], np.intp))[:, 0].astype(np.intp)

    def rows(self, rows: IntArray) -> ByteArray:
        """Return the codes of some rows, shape (3, n_rows, width). [1]"""
        if self._frame is not None:
            return self._frame[:, rows]
        if self._fitted is None or self._levels is None:
            return card_rows(self.picture, self.width, self.height, self.bits, rows).astype(np.uint8)
        dither = self.picture.dither
        image_rows = rows // self.picture.repeat_lines
        codes = codes_from_image(
            self._fitted.best()[image_rows],
            self._levels,
            dither=_STAND_IN if dither is Dither.DIFFUSED else dither,
            measure=self.picture.measure,
            transfer=self.picture.transfer,
            rows=image_rows,
        )
        return np.repeat(codes, self.picture.repeat_pixels, axis=2)[:, :, : self.width]

    def frame(self) -> ByteArray:
        """Return the codes of all rows, shape (3, height, width); computed once. [1]"""
        if self._frame is None:
            codes = self._whole()
            codes.setflags(write=False)
            self._frame = codes
        return self._frame

    def wanted(self, column: int, row: int) -> tuple[int, int, int] | None:
        """Return the colour that an image asks for at a pixel, sRGB bytes; none of a card. [1]"""
        if self._fitted is None:
            return None
        pixel = self._fitted.best()[row // self.picture.repeat_lines, column // self.picture.repeat_pixels]
        red, green, blue = (int(byte) for byte in pixel)
        return red, green, blue

    def wanted_frame(self) -> ByteArray | None:
        """Return the colours that an image asks for, sRGB bytes, (height, width, 3); none of a card. [1]"""
        if self._fitted is None:
            return None
        return self._repeated(self._fitted.exact(), 0)

    def labels(self, row: int) -> tuple[Label, ...]:
        """Return what the areas of a row show, from left to right."""
        if self._fitted is not None and self.picture.image is not None:
            return (Label(0, self.width, self.picture.image.name),)
        return card_labels(self.picture, self.width, self.height, self.bits, row)

    def _whole(self) -> ByteArray:
        if self._fitted is None or self._levels is None:
            return card_codes(self.picture, self.width, self.height, self.bits)
        codes = codes_from_image(
            self._fitted.exact(),
            self._levels,
            dither=self.picture.dither,
            measure=self.picture.measure,
            transfer=self.picture.transfer,
        )
        return self._repeated(codes, 1)

    def _repeated(self, rows: ByteArray, axis: int) -> ByteArray:
        """Send columns and rows as often as they are to be; rows lie along an axis, columns after it."""
        for at, count in ((axis, self.picture.repeat_lines), (axis + 1, self.picture.repeat_pixels)):
            rows = np.repeat(rows, count, axis=at) if count > 1 else rows
        place = (slice(None),) * axis
        return np.ascontiguousarray(rows[(*place, slice(self.height), slice(self.width))])


def card_source(picture: Picture, width: int, height: int, bits: Bits) -> PictureCodes:
    """Return the codes of a picture's test card."""
    return PictureCodes(picture, width, height, bits)


def fitted_image(picture: Picture, width: int, height: int, pixels: ByteArray) -> FittedImage:
    """Return an image at the columns and rows that fill the active part."""
    return FittedImage(picture, width, height, pixels)


def image_source(
    picture: Picture, width: int, height: int, bits: Bits, fitted: FittedImage, levels: Levels3
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
    fitted : FittedImage
        See :func:`fitted_image`.
    levels : tuple of 3 float arrays
        Level of every code, loaded. [V]
    """
    return PictureCodes(picture, width, height, bits, fitted, levels)
