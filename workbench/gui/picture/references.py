"""Images that a project keeps by reference: where their file is, and whether it is still the same."""

import hashlib
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from workbench.errors import FileError
from workbench.gui.picture.decode import decode_file
from workbench.picture.images import image_pixels
from workbench.picture.scene import Image

__all__ = ["digest", "place_of", "read_referenced"]

ByteArray = NDArray[np.uint8]


def digest(data: bytes) -> str:
    """Return the SHA-256 of a file's bytes, in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def read_referenced(image: Image, near: Path | None = None) -> ByteArray:
    """Return the pixels of an image, its file read and checked where it is kept by reference.

    Parameters
    ----------
    image : Image
    near : Path, optional
        The project's file: an image that is not where it was is looked for beside it.

    Raises
    ------
    FileError
        If the file is missing, is another one now, or cannot be read.
    """
    if image.content:
        return image_pixels(image)
    path = place_of(image, near)
    if not path.is_file():
        raise FileError(
            f"{image.name} is missing: it is not at {image.path}, nor beside the project. Put it back or "
            "load it again; the project still knows it."
        )
    data, decoded = decode_file(path)
    if digest(data) != image.sha256:
        raise FileError(
            f"{path} is another picture than the one this project was made with: load it again to take it, "
            "or put the old file back."
        )
    return decoded.rgb


def place_of(image: Image, near: Path | None = None) -> Path:
    """Return where an image's file is: where it was, or beside the project if it is there instead."""
    was = Path(image.path or image.name)
    beside = was if near is None else near.parent / was.name
    return beside if beside.is_file() and not was.is_file() else was
