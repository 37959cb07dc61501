"""The two time axes of the frame: microseconds along the line, milliseconds down the frame."""

from math import floor, log10

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.widgets import draw_text
from workbench.timing.mode import Mode

__all__ = ["paint_axes", "ticks"]

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


def paint_axes(painter: QPainter, bench: Bench, frame: QRectF, mode: Mode) -> None:
    """Draw ticks and figures under and left of the frame."""
    theme, face, px = bench.theme, bench.type.mono(0.8), bench.px
    painter.setPen(QPen(theme.color("outline"), 1))
    line_us, frame_ms = mode.line_s * 1e6, mode.frame_s * 1e3
    across = ticks(line_us, int(frame.width() // px(_PITCH)))
    down = ticks(frame_ms, int(frame.height() // px(_PITCH // 2)))
    for number, us in enumerate(across):
        x = frame.left() + frame.width() * us / line_us
        painter.setPen(QPen(theme.color("outline"), 1))
        painter.drawLine(QPointF(x, frame.bottom()), QPointF(x, frame.bottom() + px(4)))
        box = QRectF(x - px(30), frame.bottom() + px(6), px(60), px(16))
        words = f"{us:g} µs" if number == len(across) - 1 else f"{us:g}"
        draw_text(painter, box, words, face, theme.color("dim"), align=Qt.AlignmentFlag.AlignHCenter)
    for number, ms in enumerate(down):
        y = frame.top() + frame.height() * ms / frame_ms
        painter.setPen(QPen(theme.color("outline"), 1))
        painter.drawLine(QPointF(frame.left() - px(4), y), QPointF(frame.left(), y))
        box = QRectF(frame.left() - px(56), y - px(8), px(48), px(16))
        words = f"{ms:g} ms" if number == len(down) - 1 else f"{ms:g}"
        draw_text(painter, box, words, face, theme.color("dim"), align=Qt.AlignmentFlag.AlignRight)
