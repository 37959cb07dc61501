"""A sentence with the sign of its verdict before it."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.signs import Sign, draw_sign
from workbench.gui.widgets.words import Words

__all__ = ["Said"]


class Said(Words):
    """A sentence with its sign before it; the room stays where nothing is said."""

    def __init__(self, bench: Bench, *, size: float = 0.95, parent: QWidget | None = None) -> None:
        super().__init__(bench, size=size, parent=parent)
        self._house = bench
        self.sign: Sign | None = None
        self.setWordWrap(True)
        bench.theme_changed.connect(self._place)
        self._place()

    def tell(self, sign: Sign | None, sentence: str) -> None:
        """Say another sentence."""
        self.sign = sign
        self.set_role("dim" if sign is None else "text")
        self.say(sentence)
        self.setAccessibleName(sentence if sign is None else f"{sign.value}: {sentence}")
        self._place()
        self.update()

    def _place(self) -> None:
        px = self._house.px
        self.setContentsMargins(px(20) if self.sign is not None else 0, 0, 0, 0)
        self.setMinimumHeight(px(20))

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self.sign is not None and self.text():
            side = self._house.px(14)
            first_line = min(self.height(), self.fontMetrics().lineSpacing())
            top = (self.height() - self._lines() * self.fontMetrics().lineSpacing()) / 2
            with QPainter(self) as painter:
                box = QRectF(0, top + (first_line - side) / 2, side, side)
                draw_sign(painter, box, self.sign, self._house.theme)

    def _lines(self) -> int:
        room = self.contentsRect()
        room.setHeight(10_000)
        drawn = self.fontMetrics().boundingRect(room, int(Qt.TextFlag.TextWordWrap), self.text())
        return max(1, round(drawn.height() / self.fontMetrics().lineSpacing()))
