"""The standard output and the standard error: for any text, closed by the shell, or left by their reader."""

import codecs
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import TextIO

__all__ = ["open_streams", "silence", "while_someone_reads"]

_ESCAPED = "backporch-escaped"
"""Name of the way in which a stream shows what its encoding does not have."""
_RAW_BYTES = range(0xDC80, 0xDD00)
"""Code points in which Python keeps the bytes of a file name that it could not decode (PEP 383)."""


def open_streams() -> None:
    """Make both streams fit for any text, and for a shell that closed them.

    A closed one becomes the null device, so that a command does its work and keeps its exit code. A
    terminal without Ω gets an escape in its place.
    """
    codecs.register_error(_ESCAPED, _escape)
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:
            nowhere = os.open(os.devnull, os.O_WRONLY)
            setattr(sys, name, os.fdopen(nowhere, "w", encoding="utf-8", closefd=False))
        reconfigure = getattr(getattr(sys, name), "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors=_ESCAPED)


@contextmanager
def while_someone_reads(stream: TextIO) -> Iterator[None]:
    """Flush a stream at the end; what a reader that has gone, as ``head`` does, would have got is dropped.

    Raises
    ------
    OSError
        If the stream cannot be written for another reason, as on a full disk.
    """
    try:
        yield
        stream.flush()
    except BrokenPipeError:
        silence(stream)
    except OSError:
        silence(stream)
        raise


def silence(stream: TextIO) -> None:
    """Let a stream that cannot be written end at the null device, so that nothing more fails."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


def _escape(error: UnicodeError) -> tuple[bytes, int]:
    """Return what stands for characters that an encoding does not have.

    The bytes of a file name go out as they came in, for the terminal that typed them can show them;
    but as escapes to one that reads UTF-8, since UTF-8 they are not.
    """
    if not isinstance(error, UnicodeEncodeError):
        raise error
    raw = error.encoding.lower().replace("-", "") != "utf8"
    shown = (_escaped(char, raw=raw) for char in error.object[error.start : error.end])
    return b"".join(shown), error.end


def _escaped(char: str, *, raw: bool) -> bytes:
    if ord(char) not in _RAW_BYTES:
        return char.encode("ascii", "backslashreplace")
    byte = char.encode("ascii", "surrogateescape")
    return byte if raw else f"\\x{byte[0]:02x}".encode()
