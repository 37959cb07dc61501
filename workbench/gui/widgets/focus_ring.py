"""The ring around what has the focus: 2 px of accent, 2.5 px outside."""

from collections.abc import Iterator

from PySide6.QtCore import QEvent, QObject, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QWidget
from shiboken6 import isValid

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import Control

__all__ = ["FocusRing"]

OUTSIDE = 5


class FocusRing(QWidget):
    """Lies over a window and follows the painted control that has the focus."""

    def __init__(self, bench: Bench, window: QWidget) -> None:
        super().__init__(window)
        self._bench = bench
        self._followed: QWidget | None = None
        self._watched: list[QWidget] = []
        """What has the focus, and everything that moves it along."""
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.hide()
        application = QApplication.instance()
        assert isinstance(application, QApplication)
        application.focusChanged.connect(self._on_focus)

    def _on_focus(self, _before: QWidget | None, now: QWidget | None) -> None:
        for widget in self._watched:
            if isValid(widget):
                widget.removeEventFilter(self)
        ringed = isinstance(now, Control) and now.window() is self.window()
        self._followed = now if ringed else None
        self._watched = list(self._upwards(self._followed))
        for widget in self._watched:
            widget.installEventFilter(self)
        self._place()

    def _upwards(self, widget: QWidget | None) -> Iterator[QWidget]:
        while widget is not None and widget is not self.window():
            yield widget
            widget = widget.parentWidget()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        moved = (QEvent.Type.Move, QEvent.Type.Resize, QEvent.Type.Hide, QEvent.Type.Show)
        if watched in self._watched and event.type() in moved:
            self._place()
        return False

    def _place(self) -> None:
        widget = self._followed
        if widget is None or not isValid(widget) or widget.visibleRegion().isEmpty():
            self.hide()
            return
        corner = widget.mapTo(self.window(), widget.rect().topLeft())
        around = widget.rect().translated(corner).adjusted(-OUTSIDE, -OUTSIDE, OUTSIDE, OUTSIDE)
        self.setGeometry(around)
        self.raise_()
        self.show()

    def paintEvent(self, _event: QPaintEvent) -> None:
        pen = QPen(self._bench.theme.color("accent"), 2.0)
        box = QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -1.5)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(pen)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(box, self._bench.px(5) + 2.5, self._bench.px(5) + 2.5)
