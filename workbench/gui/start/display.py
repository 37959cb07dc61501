"""Whether a window can open here, asked before Qt is: Qt ends the process when it cannot."""

import ctypes
import os
import socket
import sys
from collections.abc import Iterator, Mapping, MutableMapping
from contextlib import contextmanager
from pathlib import Path

__all__ = ["choose_platform", "why_no_window"]

REMEDY = (
    "start it from a desktop session (or set DISPLAY or WAYLAND_DISPLAY), "
    "or use a command that needs no window: backporch report FILE"
)


def why_no_window(environment: Mapping[str, str] = os.environ, platform: str = sys.platform) -> str | None:
    """Return one sentence that says why no window can open; none if one can.

    Only Linux is asked: other systems always have their own display.
    """
    if not platform.startswith("linux"):
        return None
    wanted = environment.get("QT_QPA_PLATFORM", "")
    if wanted and not wanted.startswith(("xcb", "wayland")):
        return None
    if not (environment.get("DISPLAY") or environment.get("WAYLAND_DISPLAY")):
        return f"There is no display here, so no window can open: {REMEDY}."
    if _wayland_answers(environment) or _x_answers(environment):
        return _why_not_loaded(environment)
    name = environment.get("DISPLAY") or environment.get("WAYLAND_DISPLAY")
    return f"The display {name} does not answer, so no window can open: {REMEDY}."


def choose_platform(environment: MutableMapping[str, str] = os.environ, platform: str = sys.platform) -> None:
    """Point Qt at the display that answers, where only one of two does."""
    if not platform.startswith("linux") or environment.get("QT_QPA_PLATFORM"):
        return
    if not (environment.get("DISPLAY") or environment.get("WAYLAND_DISPLAY")):
        return
    wayland, x = _wayland_answers(environment), _x_answers(environment)
    if wayland != x:
        environment["QT_QPA_PLATFORM"] = "wayland" if wayland else "xcb"


def _wayland_answers(environment: Mapping[str, str]) -> bool:
    name = environment.get("WAYLAND_DISPLAY")
    if not name:
        return False
    path = Path(environment.get("XDG_RUNTIME_DIR", "/")) / name
    with socket.socket(socket.AF_UNIX, socket.SOCK_STREAM) as line:
        line.settimeout(2.0)
        try:
            line.connect(str(path))
        except OSError:
            return False
    return True


def _x_answers(environment: Mapping[str, str]) -> bool:
    """Open and close a connection with the X library, so that its access rules count too."""
    name = environment.get("DISPLAY")
    if not name:
        return False
    try:
        xcb = ctypes.CDLL("libxcb.so.1")
    except OSError:
        return False
    xcb.xcb_connect.restype = ctypes.c_void_p
    with _quiet():
        connection = ctypes.c_void_p(xcb.xcb_connect(name.encode(), None))
        broken = bool(xcb.xcb_connection_has_error(connection))
        xcb.xcb_disconnect(connection)
    return not broken


@contextmanager
def _quiet() -> Iterator[None]:
    """Keep what a C library writes to stderr away: our own sentence says it."""
    kept, nowhere = os.dup(2), os.open(os.devnull, os.O_WRONLY)
    try:
        os.dup2(nowhere, 2)
        yield
    finally:
        os.dup2(kept, 2)
        os.close(kept)
        os.close(nowhere)


def _why_not_loaded(environment: Mapping[str, str]) -> str | None:
    """Return which library Qt's X part lacks; a missing one would end the process without a word."""
    if _wayland_answers(environment):
        return None
    from PySide6 import __file__ as package

    part = Path(package).parent / "Qt" / "plugins" / "platforms" / "libqxcb.so"
    if not part.exists():
        return None
    try:
        ctypes.CDLL(str(part))
    except OSError as reason:
        missing = str(reason).partition(":")[0]
        return (
            f"The library {missing} is missing, so no window can open: install it (on Debian: "
            "apt install libxcb-cursor0 libxcb-icccm4 libxcb-keysyms1 libxkbcommon-x11-0 libxcb-shape0)."
        )
    return None
