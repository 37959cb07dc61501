"""Whether a window can open is found out before Qt is asked."""

import os
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from workbench.gui.start.display import choose_platform, why_no_window

linux = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="only Linux may lack a display")


def bare_environment(**extra: str) -> dict[str, str]:
    """Return the environment of a machine without a desktop."""
    kept = {k: v for k, v in os.environ.items() if not k.startswith(("QT_", "DISPLAY", "WAYLAND", "XDG_"))}
    return kept | extra


def test_other_systems_are_not_asked() -> None:
    assert why_no_window({}, "win32") is None
    assert why_no_window({}, "darwin") is None


@pytest.mark.parametrize("platform", ["offscreen", "minimal", "vnc:size=800x600"])
def test_platform_without_a_display_needs_none(platform: str) -> None:
    assert why_no_window({"QT_QPA_PLATFORM": platform}, "linux") is None


def test_no_display_is_said_with_what_to_do() -> None:
    reason = why_no_window({}, "linux")

    assert reason is not None
    assert reason.startswith("There is no display here")
    assert "backporch report FILE" in reason


@linux
@pytest.mark.parametrize("name", ["DISPLAY", "WAYLAND_DISPLAY"])
def test_display_that_does_not_answer_is_named(name: str, tmp_path: Path) -> None:
    reason = why_no_window({name: ":4711", "XDG_RUNTIME_DIR": str(tmp_path)}, "linux")

    assert reason is not None
    assert "The display :4711 does not answer" in reason


@linux
def test_display_that_answers_is_chosen_over_one_that_does_not(tmp_path: Path) -> None:
    with socket.socket(socket.AF_UNIX, socket.SOCK_STREAM) as server:
        server.bind(str(tmp_path / "wayland-9"))
        server.listen()
        environment = {"WAYLAND_DISPLAY": "wayland-9", "XDG_RUNTIME_DIR": str(tmp_path), "DISPLAY": ":4711"}

        choose_platform(environment, "linux")

    assert environment["QT_QPA_PLATFORM"] == "wayland"


@linux
@pytest.mark.parametrize("extra", [{}, {"DISPLAY": ":4711"}, {"QT_QPA_PLATFORM": "xcb"}], ids=str)
def test_program_ends_with_one_sentence_and_no_core_dump(extra: dict[str, str]) -> None:
    script = "import sys; from workbench.gui.app import run_window; sys.exit(run_window())"

    done = subprocess.run(
        [sys.executable, "-c", script],
        capture_output=True,
        text=True,
        env=bare_environment(**extra),
        timeout=60,
        check=False,
    )

    assert done.returncode == 2
    assert done.stdout == ""
    assert done.stderr.count("\n") == 1
    assert done.stderr.startswith("backporch: ")
