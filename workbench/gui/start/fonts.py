"""The two faces of the program, carried with it."""

from PySide6.QtGui import QFontDatabase

from workbench.files.assets import asset_path

__all__ = ["load_fonts"]

FILES = (
    "IBMPlexSans-Variable.ttf",
    "IBMPlexMono-Regular.ttf",
    "IBMPlexMono-Medium.ttf",
    "IBMPlexMono-SemiBold.ttf",
)


def load_fonts() -> None:
    """Make the faces known to Qt; where a file is missing, DejaVu stands in."""
    for name in FILES:
        path = asset_path(f"fonts/{name}")
        if path.exists():
            QFontDatabase.addApplicationFont(str(path))
