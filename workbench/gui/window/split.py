"""The edge between the network and the scanline."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSplitter, QSplitterHandle

from workbench.gui.bench import Bench
from workbench.gui.settings import SPLIT

__all__ = ["Split"]


class Split(QSplitter):
    """The network beside the scanline, at the share the person gave them."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self._bench = bench
        self.setChildrenCollapsible(False)
        self.setHandleWidth(5)
        self.splitterMoved.connect(self._remember)

    def createHandle(self) -> QSplitterHandle:
        return Hairline(self._bench, self)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        share = self._bench.settings.get(SPLIT)
        left = round(self.width() * share)
        self.setSizes([left, self.width() - left - self.handleWidth()])

    def _remember(self, left: int, _index: int) -> None:
        share = (left + self.handleWidth() / 2) / max(1, self.width())
        self._bench.settings.set(SPLIT, min(0.8, max(0.2, share)))


class Hairline(QSplitterHandle):
    """A hairline that can be dragged."""

    def __init__(self, bench: Bench, splitter: QSplitter) -> None:
        super().__init__(Qt.Orientation.Horizontal, splitter)
        self._bench = bench
        self.setAccessibleName("Edge between network and scanline")

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self._bench.theme
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), theme.color("panel"))
            middle = self.width() // 2
            painter.setPen(theme.color("accent" if self.underMouse() else "hairline"))
            painter.drawLine(QPoint(middle, 0), QPoint(middle, self.height()))
