"""A card with a dashed outline where something will be: what is missing, and what to do about it."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Words
from workbench.gui.widgets.control import outlined

__all__ = ["EmptyCard"]


class EmptyCard(QWidget):
    """Says in two lines what is not there yet, and what to do about it."""

    def __init__(self, bench: Bench, title: str, text: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.title = Words(bench, title, weight=600)
        self.words = Words(bench, text, size=0.95, role="dim")
        self.words.setWordWrap(True)
        self._column = QVBoxLayout(self)
        self._column.addWidget(self.title)
        self._column.addWidget(self.words)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def say(self, title: str, text: str) -> None:
        """Say something else is missing."""
        self.title.say(title)
        self.words.say(text)

    def paintEvent(self, _event: QPaintEvent) -> None:
        pen = QPen(self._bench.theme.color("outline"), 1.2)
        pen.setDashPattern([4.0, 3.0])
        with QPainter(self) as painter:
            outlined(painter, QRectF(self.rect()), self._bench.px(7), None, pen)

    def _restyle(self) -> None:
        px = self._bench.px
        self._column.setContentsMargins(px(16), px(12), px(16), px(12))
        self._column.setSpacing(px(4))
