"""The typed table of settings over an INI file."""

from pathlib import Path

import pytest

from workbench.circuit.series import Series
from workbench.gui import settings as table
from workbench.gui.settings import TABLE, Setting, Settings
from workbench.gui.theme import ThemeName

VALUES = {
    table.THEME: ThemeName.PAPER,
    table.BASE_POINTS: 14.0,
    table.DASHED: False,
    table.SERIES: Series.E96,
    table.PIN_LIMIT: 0.008,
    table.RECENT: ("/a/ü.backporch", "/b, c;d.backporch"),
    table.WINDOW: b"\x00\xff\n=",
    table.PAGE: "levels",
    table.CHIP: ("12M", "16..320", "", "é"),
    table.EDID: "00 ff ff",
    table.FAVOURITES: ('["640x480@60", 1, true]',),
}


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "own" / "backporch.ini"


def raw(path: Path, setting: Setting, text: str) -> None:
    """Write a text under a setting's key as a person with an editor would."""
    group, key = setting.key.split("/")
    path.parent.mkdir(exist_ok=True)
    path.write_text(f"[{group}]\n{key}={text}\n", encoding="utf-8")


@pytest.mark.parametrize("setting", VALUES, ids=lambda setting: setting.key)
def test_value_is_there_next_time(path: Path, setting: Setting) -> None:
    first = Settings(path)
    first.set(setting, VALUES[setting])
    first.flush()

    assert Settings(path).get(setting) == VALUES[setting]


def test_limit_can_be_taken_back(path: Path) -> None:
    settings = Settings(path)
    settings.set(table.PIN_LIMIT, 0.02)

    settings.set(table.PIN_LIMIT, None)

    assert settings.get(table.PIN_LIMIT) is None


@pytest.mark.parametrize("setting", TABLE, ids=lambda setting: setting.key)
def test_default_holds_in_an_empty_file(path: Path, setting: Setting) -> None:
    assert Settings(path).get(setting) == setting.default


@pytest.mark.parametrize(
    ("setting", "text"),
    [
        (table.THEME, "MAUVE"),
        (table.BASE_POINTS, "900"),
        (table.BASE_POINTS, "nan"),
        (table.DASHED, "perhaps"),
        (table.RECENT, "{"),
        (table.WINDOW, "ä"),
        (table.SPLIT, ""),
    ],
)
def test_damaged_value_falls_back_to_its_default(path: Path, setting: Setting, text: str) -> None:
    raw(path, setting, text)

    assert Settings(path).get(setting) == setting.default


def test_file_that_is_no_settings_file_opens(path: Path) -> None:
    path.parent.mkdir()
    path.write_bytes(b"\x00\x01[[[[\xff\xfe")

    assert Settings(path).get(table.THEME) is ThemeName.DUSK


def test_change_is_told_once(path: Path, qtbot: object) -> None:
    settings = Settings(path)
    told: list[Setting] = []
    settings.changed.connect(told.append)

    settings.set(table.THEME, ThemeName.PAPER)
    settings.set(table.THEME, ThemeName.PAPER)

    assert told == [table.THEME]


def test_keys_stand_once() -> None:
    keys = [setting.key for setting in TABLE]

    assert len(set(keys)) == len(keys)
