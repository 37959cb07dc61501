"""How far slow work has come, as a bar beside its words."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import outlined

__all__ = ["ProgressBar"]


class ProgressBar(QWidget):
    """A thin bar, filled as far as the work is done."""

    def __init__(self, bench: Bench, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.part = 0.0
        """How much is done, 0 to 1. [1]"""
        self.setAccessibleName(name)
        bench.theme_changed.connect(self.update)

    def show_part(self, part: float) -> None:
        """Fill the bar so far, 0 to 1."""
        part = min(1.0, max(0.0, part))
        if part != self.part:
            self.part = part
            self.setAccessibleDescription(f"{part:.0%} done")
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(self._bench.px(140), self._bench.px(20))

    def paintEvent(self, _event: QPaintEvent) -> None:
        px, theme = self._bench.px, self._bench.theme
        height = px(6)
        box = QRectF(0, round((self.height() - height) / 2), self.width(), height)
        with QPainter(self) as painter:
            outlined(painter, box, height / 2, theme.color("hairline"), None)
            if self.part > 0.0:
                box.setWidth(max(height, box.width() * self.part))
                outlined(painter, box, height / 2, theme.color("accent"), None)
