"""The staircase: a channel's loaded level for every code, the ideal one behind it."""

from math import ceil

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF

from workbench.checks.limits import WHITE, WHITE_VOLTS
from workbench.checks.values import EVEN_LSB
from workbench.gui.levels.code_view import CodeView
from workbench.gui.levels.figures import NOTABLE_LSB, CodeFigures, FloatArray
from workbench.gui.widgets import draw_text
from workbench.units import format_fixed

__all__ = ["Staircase"]

_LEFT, _TOP, _RIGHT, _FOOT = 46, 30, 14, 24
_CALLOUT = 190
_RIGHTWARD = Qt.AlignmentFlag.AlignRight
_CENTRE = Qt.AlignmentFlag.AlignHCenter


class Staircase(CodeView):
    """Draws one CodeFigures as volts over code."""

    def place(self) -> QRectF:
        px = self.bench.px
        return QRectF(self.rect()).adjusted(px(_LEFT), px(_TOP), -px(_RIGHT), -px(_FOOT))

    heading = "loaded volts for each code"
    """What stands beside the head."""
    tick_volts = 0.2
    """Distance of the lines of the scale. [V]"""
    top_volts = 0.8
    """Upper end of the scale: 0.8 V, or more where white is above. [V]"""

    def show_codes(self, figures: CodeFigures, description: str) -> None:
        super().show_codes(figures, description)
        self.scale_to(float(figures.volts.max()))

    def scale_to(self, volts: float) -> None:
        """Let the scale reach up to a level, 0.8 V at least."""
        white = max(volts, WHITE_VOLTS)
        self.tick_volts = 0.2 if white < 1.2 else 0.5 if white < 3.0 else 1.0
        self.top_volts = self.tick_volts * ceil((white + 0.02) / self.tick_volts)

    def volts_y(self, volts: float) -> float:
        """Return the height of a level. [px]"""
        area = self.area
        return area.bottom() - area.height() * volts / self.top_volts

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.area, self.bench.theme.color("plot"))
            self._paint_head(painter)
            self._paint_scale(painter)
            if self.figures is None or not self.figures.sound:
                self._paint_nothing(painter)
                return
            self.light_held(painter)
            self.paint_behind(painter)
            self.paint_steps(painter, self.figures.ideal_volts, QPen(self.bench.theme.color("ideal"), 1.0))
            pen = QPen(self.bench.theme.channel(self.bench.view.channel), self.bench.theme.trace_px)
            pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
            self.paint_steps(painter, self.figures.volts, pen)
            self._paint_white(painter)
            if not self._paint_callout(painter):
                self._paint_ideal(painter)

    def paint_behind(self, painter: QPainter) -> None:
        """Paint what lies behind the steps; children may."""

    def _paint_head(self, painter: QPainter) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(0, 0, self.width(), px(22))
        width = draw_text(painter, box, "Levels".upper(), type_.caps(), theme.color("dim"))
        words = box.adjusted(width + px(20), 0, 0, 0)
        draw_text(painter, words, self.heading, type_.sans(0.9), theme.color("dim"), elide=True)

    def _paint_scale(self, painter: QPainter) -> None:
        theme, type_, px, area = self.bench.theme, self.bench.type, self.bench.px, self.area
        if WHITE.low is not None and WHITE.high is not None:
            window = QRectF(
                QPointF(area.left(), self.volts_y(WHITE.high)), QPointF(area.right(), self.volts_y(WHITE.low))
            )
            painter.fillRect(window, theme.color("passes", 0.06))
            painter.fillRect(
                QRectF(window.topLeft(), QPointF(area.left() + px(4), window.bottom())),
                theme.color("passes", 0.7),
            )
        ticks = round(self.top_volts / self.tick_volts)
        every = next(n for n in (1, 2, 4, ticks) if area.height() * n / ticks > px(18) or n == ticks)
        for tick in range(0, ticks + 1, every):
            volts = self.tick_volts * tick
            y = round(self.volts_y(volts))
            painter.setPen(theme.color("hairline"))
            painter.drawLine(round(area.left()), y, round(area.right()), y)
            label = QRectF(0, y - px(8), area.left() - px(8), px(16))
            draw_text(painter, label, f"{volts:.1f}", type_.mono(0.86), theme.color("dim"), align=_RIGHTWARD)
        self._paint_codes(painter)

    def _paint_codes(self, painter: QPainter) -> None:
        """Write the codes under the columns: quarters, the last one, and the held one lit."""
        if self.figures is None:
            return
        theme, type_, px, area = self.bench.theme, self.bench.type, self.bench.px, self.area
        last = self.figures.n_codes - 1
        shown = {0, last, *(self.figures.n_codes * part // 4 for part in (1, 2, 3))}
        room = px(16)
        if self.held is not None:
            here = self.column(self.held).center().x()
            shown = {code for code in shown if abs(self.column(code).center().x() - here) > 2 * room}
            shown.add(self.held)
        for code in sorted(shown):
            middle = self.column(code).center().x()
            box = QRectF(middle - room, area.bottom() + px(4), 2 * room, px(18))
            lit = code == self.held
            font = type_.mono(0.86, 600 if lit else 400)
            draw_text(painter, box, str(code), font, theme.color("accent" if lit else "dim"), align=_CENTRE)

    def paint_steps(self, painter: QPainter, volts: FloatArray, pen: QPen) -> None:
        """Paint levels as a staircase, shape (n_codes,). [V]"""
        heights = (self.area.bottom() - self.area.height() / self.top_volts * volts).tolist()
        edges = np.linspace(self.area.left(), self.area.right(), len(heights) + 1).tolist()
        points = [
            QPointF(x, y)
            for left, right, y in zip(edges, edges[1:], heights, strict=False)
            for x in (left, right)
        ]
        painter.setPen(pen)
        painter.drawPolyline(QPolygonF(points))

    def _paint_nothing(self, painter: QPainter) -> None:
        words = "no levels: the finding below says why"
        face, theme = self.bench.type.sans(), self.bench.theme
        width, height = self.bench.type.width(words, face) + self.bench.px(16), self.bench.px(22)
        box = QRectF(0, 0, width, height)
        box.moveCenter(self.area.center())
        painter.fillRect(box, theme.color("plot"))
        draw_text(painter, box, words, face, theme.color("dim"), align=_CENTRE)

    def _paint_white(self, painter: QPainter) -> None:
        """Name white above its step."""
        theme, type_, px, area = self.bench.theme, self.bench.type, self.bench.px, self.area
        assert self.figures is not None
        white = float(self.figures.volts[-1])
        face, text = type_.mono(0.9, 500), format_fixed(white, "V")
        width = type_.width(text, face)
        box = QRectF(area.right() - px(4) - width, self.volts_y(white) - px(20), width, px(16))
        painter.fillRect(box.adjusted(-px(4), 0, px(4), 0), theme.color("plot"))
        draw_text(painter, box, text, face, theme.color("text"))

    def _paint_ideal(self, painter: QPainter) -> None:
        """Name the ideal staircase under its own steps."""
        theme, type_, px, area = self.bench.theme, self.bench.type, self.bench.px, self.area
        assert self.figures is not None
        last = self.figures.n_codes - 1
        below = self.volts_y(float(self.figures.ideal_volts[round(last * 0.6)])) + px(10)
        box = QRectF(area.left(), below, area.width() - px(8), px(16))
        text = f"ideal, {format_fixed(WHITE_VOLTS, 'V')} at {last}"
        draw_text(painter, box, text, type_.sans(0.82), theme.color("dim"), align=_RIGHTWARD)

    def _paint_callout(self, painter: QPainter) -> bool:
        """Point at the most uneven step; return whether its words took the room under the staircase."""
        assert self.figures is not None
        px, area, code = self.bench.px, self.area, self.figures.worst_step
        if abs(self.figures.dnl_lsb[code]) < NOTABLE_LSB or area.height() < px(90):
            return False
        ring = QPointF(self.code_x(code), self.volts_y(float(self.figures.volts[code - 1 : code + 1].mean())))
        above = ring.x() - area.left() > px(_CALLOUT)
        right = ring.x() - px(22) if above else min(ring.x() + px(30 + _CALLOUT), area.right() - px(6))
        top = area.top() + px(14) if above else area.bottom() - px(52)
        self._paint_sizes(painter, code, right, top)
        self._paint_ring(painter, code, ring, QPointF(right + px(6), top + px(9)) if above else ring)
        return not above

    def _paint_sizes(self, painter: QPainter, code: int, right: float, top: float) -> None:
        """Write the size of the most uneven step, and that of the others under it."""
        assert self.figures is not None
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        lines = (
            (f"step {code - 1} to {code}", float(self.figures.step_volts[code])),
            ("most others", self.figures.usual_step_volts),
        )
        text, dim = theme.color("text"), theme.color("dim")
        for row, (words, volts) in enumerate(lines):
            box = QRectF(right - px(_CALLOUT), top + row * px(19), px(_CALLOUT), px(18))
            value = format_fixed(volts, "V", prefix="m", decimals=1)
            width = draw_text(painter, box, value, type_.mono(0.9, 500), text, align=_RIGHTWARD)
            box.setRight(right - width - px(6))
            draw_text(painter, box, words, type_.sans(0.86), dim, align=_RIGHTWARD)

    def _paint_ring(self, painter: QPainter, code: int, ring: QPointF, words: QPointF) -> None:
        """Ring the step, with a leader from its words where those stand above it."""
        assert self.figures is not None
        theme, radius = self.bench.theme, self.bench.px(8)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        weighty = abs(self.figures.dnl_lsb[code]) > EVEN_LSB
        painter.setPen(QPen(theme.color("warns" if weighty else "dim"), 1.4))
        painter.drawEllipse(ring, radius, radius)
        if ring.y() - radius > words.y():
            painter.setPen(QPen(theme.color("dim"), 1.0))
            corner, foot = QPointF(ring.x(), words.y()), QPointF(ring.x(), ring.y() - radius)
            painter.drawPolyline(QPolygonF([words, corner, foot]))
