"""The tints of the regions of line and frame: porches warm, sync in its trace's colour."""

from PySide6.QtGui import QColor

from workbench.gui.theme import Theme
from workbench.project.document import Direction
from workbench.timing.mode import Region

__all__ = ["region_tint"]

_PORCH, _SYNC = 0.24, 0.22
"""How much of the colour lies on the plot's ground; twice the plot's own, as these areas are small."""


def region_tint(theme: Theme, region: Region, direction: Direction) -> QColor:
    """Return the colour of a region's area."""
    if region is Region.SYNC:
        return theme.mixed("plot", "h_sync" if direction is Direction.HORIZONTAL else "v_sync", _SYNC)
    if region is Region.ACTIVE:
        return theme.color("raised")
    return theme.mixed("plot", "accent", _PORCH)
