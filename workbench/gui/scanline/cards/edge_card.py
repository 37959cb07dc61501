"""The close-up of the nearest edge, with how long it takes."""

from dataclasses import dataclass

import numpy as np
from pyqtgraph.functions import arrayToQPolygonF
from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.edge_marks import EdgeMark
from workbench.gui.scanline.content.edges import CloseUp, smoothed
from workbench.gui.scanline.lanes.overlay import Overlay, draw_card
from workbench.gui.widgets import dash_pattern, draw_text
from workbench.project.document import Channel

__all__ = ["GHOST_DASH", "LEAST_HEIGHT", "SETTLED_DASH", "EdgeCard", "EdgeView"]

FINER = 4
"""Points drawn for each sample: the samples themselves would show as corners. [1]"""
LEAST_HEIGHT = 150
"""A lower card would show nothing. [design px]"""
GHOST_DASH, SETTLED_DASH = (1.0, 3.0), (4.0, 3.0)
"""Of the lines where a ghost comes, and where an edge has settled. [widths of the line]"""
RIGHT = Qt.AlignmentFlag.AlignRight


@dataclass(frozen=True, slots=True, eq=False)
class EdgeView:
    """What the card shows."""

    edge: CloseUp
    order: tuple[Channel, ...]
    """Channels from the lowest to the one on top."""
    drops: tuple[float, ...]
    """How far below its true place each channel of ``order`` is drawn. [px]"""
    dashed: bool
    top_volts: float
    title: str
    figures: tuple[tuple[str, str], ...]
    """Words and value of each line under the picture."""
    marks: tuple[EdgeMark, ...] = ()
    """What comes after the edge."""


class EdgeCard(Overlay):
    """Draws the traces around one edge."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=30)
        self._view: EdgeView | None = None
        self.setCacheMode(self.CacheMode.DeviceCoordinateCache)

    def show_edge(self, view: EdgeView) -> None:
        """Show another edge."""
        self._view = view
        self.update()

    def boundingRect(self) -> QRectF:
        return super().boundingRect().adjusted(0, 0, 4, 6)

    def draw(self, painter: QPainter) -> None:
        view = self._view
        if view is None:
            return
        px, type_, theme = self.bench.px, self.bench.type, self.bench.theme
        box = self.box
        draw_card(painter, self.bench, box.adjusted(0, 0, -2, -4))
        inner = box.adjusted(px(10), px(6), -px(12), -px(9))
        head = QRectF(inner.left(), inner.top(), inner.width(), px(18))
        draw_text(painter, head, view.title, type_.sans(0.86, 500), theme.color("text"))
        feet = inner.bottom() - px(17) * len(view.figures)
        for row, (words, value) in enumerate(view.figures):
            line = QRectF(inner.left(), feet + row * px(17), inner.width(), px(17))
            draw_text(painter, line, words, type_.sans(0.86), theme.color("dim"))
            draw_text(painter, line, value, type_.mono(0.90, 500), theme.color("text"), align=RIGHT)
        top, bottom = head.bottom() + px(4), feet - px(4)
        self._draw_plot(painter, QRectF(inner.left(), top, inner.width(), bottom - top), view)

    def _draw_plot(self, painter: QPainter, plot: QRectF, view: EdgeView) -> None:
        theme, edge = self.bench.theme, view.edge
        painter.fillRect(plot, theme.color("plot"))
        first_s, last_s = float(edge.times_s[0]), float(edge.times_s[-1])
        curves = smoothed(edge.volts, FINER)
        x = np.linspace(plot.left(), plot.right(), curves.shape[1])
        painter.save()
        painter.setClipRect(plot)
        self._draw_grid(painter, plot, first_s, last_s)
        per_s = plot.width() / (last_s - first_s)
        self._draw_marks(painter, plot, [plot.left() + (m.after_s - first_s) * per_s for m in view.marks])
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        inside = plot.adjusted(0, self.bench.px(6), 0, -self.bench.px(14))
        for channel, drop in zip(view.order, view.drops, strict=True):
            volts = curves[list(Channel).index(channel)]
            y = inside.bottom() - volts * (inside.height() / view.top_volts) + drop
            pen = QPen(theme.channel(channel), theme.trace_px)
            if view.dashed and dash_pattern(channel):
                pen.setDashPattern(list(dash_pattern(channel)))
            painter.setPen(pen)
            painter.drawPolyline(arrayToQPolygonF(x, y))
        painter.restore()

    def _draw_marks(self, painter: QPainter, plot: QRectF, places: list[float]) -> None:
        """Draw where each mark stands, with its name beside it at half the height."""
        px, type_, ink = self.bench.px, self.bench.type, self.bench.theme.color("dim")
        font, gap = type_.sans(0.80), px(4)
        marks = self._view.marks if self._view is not None else ()
        for row, (mark, x) in enumerate(zip(marks, places, strict=True)):
            if not plot.left() <= x <= plot.right():
                continue
            pen = QPen(ink, px(1))
            pen.setDashPattern(list(SETTLED_DASH if mark.settled else GHOST_DASH))
            painter.setPen(pen)
            painter.drawLine(QLineF(round(x) + 0.5, plot.top(), round(x) + 0.5, plot.bottom()))
            width = type_.width(mark.name, font)
            free = x + gap + width <= plot.right() and not any(
                x < other <= x + gap + width for other in places
            )
            left = x + gap if free else min(places) - gap - width
            box = QRectF(left, plot.center().y() + px(17) * (row - 1), width, px(17))
            draw_text(painter, box, mark.name, font, ink)

    def _draw_grid(self, painter: QPainter, plot: QRectF, first_s: float, last_s: float) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        painter.setPen(QPen(self.bench.theme.color("hairline"), 1))
        edge_x = plot.left() - first_s * plot.width() / (last_s - first_s)
        lines = [QLineF(edge_x, plot.top(), edge_x, plot.bottom())]
        for part in (0.2, 0.5, 0.8):
            y = plot.top() + part * plot.height()
            lines.append(QLineF(plot.left(), y, plot.right(), y))
        painter.drawLines(lines)
