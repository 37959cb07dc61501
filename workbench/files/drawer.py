"""The drawer as a table: one row for the resistors of one value, as CSV.

The first row names the columns: ``value``, and if wanted ``count``, ``tolerance`` and ``measured``, in any
order; comma, semicolon or tab separates (with the last two a comma may be a decimal comma).
A row that makes no sense is left out and told of; the others are kept.
"""

import csv
from pathlib import Path

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.errors import FileError, QuantityError
from workbench.files.reading import read_bytes
from workbench.units import parse_quantity

__all__ = ["parse_drawer", "read_drawer"]

_MOST_BYTES = 1_000_000
"""A larger file is no drawer. Our own bound. [1]"""
_MOST_COUNT = 1_000_000
_COLUMNS = ("value", "count", "tolerance", "measured")
_SEPARATORS = ";\t,"


def read_drawer(path: Path) -> tuple[Drawer, tuple[str, ...]]:
    """Return the drawer in a file, and a sentence for every row that was left out.

    Raises
    ------
    FileError
        If the file cannot be read, is no table with a column ``value``, or has no row that makes sense.
    """
    data = read_bytes(path, _MOST_BYTES)
    try:
        return parse_drawer(data.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        raise FileError(
            f"{path}: this is no UTF-8 text (byte {error.start}): save the table as UTF-8"
        ) from error
    except (FileError, csv.Error) as error:
        raise FileError(f"{path}: {error}") from error


def parse_drawer(text: str) -> tuple[Drawer, tuple[str, ...]]:
    """Return the drawer in a text; otherwise as :func:`read_drawer`."""
    lines = text.splitlines()
    head = next((line for line in lines if line.strip()), "")
    separator = next((mark for mark in _SEPARATORS if mark in head), ",")
    table = csv.reader(lines, delimiter=separator)
    columns: list[str] = []
    parts: list[OwnedPart] = []
    refused: list[str] = []
    for cells in table:
        row = [cell.strip() for cell in cells]
        if not any(row):
            continue
        if not columns:
            columns = _columns(row)
            continue
        try:
            parts.append(_part(dict(zip(columns, row, strict=False))))
        except QuantityError as error:
            refused.append(f"row {table.line_num} is left out: {error}")
    if not columns:
        _columns([])
    if not parts:
        raise FileError("no row of the table is a resistor" + (f": {refused[0]}" if refused else ""))
    return Drawer(tuple(parts)), tuple(refused)


def _columns(row: list[str]) -> list[str]:
    names = [name.lower() for name in row]
    stray = [name for name in names if name not in _COLUMNS]
    if "value" not in names or stray:
        wanted = ", ".join(_COLUMNS)
        raise FileError(
            f"the first row names the columns ({wanted}; value must be there), not “{','.join(row)[:60]}”"
        )
    return names


def _part(cells: dict[str, str]) -> OwnedPart:
    nominal = parse_quantity(cells["value"], "Ω")
    measured = cells.get("measured", "")
    tolerance = cells.get("tolerance", "")
    part = OwnedPart(
        ohms=parse_quantity(measured, "Ω") if measured else nominal,
        count=_count(cells.get("count", "")),
        nominal_ohms=nominal if measured else None,
    )
    if not tolerance:
        return part
    half_width = parse_quantity(tolerance, "%", zero=True)
    if half_width >= 1.0:
        raise QuantityError(f"a tolerance lies below 100 %, not {tolerance}")
    return OwnedPart(part.ohms, part.count, half_width, part.nominal_ohms)


def _count(text: str) -> int | None:
    """Read how many there are; nothing written is as many as wanted."""
    if not text:
        return None
    if not (text.isascii() and text.isdigit() and len(text) < 8 and 1 <= int(text) <= _MOST_COUNT):
        raise QuantityError(f"“{text[:20]}” is no count: write a whole number from 1, or nothing for many")
    return int(text)
