"""A picture that is only a guess, marked so that nobody takes it for what a monitor shows."""

import numpy as np
from numpy.typing import NDArray

from workbench.picture.light import LUMINANCE_WEIGHTS

__all__ = ["hatched"]

ByteArray = NDArray[np.uint8]

_STRIPE = 12
"""Width of a stripe. Our own. [px]"""
_LEFT, _ADDED = 0.4, 70
"""What is left of the picture, and what a stripe adds: black and white are striped alike. Our own."""


def hatched(rgb: ByteArray, *, every: int = 1) -> ByteArray:
    """Return a picture in dim greys under slanting stripes, same shape.

    Parameters
    ----------
    rgb : uint8 array, shape (height, width, 3)
        sRGB bytes. [1]
    every : int
        Each n-th column and row is there, for a preview, ``1 <= every``. [1]
    """
    height, width, _ = rgb.shape
    grey = (rgb @ (_LEFT * np.asarray(LUMINANCE_WEIGHTS))).astype(np.uint8)
    along = (np.arange(width) + np.arange(height)[:, None]) * every // _STRIPE
    grey[along % 2 == 1] += _ADDED
    return np.repeat(grey[:, :, None], 3, axis=2)
