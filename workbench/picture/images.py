"""Images in a project: kept by content where small, by reference where large."""

import zlib

import numpy as np
from numpy.typing import NDArray

from workbench.errors import FileError
from workbench.picture.fit import check_size
from workbench.picture.scene import Image

__all__ = ["MOST_CONTENT", "image_pixels", "kept_image"]

ByteArray = NDArray[np.uint8]

MOST_CONTENT = 600_000
"""Bytes of the largest content kept in a project file; a larger image is kept by reference. Our own. [1]"""


def kept_image(name: str, rgb: ByteArray) -> Image | None:
    """Return an image kept by content; none where that would be too large.

    Parameters
    ----------
    name : str
        What it is called.
    rgb : uint8 array, shape (height, width, 3)
        sRGB bytes. [1]

    Raises
    ------
    FileError
        If it has no pixels, or too many.
    """
    height, width, _ = rgb.shape
    check_size(width, height, name)
    content = zlib.compress(np.ascontiguousarray(rgb).tobytes(), 9)
    return Image(name, width, height, content) if len(content) <= MOST_CONTENT else None


def image_pixels(image: Image) -> ByteArray:
    """Return the pixels of an image that is kept by content, shape (height, width, 3). [1]

    Raises
    ------
    FileError
        If it is kept by reference, or its content is damaged.
    """
    check_size(image.width, image.height, image.name)
    if not image.content:
        raise FileError(
            f"{image.name} is not in the project, only its place: {image.path}. Open it in the window."
        )
    wanted = 3 * image.width * image.height
    try:
        # Never more than was announced: a few bytes can be made to unpack to gigabytes.
        unpacked = zlib.decompressobj().decompress(image.content, wanted + 1)
    except zlib.error as error:
        raise FileError(f"{image.name} is damaged in the project file: load the image again.") from error
    if len(unpacked) != wanted:
        raise FileError(
            f"{image.name} is said to have {image.width} × {image.height} pixels, and its content has other "
            "ones: load the image again."
        )
    return np.frombuffer(unpacked, np.uint8).reshape(image.height, image.width, 3)
