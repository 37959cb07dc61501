"""The first pixels of a line as a plan makes them, to scale: the long ones stand out."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import draw_text
from workbench.timing.clock.pixels import line_clocks, pixel_clocks
from workbench.timing.clock.plan import Jitter, Plan
from workbench.timing.mode import Mode

__all__ = ["PixelStrip"]

_PIXELS = 24
_LINES = 4
_HEIGHT = 106


class PixelStrip(QWidget):
    """Draws one Plan: how many system clocks each pixel lasts, and whether lines are alike."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.plan: Plan | None = None
        self.clocks: list[int] = []
        self.lines: list[int] = []
        bench.theme_changed.connect(self.updateGeometry)
        self.setAccessibleName("First pixels of a line")

    def show_plan(self, mode: Mode, plan: Plan | None) -> None:
        """Show another plan, or none."""
        self.plan = plan
        self.clocks = pixel_clocks(plan.divider, _PIXELS).tolist() if plan else []
        self.lines = line_clocks(plan.divider, mode.h.total, _LINES).tolist() if plan else []
        self.setAccessibleDescription(self.sentence())
        self.update()

    def sentence(self) -> str:
        """Say what the strip shows."""
        if self.plan is None:
            return ""
        if self.plan.jitter is Jitter.NONE:
            clocks = "1 system clock" if self.clocks[0] == 1 else f"{self.clocks[0]} system clocks"
            return f"every pixel lasts {clocks}, every line {self.lines[0]}"
        low, high = min(self.clocks), int(self.plan.divider) + 1
        lines = f"every line {self.lines[0]}"
        if self.plan.jitter is Jitter.LINE:
            lines = f"lines {', '.join(str(count) for count in self.lines)} …"
        return f"pixels last {low} or {high} system clocks, {lines}"

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(320), self.bench.px(_HEIGHT))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.bench.px(240), self.bench.px(_HEIGHT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        with QPainter(self) as painter:
            head = QRectF(0, 0, self.width(), px(20))
            draw_text(painter, head, "FIRST PIXELS OF A LINE", type_.caps(), theme.color("dim"))
            if self.plan is None:
                return
            bar = QRectF(0.5, px(34), self.width() - 1, px(30))
            self._paint_even(painter, bar)
            self._paint_pixels(painter, bar)
            words = QRectF(0, bar.bottom() + px(10), self.width(), px(20))
            draw_text(painter, words, self.sentence(), type_.sans(0.9), theme.color("dim"), elide=True)

    def _paint_even(self, painter: QPainter, bar: QRectF) -> None:
        """Mark above the bar where even pixels would begin."""
        painter.setPen(QPen(self.bench.theme.color("outline"), 1))
        for pixel in range(_PIXELS + 1):
            x = round(bar.left() + bar.width() * pixel / _PIXELS)
            painter.drawLine(x, round(bar.top() - self.bench.px(7)), x, round(bar.top() - self.bench.px(2)))

    def _paint_pixels(self, painter: QPainter, bar: QRectF) -> None:
        theme, type_ = self.bench.theme, self.bench.type
        assert self.plan is not None
        whole = bar.width() / (float(self.plan.divider) * _PIXELS)
        least, x = min(self.clocks), bar.left()
        uneven = self.plan.jitter is not Jitter.NONE
        for number, clocks in enumerate(self.clocks):
            box = QRectF(x, bar.top(), clocks * whole, bar.height())
            long = uneven and clocks > least
            fill = (
                theme.mixed("plot", "warns", 0.45)
                if long
                else theme.mixed("plot", "dim", 0.14 + 0.16 * (number % 2))
            )
            painter.fillRect(box, fill)
            if box.width() > self.bench.px(13):
                ink = theme.color("text" if long else "dim")
                centre = Qt.AlignmentFlag.AlignHCenter
                draw_text(painter, box, str(clocks), type_.mono(0.8, 600 if long else 400), ink, align=centre)
            x += clocks * whole
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(theme.color("outline"), 1))
        painter.drawRect(bar)
