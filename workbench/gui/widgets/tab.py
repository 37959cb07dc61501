"""The tab of a page: lit from above while its page is open."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import Control, outlined
from workbench.gui.widgets.text import draw_text

__all__ = ["Tab"]


class Tab(Control):
    """Opens a page, or folds it when it is open."""

    def __init__(self, bench: Bench, text: str, parent: QWidget | None = None) -> None:
        super().__init__(bench, text, parent)
        self.setCheckable(True)

    def sizeHint(self) -> QSize:
        width = self.metrics.horizontalAdvance(self.text()) + self.bench.px(36)
        return QSize(round(width), self.bench.px(38))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(self.rect())
        chosen = self.isChecked()
        with QPainter(self) as painter:
            if chosen:
                painter.fillRect(box, theme.color("panel"))
                bar = QRectF(px(9), 0, box.width() - px(18), px(3))
                outlined(painter, bar, px(1.5), theme.color("accent"), None)
            elif self.pointed:
                painter.fillRect(box, theme.lit("window"))
            ink = theme.color("text" if chosen or self.pointed else "dim")
            font = type_.sans(1.0, 600 if chosen else 400)
            draw_text(painter, box, self.text(), font, ink, align=Qt.AlignmentFlag.AlignHCenter)
