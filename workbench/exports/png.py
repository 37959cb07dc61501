"""A picture as PNG, written with the standard library alone.

References
----------
.. [1] W3C, Portable Network Graphics (PNG) Specification (Third Edition): chunks IHDR, sRGB, IDAT,
       IEND; filter type 0.
"""

import struct
import zlib

import numpy as np
from numpy.typing import NDArray

__all__ = ["png"]

_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_EIGHT_BITS, _RGB, _PERCEPTUAL = 8, 2, b"\x00"


def png(rgb: NDArray[np.uint8]) -> bytes:
    """Return a picture as a PNG file.

    Parameters
    ----------
    rgb : uint8 array, shape (height, width, 3)
        sRGB bytes, at least one pixel. [1]
    """
    height, width, _ = rgb.shape
    header = struct.pack(">IIBBBBB", width, height, _EIGHT_BITS, _RGB, 0, 0, 0)
    rows = np.zeros((height, 1 + 3 * width), np.uint8)  # each begins with its filter type, 0: none
    rows[:, 1:] = rgb.reshape(height, -1)
    packed = zlib.compress(rows.tobytes())
    chunks = (b"IHDR", header), (b"sRGB", _PERCEPTUAL), (b"IDAT", packed), (b"IEND", b"")
    return _SIGNATURE + b"".join(_chunk(name, data) for name, data in chunks)


def _chunk(name: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
