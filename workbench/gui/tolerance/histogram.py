"""How one figure spreads over the boards: bars, the permitted window, the worst there can be."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.checks.limits import Limit
from workbench.circuit.tolerance.monte_carlo import Spread
from workbench.gui.bench import Bench
from workbench.gui.tolerance.words import spread_words, worst_words
from workbench.gui.widgets import draw_text
from workbench.gui.widgets.caption import draw_caption
from workbench.units import format_fixed

__all__ = ["SpreadView"]

_LEFT, _TOP, _RIGHT, _FOOT = 2, 26, 2, 18
_RIGHTWARD = Qt.AlignmentFlag.AlignRight
_CENTRE = Qt.AlignmentFlag.AlignHCenter
_MARGIN = 0.12
"""Part of the scale left free at its ends. [1]"""
_LEAST_STEPS = 20
"""How many steps of the last decimal a scale spans at least. [1]"""


class SpreadView(QWidget):
    """Draws the histogram of one figure; the board looked at is marked in it."""

    def __init__(
        self,
        bench: Bench,
        name: str,
        limit: Limit,
        *,
        decimals: int,
        both: bool,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._bench, self._name, self._limit = bench, name, limit
        self._decimals, self._both = decimals, both
        self.spread: Spread | None = None
        self.board: float | None = None
        self.setAccessibleName(f"{name} over the boards")
        bench.theme_changed.connect(self.update)

    def show_spread(self, spread: Spread | None, board: float | None) -> None:
        """Show another spread, and the figure of the board looked at or none."""
        self.spread, self.board = spread, board
        if spread is not None:
            self.setAccessibleDescription(f"{self._usual(spread)}, {self._worst(spread)}")
        self.update()

    @property
    def scale(self) -> tuple[float, float]:
        """Ends of the scale, in the figure's unit."""
        if self.spread is None:
            return 0.0, 1.0
        shown = self.spread.histogram
        low, high = shown.low, max(shown.high, self.spread.worst_high)
        low = min(low, self.spread.worst_low) if self._both else 0.0
        if self.board is not None:
            low, high = min(low, self.board), max(high, self.board)
        # Where all boards are alike the scale still has a width that its figures can show.
        room = max(_MARGIN * (high - low), _LEAST_STEPS * 10.0**-self._decimals - (high - low))
        return (low - room / 2 if self._both else 0.0), high + room / (2 if self._both else 1)

    def x_of(self, value: float) -> float:
        """Return the place of a value on the scale. [px]"""
        low, high = self.scale
        area = self.area
        return area.left() + area.width() * (value - low) / (high - low)

    @property
    def area(self) -> QRectF:
        """Where the bars stand."""
        px = self._bench.px
        return QRectF(self.rect()).adjusted(px(_LEFT), px(_TOP), -px(_RIGHT), -px(_FOOT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.area, self._bench.theme.color("plot"))
            self._paint_head(painter)
            if self.spread is None:
                return
            self._paint_window(painter)
            self._paint_bars(painter, self.spread)
            self._paint_marks(painter, self.spread)

    def _usual(self, spread: Spread) -> str:
        return spread_words(spread, self._limit.unit, self._decimals)

    def _worst(self, spread: Spread) -> str:
        return worst_words(spread, self._limit.unit, self._decimals, both=self._both)

    def _paint_head(self, painter: QPainter) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        box = QRectF(0, 0, self.width(), px(22))
        width = draw_text(painter, box, self._name, type_.sans(0.9, 600), theme.color("text"))
        if self.spread is None:
            return
        usual = self._usual(self.spread)
        words = box.adjusted(width + px(10), 0, 0, 0)
        short = (usual, usual.removesuffix(" in 98 of 100"), "")
        draw_caption(painter, words, short, type_.sans(0.9), theme.color("text"))

    def _paint_window(self, painter: QPainter) -> None:
        """Tint what the limit permits, and draw its edges."""
        theme, area = self._bench.theme, self.area
        low, high = self.scale
        first = max(low, self._limit.low if self._limit.low is not None else low)
        last = min(high, self._limit.high if self._limit.high is not None else high)
        if first < last:
            window = QRectF(QPointF(self.x_of(first), area.top()), QPointF(self.x_of(last), area.bottom()))
            painter.fillRect(window, theme.color("passes", 0.10))
        painter.setPen(QPen(theme.color("passes"), 1.2))
        for edge in (self._limit.low, self._limit.high):
            if edge is not None and low < edge < high:
                x = round(self.x_of(edge)) + 0.5
                painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()))

    def _paint_bars(self, painter: QPainter, spread: Spread) -> None:
        area, shown = self.area, spread.histogram
        most = max(shown.counts)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._bench.theme.color("dim", 0.85))
        left, right = self.x_of(shown.low), self.x_of(shown.high)
        width = (right - left) / len(shown.counts)
        if width < 1.0:
            painter.drawRect(QRectF(left - 1.5, area.top(), max(3.0, right - left + 3.0), area.height()))
            return
        bars = [
            QRectF(left + width * n, area.bottom() - height, max(width - 0.5, 0.5), height)
            for n, count in enumerate(shown.counts)
            if (height := area.height() * 0.94 * count / most)
        ]
        painter.drawRects(bars)

    def _paint_marks(self, painter: QPainter, spread: Spread) -> None:
        """Mark the worst there can be and say how much that is; point at the board looked at."""
        theme, px, area = self._bench.theme, self._bench.px, self.area
        pen = QPen(theme.color("text"), 1.2)
        pen.setDashPattern([3.0, 3.0])
        painter.setPen(pen)
        edges = (spread.worst_low, spread.worst_high) if self._both else (spread.worst_high,)
        for edge in edges:
            x = round(self.x_of(edge)) + 0.5
            painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()))
        foot = QRectF(area.left(), area.bottom() + px(2), area.width(), px(16))
        left, right = self.ends
        face, ink = self._bench.type.mono(0.8), theme.color("dim")
        draw_text(painter, foot, left, face, ink)
        draw_text(painter, foot, right, face, ink, align=_RIGHTWARD)
        if self.board is not None:
            taken = (self._bench.type.width(left, face), self._bench.type.width(right, face))
            self._paint_board(painter, self.board, foot.adjusted(taken[0] + px(4), 0, -taken[1] - px(4), 0))

    @property
    def ends(self) -> tuple[str, str]:
        """What stands under the ends of the bars: the worst there can be, or where the scale begins."""
        if self.spread is None:
            return "", ""
        least = self.spread.worst_low if self._both else 0.0
        most = format_fixed(self.spread.worst_high, self._limit.unit, decimals=self._decimals)
        return format_fixed(least, "", decimals=self._decimals), f"at worst {most}"

    def _paint_board(self, painter: QPainter, board: float, free: QRectF) -> None:
        """Point at a board, and write its figure where the foot is free."""
        theme, type_, px, area = self._bench.theme, self._bench.type, self._bench.px, self.area
        x = self.x_of(board)
        painter.setPen(QPen(theme.color("accent"), 2.0))
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()))
        text, face = format_fixed(board, "", decimals=self._decimals), type_.mono(0.8, 600)
        half = type_.width(text, face) / 2 + px(3)
        middle = max(min(x, free.right() - half), free.left() + half)
        box = QRectF(middle - half, free.top(), 2 * half, free.height())
        draw_text(painter, box, text, face, theme.color("accent"), align=_CENTRE)
