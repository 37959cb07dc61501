"""A card that floats over the bench under what opened it; Esc or a click outside closes it."""

from PySide6.QtCore import QEvent, QObject, QPoint, QRectF, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QPainter, QPaintEvent, QPen, QShowEvent
from PySide6.QtWidgets import QApplication, QFrame, QScrollArea, QVBoxLayout, QWidget
from shiboken6 import isValid

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import outlined
from workbench.gui.widgets.scrolled import scrolled

__all__ = ["Card"]

EDGE = 8
"""Least distance from the window's edges. [design px]"""
SHADOW = (2, 4)
"""Offset of the rectangle that stands for a shadow. [px]"""


class Card(QFrame):
    """Raised fill, outline, and one offset rectangle for a shadow; put widgets into ``column``.

    It is a child of the window and no window of its own, so that it looks the same without a
    compositing desktop. While it is open it keeps the keyboard to itself.
    """

    closed = Signal()

    def __init__(self, bench: Bench, name: str, window: QWidget) -> None:
        super().__init__(window)
        self.bench = bench
        self._window = window
        self._came_from: QWidget | None = None
        self._area: QScrollArea | None = None
        """What the content is scrolled in, where the window is too low for it."""
        self.first: QWidget = self
        """What gets the focus when the card opens."""
        self.hide()
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.column = QVBoxLayout(self)
        px = bench.px
        self.column.setContentsMargins(px(16), px(14), px(16) + SHADOW[0], px(14) + SHADOW[1])
        self.column.setSpacing(px(10))

    def open_under(self, widget: QWidget, *, at_right: bool = False) -> None:
        """Show the card under a widget, kept inside the window."""
        corner = widget.mapTo(self._window, QPoint(0, widget.height() + self.bench.px(6)))
        if at_right:
            corner.setX(corner.x() + widget.width() - self._size_for().x())
        self.open_at(corner)

    def open_beside(self, widget: QWidget) -> None:
        """Show the card under a small widget, or in the corner of a large one."""
        if widget.height() < self.bench.px(60):
            self.open_under(widget)
            return
        px = self.bench.px
        self.open_at(widget.mapTo(self._window, QPoint(px(24), px(24))))

    def _size_for(self) -> QPoint:
        self.adjustSize()
        return QPoint(self.width(), self.height())

    def fit(self, width: int, height: int) -> None:
        """Be no larger than the window has room for: what is more is scrolled. [px]"""
        size = self._size_for()
        if self._area is None and (size.y() > height or size.x() > width):
            content = QWidget()
            margins = self.column.contentsMargins()
            content.setLayout(self.column)
            content.setMinimumWidth(size.x() - SHADOW[0])
            self.column.setContentsMargins(margins.left(), margins.top(), margins.left(), margins.top())
            self._area = scrolled(content)
            self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
            outer = QVBoxLayout(self)
            outer.setContentsMargins(1, 2, SHADOW[0] + 2, SHADOW[1] + 2)
            outer.addWidget(self._area)
        if self._area is not None:
            # The bar, and what the layout leaves around the area.
            bar = self._area.verticalScrollBar().sizeHint().width() + 3 + SHADOW[0]
            self.setFixedSize(min(size.x() + bar, width), min(size.y(), height))

    def open_at(self, corner: QPoint) -> None:
        """Show the card with its corner at a place of the window, kept inside it."""
        edge = self.bench.px(EDGE)
        self.fit(self._window.width() - 2 * edge, self._window.height() - 2 * edge)
        self.move(corner)
        self.stay_inside()
        self._came_from = outside_of_cards(self._window.focusWidget())
        self.show()
        self.raise_()
        self.first.setFocus()

    def stay_inside(self) -> None:
        """Keep the card inside the window, also after it has grown."""
        edge, window = self.bench.px(EDGE), self._window
        right, foot = window.width() - self.width() - edge, window.height() - self.height() - edge
        self.move(max(edge, min(self.x(), right)), max(edge, min(self.y(), foot)))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Close on a press elsewhere in the window, and let it do nothing else."""
        if event.type() != QEvent.Type.MouseButtonPress or not isinstance(watched, QWidget):
            return False
        if watched.window() is not self._window or watched is self or self.isAncestorOf(watched):
            return False
        self.close()
        return True

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Let Tab go round inside the card."""
        chain = [w for w in self._chain() if w.isVisibleTo(self) and w.isEnabled()]
        focused = self._window.focusWidget()
        if not chain:
            return True
        at = chain.index(focused) if focused in chain else (-1 if forward else 0)
        there = chain[(at + (1 if forward else -1)) % len(chain)]
        there.setFocus(Qt.FocusReason.TabFocusReason if forward else Qt.FocusReason.BacktabFocusReason)
        if self._area is not None:
            self._area.ensureWidgetVisible(there)
        return True

    def _chain(self) -> list[QWidget]:
        """Return what Tab reaches, in order."""
        found, widget = [], self.nextInFocusChain()
        while widget is not None and widget is not self:
            if self.isAncestorOf(widget) and widget.focusPolicy() & Qt.FocusPolicy.TabFocus:
                found.append(widget)
            widget = widget.nextInFocusChain()
        return found

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self.bench.theme
        whole = QRectF(self.rect()).adjusted(0.5, 0.5, -SHADOW[0] - 0.5, -SHADOW[1] - 0.5)
        with QPainter(self) as painter:
            shade = theme.color("plot" if theme.dark else "outline", 0.55 if theme.dark else 0.35)
            outlined(painter, whole.translated(*SHADOW), self.bench.px(7), shade, None)
            outlined(
                painter, whole, self.bench.px(7), theme.color("raised"), QPen(theme.color("outline"), 1.1)
            )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.close()
            return
        event.accept()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        application = QApplication.instance()
        if application is not None:
            application.installEventFilter(self)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        application = QApplication.instance()
        if application is not None:
            application.removeEventFilter(self)
        back, self._came_from = self._came_from, None
        if back is not None and isValid(back) and back.isVisible():
            back.setFocus()
        self.closed.emit()


def outside_of_cards(widget: QWidget | None) -> QWidget | None:
    """Return a widget that the focus may go back to: none if it is on a card, which will be gone."""
    above = widget
    while above is not None:
        if isinstance(above, Card):
            return None
        above = above.parentWidget()
    return widget
