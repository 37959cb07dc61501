"""The lines of the cursors, with their names between the lanes, and the faint one under the pointer."""

from math import inf

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.lanes.overlay import Overlay
from workbench.gui.scanline.lanes.places import Places, arrange
from workbench.gui.widgets import draw_text

__all__ = ["CursorLine", "PointerLine"]


class CursorLine(Overlay):
    """An upright line over both lanes; its name stands in the gap between them."""

    def __init__(self, bench: Bench, name: str, *, dashed: bool) -> None:
        super().__init__(bench, z=20)
        self.name = name
        self._dashed = dashed
        self._stands_at: float | None = None
        self._tag_middle = 0.0
        self._places = arrange(0, 0, bench.px)
        self._lit = False

    def stand(self, places: Places, x: float | None, *, lit: bool) -> None:
        """Stand at a place of the screen, or out of sight; ``lit`` if the keys move it."""
        if (places, x, lit) == (self._places, self._stands_at, self._lit):
            return
        self._places, self._stands_at, self._lit = places, x, lit
        if x is None:
            self.set_box(QRectF())
            return
        self._name_at(x, x)

    def name_at(self, middle: float) -> None:
        """Write the name around another place than the line's own. [px]"""
        if self._stands_at is not None and middle != self._tag_middle:
            self._name_at(middle, self._stands_at)

    def _name_at(self, middle: float, stands_at: float) -> None:
        self._tag_middle = middle
        edge = self.bench.px(2)
        left = min(stands_at, self.tag.left()) - edge
        right = max(stands_at, self.tag.right()) + edge
        top, bottom = self._places.strip.top(), self._places.sync.bottom()
        self.set_box(QRectF(left, top, right - left, bottom - top))

    @property
    def stands_at(self) -> float | None:
        """Where the line stands on the screen; none while it is out of sight. [px]"""
        return self._stands_at

    @property
    def tag_width(self) -> float:
        """Width of the name on its ground. [px]"""
        return self.bench.type.width(self.name, self._font) + self.bench.px(12)

    @property
    def tag(self) -> QRectF:
        """Where the name lies."""
        px, width = self.bench.px, self.tag_width
        middle = (self._places.colour.bottom() + self._places.sync.top()) / 2
        return QRectF(self._tag_middle - width / 2, middle - px(8), width, px(16))

    @property
    def _font(self) -> QFont:
        return self.bench.type.sans(0.86, 600)

    def distance(self, x: float) -> float:
        """Return how far a place of the screen is from the line; infinite while that is out of sight. [px]"""
        return inf if self._stands_at is None else abs(x - self._stands_at)

    def draw(self, painter: QPainter) -> None:
        if self._stands_at is None:
            return
        theme, px, places = self.bench.theme, self.bench.px, self._places
        pen = QPen(theme.color("text"), 1.2 * px(10) / 10)
        if self._dashed:
            pen.setDashPattern([5, 3])
        x = round(self._stands_at) + 0.5
        painter.setPen(pen)
        painter.drawLine(QPointF(x, places.colour.top()), QPointF(x, places.sync.bottom()))
        tag = self.tag
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.color("accent"), 2) if self._lit else Qt.PenStyle.NoPen)
        painter.setBrush(theme.color("text"))
        painter.drawRoundedRect(tag, px(3), px(3))
        centre = Qt.AlignmentFlag.AlignHCenter
        draw_text(painter, tag, self.name, self._font, theme.color("panel"), align=centre)


class PointerLine(Overlay):
    """A faint line under the pointer."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=15)

    def stand(self, places: Places, x: float | None) -> None:
        """Stand at a place of the screen, or nowhere."""
        if x is None:
            self.set_box(QRectF())
        else:
            top, bottom = places.strip.top(), places.sync.bottom()
            self.set_box(QRectF(round(x) - 1, top, 3, bottom - top))

    def draw(self, painter: QPainter) -> None:
        pen = QPen(self.bench.theme.color("outline"), 1)
        pen.setDashPattern([1, 3])
        painter.setPen(pen)
        x = self.box.center().x()
        painter.drawLine(QPointF(x, self.box.top()), QPointF(x, self.box.bottom()))
