"""The strip of figures under the drawing: one step, worst step error, source, current, edge."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.checks.groups import is_sound
from workbench.gui.bench import Bench
from workbench.gui.widgets import draw_text
from workbench.pipeline.result import ChannelResult
from workbench.units import format_fixed, format_quantity

__all__ = ["FiguresStrip", "figure_texts"]

HEIGHT = 70
NAMES = ("one step", "worst step error", "source", "channel at white", "edge, 10–90 %")


def figure_texts(channel: ChannelResult) -> tuple[str, ...]:
    """Return the figures of a channel, in the order of their names; dashes where it has no levels."""
    if not is_sound(channel.levels):
        return ("–",) * len(NAMES)
    straight, levels = channel.linearity, channel.levels
    white_amps = float(levels.pin_amps[-1].clip(min=0.0).sum())
    return (
        format_fixed(straight.lsb_volts, "V", prefix="m", decimals=1),
        f"{straight.max_dnl_lsb:.2f} LSB",
        format_quantity(levels.source_ohms, "Ω", 3),
        format_fixed(white_amps, "A", prefix="m", decimals=1),
        format_quantity(channel.step.rise_s, "s", 2),
    )


class FiguresStrip(QWidget):
    """Draws five figures of one channel's Result."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._texts: tuple[str, ...] = ("",) * len(NAMES)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        bench.theme_changed.connect(self.updateGeometry)

    def show_channel(self, channel: ChannelResult) -> None:
        """Show a channel's figures."""
        texts = figure_texts(channel)
        if texts != self._texts:
            self._texts = texts
            told = "; ".join(f"{name} {text}" for name, text in zip(NAMES, texts, strict=True))
            self.setAccessibleName(f"Figures: {told}")
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(self._bench.px(500), self._bench.px(HEIGHT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        left = px(20)
        width = (self.width() - left) / len(NAMES)
        with QPainter(self) as painter:
            painter.setPen(theme.color("hairline"))
            painter.drawLine(left, 0, self.width() - left, 0)
            for place, (name, text) in enumerate(zip(NAMES, self._texts, strict=True)):
                x = round(left + place * width)
                head = QRectF(x, px(14), width - px(6), px(16))
                figure = QRectF(x, px(33), width - px(6), px(26))
                draw_text(painter, head, name, type_.sans(0.90), theme.color("dim"), elide=True)
                size = 1.5 if width > px(120) else 1.2
                draw_text(painter, figure, text, type_.mono(size, 500), theme.color("text"))
