"""What is painted over or under the plots, in pixels of the scene."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QGraphicsItem

from workbench.gui.bench import Bench

__all__ = ["Overlay", "draw_card"]


class Overlay(QGraphicsItem):
    """An item with a box in scene pixels; children say in ``draw`` what is in it."""

    def __init__(self, bench: Bench, z: float) -> None:
        super().__init__()
        self.bench = bench
        self._box = QRectF()
        self.setZValue(z)

    @property
    def box(self) -> QRectF:
        """Where the item lies."""
        return self._box

    def set_box(self, box: QRectF) -> None:
        """Move or resize the item."""
        if box != self._box:
            self.prepareGeometryChange()
            self._box = QRectF(box)
        self.update()

    def boundingRect(self) -> QRectF:
        return self._box

    def paint(self, painter: QPainter, *_: object) -> None:
        if not self._box.isEmpty():
            self.draw(painter)

    def draw(self, painter: QPainter) -> None:
        """Paint the item."""
        raise NotImplementedError


def draw_card(painter: QPainter, bench: Bench, box: QRectF) -> None:
    """Draw the ground of a floating card: raised, outlined, with one offset shadow."""
    theme, radius = bench.theme, bench.px(6)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(theme.color("panel", 0.0))
    shadow = theme.mixed("plot", "window", 0.0) if theme.dark else theme.color("text")
    shadow.setAlphaF(0.55 if theme.dark else 0.08)
    painter.setBrush(shadow)
    painter.drawRoundedRect(box.translated(bench.px(2), bench.px(4)), radius, radius)
    painter.setPen(theme.color("outline"))
    painter.setBrush(theme.color("raised"))
    painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), radius, radius)
