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

    SPACING = 10
    """Between what stands in the row. [design px]"""

    def __init__(self, bench: Bench, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._title = bench, title
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
        edge = px(12 if self._bench.projecting else 20)
        self.row.setContentsMargins(edge, 0, edge, 0)
        # Capitals are wide: a projector has no room for them.
        self.title.set_caps(caps=not self._bench.projecting)
        self.title.say(self._title.lower() if self._bench.projecting else self._title)
        self.row.setSpacing(px(self.SPACING))
        self.row.setAlignment(Qt.AlignmentFlag.AlignVCenter)
        self.update()
