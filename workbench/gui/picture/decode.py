"""Image files to pixels: Qt reads them, their size is checked before they are decoded."""

from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QColorSpace, QImage, QImageIOHandler, QImageReader

from workbench.errors import FileError
from workbench.files.reading import read_bytes
from workbench.gui.picture.announced import announced_size, moves
from workbench.picture.fit import MOST_PIXELS, check_size, over_black

__all__ = [
    "MOST_FILE_BYTES",
    "Decoded",
    "decode",
    "decode_file",
    "file_filter",
    "pixels_of",
    "readable_suffixes",
]

ByteArray = NDArray[np.uint8]

MOST_FILE_BYTES = 300_000_000
"""A larger file is not read. Our own bound. [1]"""
_MEGABYTE = 1 << 20
_DEEPEST = 8
"""Bytes of a pixel while Qt decodes it, at most: four colours of 16 bits. [1]"""
_DEEP = {
    QImage.Format.Format_Grayscale16,
    QImage.Format.Format_RGBX64,
    QImage.Format.Format_RGBA64,
    QImage.Format.Format_RGBA64_Premultiplied,
    QImage.Format.Format_RGB30,
    QImage.Format.Format_BGR30,
}
_ENDS = {b"jpeg": b"\xff\xd9", b"png": b"IEND"}
"""What stands at the end of a whole file; Qt shows half a picture without a word."""


@dataclass(frozen=True, slots=True, eq=False)
class Decoded:
    """An image as it is used: eight bits a colour, upright, on black."""

    rgb: ByteArray
    """sRGB bytes, shape (height, width, 3). [1]"""
    remarks: tuple[str, ...] = ()
    """What was changed to get there, one sentence each."""


def readable_suffixes() -> tuple[str, ...]:
    """Return the suffixes of the files that can be read, with the dot."""
    return tuple(sorted(f".{bytes(kind.data()).decode()}" for kind in QImageReader.supportedImageFormats()))


def file_filter() -> str:
    """Return the filter of the file dialog."""
    return f"Pictures ({' '.join('*' + suffix for suffix in readable_suffixes())})"


def decode_file(path: Path) -> tuple[bytes, Decoded]:
    """Return a file's bytes and its pixels.

    Raises
    ------
    FileError
        If it cannot be read, or is no whole picture of a bearable size; names the path.
    """
    data = read_bytes(path, MOST_FILE_BYTES)
    return data, decode(data, str(path))


def decode(data: bytes, name: str) -> Decoded:
    """Return the pixels of a picture file's bytes; raises as :func:`decode_file`."""
    if not data:
        raise FileError(f"{name}: the file is empty; choose another one.")
    size = announced_size(data)
    if size is not None:
        check_size(*size, name)
    packed = QByteArray(data)
    buffer = QBuffer(packed)
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    QImageReader.setAllocationLimit(MOST_PIXELS * _DEEPEST // _MEGABYTE + 1)
    reader = QImageReader(buffer)
    reader.setDecideFormatFromContent(True)
    reader.setAutoTransform(True)
    if not reader.canRead():
        raise FileError(f"{name} is no picture that can be read here; choose a PNG, JPEG, BMP or PPM file.")
    found = reader.size()
    if found.isValid() or found.width() == 0 or found.height() == 0:
        check_size(found.width(), found.height(), name)
    kind = bytes(reader.format().data())
    if kind in _ENDS and _ENDS[kind] not in data[-4096:]:
        raise FileError(f"{name} is cut off: its end is missing. Take a whole copy of it.")
    many = moves(data) or (reader.supportsAnimation() and reader.imageCount() != 1)
    turned = reader.transformation() != QImageIOHandler.Transformation.TransformationNone
    image = reader.read()
    if image.isNull():
        raise FileError(f"{name} is damaged ({reader.errorString()}); take a whole copy of it.")
    decoded = pixels_of(image, name)
    remarks = (
        *(("It moves; its first frame is shown.",) if many else ()),
        *(("It was turned as the camera held it.",) if turned else ()),
        *decoded.remarks,
    )
    return Decoded(decoded.rgb, remarks)


def pixels_of(image: QImage, name: str) -> Decoded:
    """Return the pixels of an image that Qt holds, such as one from the clipboard."""
    check_size(image.width(), image.height(), name)
    remarks = []
    if image.format() in _DEEP:
        remarks.append("Its colours were brought from 16 bits to 8.")
    if image.format() == QImage.Format.Format_CMYK8888:
        remarks.append("Its printing inks (CMYK) were brought to red, green and blue.")
    image = _in_srgb(image)
    if image.hasAlphaChannel():
        remarks.append("What is transparent stands on black.")
        return Decoded(over_black(_bytes(image, QImage.Format.Format_RGBA8888, 4)), tuple(remarks))
    return Decoded(_bytes(image, QImage.Format.Format_RGB888, 3), tuple(remarks))


def _in_srgb(image: QImage) -> QImage:
    """Bring an image with a colour profile of its own to sRGB."""
    srgb = QColorSpace(QColorSpace.NamedColorSpace.SRgb)
    space = image.colorSpace()
    if not space.isValid() or space == srgb or image.format() == QImage.Format.Format_CMYK8888:
        return image
    converted = image.convertedToColorSpace(srgb)
    return image if converted.isNull() else converted


def _bytes(image: QImage, form: QImage.Format, depth: int) -> ByteArray:
    image = image.convertToFormat(form)
    rows = np.frombuffer(image.constBits(), np.uint8, image.sizeInBytes()).reshape(image.height(), -1)
    return rows[:, : image.width() * depth].reshape(image.height(), image.width(), depth).copy()
