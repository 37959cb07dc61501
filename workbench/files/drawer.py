"""The drawer as a table: one row for the resistors of one value, as CSV.

The first row may name the columns: ``value``, and if wanted ``count``, ``tolerance`` and ``measured``, in
any order; without names they stand in this order. Tab, semicolon or comma separates; with the first two
a comma may be a decimal comma. A row that makes no sense is left out and told of; the others are kept.
"""

import csv
import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.errors import EditError, FileError, QuantityError
from workbench.files.atomic import write_atomic
from workbench.files.reading import read_bytes
from workbench.project.limits import OHMS, TOLERANCE
from workbench.units import format_percent, parse_quantity

__all__ = [
    "COLUMNS",
    "MANY",
    "changed_part",
    "drawer_text",
    "parse_drawer",
    "parse_rows",
    "read_drawer",
    "write_drawer",
]

COLUMNS = ("value", "count", "tolerance", "measured")
MANY = "many"
"""What stands for as many as wanted in a count, as nothing does."""
MOST_ROWS = 1000
"""Rows of a drawer; the largest series has 960 values from 10 Ω to 1 MΩ. Our own bound. [1]"""
_MOST_BYTES = 1_000_000
"""A larger file is no drawer. Our own bound. [1]"""
_MOST_COUNT = 1_000_000
_SEPARATORS = "\t;,"
_PLUS_MINUS = re.compile(r"^(±|\+/?-)\s*")
"""What may stand before a tolerance; a minus alone is a slip."""
_DECIMAL_COMMA = re.compile(r"[0-9]+,[0-9]+\s*[^0-9\s,.].*")
"""A row such as ``4,7k``: a count has no letter, so its comma is a decimal comma."""


