"""The picture stage: from what a project shows to the codes of its pixels."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from workbench.circuit.solution import Levels
from workbench.errors import FileError
from workbench.picture.cards import Bits
from workbench.picture.images import image_pixels
from workbench.picture.scene import Dither, Image, Measure, Picture
from workbench.picture.source import FittedImage, PictureCodes, card_source, fitted_image, image_source
from workbench.pipeline.memory import Memory
from workbench.timing.mode import Mode

__all__ = ["Pictures"]

ByteArray = NDArray[np.uint8]
ThreeLevels = tuple[Levels, Levels, Levels]

_FRAMES_KEPT = 3
"""Whole frames of codes that are remembered: of now, of before, and one to spare. [1]"""


class Pictures:
    """Turns pictures into codes; an image is scaled once and dithered anew when levels change."""

    def __init__(self, pixels: Callable[[Image], ByteArray] = image_pixels) -> None:
        self._card = Memory(card_source, _FRAMES_KEPT)
        self._fitted = Memory(_Fitting(pixels), _FRAMES_KEPT)
        self._image = Memory(_image, _FRAMES_KEPT)

    def codes(
        self, picture: Picture, mode: Mode, bits: Bits, levels: ThreeLevels
    ) -> tuple[PictureCodes, str | None]:
        """Return the codes of a picture, and why its test card stands in for its image, if it does."""
        width, height = mode.h.active, mode.v.active
        if picture.image is None:
            return self._card(picture, width, height, bits), None
        try:
            fitted = self._fitted(picture.image, _fitting(picture), width, height)
        except FileError as error:
            return self._card(picture, width, height, bits), str(error)
        return self._image(picture, width, height, bits, fitted, *levels), None

    def forget(self) -> None:
        """Ask for the pixels of images anew: their files may be others now, or gone."""
        self._fitted.forget()


def _fitting(picture: Picture) -> Picture:
    """Return a picture without what does not matter for its size."""
    return replace(picture, dither=Dither.NEAREST, measure=Measure.VOLTS, transfer=(), blanking=(0, 0, 0))


class _Fitting:
    """Reads an image and brings it to size."""

    def __init__(self, pixels: Callable[[Image], ByteArray]) -> None:
        self._pixels = pixels

    def __call__(self, image: Image, picture: Picture, width: int, height: int) -> FittedImage:
        return fitted_image(picture, width, height, self._pixels(image))


def _image(
    picture: Picture,
    width: int,
    height: int,
    bits: Bits,
    fitted: FittedImage,
    red: Levels,
    green: Levels,
    blue: Levels,
) -> PictureCodes:
    levels = red.volts_by_code, green.volts_by_code, blue.volts_by_code
    return image_source(picture, width, height, bits, fitted, levels)
