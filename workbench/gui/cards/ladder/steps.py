"""The staircase that a new ladder would make."""

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.checks.limits import WHITE, WHITE_VOLTS
from workbench.circuit.ports import FloatArray
from workbench.gui.bench import Bench
from workbench.gui.widgets.dashes import trace_pen
from workbench.gui.widgets.text import draw_text
from workbench.pipeline.result import Result
from workbench.project.document import Channel
from workbench.units import format_fixed

__all__ = ["StepsSketch"]

HEIGHT, _LEFT, _FOOT = 104, 46, 18
"""The whole, and the room for the scale and for the codes. [design px]"""
_ROOM_ABOVE = 1.06


class StepsSketch(QWidget):
    """Sketches the loaded levels of a result over the codes, each channel once that is not like red."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.levels: dict[Channel, FloatArray] = {}
        """Loaded levels of the channels that are drawn, shape (n_codes,) each. [V]"""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(self._bench.px(200), self._bench.px(HEIGHT))

    def show_result(self, result: Result | None) -> None:
        """Draw the levels of a result; none for an empty plot."""
        self.levels = {}
        if result is not None:
            red = result.channels.red
            for channel in Channel:
                solved = result.channels[channel]
                if channel is Channel.RED or solved.network != red.network:
                    self.levels[channel] = solved.levels.volts_by_code
        self.setAccessibleName(
            f"Staircase of {', '.join(channel.value for channel in self.levels) or 'nothing'}"
        )
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        px, theme = self._bench.px, self._bench.theme
        area = QRectF(self.rect()).adjusted(px(_LEFT), px(2), -px(2), -px(_FOOT))
        top = _ROOM_ABOVE * max([WHITE.high or WHITE_VOLTS, *(float(v.max()) for v in self.levels.values())])
        with QPainter(self) as painter:
            painter.fillRect(area, theme.color("plot"))
            self._paint_scale(painter, area, top)
            for channel, volts in self.levels.items():
                ideal = np.linspace(0.0, WHITE_VOLTS, len(volts))
                painter.setPen(QPen(theme.color("ideal"), 1.0))
                painter.drawPolyline(_steps(area, ideal, top))
                painter.setPen(trace_pen(self._bench, channel))
                painter.drawPolyline(_steps(area, volts, top))

    def _paint_scale(self, painter: QPainter, area: QRectF, top: float) -> None:
        px, theme, face = self._bench.px, self._bench.theme, self._bench.type.mono(0.82)
        high, low = ((volts or WHITE_VOLTS) / top for volts in (WHITE.high, WHITE.low))
        band = QRectF(
            area.left(), area.bottom() - high * area.height(), area.width(), (high - low) * area.height()
        )
        painter.fillRect(band, theme.color("passes", 0.10))
        right = Qt.AlignmentFlag.AlignRight
        for volts in (0.0, WHITE_VOLTS):
            y = area.bottom() - volts / top * area.height()
            label = QRectF(0, y - px(8), area.left() - px(6), px(16))
            draw_text(
                painter, label, format_fixed(volts, "V", decimals=1), face, theme.color("dim"), align=right
            )
        foot = QRectF(area.left(), area.bottom() + px(2), area.width(), px(_FOOT - 2))
        draw_text(painter, foot, "code 0", face, theme.color("dim"))
        last = {str(len(volts) - 1): None for volts in self.levels.values()}
        draw_text(painter, foot, ", ".join(last), face, theme.color("dim"), align=right)


def _steps(area: QRectF, volts: FloatArray, top: float) -> QPolygonF:
    """Return levels as a staircase."""
    edges = np.linspace(area.left(), area.right(), len(volts) + 1)
    x = np.repeat(edges, 2)[1:-1]
    y = np.repeat(area.bottom() - volts / top * area.height(), 2)
    return QPolygonF([QPointF(*point) for point in zip(x.tolist(), y.tolist(), strict=True)])
