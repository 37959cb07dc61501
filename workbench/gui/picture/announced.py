"""What the head of an image file says, read before any decoder looks at the file."""

import re
import struct

__all__ = ["announced_size", "moves"]

_PNG = b"\x89PNG\r\n\x1a\n"
_PNM = re.compile(rb"P[1-6]\s(?:\s*#[^\n]*\n)*\s*(\d{1,9})\s(?:\s*#[^\n]*\n)*\s*(\d{1,9})\s")
_HEAD = 4096
"""Bytes in which the size of a portable pixmap stands, comments included. Our own bound. [1]"""


def announced_size(data: bytes) -> tuple[int, int] | None:
    """Return the columns and rows that a PNG or a portable pixmap says it has; none of other files. [1]

    Examples
    --------
    >>> announced_size(b"P6 # ours\\n 640 480\\n255\\n")
    (640, 480)
    """
    if data.startswith(_PNG) and data[12:16] == b"IHDR" and len(data) >= 24:
        width, height = struct.unpack(">II", data[16:24])
        return width, height
    found = _PNM.match(data[:_HEAD])
    return None if found is None else (int(found[1]), int(found[2]))


def moves(data: bytes) -> bool:
    """Return whether a PNG has further frames: a chunk before its pixels says so."""
    if not data.startswith(_PNG):
        return False
    at = len(_PNG)
    while at + 8 <= len(data):
        length, kind = struct.unpack(">I4s", data[at : at + 8])
        if kind == b"acTL":
            return True
        if kind == b"IDAT":
            return False
        at += 12 + length
    return False
