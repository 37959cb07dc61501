"""Recovery: copies of unsaved work, found again after a crash or a power cut.

The window writes a copy of its project a little after each change and removes it when the work
is saved or given up. A copy that is still there at the next start, and whose program is not
running any more, is offered.
"""

import hashlib
import os
import re
import secrets
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from workbench.errors import FileError
from workbench.files.atomic import write_atomic
from workbench.files.json_text import json_text, parse_json
from workbench.files.project_file import MOST_BYTES, content_of, project_of
from workbench.files.reading import read_bytes
from workbench.project.document import Project

__all__ = ["Copy", "Recovery", "leftover_copies"]

_FORMAT = "backporch-recovery"
_VERSION = 1
_NAME = re.compile(r"(?P<pid>\d+)-[0-9a-f]{8}\.recovery")
_DAMAGED = "damaged"


@dataclass(frozen=True, slots=True)
class Copy:
    """A copy left by a program that did not end well."""

    path: Path
    """The copy itself."""
    project: Project
    source: Path | None
    """The file the project came from; none if it was never saved."""
    source_changed: bool
    """Whether that file is another now than when the work on it began, or gone."""

    def remove(self) -> None:
        """Delete the copy, once its work is safe or not wanted."""
        with suppress(OSError):
            self.path.unlink(missing_ok=True)


class Recovery:
    """Keeps the recovery copy of one window."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._path = folder / f"{os.getpid()}-{secrets.token_hex(4)}.recovery"

    @property
    def path(self) -> Path:
        """Where the copy is, when there is one."""
        return self._path

    def write(self, project: Project, source: Path | None) -> None:
        """Write or renew the copy of a project that came from ``source``.

        Raises
        ------
        FileError
            If the folder cannot be made or the copy not be written.
        """
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise FileError(f"{self._folder}: no recovery copies can be kept here ({error})") from error
        content: dict[str, Any] = {
            "format": _FORMAT,
            "version": _VERSION,
            "source": None if source is None else str(source.absolute()),
            "source_sha256": _digest(source),
            "project": content_of(project),
        }
        write_atomic(self._path, (json_text(content) + "\n").encode())

    def remove(self) -> None:
        """Delete the copy: the work is saved, or given up."""
        with suppress(OSError):
            self._path.unlink(missing_ok=True)


def leftover_copies(folder: Path) -> tuple[Copy, ...]:
    """Return the copies of programs that are not running any more, newest first.

    A copy that cannot be read is moved to the folder ``damaged`` beside, not deleted.
    """
    found = [path for path in _listed(folder) if not _is_running(path)]
    copies = (_read(path) for path in sorted(found, key=_age, reverse=True))
    return tuple(copy for copy in copies if copy is not None)


def _read(path: Path) -> Copy | None:
    try:
        content = parse_json(read_bytes(path, 2 * MOST_BYTES))
        known = isinstance(content, dict) and content.get("format") == _FORMAT
        if not known or content.get("version") != _VERSION:
            raise FileError(f"{path}: this is no recovery copy of this version")
        source = Path(content["source"]) if isinstance(content.get("source"), str) else None
        project = project_of(content.get("project"))
    except FileError:
        _set_aside(path)
        return None
    return Copy(path, project, source, _digest(source) != content.get("source_sha256"))


def _set_aside(path: Path) -> None:
    with suppress(OSError):
        (path.parent / _DAMAGED).mkdir(exist_ok=True)
        path.replace(path.parent / _DAMAGED / path.name)


def _listed(folder: Path) -> list[Path]:
    try:
        return [path for path in folder.iterdir() if _NAME.fullmatch(path.name)]
    except OSError:
        return []


def _age(path: Path) -> float:
    try:
        return path.stat().st_mtime
    except OSError:
        return 0.0


def _is_running(path: Path) -> bool:
    """Return whether the program that wrote a copy still runs; on systems that cannot tell, no."""
    match = _NAME.fullmatch(path.name)
    if match is None or os.name != "posix":
        return False
    pid = int(match["pid"])
    try:
        os.kill(pid, 0)
    except (ProcessLookupError, OverflowError):
        return False
    except PermissionError:
        return True
    return True


def _digest(source: Path | None) -> str | None:
    """Return the SHA-256 of a file; none if there is none to read."""
    if source is None:
        return None
    try:
        return hashlib.sha256(read_bytes(source, 2 * MOST_BYTES)).hexdigest()
    except FileError:
        return None
