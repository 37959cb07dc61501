"""White with the monitor connected and without it, always side by side."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.checks.groups import is_sound
from workbench.checks.limits import WHITE, WHITE_VOLTS
from workbench.gui.bench import Bench
from workbench.gui.widgets import Sign, draw_sign, draw_text
from workbench.gui.widgets.control import outlined
from workbench.pipeline.result import Result
from workbench.project.document import Project
from workbench.units import format_fixed, format_quantity

__all__ = ["WhiteStatus"]

_LOWEST, _HIGHEST = 0.6, 0.85
"""Ends of the bar that shows where white lies. [V]"""
_OPEN, _BAR, _PAD = 300, 112, 24


class WhiteStatus(QWidget):
    """Shows the drawn channel's white: loaded, open, and where it lies in the permitted window."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("White")
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
        self._folded = False
        self._result: Result | None = None
        self._said: tuple[object, ...] = ()
        self.loaded_volts: float | None = None
        """Level with the monitor; none where the network has none. [V]"""
        self.open_volts: float | None = None
        bench.view.changed.connect(self._take)
        bench.theme_changed.connect(self._restyle)

    def show_result(self, _project: Project, result: Result) -> None:
        """Show a result's white."""
        self._result = result
        self._take()

    def set_folded(self, *, folded: bool) -> None:
        """Take one line, or two rows and a bar."""
        if folded != self._folded:
            self._folded = folded
            self.updateGeometry()
            self.update()

    @property
    def verdict(self) -> str:
        """Where white lies, in words."""
        if self.loaded_volts is None:
            return "no level"
        if WHITE.holds(self.loaded_volts):
            return "inside"
        return "below" if self.loaded_volts < WHITE_VOLTS else "above"

    def sizeHint(self) -> QSize:
        if not self._folded:
            return QSize(self.bench.px(_OPEN), self.bench.px(120))
        return QSize(round(self._folded_width()) + 2 * self.bench.px(20), self.bench.px(44))

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.setPen(self.bench.theme.color("hairline"))
            painter.drawLine(0, 0, 0, self.height())
            if self._folded:
                self._paint_folded(painter)
            else:
                self._paint_open(painter)

    def _restyle(self) -> None:
        self.updateGeometry()
        self.update()

    def _take(self) -> None:
        levels = self._result.channels[self.bench.view.channel].levels if self._result else None
        sound = levels is not None and is_sound(levels)
        self.loaded_volts = float(levels.volts_by_code[-1]) if levels is not None and sound else None
        self.open_volts = float(levels.open_by_code[-1]) if levels is not None and sound else None
        words = f"loaded {self._loaded_text()}, open {self._open_text()}, {self.verdict} 0.665 … 0.770 V"
        said = (words, self.loaded_volts, self._load_text(), self.bench.view.channel)
        if said != self._said:
            self._said = said
            self.setAccessibleDescription(words)
            self.update()

    def _loaded_text(self) -> str:
        return "–" if self.loaded_volts is None else format_fixed(self.loaded_volts, "V")

    def _open_text(self) -> str:
        return "–" if self.open_volts is None else format_fixed(self.open_volts, "V", decimals=2)

    def _paint_open(self, painter: QPainter) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        left, second = px(_PAD), px(_PAD + 144)
        dim, text = theme.color("dim"), theme.color("text")
        channel = self.bench.view.channel.value

        def row(x: float, middle: int) -> QRectF:
            return QRectF(x, px(middle) - px(14), self.width() - x, px(28))

        draw_text(painter, row(left, 24), f"white of {channel}", type_.sans(0.9), dim)
        draw_text(painter, row(left, 55), self._loaded_text(), type_.mono(1.72, 600), text)
        draw_text(painter, row(second, 55), self._open_text(), type_.mono(1.72, 400), text)
        draw_text(painter, row(left, 81), f"loaded, {self._load_text()}", type_.sans(0.9), dim)
        draw_text(painter, row(second, 81), "open, no display", type_.sans(0.9), dim)
        bar = QRectF(left, px(101), px(_BAR), px(6))
        self._paint_bar(painter, bar)
        at = bar.right() + px(12)
        sign = QRectF(at, px(104) - px(6), px(12), px(12))
        draw_sign(painter, sign, Sign.PASSES if self.verdict == "inside" else Sign.FAILS, theme)
        words = self.verdict if self.loaded_volts is None else f"{self.verdict} 0.665 … 0.770"
        draw_text(painter, row(sign.right() + px(7), 104), words, type_.sans(0.9), dim)

    def _paint_bar(self, painter: QPainter, bar: QRectF) -> None:
        """Draw the permitted window to scale, nominal white in it, and a dot where white lies."""
        theme, px = self.bench.theme, self.bench.px

        def x(volts: float) -> float:
            part = (min(max(volts, _LOWEST), _HIGHEST) - _LOWEST) / (_HIGHEST - _LOWEST)
            return bar.left() + part * bar.width()

        outlined(painter, bar, bar.height() / 2, theme.color("plot"), QPen(theme.color("outline"), 1.1))
        if WHITE.low is not None and WHITE.high is not None:
            window = QRectF(QPointF(x(WHITE.low), bar.top()), QPointF(x(WHITE.high), bar.bottom()))
            painter.fillRect(window, theme.mixed("plot", "passes", 0.5))
        painter.setPen(QPen(theme.color("text"), 1.2))
        painter.drawLine(
            QPointF(x(WHITE_VOLTS), bar.top() - px(2)), QPointF(x(WHITE_VOLTS), bar.bottom() + px(2))
        )
        if self.loaded_volts is not None:
            painter.setPen(QPen(theme.color("panel"), 1.5))
            painter.setBrush(theme.color("text"))
            painter.drawEllipse(QPointF(x(self.loaded_volts), bar.center().y()), px(5), px(5))

    def _paint_rows(self, painter: QPainter) -> None:
        """Paint loaded over open, for a projector: the sentence beside them needs the width."""
        theme, px = self.bench.theme, self.bench.px
        loaded, loaded_volts, opened, open_volts = self._folded_words()
        half = self.height() / 2 - px(3)
        right = Qt.AlignmentFlag.AlignRight
        for row, (name, value) in enumerate(((loaded, loaded_volts), (opened, open_volts))):
            box = QRectF(px(14), px(3) + row * half, self.width() - px(28), half)
            draw_text(painter, box, name[0].strip(), name[1], theme.color(name[2]))
            draw_text(painter, box, value[0], value[1], theme.color(value[2]), align=right)

    def _paint_folded(self, painter: QPainter) -> None:
        if self.bench.projecting:
            self._paint_rows(painter)
            return
        theme, px = self.bench.theme, self.bench.px
        x = self.width() - px(20) - self._folded_width()
        for text, font, role in self._folded_words():
            box = QRectF(x, 0, self.width(), self.height())
            x += draw_text(painter, box, text, font, theme.color(role), align=Qt.AlignmentFlag.AlignLeft)

    def _folded_words(self):
        type_ = self.bench.type
        return (
            ("loaded ", type_.sans(), "dim"),
            (self._loaded_text(), type_.mono(1.06, 600), "text"),
            ("  open ", type_.sans(), "dim"),
            (self._open_text(), type_.mono(1.06, 400), "text"),
        )

    def _folded_width(self) -> float:
        """Return the room of the one line; room for the longest values, so that nothing moves. [px]"""
        widths = [QFontMetricsF(font).horizontalAdvance(text) for text, font, _ in self._folded_words()]
        return max(sum(widths[:2]), sum(widths[2:])) if self.bench.projecting else sum(widths)

    def _load_text(self) -> str:
        load = self._result.project.load if self._result else None
        if load is None or load.ohms is None:
            return "nothing"
        each = format_quantity(load.ohms, "Ω")
        return each if load.monitors == 1 else f"{load.monitors} × {each}"
