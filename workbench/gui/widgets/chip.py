"""A channel's chip: a sample of its trace, with its dashes, and its name."""

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import Control, outlined
from workbench.gui.widgets.dashes import trace_pen
from workbench.gui.widgets.text import draw_text
from workbench.project.document import Channel

__all__ = ["Chip"]

SAMPLE = 24


class Chip(Control):
    """Chooses the channel that is drawn; checkable, one of three."""

    def __init__(self, bench: Bench, channel: Channel, parent: QWidget | None = None) -> None:
        super().__init__(bench, channel.value, parent)
        self.channel = channel
        self.setCheckable(True)
        self.setAutoExclusive(True)

    def sizeHint(self) -> QSize:
        return QSize(
            round(self.metrics.horizontalAdvance(self.text())) + self.bench.px(12 + SAMPLE + 8 + 14),
            self.bench.px(26),
        )

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            if self.isChecked():
                line = QPen(theme.color("outline"), 1.1)
                outlined(painter, box, box.height() / 2, theme.color("raised"), line)
            elif self.pointed:
                outlined(painter, box, box.height() / 2, theme.lit("panel"), None)
            painter.setPen(trace_pen(self.bench, self.channel))
            middle = box.center().y()
            painter.drawLine(QPointF(px(12), middle), QPointF(px(12 + SAMPLE), middle))
            words = box.adjusted(px(12 + SAMPLE + 8), 0, 0, 0)
            chosen = self.isChecked()
            ink = theme.color("text" if chosen or self.pointed else "dim")
            draw_text(painter, words, self.text(), type_.sans(1.0, 600 if chosen else 400), ink)
