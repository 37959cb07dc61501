"""Bars of an error for every code, in LSB, with one plain sentence."""

from math import ceil

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.checks.limits import LINEARITY
from workbench.checks.values import EVEN_LSB
from workbench.gui.bench import Bench
from workbench.gui.levels.code_view import CodeView, Hold
from workbench.gui.levels.figures import SHOWN_LSB, CodeFigures
from workbench.gui.widgets import Sign, draw_sign, draw_text

__all__ = ["ErrorBars"]

_LEFT, _TOP, _FOOT = 36, 28, 12
_RIGHTWARD = Qt.AlignmentFlag.AlignRight


class ErrorBars(CodeView):
    """Draws the DNL or the INL of one CodeFigures."""

    def __init__(
        self, bench: Bench, name: str, sentence: str, field: str, hold: Hold, parent: QWidget | None = None
    ) -> None:
        super().__init__(bench, f"{name}: {sentence}", hold, parent)
        self._name, self._sentence, self._field = name, sentence, field

    @property
    def errors(self):
        """The errors shown, shape (n_codes,). [LSB]"""
        return getattr(self.figures, self._field)

    @property
    def top_lsb(self) -> int:
        """End of the scale either way. [LSB]"""
        return max(1, ceil(float(np.abs(self.errors).max()) - 1e-9)) if self.figures else 1

    def area(self) -> QRectF:
        px = self.bench.px
        return QRectF(self.rect()).adjusted(px(_LEFT), px(_TOP), -1, -px(_FOOT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self.bench.theme
        with QPainter(self) as painter:
            painter.fillRect(self.area(), theme.color("plot"))
            self._paint_head(painter)
            self._paint_scale(painter)
            if self.figures is None or not self.figures.sound:
                return
            self.light_held(painter)
            for code, error in enumerate(self.errors.tolist()):
                if abs(error) >= SHOWN_LSB:
                    painter.fillRect(self._bar(code, error), theme.color(self._role(error)))
            self._paint_sign(painter)

    def _paint_head(self, painter: QPainter) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(0, 0, self.width(), px(22))
        width = draw_text(painter, box, self._name, type_.sans(0.9, 600), theme.color("text"))
        right = box.right()
        if self.figures is not None and self.figures.sound:
            value, place = self.figures.worst_words(self.errors, self._worst(self.figures))
            right -= draw_text(
                painter, box, place, type_.sans(0.9), theme.color("dim"), align=_RIGHTWARD
            ) + px(6)
            box.setRight(right)
            right -= draw_text(
                painter, box, value, type_.mono(0.95, 600), theme.color("text"), align=_RIGHTWARD
            ) + px(6)
            box.setRight(right)
            right -= draw_text(
                painter, box, "worst", type_.sans(0.9), theme.color("dim"), align=_RIGHTWARD
            ) + px(12)
        words = QRectF(width + px(14), 0, right - width - px(14), px(22))
        if words.width() > px(60):
            draw_text(painter, words, self._sentence, type_.sans(0.9), theme.color("dim"), elide=True)

    def _paint_scale(self, painter: QPainter) -> None:
        theme, type_, px, area = self.bench.theme, self.bench.type, self.bench.px, self.area()
        for part in (1, 0, -1):
            y = round(self._y(part * self.top_lsb))
            painter.setPen(theme.color("hairline" if part else "outline"))
            painter.drawLine(round(area.left()), y, round(area.right()), y)
            text = f"{part * self.top_lsb:+d}".replace("-", "\u2212") if part else "0"
            box = QRectF(0, y - px(8), area.left() - px(8), px(16))
            draw_text(painter, box, text, type_.mono(0.82), theme.color("dim"), align=_RIGHTWARD)

    def _paint_sign(self, painter: QPainter) -> None:
        """Put a sign beside the bar that is worth a warning; colour never speaks alone."""
        assert self.figures is not None
        code = self._worst(self.figures)
        error = float(self.errors[code])
        if abs(error) <= EVEN_LSB:
            return
        side = self.bench.px(14)
        bar = self._bar(code, error)
        x = bar.left() - side - self.bench.px(5)
        x = x if x > self.area().left() else bar.right() + self.bench.px(5)
        y = bar.top() if error > 0 else bar.bottom() - side
        sign = Sign.WARNS if LINEARITY.holds(error) else Sign.FAILS
        draw_sign(painter, QRectF(x, y, side, side), sign, self.bench.theme)

    def _worst(self, figures: CodeFigures) -> int:
        return figures.worst_step if self._field == "dnl_lsb" else figures.worst_level

    def _role(self, error: float) -> str:
        if not LINEARITY.holds(error):
            return "fails"
        return "warns" if abs(error) > EVEN_LSB and self._field == "dnl_lsb" else "dim"

    def _bar(self, code: int, error: float) -> QRectF:
        column = self.column(code)
        gap = min(column.width() * 0.15, self.bench.px(3))
        ends = sorted((self._y(0.0), self._y(error)))
        return QRectF(QPointF(column.left() + gap, ends[0]), QPointF(column.right() - gap, ends[1]))

    def _y(self, lsb: float) -> float:
        area = self.area()
        return area.center().y() - area.height() / 2 * lsb / self.top_lsb
