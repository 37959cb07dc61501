"""What the program remembers about the person's choices: one typed table over one INI file.

A value that cannot be read falls back to its default and is logged, so a damaged file can never
keep the window from opening.
"""

import base64
import json
import logging
from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import Generic, TypeVar

from PySide6.QtCore import QObject, QSettings, QStandardPaths, Signal

from workbench.circuit.series import Series
from workbench.gui.theme import ThemeName

__all__ = [
    "BASE_POINTS",
    "BOARDS",
    "CHIP",
    "DASHED",
    "EDID",
    "EXPORT_FOLDER",
    "FAVOURITES",
    "OPEN_FOLDER",
    "PAGE",
    "PAGE_HEIGHT",
    "PICTURE_FOLDER",
    "PIN_LIMIT",
    "RECENT",
    "SEED",
    "SERIES",
    "SPLIT",
    "SYMBOLS",
    "TABLE",
    "THEME",
    "TOTAL_LIMIT",
    "WINDOW",
    "Setting",
    "Settings",
    "Symbols",
]

SCHEMA = 1
"""Version of the keys below; :data:`UPGRADES` leads here from every older one."""

UPGRADES: dict[int, Callable[[QSettings], None]] = {}
"""Step from the version that is the key to the next one."""

log = logging.getLogger(__name__)
T = TypeVar("T")


class Symbols(Enum):
    """How a resistor is drawn."""

    BOX = "box"
    """IEC 60617 symbol 04-01-01."""
    ZIGZAG = "zig-zag"


@dataclass(frozen=True, slots=True)
class Setting(Generic[T]):
    """One remembered choice: its key, its default and how it is written as text."""

    key: str
    default: T
    read: Callable[[str], T]
    """Returns the value of a text, or raises ValueError."""
    write: Callable[[T], str]


def flag(key: str, *, default: bool) -> Setting[bool]:
    """Return a setting that is on or off."""
    words = {"true": True, "false": False}

    def read(text: str) -> bool:
        if text not in words:
            raise ValueError(f"{text!r} is neither true nor false")
        return words[text]

    return Setting(key, default, read, lambda value: str(value).lower())


def choice(key: str, default: Enum) -> Setting:
    """Return a setting that is a member of an enum, kept by name."""
    kind = type(default)

    def read(text: str) -> Enum:
        if text not in kind.__members__:
            raise ValueError(f"{text!r} is none of {', '.join(kind.__members__)}")
        return kind[text]

    return Setting(key, default, read, lambda value: value.name)


def number(key: str, default: float, low: float, high: float) -> Setting[float]:
    """Return a setting that is a number of ``low … high``."""

    def read(text: str) -> float:
        value = float(text)
        if not low <= value <= high:
            raise ValueError(f"{text} is outside {low:g} … {high:g}")
        return value

    return Setting(key, default, read, repr)


def optional_number(key: str, low: float, high: float) -> Setting[float | None]:
    """Return a number that may be left out."""
    inner = number(key, low, low, high)
    return Setting(
        key, None, lambda text: inner.read(text) if text else None, lambda v: "" if v is None else repr(v)
    )


def texts(key: str) -> Setting[tuple[str, ...]]:
    """Return a setting that is a list of texts."""

    def read(text: str) -> tuple[str, ...]:
        items = json.loads(text)
        if not isinstance(items, list) or not all(isinstance(item, str) for item in items):
            raise ValueError("not a list of texts")
        return tuple(items)

    return Setting(key, (), read, lambda value: json.dumps(list(value)))


def text(key: str, default: str = "") -> Setting[str]:
    """Return a setting that is a text."""
    return Setting(key, default, str, str)


def blob(key: str) -> Setting[bytes]:
    """Return a setting that Qt packs for us, such as a window's geometry."""
    return Setting(
        key,
        b"",
        lambda value: base64.b64decode(value, validate=True),
        lambda value: base64.b64encode(value).decode(),
    )


