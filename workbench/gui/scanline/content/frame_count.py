"""Counts the codes of a frame in slices between events, so that nothing waits for it."""

from PySide6.QtCore import QElapsedTimer, QObject, QTimer, Signal

from workbench.gui.scanline.content.frame import CodeCounts
from workbench.picture.source import PictureCodes

__all__ = ["FrameCount"]

SLICE_MS = 4
"""Longest work between two turns of the event loop. [ms]"""
ROWS = 8
"""Rows between two looks at the clock. [1]"""
TOLD_MS = 100


class FrameCount(QObject):
    """Holds the counts of one frame and fills them a few milliseconds at a time."""

    progressed = Signal()
    """More rows are counted; told a few times a second, and when all are."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._counts: CodeCounts | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._count)
        self._since_told = QElapsedTimer()

    def ask(self, picture: PictureCodes) -> CodeCounts:
        """Return the counts of a frame as far as they go; the rest follows."""
        made = CodeCounts(picture)
        if self._counts is None or self._counts.key != made.key:
            self._counts = made
            self._since_told.start()
            self._fill(made)
        if not self._counts.complete:
            self._timer.start()
        return self._counts

    def stop(self) -> None:
        """Leave off; what is counted stays."""
        self._timer.stop()

    def _count(self) -> None:
        counts = self._counts
        if counts is None:
            return
        self._fill(counts)
        if counts.complete:
            self._timer.stop()
        elif self._since_told.elapsed() < TOLD_MS:
            return
        self._since_told.restart()
        self.progressed.emit()

    @staticmethod
    def _fill(counts: CodeCounts) -> None:
        watch = QElapsedTimer()
        watch.start()
        while not counts.complete and watch.elapsed() < SLICE_MS:
            counts.count_more(ROWS)
