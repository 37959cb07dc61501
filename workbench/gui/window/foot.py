"""The foot of the window: findings beside the white level."""

from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.gui.bench import Bench

__all__ = ["Foot"]


class Foot(QWidget):
    """Findings on the left, loaded and open white on the right; it folds while a page is open."""

    OPEN, FOLDED = 120, 44

    def __init__(self, bench: Bench, findings: QWidget, white: QWidget) -> None:
        super().__init__()
        self._bench = bench
        self._findings, self._white = findings, white
        self._folded = False
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 1, 0, 0)
        row.setSpacing(0)
        row.addWidget(findings, 1)
        row.addWidget(white, 0)
        bench.theme_changed.connect(self._restyle)

    def fold(self, *, folded: bool) -> None:
        """Take one line, or the whole finding."""
        self._folded = folded
        self._restyle()

    def _restyle(self) -> None:
        self.setFixedHeight(self._bench.px(self.FOLDED if self._folded else self.OPEN))
        for panel in (self._findings, self._white):
            set_folded = getattr(panel, "set_folded", None)
            if set_folded is not None:
                set_folded(folded=self._folded)

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self._bench.theme.color("panel"))
            painter.setPen(self._bench.theme.color("hairline"))
            painter.drawLine(0, 0, self.width(), 0)
