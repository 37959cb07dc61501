"""The mouse and the focus on the plot: what is clicked, dragged and pointed at, in seconds."""

import pyqtgraph as pg
from PySide6.QtCore import QEvent, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.cursors import Place
from workbench.gui.scanline.content.scales import TimeScale
from workbench.gui.scanline.lanes.cursor_lines import CursorLine
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.places import Places, arrange, spread

__all__ = ["PointingView"]

REACH = 8
"""A pointer this near a cursor's line takes it. [design px]"""


class PointingView(pg.GraphicsView):
    """A view whose cursors can be taken by the mouse; children draw what there is to point at."""

    carried = Signal(object, float)
    """A cursor is dragged: which :class:`Place`, to which time. [s]"""
    let_go = Signal()
    """The dragged cursor stays where it is."""
    pointed = Signal(object)
    """Time under the pointer, none when it is elsewhere. [s]"""

    cards: tuple[Overlay, ...] = ()
    """Cards under which nothing is pointed at."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent, background=None)
        self.bench = bench
        self.places: Places = arrange(960, 600, bench.px)
        self.lines = {
            Place.HERE: CursorLine(bench, "here", dashed=False),
            Place.THERE: CursorLine(bench, "there", dashed=True),
        }
        self._carried: Place | None = None
        self._by_key = False

    @property
    def time(self) -> TimeScale:
        """How the times in sight lie on the screen."""
        raise NotImplementedError

    @property
    def by_key(self) -> bool:
        """Whether the keys have the plot: it was reached by them, or they moved a cursor last."""
        return self._by_key and self.hasFocus()

    def take_keys(self) -> None:
        """Show that the keys move the cursor from now on."""
        if not self._by_key:
            self._by_key = True
            self.viewport().update()

    def part_tags(self) -> None:
        """Spread the names of the cursors, so that neither covers the other."""
        standing = {line: at for line in self.lines.values() if (at := line.stands_at) is not None}
        sizes = [line.tag_width + self.bench.px(2) for line in standing]
        wanted = list(standing.values())
        middles = spread(wanted, sizes, self.places.colour.left() - self.bench.px(30), self.width())
        for line, middle in zip(standing, middles, strict=True):
            line.name_at(middle)

    def cursor_at(self, x: float, y: float) -> Place | None:
        """Return the cursor under a place of the screen, the nearer of two."""
        if not self.places.strip.top() <= y <= self.places.sync.bottom():
            return None
        nearest = min(self.lines, key=lambda place: self.lines[place].distance(x))
        return nearest if self.lines[nearest].distance(x) <= self.bench.px(REACH) else None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._by_key = False
        if event.button() is Qt.MouseButton.LeftButton and not event.modifiers():
            place = event.position()
            self._carried = self.cursor_at(place.x(), place.y())
            if self._carried is not None:
                event.accept()
                return
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        x, y = event.position().x(), event.position().y()
        if self._carried is not None:
            lane = self.places.colour
            time_s = self.time.time_s(min(max(x, lane.left()), lane.right()))
            self.carried.emit(self._carried, time_s)
            self.pointed.emit(time_s)
            return
        over = QRectF(self.places.strip.topLeft(), self.places.sync.bottomRight()).contains(x, y)
        on_card = any(card.box.contains(x, y) for card in self.cards)
        free = over and not on_card and not event.buttons()
        self.pointed.emit(self.time.time_s(x) if free else None)
        near = free and self.cursor_at(x, y) is not None
        self.viewport().setCursor(Qt.CursorShape.SplitHCursor if near else Qt.CursorShape.ArrowCursor)
        super().mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._carried is not None:
            self._carried = None
            self.let_go.emit()
            return
        super().mouseReleaseEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        self.pointed.emit(None)
        super().leaveEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        # The panel has the keys: a graphics view would scroll with them.
        event.ignore()

    def focusInEvent(self, event: QFocusEvent) -> None:
        self._by_key = event.reason() in (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason)
        super().focusInEvent(event)
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self._by_key = False
        super().focusOutEvent(event)
        self.viewport().update()

    def drawForeground(self, painter: QPainter, _rect: QRectF) -> None:
        if self._by_key:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(self.bench.theme.color("accent"), 2))
            lanes = self.places.colour.united(self.places.sync)
            painter.drawRoundedRect(lanes.adjusted(-2.5, -2.5, 2.5, 2.5), 5, 5)
