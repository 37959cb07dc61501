"""JSON as this program writes it, and JSON as it reads it: strictly."""

import json
import math
import re
from typing import Any, NoReturn

from workbench.errors import FileError

__all__ = ["json_text", "parse_json", "plain_key"]

_WORDS = re.compile(r'"(?:[^"\\]|\\.)*"|(?P<bare>NaN|-?Infinity)')
"""Strings, to be passed over, and the constants that are JSON to Python alone."""
_LONGEST_KEY = 40
_MOST_DIGITS = 15
"""Whole numbers of so many digits are exact as floating-point numbers too. [1]"""


def json_text(value: Any, indent: int = 0) -> str:
    """Return JSON in which every item of a list of objects, and every other field, has a line.

    Keys keep their order and whole numbers have no point, so that two versions of a file differ
    in the lines of what was edited.
    """
    inner, outer = " " * (indent + 2), " " * indent
    if isinstance(value, dict) and value:
        lines = (f"{inner}{_scalar(key)}: {json_text(item, indent + 2)}" for key, item in value.items())
        return "{\n" + ",\n".join(lines) + f"\n{outer}}}"
    if isinstance(value, list | tuple) and value and isinstance(value[0], dict):
        return "[\n" + ",\n".join(f"{inner}{_line(item)}" for item in value) + f"\n{outer}]"
    return _line(value)


def parse_json(data: bytes) -> Any:
    """Return the value in a JSON text.

    Raises
    ------
    FileError
        If the text is empty, cut off, not UTF-8, not JSON, nested too deep, or has NaN, an
        infinity or a key twice; names the line where that can be said.
    """
    try:
        text = data.decode("utf-8-sig").rstrip()
        if not text:
            raise FileError("the file is empty; open another one, or a copy")
        if text.lstrip()[0] not in "{[":
            raise FileError("this is no project: a project's file begins with a brace; open another file")
        return json.loads(
            text,
            object_pairs_hook=_unique,
            parse_constant=lambda name: _no_constant(name, text),
            parse_int=_whole_number,
        )
    except UnicodeDecodeError as error:
        raise FileError(f"byte {error.start} is not UTF-8 text; open another file, or a copy") from error
    except json.JSONDecodeError as error:
        end = error.pos >= len(error.doc) or error.msg.startswith("Unterminated")
        what = "the file is cut off" if end else f"the JSON is damaged ({error.msg})"
        raise FileError(f"{what} at line {error.lineno}, column {error.colno}; open a whole copy") from error
    except RecursionError as error:
        raise FileError("the JSON is nested too deep to be a project; open another file") from error


def _line(value: Any) -> str:
    if isinstance(value, dict):
        return "{" + ", ".join(f"{_scalar(key)}: {_line(item)}" for key, item in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(map(_line, value)) + "]"
    return _scalar(value)


def _scalar(value: Any) -> str:
    if isinstance(value, float) and value.is_integer() and math.fabs(value) < 1e15:
        value = int(value)
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def plain_key(key: str) -> str:
    """Return a key as it can stand in a sentence: one line, not too long."""
    shown = key if len(key) <= _LONGEST_KEY else f"{key[:_LONGEST_KEY]}…"
    return "".join(letter if letter.isprintable() else "?" for letter in shown)


def _unique(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key, value in pairs:
        if key in found:
            raise FileError(f'the key "{plain_key(key)}" stands twice in one object; take one out')
        found[key] = value
    return found


def _no_constant(name: str, text: str) -> NoReturn:
    place = next(found for found in _WORDS.finditer(text) if found["bare"])
    line = text.count("\n", 0, place.start()) + 1
    raise FileError(f"{name} stands where a number is needed, at line {line}; write the value")


def _whole_number(digits: str) -> int:
    if len(digits) > _MOST_DIGITS:
        raise FileError(f"a whole number has {len(digits)} digits, too many for any value here; correct it")
    return int(digits)
