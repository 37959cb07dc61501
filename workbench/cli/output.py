"""What a command prints and writes."""

import json
import math
import sys
from pathlib import Path

from workbench.cli.streams import silence, while_someone_reads

__all__ = ["print_bytes", "print_json", "print_note", "print_text", "same_file"]


def print_text(text: str) -> None:
    """Write text to the standard output, ending in one line break."""
    with while_someone_reads(sys.stdout):
        sys.stdout.write(text if text.endswith("\n") else f"{text}\n")


def print_json(value: object) -> None:
    """Write a value as JSON; a number that JSON does not have becomes ``null``."""
    plain = (sys.stdout.encoding or "").lower().replace("-", "") != "utf8"
    print_text(json.dumps(_finite(value), indent=2, ensure_ascii=plain, allow_nan=False))


def print_bytes(content: bytes) -> None:
    """Write a file's content to the standard output, as it is."""
    with while_someone_reads(sys.stdout):
        sys.stdout.flush()
        sys.stdout.buffer.write(content)


def print_note(sentence: str, *, of: str = "backporch") -> None:
    """Write one line to the standard error; where that cannot be written, nothing more can be said."""
    try:
        sys.stderr.write(f"{of}: {' '.join(sentence.split())}\n")
        sys.stderr.flush()
    except OSError:
        silence(sys.stderr)


def same_file(one: Path, other: Path) -> bool:
    """Return whether two paths are one file, whatever links lead there."""
    try:
        return one.samefile(other)
    except OSError:
        return False


def _finite(value: object) -> object:
    if isinstance(value, dict):
        return {key: _finite(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_finite(item) for item in value]
    return None if isinstance(value, float) and not math.isfinite(value) else value