THEME = choice("look/theme", ThemeName.DUSK)
SYMBOLS = choice("look/symbols", Symbols.BOX)
BASE_POINTS = number("look/base-points", 10.5, 8.0, 24.0)
"""Size of ordinary text. [pt]"""
DASHED = flag("look/dashed-traces", default=True)
"""Whether each trace has a dash of its own, so that colour never speaks alone."""
SERIES = choice("values/series", Series.E24)
"""Series of a new project."""
PIN_LIMIT = optional_number("values/pin-limit-amps", 0.0, 10.0)
"""What one pin may carry in a new project, the person's own entry. [A]"""
TOTAL_LIMIT = optional_number("values/total-limit-amps", 0.0, 10.0)
"""What all pins may carry in a new project, the person's own entry. [A]"""
WINDOW = blob("window/geometry")
SPLIT = number("window/network-share", 0.417, 0.2, 0.8)
"""Part of the width that the network takes. [1]"""
PAGE = text("window/page")
"""Name of the open page; empty while the pages are folded."""
PAGE_HEIGHT = number("window/page-share", 0.40, 0.2, 0.7)
"""Part of the bench's height that an open page takes. [1]"""
CHIP = texts("timing/chip")
"""What the person's chip can do to make a clock, as it was typed: for every project."""
EDID = text("timing/edid")
"""The EDID of the person's monitor in hex; empty for none."""
FAVOURITES = texts("timing/favourites")
"""The display modes the person marked, one a text."""
BOARDS = number("tolerance/boards", 100_000, 1, 10_000_000)
"""Boards drawn to judge tolerances. [1]"""
SEED = number("tolerance/seed", 1, 0, 1e12)
"""The same seed draws the same boards. [1]"""
RECENT = texts("files/recent")
OPEN_FOLDER = text("files/open-folder")
EXPORT_FOLDER = text("files/export-folder")
PICTURE_FOLDER = text("files/picture-folder")

TABLE: tuple[Setting, ...] = (
    THEME,
    SYMBOLS,
    BASE_POINTS,
    DASHED,
    SERIES,
    PIN_LIMIT,
    TOTAL_LIMIT,
    WINDOW,
    SPLIT,
    PAGE,
    PAGE_HEIGHT,
    CHIP,
    EDID,
    FAVOURITES,
    BOARDS,
    SEED,
    RECENT,
    OPEN_FOLDER,
    EXPORT_FOLDER,
    PICTURE_FOLDER,
)


class Settings(QObject):
    """Reads and keeps the values of the table in one INI file."""

    changed = Signal(object)
    """The :class:`Setting` whose value became another one."""

    def __init__(self, path: Path, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._store = QSettings(str(path), QSettings.Format.IniFormat)
        self._upgrade()

    @staticmethod
    def usual_path() -> Path:
        """Return where the file lies for the person who runs the program."""
        folder = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.GenericConfigLocation)
        return Path(folder) / "backporch" / "backporch.ini"

    def get(self, setting: Setting[T]) -> T:
        """Return a setting's value, its default where none is kept or it cannot be read."""
        raw = self._store.value(setting.key)
        if raw is None:
            return setting.default
        try:
            return setting.read(str(raw))
        except ValueError as reason:
            log.info("setting %s: %s; its default is used", setting.key, reason)
            return setting.default

    def keeps(self, setting: Setting[T]) -> bool:
        """Return whether the person has chosen a value."""
        return self._store.contains(setting.key)

    def set(self, setting: Setting[T], value: T) -> None:
        """Keep a value; tell who listens if it is another one."""
        if value == self.get(setting) and self._store.contains(setting.key):
            return
        before = self.get(setting)
        self._store.setValue(setting.key, setting.write(value))
        if value != before:
            self.changed.emit(setting)

    def flush(self) -> None:
        """Write the file now."""
        self._store.sync()

    def _upgrade(self) -> None:
        kept = str(self._store.value("schema", SCHEMA))
        version = int(kept) if kept.isdecimal() else SCHEMA
        while version < SCHEMA and version in UPGRADES:
            UPGRADES[version](self._store)
            version += 1
        self._store.setValue("schema", SCHEMA)
