"""A count of findings that can be clicked: a sign, and the count in words."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.checks import Severity
from workbench.gui.bench import Bench
from workbench.gui.findings.words import count_sign, count_words
from workbench.gui.widgets import Control, draw_sign, draw_text

__all__ = ["CountButton"]

_SIGN = 14
_GAP = 7


class CountButton(Control):
    """Shows how many findings of a severity there are; a click shows the next of them."""

    def __init__(self, bench: Bench, severity: Severity, parent: QWidget | None = None) -> None:
        super().__init__(bench, count_words(severity, 0), parent)
        self.severity = severity
        self._count = 0
        self._current = False
        self.setEnabled(False)

    def show_count(self, count: int, *, current: bool) -> None:
        """Show a count; ``current`` where the finding on show is one of them."""
        if (count, current) == (self._count, self._current):
            return
        self._count, self._current = count, current
        self.setText(count_words(self.severity, count))
        self.setEnabled(count > 0)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        metrics = QFontMetricsF(self.bench.type.sans(1.0, 600))
        width = max(metrics.horizontalAdvance(text) for text in (self.text(), count_words(self.severity, 2)))
        return QSize(round(width) + self.bench.px(_SIGN + _GAP + 4), self.bench.px(22))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self.bench.theme, self.bench.px
        side = px(_SIGN)
        box = QRectF(1, (self.height() - side) / 2, side, side)
        words = QRectF(side + px(_GAP), 0, self.width(), self.height())
        bright = self._current or self.pointed
        with QPainter(self) as painter:
            draw_sign(painter, box, count_sign(self.severity, self._count), theme)
            font = self.bench.type.sans(1.0, 500 if self._current else 400)
            draw_text(painter, words, self.text(), font, theme.color("text" if bright else "dim"))
