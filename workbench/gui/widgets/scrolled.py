"""A part of a page that is scrolled to what has no room."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

__all__ = ["scrolled"]


def scrolled(panel: QWidget) -> QScrollArea:
    """Return a panel that scrolls up and down and never sideways; it takes no focus of its own."""
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setWidget(panel)
    area.viewport().setAutoFillBackground(False)
    panel.setAutoFillBackground(False)
    return area
