"""The words on the most uneven step of a staircase: its size, and that of most others."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from workbench.gui.bench import Bench
from workbench.gui.levels.figures import CodeFigures
from workbench.gui.widgets import draw_text
from workbench.units import format_fixed

__all__ = ["Callout"]

_LINE = 19
"""Height of a line. [design px]"""
_GAP = 6
"""Between words and value. [design px]"""
_RIGHTWARD = Qt.AlignmentFlag.AlignRight


@dataclass(frozen=True, slots=True)
class Callout:
    """Two lines on a step, in the sizes of a bench."""

    bench: Bench
    lines: tuple[tuple[str, str], ...]
    """Words and value of each line."""

    @classmethod
    def on(cls, bench: Bench, figures: CodeFigures) -> "Callout":
        """Return the words on the most uneven step of some figures."""
        code = figures.worst_step

        def size(volts: float) -> str:
            return format_fixed(volts, "V", prefix="m", decimals=1)

        lines = (
            (f"step {code - 1} to {code}", size(float(figures.step_volts[code]))),
            ("most others", size(figures.usual_step_volts)),
        )
        return cls(bench, lines)

    @property
    def size(self) -> QSizeF:
        """The room the words need. [px]"""
        px, type_ = self.bench.px, self.bench.type
        wide = max(
            type_.width(words, type_.sans(0.86)) + px(_GAP) + type_.width(value, type_.mono(0.9, 500))
            for words, value in self.lines
        )
        return QSizeF(wide, px(_LINE) * len(self.lines))

    def paint(self, painter: QPainter, box: QRectF) -> None:
        """Write the lines, their values under each other at the right."""
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        line = QRectF(box.left(), box.top(), box.width(), px(_LINE))
        for words, value in self.lines:
            width = draw_text(
                painter, line, value, type_.mono(0.9, 500), theme.color("text"), align=_RIGHTWARD
            )
            left = line.adjusted(0, 0, -width - px(_GAP), 0)
            draw_text(painter, left, words, type_.sans(0.86), theme.color("dim"), align=_RIGHTWARD)
            line.translate(0, px(_LINE))

    def lead(self, painter: QPainter, box: QRectF, to: QPointF) -> None:
        """Draw the leader from words that stand above and left of a point."""
        px = self.bench.px
        start = QPointF(box.right() + px(6), box.top() + px(9))
        painter.setPen(QPen(self.bench.theme.color("dim"), 1.0))
        painter.drawPolyline(QPolygonF([start, QPointF(to.x(), start.y()), to]))
