"""The head of a panel: its name in small capitals, then whatever it offers."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.words import Words

__all__ = ["PanelHead"]

HEIGHT = 48


class PanelHead(QWidget):
    """A row of 48 px with a hairline under it; put controls into ``row``."""

    def __init__(self, bench: Bench, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.row = QHBoxLayout(self)
        self.title = Words(bench, title, caps=True, role="dim")
        self.row.addWidget(self.title)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.setPen(self._bench.theme.color("hairline"))
            painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)

    def _restyle(self) -> None:
        px = self._bench.px
        self.setFixedHeight(px(HEIGHT))
        self.row.setContentsMargins(px(20), 0, px(20), 0)
        self.row.setSpacing(px(10))
        self.row.setAlignment(Qt.AlignmentFlag.AlignVCenter)
        self.update()