def read_drawer(path: Path) -> tuple[Drawer, tuple[str, ...]]:
    """Return the drawer in a file, and a sentence for every row that was left out.

    Raises
    ------
    FileError
        If the file cannot be read, is no table of resistors, or has no row that makes sense.
    """
    data = read_bytes(path, _MOST_BYTES)
    try:
        return parse_drawer(data.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        raise FileError(
            f"{path}: this is no UTF-8 text (byte {error.start}): save the table as UTF-8"
        ) from error
    except FileError as error:
        raise FileError(f"{path}: {error}") from error


def write_drawer(drawer: Drawer, path: Path) -> None:
    """Write a drawer to a file, whole or not at all.

    Raises
    ------
    FileError
        If it cannot be written; what was there is untouched.
    """
    write_atomic(path, drawer_text(drawer).encode())


def parse_drawer(text: str) -> tuple[Drawer, tuple[str, ...]]:
    """Return the drawer in a text that holds at least one resistor; otherwise as :func:`parse_rows`."""
    drawer, refused = parse_rows(text)
    if not drawer.parts:
        raise FileError("no row of the table is a resistor" + (f": {refused[0]}" if refused else ""))
    return drawer, refused


def parse_rows(text: str) -> tuple[Drawer, tuple[str, ...]]:
    """Return the resistors in a text, and a sentence for every row that was left out.

    Raises
    ------
    FileError
        If the first row names columns that a drawer does not have, or a quote is left open.
    """
    columns: Sequence[str] = ()
    parts: list[OwnedPart] = []
    refused: list[str] = []
    for number, row in _rows(text):
        if not columns:
            columns = _columns(row)
            if _names_columns(row):
                continue
        try:
            if len(parts) >= MOST_ROWS:
                raise QuantityError(f"a drawer has at most {MOST_ROWS} rows")
            parts.append(_part(dict(zip(columns, row, strict=False)), surplus=len(row) > len(columns)))
        except (QuantityError, EditError) as error:
            refused.append(f"row {number} is left out: {error}")
    return Drawer(tuple(parts)), tuple(refused)


def drawer_text(drawer: Drawer) -> str:
    """Return a drawer as a table that :func:`parse_drawer` reads back, values unrounded."""
    rows = [",".join(COLUMNS), *(",".join(_cells(part)) for part in drawer.parts)]
    return "\n".join(rows) + "\n"


def changed_part(part: OwnedPart | None, column: str, text: str) -> OwnedPart:
    """Return a row with another text typed into one of its cells.

    Parameters
    ----------
    part : OwnedPart or None
        The row; none for a new one, of which only the value can be typed first.
    column : str
        One of :data:`COLUMNS`.
    text : str
        What was typed; nothing stands for as many as wanted, for 1 %, and for not measured.

    Raises
    ------
    QuantityError
        If the text cannot be read.
    EditError
        If the value is out of its range.
    """
    if part is None and column != "value":
        raise QuantityError("type the value first: a row starts with its resistance, like 4k7")
    cells = {} if part is None else dict(zip(COLUMNS, _cells(part), strict=True))
    if part is not None and column == "value" and part.nominal_ohms is not None:
        return replace(part, nominal_ohms=_ohms(text))
    return _part({**cells, column: text.strip()})


def _rows(text: str) -> Iterator[tuple[int, list[str]]]:
    """Yield the rows that are not blank, with their numbers from 1."""
    lines = text.splitlines()
    head = next((line for line in lines if line.strip()), "")
    separator = next((mark for mark in _SEPARATORS if mark in head), ",")
    for number, line in enumerate(lines, 1):
        if separator == "," and _DECIMAL_COMMA.fullmatch(line.strip()):
            yield number, [line.strip()]
            continue
        try:
            cells = next(csv.reader([line], delimiter=separator, strict=True), [])
        except csv.Error as error:
            raise FileError(f"row {number} is no row of a table: {error}") from error
        row = [cell.strip() for cell in cells]
        if any(row):
            yield number, row


def _names_columns(row: Sequence[str]) -> bool:
    """Return whether a first row names columns; a single word that is no column is a row of nonsense."""
    names = not any(letter.isdigit() for letter in row[0])
    return names and (len(row) > 1 or row[0].lower() in COLUMNS)


def _columns(row: Sequence[str]) -> Sequence[str]:
    """Return the columns in their order: as the first row names them, or as usual."""
    if not _names_columns(row):
        return COLUMNS
    names = [name.lower() for name in row]
    if "value" not in names or any(name not in COLUMNS for name in names) or len(set(names)) < len(names):
        raise FileError(
            f"the first row names the columns ({', '.join(COLUMNS)}; value must be there), "
            f"not “{','.join(row)[:60]}”"
        )
    return names


def _part(cells: dict[str, str], *, surplus: bool = False) -> OwnedPart:
    if surplus:
        raise QuantityError(
            f"it has more than {len(cells)} cells: with decimal commas, separate by semicolons"
        )
    nominal = _ohms(cells.get("value", ""))
    measured = cells.get("measured", "")
    part = OwnedPart(
        ohms=_ohms(measured) if measured else nominal,
        count=_count(cells.get("count", "")),
        nominal_ohms=nominal if measured else None,
    )
    tolerance = cells.get("tolerance", "")
    if not tolerance:
        return part
    half_width = parse_quantity(_PLUS_MINUS.sub("", tolerance), "%", zero=True)
    return replace(part, tolerance=TOLERANCE.check(half_width, "this tolerance"))


def _ohms(text: str) -> float:
    return OHMS.check(parse_quantity(text, "Ω"), "this value")


def _count(text: str) -> int | None:
    """Read how many there are; nothing written is as many as wanted."""
    if text.lower() in ("", MANY):
        return None
    if not (text.isascii() and text.isdigit() and len(text) < 8 and 1 <= int(text) <= _MOST_COUNT):
        raise QuantityError(f"“{text[:20]}” is no count: write a whole number from 1, or “{MANY}”")
    return int(text)


def _cells(part: OwnedPart) -> tuple[str, str, str, str]:
    """Return a row's texts, in the order of :data:`COLUMNS`."""
    nominal = part.ohms if part.nominal_ohms is None else part.nominal_ohms
    return (
        f"{nominal!r}",
        "" if part.count is None else str(part.count),
        format_percent(part.tolerance, 6).replace(" ", ""),
        "" if part.nominal_ohms is None else f"{part.ohms!r}",
    )
