"""The two time axes of the frame: along the line and down the frame, each in a unit that suits."""

from math import floor, log10

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.widgets import draw_text
from workbench.timing.mode import Mode

__all__ = ["paint_axes", "ticks", "unit_for"]

_UNITS = ((1.0, "s"), (1e-3, "ms"), (1e-6, "µs"), (1e-9, "ns"))

_PITCH = 64
"""Least distance of two ticks. [px at 14 px text]"""


def ticks(span: float, most: int) -> list[float]:
    """Return even, round places from 0 to a span, at most so many intervals of 1, 2 or 5.

    >>> ticks(31.8, 4)
    [0.0, 10.0, 20.0, 30.0]
    """
    rough = span / max(1, most)
    scale = 10.0 ** floor(log10(rough))
    step = next(part * scale for part in (1, 2, 5, 10) if part * scale >= rough)
    return [number * step for number in range(floor(span / step + 1e-9) + 1)]


def unit_for(span_s: float) -> tuple[float, str]:
    """Return the unit in which a span has a figure from 1 on, its length and its name. [s]

    >>> unit_for(16.7e-3), unit_for(40e-9)
    ((0.001, 'ms'), (1e-09, 'ns'))
    """
    return next((unit for unit in _UNITS if span_s >= unit[0]), _UNITS[-1])


def paint_axes(painter: QPainter, bench: Bench, frame: QRectF, mode: Mode) -> None:
    """Draw ticks and figures under and left of the frame; each axis names its unit once."""
    theme, face, px = bench.theme, bench.type.mono(0.8), bench.px
    across_s, across_unit = unit_for(mode.line_s)
    down_s, down_unit = unit_for(mode.frame_s)
    line, whole = mode.line_s / across_s, mode.frame_s / down_s
    across = ticks(line, int(frame.width() // px(_PITCH)))
    down = ticks(whole, int(frame.height() // px(_PITCH // 2)))
    for number, place in enumerate(across):
        x = frame.left() + frame.width() * place / line
        painter.setPen(QPen(theme.color("outline"), 1))
        painter.drawLine(QPointF(x, frame.bottom()), QPointF(x, frame.bottom() + px(4)))
        box = QRectF(x - px(30), frame.bottom() + px(6), px(60), px(16))
        words = f"{place:g} {across_unit}" if number == len(across) - 1 else f"{place:g}"
        draw_text(painter, box, words, face, theme.color("dim"), align=Qt.AlignmentFlag.AlignHCenter)
    for place in down:
        y = frame.top() + frame.height() * place / whole
        painter.setPen(QPen(theme.color("outline"), 1))
        painter.drawLine(QPointF(frame.left() - px(4), y), QPointF(frame.left(), y))
        box = QRectF(0, y - px(8), frame.left() - px(8), px(16))
        # The unit stands at the top, where the figure is short: there is little room at the left.
        words = f"{place:g}" if place else f"0 {down_unit}"
        draw_text(painter, box, words, face, theme.color("dim"), align=Qt.AlignmentFlag.AlignRight)
