"""Our own icons: SVG files of one weight, inked from the theme and drawn sharp at any size."""

from functools import lru_cache

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QIcon, QPainter
from PySide6.QtSvg import QSvgRenderer

from workbench.files.assets import asset_path
from workbench.gui.theme import Theme

__all__ = ["draw_icon", "window_icon"]


def draw_icon(painter: QPainter, name: str, box: QRectF, ink: QColor, theme: Theme) -> None:
    """Draw an icon into a box, its lines in ``ink`` and its lamp in the accent."""
    _renderer(name, ink.name(QColor.NameFormat.HexRgb), theme.accent).render(painter, box)


def window_icon() -> QIcon:
    """Return the program's icon for title bars and task lists."""
    return QIcon(str(asset_path("icons/backporch.svg")))


@lru_cache(maxsize=64)
def _renderer(name: str, ink: str, lamp: str) -> QSvgRenderer:
    source = asset_path(f"icons/{name}.svg").read_text(encoding="utf-8")
    inked = source.replace("var(--lamp, currentColor)", lamp).replace("currentColor", ink)
    return QSvgRenderer(inked.encode())
