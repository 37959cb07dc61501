"""The staircase with the band of boards behind it, and how far boards lie from the design."""

from math import ceil, log10

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from workbench.circuit.tolerance.monte_carlo import Tolerance
from workbench.gui.bench import Bench
from workbench.gui.levels.code_view import CodeView, Hold
from workbench.gui.levels.figures import CodeFigures, FloatArray
from workbench.gui.levels.staircase import Staircase
from workbench.gui.widgets import draw_text
from workbench.gui.widgets.caption import draw_caption

__all__ = ["BandStaircase", "Distance", "band_polygon"]

_LEFT, _TOP, _RIGHT, _FOOT = 46, 28, 14, 8
_RIGHTWARD = Qt.AlignmentFlag.AlignRight
_BAND_ALPHA = 0.28
_LEAST_TOP_MV = 1.0


def band_polygon(edges: FloatArray, low_y: FloatArray, high_y: FloatArray) -> QPolygonF:
    """Return the outline of a stepped band.

    Parameters
    ----------
    edges : float array, shape (n_codes + 1,)
        Left edges of the columns, and the right edge of the last. [px]
    low_y, high_y : float array, shape (n_codes,)
        Heights of the band's lower and upper edge. [px]
    """
    xs = np.repeat(edges, 2)[1:-1]
    upper, lower = np.repeat(high_y, 2), np.repeat(low_y, 2)
    ahead = [QPointF(x, y) for x, y in zip(xs.tolist(), upper.tolist(), strict=True)]
    back = [QPointF(x, y) for x, y in zip(xs[::-1].tolist(), lower[::-1].tolist(), strict=True)]
    return QPolygonF(ahead + back)


def board_px(bench: Bench) -> float:
    """Return how thick the line of a single board is: thinner than a trace. [px]"""
    return bench.theme.trace_px * 0.75


class BandStaircase(Staircase):
    """Draws a channel's staircase in front of the band in which 98 of 100 boards lie."""

    headings = (
        "loaded volts; the band holds 98 of 100 boards",
        "the band holds 98 of 100 boards",
        "98 of 100 boards",
        "",
    )

    def __init__(self, bench: Bench, hold: Hold, parent: QWidget | None = None) -> None:
        super().__init__(bench, "Staircase with the band of boards", hold, parent)
        self.boards: Tolerance | None = None
        self.board: int | None = None

    def show_boards(self, boards: Tolerance | None, board: int | None) -> None:
        """Show the band of other boards, and one board of them or none."""
        self.boards, self.board = boards, board
        self._scale()
        self.update()

    def show_codes(self, figures: CodeFigures, description: str) -> None:
        super().show_codes(figures, description)
        self._scale()

    def _scale(self) -> None:
        if self.figures is not None:
            shown = [self.figures.volts]
            if self.boards is not None:
                shown.append(self.boards.high_by_code)
                shown += [] if self.board is None else [self.boards.volts_by_board[self.board]]
            self.scale_to(max(float(volts.max(initial=0.0)) for volts in shown))

    def paint_behind(self, painter: QPainter) -> None:
        if self.boards is None or self.figures is None:
            return
        if len(self.boards.low_by_code) != self.figures.n_codes:
            return
        edges = np.linspace(self.area.left(), self.area.right(), self.figures.n_codes + 1)
        scale, foot = self.area.height() / self.top_volts, self.area.bottom()
        low, high = foot - scale * self.boards.low_by_code, foot - scale * self.boards.high_by_code
        painter.save()
        painter.setClipRect(self.area)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.bench.theme.channel(self.bench.view.channel, _BAND_ALPHA))
        painter.drawPolygon(band_polygon(edges, low, high))
        painter.restore()
        if self.board is not None:
            pen = QPen(self.bench.theme.color("accent"), board_px(self.bench))
            self.paint_steps(painter, self.boards.volts_by_board[self.board], pen)


