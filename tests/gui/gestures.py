"""Drags and drops, built by hand.

``qtbot.mouseMove`` carries no buttons, and the offscreen platform drops a move to the place it is at.
"""

from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

__all__ = ["drag", "drop_files", "hover_files"]


def drag(widget: QWidget, start: QPoint, *stops: QPoint, release: bool = True) -> None:
    """Press at a place, move by way of others with the button held, and let go at the last."""
    QTest.mousePress(widget, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    for stop in stops:
        move = QMouseEvent(
            QEvent.Type.MouseMove,
            QPointF(stop),
            QPointF(widget.mapToGlobal(stop)),
            Qt.MouseButton.NoButton,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        )
        QApplication.sendEvent(widget, move)
    if release:
        QTest.mouseRelease(
            widget, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, stops[-1] if stops else start
        )


def hover_files(widget: QWidget, *paths: str) -> bool:
    """Drag files into a widget; return whether it would take them."""
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(path) for path in paths])
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(QPoint(20, 20), Qt.DropAction.CopyAction, data, left, none)
    enter.ignore()
    QApplication.sendEvent(widget, enter)
    return enter.isAccepted()


def drop_files(widget: QWidget, *paths: str) -> bool:
    """Let files fall on a widget; return whether it takes them."""
    if not hover_files(widget, *paths):
        return False
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(path) for path in paths])
    place, action = QPoint(20, 20), Qt.DropAction.CopyAction
    left, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    drop = QDropEvent(QPointF(place), action, data, left, none)
    QApplication.sendEvent(widget, drop)
    return True
