"""A box that is ticked or not, with its words."""

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import Control, outlined
from workbench.gui.widgets.text import draw_text

__all__ = ["CheckBox"]

BOX = 15


class CheckBox(Control):
    """A check box in the house style; ``toggled`` tells as usual."""

    def __init__(
        self, bench: Bench, text: str, *, checked: bool = False, parent: QWidget | None = None
    ) -> None:
        super().__init__(bench, text, parent)
        self.setCheckable(True)
        self.setChecked(checked)

    def sizeHint(self) -> QSize:
        words = QFontMetricsF(self.bench.type.sans()).horizontalAdvance(self.text())
        return QSize(round(words) + self.bench.px(BOX + 12) + 1, self.bench.px(26))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self.bench.theme, self.bench.px
        size = px(BOX)
        box = QRectF(px(2), round((self.height() - size) / 2), size, size)
        ink = self.ink()
        with QPainter(self) as painter:
            if self.isChecked():
                outlined(painter, box, px(3), ink, None)
                pen = QPen(theme.color("panel"), 2 * size / BOX)
                painter.setPen(pen)
                painter.drawPolyline(tick(box))
            else:
                fill = theme.lit("plot") if self.pointed else theme.color("plot")
                outlined(painter, box, px(3), fill, QPen(theme.color("outline"), 1.3))
            words = QRectF(self.rect()).adjusted(size + px(9), 0, 0, 0)
            draw_text(painter, words, self.text(), self.bench.type.sans(), ink)


def tick(box: QRectF) -> QPolygonF:
    """Return the line of a tick inside a square box."""
    places = ((0.22, 0.52), (0.42, 0.72), (0.78, 0.28))
    return QPolygonF([QPointF(box.x() + x * box.width(), box.y() + y * box.height()) for x, y in places])
