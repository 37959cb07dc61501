"""Where and how the shape of a file's content differs from the document's, in words."""

import re
from dataclasses import fields, is_dataclass
from typing import Any, get_args, get_type_hints

from workbench.files.json_text import plain_key

__all__ = ["shape_flaw", "unknown_key"]

_WORDS = {
    "float": "a number",
    "int": "a whole number",
    "str": "a text",
    "bool": "true or false",
    "object": "an object in { }",
    "array": "a list in [ ]",
    "null": "null",
}
_AT = re.compile(r"^(?P<what>.*?)(?: - at `\$?\.?(?P<place>.*?)`)?$", re.DOTALL)
_TYPE = re.compile(r"Expected (?P<wanted>.*?), got (?P<found>.*)")
_LENGTH = re.compile(r"Expected `array` of length (?P<wanted>\d+)(?:, got (?P<found>\d+))?")
_FIELD = re.compile(r"Object missing required field `(?P<field>.*?)`")
_CHOICE = re.compile(r"Invalid enum value (?P<value>.*)")


def shape_flaw(message: str) -> str:
    """Return the validator's message as a sentence that starts with the place."""
    found = _AT.match(message)
    what = found["what"] if found else message
    place = (found and found["place"]) or "the file"
    if match := _FIELD.match(what):
        return f'{place} has no "{match["field"]}": add it'
    if match := _LENGTH.match(what):
        return f"{place} must have {match['wanted']} items: add or take out some"
    if match := _CHOICE.match(what):
        return f"{place} is {match['value']}, which is no value it can have: see the file's description"
    if match := _TYPE.match(what):
        return f"{place} must be {_worded(match['wanted'])}, not {_worded(match['found'])}: correct it"
    return f"{place} is not as it must be ({what}): correct it"


def unknown_key(content: Any, kind: Any, place: str = "") -> str | None:
    """Return the place of the first key that a type's fields do not have; none if all are known."""
    if is_dataclass(kind) and isinstance(content, dict):
        types = get_type_hints(kind)
        known = {field.name for field in fields(kind)}
        for key, value in content.items():
            where = f"{place}.{plain_key(key)}".lstrip(".")
            stray = where if key not in known else unknown_key(value, types[key], where)
            if stray is not None:
                return stray
    elif isinstance(content, list):
        kinds = get_args(kind)
        for index, item in enumerate(content):
            stray = unknown_key(item, kinds[0], f"{place}[{index}]") if kinds else None
            if stray is not None:
                return stray
    elif isinstance(content, dict):
        inner = (unknown_key(content, each, place) for each in get_args(kind) if is_dataclass(each))
        return next((stray for stray in inner if stray is not None), None)
    return None


def _worded(types: str) -> str:
    return " or ".join(_WORDS.get(name.strip(" `"), name.strip(" `")) for name in types.split("|"))
