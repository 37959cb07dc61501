"""The project file, version 1: UTF-8 JSON, one part a line, checked field by field.

``docs/reference/project-file.md`` describes it for people, ``project-file.schema.json`` beside
it for programs.
"""

from pathlib import Path
from typing import Any

import msgspec

from workbench.errors import FileError
from workbench.files.atomic import write_atomic
from workbench.files.json_text import json_text, parse_json
from workbench.files.reading import read_bytes
from workbench.files.shape import shape_flaw, unknown_key
from workbench.project.document import Project
from workbench.project.validity import first_flaw

__all__ = [
    "FORMAT",
    "MOST_BYTES",
    "SUFFIX",
    "VERSION",
    "content_of",
    "decode",
    "encode",
    "project_of",
    "read_project",
    "schema",
    "write_project",
]

FORMAT = "backporch-project"
VERSION = 1
SUFFIX = ".backporch"
MOST_BYTES = 1_000_000
"""A larger file is no project: the largest that can be made has some 100 kB. Our own bound. [1]"""


def read_project(path: Path) -> Project:
    """Return the project in a file.

    Raises
    ------
    FileError
        If the file cannot be read or is no whole and valid project; names the path and the place.
    """
    data = read_bytes(path, MOST_BYTES)
    try:
        return decode(data)
    except FileError as error:
        raise FileError(f"{path}: {error}") from error


def write_project(project: Project, path: Path) -> None:
    """Write a project to a file, whole or not at all.

    A file that is there already and is no readable project is never written over, because it
    may be a damaged one that can still be mended.

    Raises
    ------
    FileError
        If it cannot be written; what was there is untouched.
    """
    if path.exists() and _holds_something(path):
        try:
            read_project(path)
        except FileError as error:
            raise FileError(f"{error} (not overwritten: save under another name)") from error
    write_atomic(path, encode(project))


def encode(project: Project) -> bytes:
    """Return the content of a project file."""
    return (json_text(content_of(project)) + "\n").encode()


def content_of(project: Project) -> dict[str, Any]:
    """Return the content of a project file as plain values."""
    return {"format": FORMAT, "version": VERSION, **msgspec.to_builtins(project)}


def decode(data: bytes) -> Project:
    """Return the project in the content of a file.

    Raises
    ------
    FileError
        If it is no whole and valid project; names the place, not the path.
    """
    return project_of(parse_json(data))


def project_of(content: Any) -> Project:
    """Return the project in the plain values of a file; raises as :func:`decode`."""
    content = _body(content)
    if (stray := unknown_key(content, Project)) is not None:
        raise FileError(f"{stray} is not known in version {VERSION}: take it out, or correct its spelling")
    try:
        project = msgspec.convert(content, Project)
    except (msgspec.ValidationError, RecursionError) as error:
        raise FileError(shape_flaw(str(error))) from error
    if (flaw := first_flaw(project)) is not None:
        place, clause = flaw
        raise FileError(f"{place} {clause}")
    return project


def schema() -> dict[str, Any]:
    """Return the JSON Schema of the project file."""
    body = msgspec.json.schema(Project)
    definitions = body["$defs"]
    project = definitions["Project"]
    head = {"format": {"const": FORMAT}, "version": {"const": VERSION}}
    project["properties"] = head | project["properties"]
    project["required"] = ["format", "version", *project["required"]]
    for definition in definitions.values():
        if definition.get("type") == "object":
            definition["additionalProperties"] = False
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"Backporch project file, version {VERSION}",
        **body,
    }


def _body(content: Any) -> dict[str, Any]:
    """Check format and version, and return the rest."""
    if not isinstance(content, dict) or content.get("format") != FORMAT:
        raise FileError(f'this is no Backporch project: "format": "{FORMAT}" is missing; open another file')
    version = content.get("version")
    if type(version) is not int or version < 1:
        raise FileError(f"version is not a whole number from 1: a file of today has {VERSION}")
    if version > VERSION:
        raise FileError(
            f"the file has version {version}, and this program knows up to {VERSION}: take a newer program"
        )
    return {key: value for key, value in content.items() if key not in ("format", "version")}


def _holds_something(path: Path) -> bool:
    try:
        return path.stat().st_size > 0
    except OSError:
        return True
