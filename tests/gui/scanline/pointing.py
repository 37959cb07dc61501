"""Clicks on the plot, by time."""

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

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


def turn_wheel(panel: ScanlinePanel, place: QPoint, angle: int) -> None:
    """Turn the wheel over a place of the plot; 120 is one notch away from the person."""
    viewport = panel.plot.viewport()
    event = QWheelEvent(
        QPointF(place),
        QPointF(viewport.mapToGlobal(place)),
        QPoint(),
        QPoint(0, angle),
        Qt.MouseButton.NoButton,
        NONE,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(viewport, event)
