"""Clicks on the plot, by time."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from workbench.gui.scanline import ScanlinePanel

NONE, SHIFT, CTRL = (
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.ControlModifier,
)


def place_of(panel: ScanlinePanel, time_s: float) -> QPoint:
    """Return where a time lies in the middle of the colour lane."""
    return QPoint(round(panel.plot.time.x(time_s)), round(panel.plot.places.colour.center().y()))


def click(panel: ScanlinePanel, time_s: float, keys: Qt.KeyboardModifier = NONE) -> None:
    QTest.mouseClick(panel.plot.viewport(), Qt.MouseButton.LeftButton, keys, place_of(panel, time_s))


def seen(panel: ScanlinePanel) -> tuple[float, float]:
    """Return the first and last count in sight."""
    time, shown = panel.plot.time, panel.plot.shown
    return time.first_s / shown.count_s, time.last_s / shown.count_s
