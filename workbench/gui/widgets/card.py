"""A card that floats over the bench under what opened it; Esc or a click outside closes it."""

from PySide6.QtCore import QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import outlined

__all__ = ["Card"]


class Card(QFrame):
    """Raised fill, outline, and one offset rectangle for a shadow; put widgets into ``column``."""

    closed = Signal()

    def __init__(self, bench: Bench, name: str, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Popup | Qt.WindowType.FramelessWindowHint)
        self.bench = bench
        self.setAccessibleName(name)
        self.setAttribute(Qt.WidgetAttribute.WA_TranslucentBackground)
        self.column = QVBoxLayout(self)
        px = bench.px
        self.column.setContentsMargins(px(16), px(14), px(16) + 3, px(14) + 5)
        self.column.setSpacing(px(10))

    def open_under(self, widget: QWidget, *, at_right: bool = False) -> None:
        """Show the card under a widget, kept inside the window."""
        self.adjustSize()
        window = widget.window()
        corner = widget.mapToGlobal(QPoint(0, widget.height() + self.bench.px(6)))
        if at_right:
            corner.setX(corner.x() + widget.width() - self.width())
        edge = window.mapToGlobal(QPoint(window.width() - self.width() - self.bench.px(8), 0))
        corner.setX(max(window.mapToGlobal(QPoint(8, 0)).x(), min(corner.x(), edge.x())))
        self.move(corner)
        self.show()

    def open_beside(self, widget: QWidget) -> None:
        """Show the card beside a widget: under a small one, in the corner of a large one."""
        if widget.height() < self.bench.px(60):
            self.open_under(widget)
            return
        self.adjustSize()
        px = self.bench.px
        self.move(widget.mapToGlobal(QPoint(px(24), px(24))))
        self.show()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self.bench.theme
        whole = QRectF(self.rect()).adjusted(0.5, 0.5, -3.5, -5.5)
        with QPainter(self) as painter:
            shade = theme.color("plot" if theme.dark else "outline", 0.55 if theme.dark else 0.35)
            outlined(painter, whole.translated(2, 4), self.bench.px(7), shade, None)
            outlined(
                painter, whole, self.bench.px(7), theme.color("raised"), QPen(theme.color("outline"), 1.1)
            )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.close()
            return
        super().keyPressEvent(event)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.closed.emit()
