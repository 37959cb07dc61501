"""The line under the picture: what the monitor takes the signal for."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.picture.images import ENLARGED, Side
from workbench.gui.picture.monitor_panel import LEAVES_OUT
from workbench.gui.widgets import Sign, draw_sign, draw_text
from workbench.gui.widgets.caption import that_fits
from workbench.waveform.verdict import Standing

__all__ = ["Verdict"]


class Verdict(QWidget):
    """One line under the picture: what the monitor takes the signal for, and that it is a model."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = bench
        self._sign: Sign | None = None
        self.text = ""
        self.setToolTip(LEAVES_OUT)

    def show_verdict(self, standing: Standing, sentence: str, side: Side) -> None:
        """Say how the picture came about."""
        if side is Side.SENT:
            self._sign, self.text = None, "settled levels, no cable, a perfect display"
        else:
            self._sign = None if standing is Standing.SHOWN else Sign.WARNS
            how = f"difference, {ENLARGED} times; " if side is Side.APART else ""
            named = "" if standing is Standing.SHOWN else f"{standing.value}. "
            self.text = f"{how}a model: {named}{sentence}"
        self.setAccessibleName(self.text)
        self.setToolTip(f"{self.text}\n{LEAVES_OUT}")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        with QPainter(self) as painter:
            left = 0
            if self._sign is not None:
                side = px(15)
                painter.setRenderHint(QPainter.RenderHint.Antialiasing)
                draw_sign(painter, QRectF(0, (self.height() - side) / 2, side, side), self._sign, theme)
                left = side + px(7)
            box = QRectF(left, 0, self.width() - left, self.height())
            face = self._bench.type.sans(0.86)
            words = that_fits((self.text, self.text.partition(" (")[0]), face, box.width())
            draw_text(painter, box, words or self.text, face, theme.color("dim"), elide=True)
