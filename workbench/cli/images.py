"""The pixels of a project's image, for commands that show it."""

from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from workbench.errors import FileError
from workbench.picture.images import image_pixels
from workbench.picture.scene import Image

__all__ = ["pixels"]


def pixels(image: Image, near: Path) -> NDArray[np.uint8]:
    """Return an image's pixels: out of the project, or out of its file, which Qt decodes.

    Raises
    ------
    FileError
        If they are missing, damaged, or cannot be decoded on this machine.
    """
    if image.content:
        return image_pixels(image)
    try:
        from workbench.gui.picture.references import read_referenced
    except ImportError as reason:
        raise FileError(
            f"{image.name} is kept in a file of its own, and Qt, which reads it, cannot start here "
            f"({reason}): install its libraries, or load a smaller image, which is kept in the project."
        ) from reason
    return read_referenced(image, near)
