"""For every test: no display, a home of its own, and the engine's own log kept quiet."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

os.environ["QT_QPA_PLATFORM"] = "offscreen"
os.environ["QT_NO_GUI_THREADPOOL"] = "1"
os.environ.setdefault("QT_SCALE_FACTOR", "1")


@pytest.fixture(autouse=True)
def own_home(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Keep settings, recovery copies and logs of the person who runs the tests out of reach."""
    home = tmp_path_factory.mktemp("home")
    monkeypatch.setenv("HOME", str(home))
    for name, folder in (
        ("XDG_CONFIG_HOME", ".config"),
        ("XDG_DATA_HOME", ".local/share"),
        ("XDG_STATE_HOME", ".local/state"),
        ("XDG_CACHE_HOME", ".cache"),
    ):
        monkeypatch.setenv(name, str(home / folder))
    return home


@pytest.fixture(autouse=True)
def no_stray_warning(caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """Fail a test that makes the program log a warning it did not expect."""
    yield
    stray = [
        record.getMessage()
        for when in ("setup", "call")
        for record in caplog.get_records(when)
        if record.name.startswith("workbench") and record.levelname in ("WARNING", "ERROR", "CRITICAL")
    ]
    assert not stray, f"logged without being expected: {stray}"
