"""The view box of a lane: time can be zoomed and moved, volts cannot."""

import pyqtgraph as pg
from PySide6.QtCore import Qt, Signal

__all__ = ["TimeBox"]


class TimeBox(pg.ViewBox):
    """Wheel zooms time about the pointer, Shift and wheel or a drag moves it; clicks are told."""

    clicked = Signal(float, object)
    """A click: place on the time axis in its own unit, keyboard modifiers."""
    reset = Signal()
    """A double click."""

    def __init__(self) -> None:
        super().__init__(enableMenu=False)
        self.setMouseEnabled(x=True, y=False)
        self.disableAutoRange()
        self.setDefaultPadding(0)

    def wheelEvent(self, event, axis=None) -> None:
        sideways = event.orientation() == Qt.Orientation.Horizontal
        if sideways or event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            first, last = self.viewRange()[0]
            self.translateBy(x=-event.delta() / 1200 * (last - first))
        else:
            factor = 1.25 ** (-event.delta() / 120)
            where = self.mapSceneToView(event.scenePos())
            self.scaleBy((factor, 1.0), center=where)
        self.sigRangeChangedManually.emit([True, False])
        event.accept()

    def mouseClickEvent(self, event) -> None:
        if event.button() != Qt.MouseButton.LeftButton:
            event.ignore()
            return
        event.accept()
        if event.double():
            self.reset.emit()
        else:
            self.clicked.emit(self.mapSceneToView(event.scenePos()).x(), event.modifiers())

    def mouseDragEvent(self, event, axis=None) -> None:
        if event.button() in (Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton):
            event.accept()
            moved = self.mapToView(event.pos()) - self.mapToView(event.lastPos())
            self.translateBy(x=-moved.x())
            self.sigRangeChangedManually.emit([True, False])
        else:
            event.ignore()

    def keyPressEvent(self, event) -> None:
        event.ignore()
