"""The staircase: a channel's loaded level for every code, the ideal one behind it."""

from math import ceil

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF

from workbench.checks.limits import WHITE, WHITE_VOLTS
from workbench.circuit.linearity import EVEN_LSB
from workbench.gui.levels.callout import Callout
from workbench.gui.levels.code_view import CodeView
from workbench.gui.levels.figures import NOTABLE_LSB, CodeFigures, FloatArray
from workbench.gui.levels.room import clear_place, is_clear
from workbench.gui.widgets import draw_text
from workbench.gui.widgets.caption import draw_caption
from workbench.units import format_fixed

__all__ = ["Staircase"]

_LEFT, _TOP, _RIGHT, _FOOT = 46, 30, 14, 24
_RIGHTWARD = Qt.AlignmentFlag.AlignRight
_CENTRE = Qt.AlignmentFlag.AlignHCenter


class Staircase(CodeView):
    """Draws one CodeFigures as volts over code."""

    def place(self) -> QRectF:
        px = self.bench.px
        return QRectF(self.rect()).adjusted(px(_LEFT), px(_TOP), -px(_RIGHT), -px(_FOOT))

    headings: tuple[str, ...] = ("loaded volts for each code", "loaded volts", "")
    """What stands beside the head, longest wording first."""
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
            self._paint_ideal(painter, self._paint_callout(painter))

    def paint_behind(self, painter: QPainter) -> None:
        """Paint what lies behind the steps; children may."""

    def _paint_head(self, painter: QPainter) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(0, 0, self.width(), px(22))
        width = draw_text(painter, box, "Levels".upper(), type_.caps(), theme.color("dim"))
        words = box.adjusted(width + px(20), 0, 0, 0)
        draw_caption(painter, words, self.headings, type_.sans(0.9), theme.color("dim"))

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
        heights = self.heights(volts).tolist()
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

    def _white_box(self) -> QRectF:
        """Return where white is named: above its step."""
        assert self.figures is not None
        type_, px, area = self.bench.type, self.bench.px, self.area
        white = float(self.figures.volts[-1])
        width = type_.width(format_fixed(white, "V"), type_.mono(0.9, 500))
        return QRectF(area.right() - px(4) - width, self.volts_y(white) - px(20), width, px(16))

    def _paint_white(self, painter: QPainter) -> None:
        assert self.figures is not None
        theme, px, box = self.bench.theme, self.bench.px, self._white_box()
        text = format_fixed(float(self.figures.volts[-1]), "V")
        painter.fillRect(box.adjusted(-px(4), 0, px(4), 0), theme.color("plot"))
        draw_text(painter, box, text, self.bench.type.mono(0.9, 500), theme.color("text"))

    def heights(self, volts: FloatArray) -> FloatArray:
        """Return the heights of levels, shape (n_codes,). [px]"""
        return np.asarray(self.area.bottom() - self.area.height() / self.top_volts * volts)

    def _traces(self) -> tuple[FloatArray, ...]:
        assert self.figures is not None
        return self.heights(self.figures.volts), self.heights(self.figures.ideal_volts)

    def ideal_place(self, taken: QRectF | None = None) -> tuple[str, QRectF] | None:
        """Return how the ideal staircase is named, and where: under its own steps, clear of all else."""
        assert self.figures is not None
        type_, px, area = self.bench.type, self.bench.px, self.area
        whole = f"ideal, {format_fixed(WHITE_VOLTS, 'V')} at {self.figures.n_codes - 1}"
        others = [box for box in (taken, self._white_box()) if box is not None]
        for words in (whole, "ideal"):
            size = QSizeF(type_.width(words, type_.sans(0.82)), px(16))
            left = area.right() - px(8) - size.width()
            first = self.code_at(left - px(6)) or 0
            top = max(float(heights[first:].max()) for heights in self._traces())
            box = QRectF(QPointF(left, top + px(8)), size)
            if area.contains(box) and not any(box.intersects(other) for other in others):
                return words, box
        return None

    def _paint_ideal(self, painter: QPainter, taken: QRectF | None) -> None:
        place = self.ideal_place(taken)
        if place is not None:
            words, box = place
            draw_text(painter, box, words, self.bench.type.sans(0.82), self.bench.theme.color("dim"))

    def callout_place(self) -> QRectF | None:
        """Return where the words on the most uneven step stand: on no trace; none where no step is."""
        assert self.figures is not None
        px, area, code = self.bench.px, self.area, self.figures.worst_step
        if abs(self.figures.dnl_lsb[code]) < NOTABLE_LSB or area.height() < px(90):
            return None
        size, ring = Callout.on(self.bench, self.figures).size, self._ring(code)
        corner = QPointF(ring.x() - px(22) - size.width(), area.top() + px(14))
        usual, gap = QRectF(corner, size), float(px(6))
        if area.contains(usual) and is_clear(usual, area, self._traces(), gap):
            return usual
        return clear_place(size, area, self._traces(), (self._white_box(),), ring, gap)

    def _ring(self, code: int) -> QPointF:
        """Return the middle of the step into a code."""
        assert self.figures is not None
        middle = float(self.figures.volts[max(code - 1, 0) : code + 1].mean())
        return QPointF(self.code_x(code), self.volts_y(middle))

    def _paint_callout(self, painter: QPainter) -> QRectF | None:
        """Point at the most uneven step; return where its words stand."""
        assert self.figures is not None
        box, code = self.callout_place(), self.figures.worst_step
        if box is None:
            return None
        callout, ring = Callout.on(self.bench, self.figures), self._ring(code)
        callout.paint(painter, box)
        theme, radius = self.bench.theme, self.bench.px(8)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        weighty = abs(self.figures.dnl_lsb[code]) > EVEN_LSB
        painter.setPen(QPen(theme.color("warns" if weighty else "dim"), 1.4))
        painter.drawEllipse(ring, radius, radius)
        if box.right() < ring.x() - radius and box.bottom() < ring.y() - radius:
            callout.lead(painter, box, QPointF(ring.x(), ring.y() - radius))
        return box
