"""Picture files of every kind, good and bad."""

import io
import struct
import zlib

import numpy as np
from PIL import Image


def packed(image: Image.Image, kind: str, **settings: object) -> bytes:
    """Return an image as the bytes of a file."""
    out = io.BytesIO()
    image.save(out, kind, **settings)
    return out.getvalue()


def slope(width: int = 40, height: int = 30) -> Image.Image:
    """Return a picture whose every corner is another colour."""
    y, x = np.mgrid[:height, :width]
    rgb = np.stack([x * 255 // max(1, width - 1), y * 255 // max(1, height - 1), 0 * x + 60], axis=-1)
    return Image.fromarray(rgb.astype(np.uint8))


def announced(width: int, height: int) -> bytes:
    """Return a PNG that says how large it is, and holds next to nothing."""

    def chunk(name: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    header = chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + header + chunk(b"IDAT", zlib.compress(b"\0")) + chunk(b"IEND", b"")
