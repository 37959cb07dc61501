"""The codes as the eye sees them: a strip of greys with their lightness."""

import numpy as np
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QImage, QPainter, QPaintEvent, QPen

from workbench.circuit.linearity import EVEN_LSB
from workbench.gui.levels.code_view import CodeView
from workbench.gui.widgets import draw_text
from workbench.gui.widgets.caption import draw_caption
from workbench.gui.widgets.control import outlined

__all__ = ["EyeStrip"]

_TOP, _FOOT = 24, 22
_RIGHTWARD = Qt.AlignmentFlag.AlignRight
_CENTRE = Qt.AlignmentFlag.AlignHCenter


class EyeStrip(CodeView):
    """Draws one CodeFigures as greys side by side."""

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(400), self.bench.px(_TOP + 32 + _FOOT))

    def place(self) -> QRectF:
        px = self.bench.px
        return QRectF(self.rect()).adjusted(1, px(_TOP), -1, -px(_FOOT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, area = self.bench.theme, self.area
        with QPainter(self) as painter:
            if self.figures is None or not self.figures.sound:
                return
            self._paint_head(painter)
            greys = np.ascontiguousarray(self.figures.grey)
            row = QImage(greys.data, len(greys), 1, len(greys), QImage.Format.Format_Grayscale8)
            painter.drawImage(area, row)
            outlined(
                painter,
                area.adjusted(-1, -1, 1, 1),
                self.bench.px(2),
                None,
                QPen(theme.color("outline"), 1.1),
            )
            self._paint_numbers(painter)
            if self.held is not None:
                frame = self._at_least_seen(self.column(self.held)).adjusted(-2, -3, 2, 3)
                frame = frame.intersected(QRectF(self.rect()).adjusted(1, 1, -1, -1))
                outlined(painter, frame, self.bench.px(3), None, QPen(theme.color("accent"), 2.0))

    def _paint_head(self, painter: QPainter) -> None:
        assert self.figures is not None
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(0, 0, self.width(), px(18))
        width = draw_text(painter, box, "as the eye sees it", type_.sans(0.9, 500), theme.color("text"))
        small, dim = type_.sans(0.86), theme.color("dim")
        box.setLeft(width + px(14))
        clipped = self.figures.clipped_words
        right = draw_caption(painter, box, clipped, small, dim, align=_RIGHTWARD) if clipped else 0.0
        box.setRight(box.right() - right - (px(16) if right else 0))
        draw_caption(painter, box, self.figures.eye_wordings, small, dim)

    def _paint_numbers(self, painter: QPainter) -> None:
        """Write L* under the cells, as many as have room; the held one always."""
        assert self.figures is not None
        theme, px, area = self.bench.theme, self.bench.px, self.area
        font = self.bench.type.mono(0.86)
        widest = QFontMetricsF(font).horizontalAdvance("100")
        room = widest + px(6)
        every = 1
        while self.column(0).width() * every < room:
            every *= 2
        shown = set(range(0, self.figures.n_codes, every))
        if self.held is not None:
            here = self._number_x(self.held, widest)
            shown = {code for code in shown if abs(self._number_x(code, widest) - here) >= room}
            shown.add(self.held)
        for code in sorted(shown):
            box = QRectF(self._number_x(code, widest) - room, area.bottom() + px(4), 2 * room, px(18))
            text = f"{self.figures.lightness[code]:.0f}"
            draw_text(painter, box, text, font, theme.color(self._role(code)), align=_CENTRE)

    def _number_x(self, code: int, widest: float) -> float:
        """Return the middle of a code's number: under its cell, kept inside the strip. [px]"""
        middle = self.column(code).center().x()
        return min(middle, max(self.width() - widest / 2, widest / 2))

    def _role(self, code: int) -> str:
        assert self.figures is not None
        if code == self.held:
            return "accent"
        worst = self.figures.worst_step
        stands_out = abs(self.figures.dnl_lsb[worst]) > EVEN_LSB and code in (worst - 1, worst)
        return "warns" if stands_out else "dim"
