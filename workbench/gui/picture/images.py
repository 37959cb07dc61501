"""Pictures as Qt paints them, and which of a monitor's pictures is shown."""

from enum import Enum

import numpy as np
from numpy.typing import NDArray
from PySide6.QtGui import QImage

__all__ = ["Side", "picture_image"]


class Side(Enum):
    """Which picture is shown."""

    SENT = "as sent"
    SEEN = "as seen"
    APART = "difference"


def picture_image(rgb: NDArray[np.uint8]) -> QImage:
    """Return an image that owns its pixels, from sRGB bytes of shape (height, width, 3)."""
    height, width, _ = rgb.shape
    wide = np.full((height, width, 4), 255, np.uint8)
    wide[:, :, :3] = rgb
    return QImage(wide.data, width, height, 4 * width, QImage.Format.Format_RGBX8888).convertToFormat(
        QImage.Format.Format_RGB32
    )
