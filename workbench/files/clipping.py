"""Parts on the clipboard: JSON in the shapes of the project file, checked as strictly."""

from typing import Any

import msgspec

from workbench.errors import EditError, FileError
from workbench.files.json_text import json_text, parse_json
from workbench.files.shape import shape_flaw, unknown_key
from workbench.project.edits.clippings import Clipping
from workbench.project.limits import FARADS, MOST_PARTS, OHMS, TOLERANCE, WATTS, check_name

__all__ = ["MIME", "clipping_text", "read_clipping"]

MIME = "application/vnd.backporch.parts+json"
"""How the clipboard tells parts from other text."""
FORMAT = "backporch-parts"
VERSION = 1


def clipping_text(clipping: Clipping) -> str:
    """Return parts as JSON, one a line."""
    return json_text({"format": FORMAT, "version": VERSION, **msgspec.to_builtins(clipping)}) + "\n"


def read_clipping(text: str) -> Clipping:
    """Return the parts in a JSON text.

    Raises
    ------
    FileError
        If it holds no parts, is damaged, or a value is out of its range; names the place.
    """
    content = _body(text)
    if (stray := unknown_key(content, Clipping)) is not None:
        raise FileError(f"{stray} is not known among copied parts: take it out, or correct its spelling")
    try:
        clipping = msgspec.convert(content, Clipping)
    except (msgspec.ValidationError, RecursionError) as error:
        raise FileError(shape_flaw(str(error))) from error
    try:
        _check(clipping)
    except EditError as error:
        raise FileError(str(error)) from error
    return clipping


def _body(text: str) -> dict[str, Any]:
    if not text.lstrip().startswith("{"):
        raise FileError("the clipboard holds no parts: copy some in a network first")
    content = parse_json(text.encode())
    if not isinstance(content, dict) or content.get("format") != FORMAT:
        raise FileError(f'the clipboard holds no parts ("format": "{FORMAT}" is missing): copy some first')
    if content.get("version") != VERSION:
        raise FileError(f"the copied parts have another version than {VERSION}: copy them with this program")
    return {key: value for key, value in content.items() if key not in ("format", "version")}


def _check(clipping: Clipping) -> None:
    if len(clipping.parts) > MOST_PARTS:
        raise EditError(f"a channel has at most {MOST_PARTS} parts: copy fewer")
    names = [*clipping.pins, clipping.output]
    for part in clipping.parts:
        check_name(part.id, "a part's name")
        names += [part.a, part.b]
    for name in names:
        check_name(name, "a node's name")
    for resistor in clipping.resistors:
        OHMS.check(resistor.ohms, resistor.id)
        TOLERANCE.check(resistor.tolerance, f"{resistor.id}’s tolerance")
        WATTS.check(resistor.rating_watts, f"{resistor.id}’s rating")
    for capacitor in clipping.capacitors:
        FARADS.check(capacitor.farads, capacitor.id)
