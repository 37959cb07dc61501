"""The two angles that go to the finding before and after."""

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Control
from workbench.gui.widgets.control import outlined

__all__ = ["StepButton"]


class StepButton(Control):
    """An angle to the left (the finding before) or to the right (the next one)."""

    def __init__(self, bench: Bench, text: str, *, forward: bool, parent: QWidget | None = None) -> None:
        super().__init__(bench, text, parent)
        self._forward = forward
        self.setToolTip(text)

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(24), self.bench.px(24))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self.bench.theme, self.bench.px
        centre, arm = QPointF(self.width() / 2, self.height() / 2), px(4)
        lean = arm / 2 if self._forward else -arm / 2
        path = QPainterPath(QPointF(centre.x() - lean, centre.y() - arm))
        path.lineTo(QPointF(centre.x() + lean, centre.y()))
        path.lineTo(QPointF(centre.x() - lean, centre.y() + arm))
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self.pointed:
                outlined(painter, QRectF(self.rect()), px(5), theme.mixed("panel", "accent", 0.14), None)
            ink = theme.color("text") if self.isEnabled() else theme.color("dim", 0.5)
            painter.strokePath(path, QPen(ink, 1.5))
