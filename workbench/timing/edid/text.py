"""EDID bytes as hex: read from a file's text, written for a terminal or for firmware."""

import re

from workbench.errors import TimingError

__all__ = ["MOST_CONTENT", "c_array", "edid_bytes", "hex_bytes", "hex_text"]

_MOST_BYTES = 256 * 128
"""A base block and at most 255 extensions of 128 bytes. [byte]"""
MOST_CONTENT = 8 * _MOST_BYTES
"""Longest file looked into: every byte written as hex, with room for what stands between. [byte]"""
_TEXT = frozenset(b"\t\n\v\f\r") | frozenset(range(0x20, 0x7F))
_OFFSET = re.compile(r"\s*(?:0x)?[0-9a-f]{4,8}:\s", re.IGNORECASE)
_C_ARRAY = re.compile(r"(?s)[^{}]*=\s*\{([^{}]*)\}\s*;?\s*")
_C_COMMENT = re.compile(r"(?s)/\*.*?\*/|//[^\n]*")
_HEX_WORD = re.compile(r"(?:0x)?([0-9a-f]+)h?", re.IGNORECASE)


def edid_bytes(content: bytes) -> bytes:
    """Return the EDID bytes of a file's content, which may be binary or hex text.

    Raises
    ------
    TimingError
        If the content is empty, far too long, or text that is not hex.
    """
    if not content:
        raise TimingError("The file is empty; an EDID base block has 128 bytes.")
    if len(content) > MOST_CONTENT:
        raise TimingError(
            f"The file has {len(content)} bytes; an EDID with all its extensions has at most {_MOST_BYTES}."
        )
    content = content.removeprefix(b"\xef\xbb\xbf")
    if _TEXT.issuperset(content):
        return hex_bytes(content.decode("ascii"))
    return content


def hex_bytes(text: str) -> bytes:
    """Read bytes written as hex, in words of whole bytes or single run-on lines.

    Spaces, commas, colons, braces, ``0x``, a dump's offsets (``0010:``) and lines that begin with
    ``#`` are passed over; of a C array only what stands between its braces is read.

    Raises
    ------
    TimingError
        If something else stands in the text, or half a byte is left over; the line is named.

    Examples
    --------
    >>> hex_bytes("00 ff, 0x1A").hex(" ")
    '00 ff 1a'
    >>> hex_bytes("const uint8_t own[2] = { 0x01, 0x02, };").hex(" ")
    '01 02'
    """
    if found := _C_ARRAY.fullmatch(_C_COMMENT.sub(_lines_of, text)):
        # What is left out keeps its lines, so that a complaint names the right one.
        text = "\n" * found.string.count("\n", 0, found.start(1)) + found[1]
    digits: list[str] = []
    for number, line in enumerate(text.splitlines(), 1):
        if not line.lstrip().startswith("#"):
            words = re.split(r"[\s,;:{}\-]+", _OFFSET.sub("", line, count=1))
            digits += [_word_digits(word, number) for word in words if word]
    if not digits:
        raise TimingError("The text holds no hex digits; an EDID base block has 256 of them.")
    return bytes.fromhex("".join(digits))


def _lines_of(found: re.Match[str]) -> str:
    return "\n" * found[0].count("\n")


def _word_digits(word: str, line: int) -> str:
    found = _HEX_WORD.fullmatch(word)
    if found is None:
        shown = word if len(word) <= 20 else word[:19] + "…"
        raise TimingError(
            f"Line {line} of the hex text has “{shown}”, which is no hex; two digits make a byte."
        )
    if len(found[1]) % 2:
        raise TimingError(
            f"Line {line} of the hex text has an odd number of digits in a row ({len(found[1])}); "
            "two digits make a byte, so one is missing or too many."
        )
    return found[1]


def hex_text(data: bytes, *, per_line: int = 16) -> str:
    """Return bytes as lines of hex.

    >>> hex_text(bytes(3))
    '00 00 00'
    """
    return "\n".join(data[at : at + per_line].hex(" ") for at in range(0, len(data), per_line))


def c_array(data: bytes, name: str) -> str:
    """Return bytes as a C array for firmware.

    >>> print(c_array(b"\\x01\\x02", "timing"))
    static const uint8_t timing[2] = {
        0x01, 0x02,
    };
    """
    lines = (data[at : at + 8] for at in range(0, len(data), 8))
    body = "\n".join("    " + " ".join(f"0x{byte:02x}," for byte in line) for line in lines)
    return f"static const uint8_t {name}[{len(data)}] = {{\n{body}\n}};"
