"""One line of words that ends in … where there is no room, told whole in its tip."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Control, draw_text

__all__ = ["Sentence"]


class Sentence(Control):
    """The headline of a finding; a click chooses the part it is about."""

    def __init__(self, bench: Bench, *, size: float, weight: int, parent: QWidget | None = None) -> None:
        super().__init__(bench, "", parent)
        self._size, self._weight = size, weight

    def say(self, text: str, *, about_parts: bool) -> None:
        """Show another sentence; one about parts can be clicked."""
        if text != self.text():
            self.setText(text)
            self.setToolTip(text)
        self.setEnabled(about_parts)
        self.update()

    def set_size(self, size: float, weight: int) -> None:
        """Take another size and weight."""
        self._size, self._weight = size, weight
        self.update()

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(self.bench.type.sans(self._size, self._weight))
        return QSize(round(metrics.horizontalAdvance(self.text())) + 2, round(metrics.height() * 1.2))

    def paintEvent(self, _event: QPaintEvent) -> None:
        font = self.bench.type.sans(self._size, self._weight)
        ink = self.bench.theme.color("text")
        with QPainter(self) as painter:
            if self.pointed:
                font.setUnderline(True)
            draw_text(painter, QRectF(self.rect()), self.text(), font, ink, elide=True)
