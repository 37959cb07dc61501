"""Bars of an error for every code, in LSB, with one plain sentence."""

from math import ceil

import numpy as np
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.checks.limits import LINEARITY
from workbench.circuit.linearity import EVEN_LSB
from workbench.gui.bench import Bench
from workbench.gui.levels.code_view import CodeView, Hold
from workbench.gui.levels.figures import SHOWN_LSB, CodeFigures, FloatArray
from workbench.gui.widgets import Sign, draw_sign, draw_text
from workbench.gui.widgets.caption import draw_caption

__all__ = ["ErrorBars"]

_LEFT, _TOP, _FOOT = 36, 28, 12
_RIGHTWARD = Qt.AlignmentFlag.AlignRight


class ErrorBars(CodeView):
    """Draws the DNL or the INL of one CodeFigures."""

    def __init__(
        self,
        bench: Bench,
        name: str,
        wordings: tuple[str, ...],
        field: str,
        hold: Hold,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(bench, f"{name}: {wordings[0]}", hold, parent)
        self._name, self._wordings, self._field = name, wordings, field

    top_lsb = 1
    """End of the scale either way. [LSB]"""

    @property
    def errors(self) -> FloatArray:
        """The errors shown, shape (n_codes,). [LSB]"""
        errors: FloatArray = getattr(self.figures, self._field)
        return errors

    def show_codes(self, figures: CodeFigures, description: str) -> None:
        worst = float(np.abs(getattr(figures, self._field)).max())
        self.top_lsb = max(1, ceil(worst - 1e-9))
        super().show_codes(figures, description)

    def place(self) -> QRectF:
        px = self.bench.px
        return QRectF(self.rect()).adjusted(px(_LEFT), px(_TOP), -1, -px(_FOOT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self.bench.theme
        with QPainter(self) as painter:
            painter.fillRect(self.area, theme.color("plot"))
            self._paint_head(painter)
            self._paint_scale(painter)
            if self.figures is None or not self.figures.sound:
                return
            self.light_held(painter)
            self._paint_bars(painter)
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
        words = QRectF(width + px(10), 0, right - width - px(10), px(22))
        draw_caption(painter, words, self._wordings, type_.sans(0.9), theme.color("dim"))

    def _paint_scale(self, painter: QPainter) -> None:
        theme, type_, px, area = self.bench.theme, self.bench.type, self.bench.px, self.area
        for part in (1, 0, -1):
            y = round(self._y(part * self.top_lsb))
            painter.setPen(theme.color("hairline" if part else "outline"))
            painter.drawLine(round(area.left()), y, round(area.right()), y)
            text = f"{part * self.top_lsb:+d}".replace("-", "\u2212") if part else "0"
            box = QRectF(0, y - px(8), area.left() - px(8), px(16))
            draw_text(painter, box, text, type_.mono(0.82), theme.color("dim"), align=_RIGHTWARD)

    def _paint_bars(self, painter: QPainter) -> None:
        """Draw the bars, all of one colour at once."""
        area, errors = self.area, self.errors
        width = area.width() / len(errors)
        gap = min(width * 0.15, self.bench.px(3))
        lefts = (area.left() + width * np.arange(len(errors)) + gap).tolist()
        heights = (area.height() / 2 / self.top_lsb * errors).tolist()
        zero = area.center().y()
        bars: dict[str, list[QRectF]] = {}
        for left, height, error in zip(lefts, heights, errors.tolist(), strict=True):
            if abs(error) >= SHOWN_LSB:
                bar = QRectF(left, zero - max(height, 0.0), width - 2 * gap, abs(height))
                bars.setdefault(self._role(error), []).append(bar)
        painter.setPen(Qt.PenStyle.NoPen)
        for role, rects in bars.items():
            painter.setBrush(self.bench.theme.color(role))
            painter.drawRects(rects)

    def _paint_sign(self, painter: QPainter) -> None:
        """Put a sign beside the bar that is worth a warning; colour never speaks alone."""
        assert self.figures is not None
        code = self._worst(self.figures)
        error = float(self.errors[code])
        if abs(error) <= EVEN_LSB:
            return
        side = self.bench.px(14)
        column = self.column(code)
        x = column.left() - side - self.bench.px(3)
        x = x if x > self.area.left() else column.right() + self.bench.px(3)
        y = self._y(error) if error > 0 else self._y(error) - side
        sign = Sign.WARNS if LINEARITY.holds(error) else Sign.FAILS
        draw_sign(painter, QRectF(x, y, side, side), sign, self.bench.theme)

    def _worst(self, figures: CodeFigures) -> int:
        return figures.worst_step if self._field == "dnl_lsb" else figures.worst_level

    def _role(self, error: float) -> str:
        if not LINEARITY.holds(error):
            return "fails"
        return "warns" if abs(error) > EVEN_LSB and self._field == "dnl_lsb" else "dim"

    def _y(self, lsb: float) -> float:
        area = self.area
        return area.center().y() - area.height() / 2 * lsb / self.top_lsb
