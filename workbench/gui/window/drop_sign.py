"""What a file would do if it were let fall, shown over the window while it hovers there."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import outlined
from workbench.gui.widgets.text import draw_text

__all__ = ["DropSign"]

_HEIGHT, _PAD = 64, 36
"""Height of the card with the words, and what it has beside them. [design px]"""


class DropSign(QWidget):
    """A frame around the whole window, and in its middle what dropping would do."""

    def __init__(self, bench: Bench, window: QWidget) -> None:
        super().__init__(window)
        self._bench, self._over = bench, window
        self.words = ""
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    def say(self, words: str) -> None:
        """Show what would happen."""
        self.words = words
        self.setAccessibleName(words)
        self.setGeometry(self._over.rect())
        self.show()
        self.raise_()
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        face = type_.sans(1.1, 600)
        width = min(type_.width(self.words, face) + 2 * px(_PAD), self.width() - px(40))
        card = QRectF(0, 0, width, px(_HEIGHT))
        card.moveCenter(QRectF(self.rect()).center())
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), theme.color("window", 0.35))
            line = QPen(theme.color("accent"), px(3))
            outlined(painter, QRectF(self.rect()).adjusted(3, 3, -3, -3), px(8), None, line)
            outlined(painter, card, px(8), theme.color("raised"), QPen(theme.color("accent"), 1.6))
            room = card.adjusted(px(16), 0, -px(16), 0)
            centre = Qt.AlignmentFlag.AlignHCenter
            draw_text(painter, room, self.words, face, theme.color("text"), align=centre, elide=True)