class Distance(CodeView):
    """Draws how far the levels of boards lie from those of the design, in millivolts."""

    def __init__(self, bench: Bench, hold: Hold, parent: QWidget | None = None) -> None:
        super().__init__(bench, "Distance of boards from the design", hold, parent)
        self.boards: Tolerance | None = None
        self.board: int | None = None
        self.top_mv = _LEAST_TOP_MV
        """End of the scale either way. [mV]"""

    def show_boards(self, boards: Tolerance | None, board: int | None) -> None:
        """Show the band of other boards, and one board of them or none."""
        self.boards, self.board = boards, board
        self.top_mv = self._top()
        self.update()

    def show_codes(self, figures: CodeFigures, description: str) -> None:
        super().show_codes(figures, description)
        self.top_mv = self._top()

    def place(self) -> QRectF:
        px = self.bench.px
        return QRectF(self.rect()).adjusted(px(_LEFT), px(_TOP), -px(_RIGHT), -px(_FOOT))

    @property
    def fitting(self) -> Tolerance | None:
        """The boards, if they have as many codes as the figures; none while one of the two is new."""
        if self.boards is None or self.figures is None:
            return None
        return self.boards if len(self.boards.low_by_code) == self.figures.n_codes else None

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self.bench.theme
        with QPainter(self) as painter:
            painter.fillRect(self.area, theme.color("plot"))
            self._paint_head(painter)
            self._paint_scale(painter)
            boards = self.fitting
            if boards is None or self.figures is None:
                return
            self.light_held(painter)
            design = self.figures.volts
            edges = np.linspace(self.area.left(), self.area.right(), self.figures.n_codes + 1)
            low, high = self._y(boards.low_by_code - design), self._y(boards.high_by_code - design)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(theme.channel(self.bench.view.channel, _BAND_ALPHA))
            painter.setClipRect(self.area)
            painter.drawPolygon(band_polygon(edges, low, high))
            if self.board is not None:
                self._paint_board(painter, edges, self._y(boards.volts_by_board[self.board] - design))

    def _paint_board(self, painter: QPainter, edges: FloatArray, heights: FloatArray) -> None:
        xs, ys = np.repeat(edges, 2)[1:-1].tolist(), np.repeat(heights, 2).tolist()
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(self.bench.theme.color("accent"), board_px(self.bench)))
        painter.drawPolyline(QPolygonF([QPointF(x, y) for x, y in zip(xs, ys, strict=True)]))

    def _paint_head(self, painter: QPainter) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(0, 0, self.width(), px(22))
        width = draw_text(painter, box, "mV", type_.sans(0.9, 600), theme.color("text"))
        wordings = ("from the design, up and down; 98 of 100 boards", "from the design; 98 of 100 boards")
        if self.board is not None:
            wordings = (f"{wordings[0]}, and the board from the bag", "from the design, with the bag’s board")
        rest = box.adjusted(width + px(14), 0, 0, 0)
        draw_caption(painter, rest, (*wordings, "from the design"), type_.sans(0.9), theme.color("dim"))

    def _paint_scale(self, painter: QPainter) -> None:
        theme, type_, px, area = self.bench.theme, self.bench.type, self.bench.px, self.area
        for part in (1, 0, -1):
            y = round(area.center().y() - part * area.height() / 2)
            painter.setPen(theme.color("hairline" if part else "outline"))
            painter.drawLine(round(area.left()), y, round(area.right()), y)
            text = f"{part * self.top_mv:+g}".replace("-", "\u2212") if part else "0"
            box = QRectF(0, y - px(8), area.left() - px(8), px(16))
            draw_text(painter, box, text, type_.mono(0.82), theme.color("dim"), align=_RIGHTWARD)

    def _y(self, volts: FloatArray) -> FloatArray:
        area = self.area
        return np.asarray(area.center().y() - area.height() / 2 * (1e3 / self.top_mv) * volts)

    def _top(self) -> float:
        """Return an end of the scale that is a round number and holds the band. [mV]"""
        boards = self.fitting
        if boards is None or self.figures is None:
            return _LEAST_TOP_MV
        design = self.figures.volts
        reach = max(np.abs(boards.low_by_code - design).max(), np.abs(boards.high_by_code - design).max())
        if self.board is not None:
            reach = max(reach, np.abs(boards.volts_by_board[self.board] - design).max())
        wanted = max(1e3 * float(reach), _LEAST_TOP_MV)
        decade = 10.0 ** (ceil(log10(wanted)) - 1)
        return next(step * decade for step in (1.0, 2.0, 5.0, 10.0) if step * decade >= wanted * 0.999)
