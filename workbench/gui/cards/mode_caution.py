"""What a mode may do to a display, said where it is chosen."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent

from workbench.gui.bench import Bench
from workbench.gui.widgets import Sign, Words, draw_sign

__all__ = ["Caution"]


class Caution(Words):
    """What a mode may do to a display, behind its sign."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, size=0.86, role="dim")
        self._own_bench = bench
        self._sign = Sign.NOTE
        self.setWordWrap(True)
        self.setAlignment(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft)
        self.setContentsMargins(bench.px(24), 0, bench.px(8), 0)
        self.setMinimumHeight(bench.px(34))

    def tell(self, text: str, sign: Sign) -> None:
        """Show another caution."""
        self._sign = sign
        self.say(text)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        side = self._own_bench.px(15)
        with QPainter(self) as painter:
            draw_sign(
                painter, QRectF(0, (self.height() - side) / 2, side, side), self._sign, self._own_bench.theme
            )
