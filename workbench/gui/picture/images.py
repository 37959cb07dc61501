"""Pictures as Qt paints them, and which of a monitor's pictures is shown."""

from enum import Enum

import numpy as np
from numpy.typing import NDArray
from PySide6.QtGui import QImage

__all__ = ["ENLARGED", "Side", "enlarged", "picture_image"]

ENLARGED = 4
"""How many times a difference is shown, so that a faint ghost can be seen. [1]"""


class Side(Enum):
    """Which picture is shown."""

    SENT = "as sent"
    SEEN = "as seen"
    APART = "difference"


def enlarged(apart: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """Return a difference several times over, same shape. [1]"""
    return np.minimum(apart, 255 // ENLARGED) * ENLARGED


def picture_image(rgb: NDArray[np.uint8]) -> QImage:
    """Return an image that owns its pixels, from sRGB bytes of shape (height, width, 3)."""
    height, width, _ = rgb.shape
    wide = np.full((height, width, 4), 255, np.uint8)
    wide[:, :, :3] = rgb
    return QImage(wide.data, width, height, 4 * width, QImage.Format.Format_RGBX8888).convertToFormat(
        QImage.Format.Format_RGB32
    )
