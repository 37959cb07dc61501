"""Transfer tables as text: the values that black to white become, one after another."""

import re
from pathlib import Path

from workbench.errors import FileError
from workbench.files.reading import read_bytes
from workbench.picture.scene import MOST_TRANSFER

__all__ = ["read_transfer", "transfer_values"]

_MOST_BYTES = 100_000
_BYTE = 255.0
_APART = re.compile(r"[\s,;]+")
_COMMENT = re.compile(r"#.*")


def read_transfer(path: Path) -> tuple[float, ...]:
    """Return the table in a text file, as :func:`transfer_values` does.

    Raises
    ------
    FileError
        If the file cannot be read or holds no table; it names the file and the place.
    """
    text = read_bytes(path, _MOST_BYTES).decode("utf-8-sig", errors="replace")
    try:
        return transfer_values(text)
    except FileError as error:
        raise FileError(f"{path}: {error}") from error


def transfer_values(text: str) -> tuple[float, ...]:
    """Return the values of a table from 0 to 1. [1]

    Parameters
    ----------
    text : str
        2 to 256 numbers with spaces, commas, semicolons or new lines between them, for inputs evenly
        spaced from black to white; a ``#`` starts a comment. All from 0 to 1, or, if one is above 1, all
        from 0 to 255.

    Raises
    ------
    FileError
        If there are too few or too many, or one is no number or out of range.
    """
    values = [
        _number(word, line)
        for line, row in enumerate(text.splitlines(), start=1)
        for word in _APART.split(_COMMENT.sub("", row))
        if word
    ]
    if not 2 <= len(values) <= MOST_TRANSFER:
        raise FileError(f"a transfer table has 2 to {MOST_TRANSFER} values, here are {len(values)}")
    whole = 1.0 if max(values) <= 1.0 else _BYTE
    return tuple(value / whole for value in values)


def _number(word: str, line: int) -> float:
    try:
        value = float(word)
    except ValueError as error:
        raise FileError(f"line {line}: “{word[:20]}” is no number; write numbers as 0.25 or 64") from error
    if not 0.0 <= value <= _BYTE:
        raise FileError(
            f"line {line}: {word[:20]} is out of range; write values from 0 to 1 or from 0 to 255"
        )
    return value
