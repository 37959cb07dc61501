"""The program as it starts: in a process of its own."""

import os
import subprocess
import sys

import pytest

from workbench.files.assets import asset_path

START = """
import sys
from pathlib import Path
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from workbench.gui.app import run_window

def look():
    window = next(w for w in QApplication.topLevelWidgets() if w.isVisible())
    print(window.windowTitle().replace("[*]", ""))
    print("scipy" if "scipy" in sys.modules else "no scipy")
    window.close()

single_shot = QTimer.singleShot
def soon():
    if QApplication.instance() is not None:
        pass
from workbench.gui.start import program
make = program.make_application
def made(arguments):
    application = make(arguments)
    single_shot(0, look)
    return application
program.make_application = made
sys.exit(run_window(Path(sys.argv[1]) if len(sys.argv) > 1 else None))
"""


def start(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", START, *arguments],
        capture_output=True,
        text=True,
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen"},
        timeout=60,
        check=False,
    )


def test_first_start_shows_the_demo_and_loads_no_scipy() -> None:
    done = start()

    assert done.returncode == 0, done.stderr
    assert done.stdout.splitlines() == ["Tide board · Backporch", "no scipy"]


def test_file_of_the_command_line_is_opened() -> None:
    done = start(str(asset_path("projects/sign-3-3-2.backporch")))

    assert done.returncode == 0, done.stderr
    assert "Tide board" not in done.stdout


@pytest.mark.parametrize("module", ["scipy", "workbench.circuit.sizing_by_scipy"])
def test_window_imports_without(module) -> None:
    script = f"import sys; import workbench.gui.start.program; sys.exit({module!r} in sys.modules)"

    assert subprocess.run([sys.executable, "-c", script], timeout=60, check=False).returncode == 0
