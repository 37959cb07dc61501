"""Where the files lie that ship with the program: icons, fonts, demo projects."""

from pathlib import Path

from workbench.errors import FileError

__all__ = ["asset_path"]

_PACKAGE = Path(__file__).resolve().parent.parent
_ROOTS = (_PACKAGE / "assets", _PACKAGE.parent / "assets")
"""In an installed package; beside it in a checkout."""


def asset_path(name: str) -> Path:
    """Return the path of a shipped file or folder, such as ``projects/tide-board.backporch``.

    Raises
    ------
    FileError
        If there is no such file; then the installation is not whole.
    """
    for root in _ROOTS:
        path = root / name
        if path.exists():
            return path
    raise FileError(f"{_ROOTS[0] / name}: this file of the program is missing; install Backporch again")
