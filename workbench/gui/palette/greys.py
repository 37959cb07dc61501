"""The greys of a board: each beside the true grey of its lightness, those that are tinted marked."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import draw_text
from workbench.picture.light import light_from_volts, srgb_bytes
from workbench.picture.palette import NEUTRAL, Palette

__all__ = ["Greys", "grey_words"]

_HEAD, _FOOT = 20, 18
_LISTED = 12
"""Neutral greys up to this number are listed one by one. [1]"""


class Greys(QWidget):
    """Draws the greys of one palette from dark to light."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._palette: Palette | None = None
        self.setAccessibleName("Greys of the board")
        bench.theme_changed.connect(self.update)

    def show_palette(self, palette: Palette) -> None:
        """Show other greys."""
        self._palette = palette
        self.setAccessibleDescription(grey_words(palette))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self._palette is None:
            return
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        greys = self._palette.greys
        strip = QRectF(self.rect()).adjusted(0, px(_HEAD), -1, -px(_FOOT))
        width = strip.width() / len(greys)
        half = strip.height() / 2
        with QPainter(self) as painter:
            head = QRectF(0, 0, self.width(), px(_HEAD))
            draw_text(painter, head, "greys: as made, and true below", type_.sans(0.86), theme.color("dim"))
            for number, grey in enumerate(greys):
                made = [int(byte) for byte in srgb_bytes(light_from_volts(list(grey.volts)))]
                true = int(srgb_bytes(_light_of(grey.lightness)))
                left = strip.left() + number * width
                painter.fillRect(QRectF(left, strip.top(), width + 1, half), QColor(*made))
                painter.fillRect(QRectF(left, strip.top() + half, width + 1, half), QColor(true, true, true))
                if not grey.neutral:
                    self._mark(painter, QRectF(left, strip.bottom() + px(3), width, px(8)))
            painter.setPen(QPen(theme.color("outline"), 1.1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(strip)
            if any(not grey.neutral for grey in greys):
                foot = QRectF(0, self.height() - px(_FOOT) + px(8), self.width(), px(12))
                draw_text(painter, foot, "▲ tinted", type_.sans(0.8), theme.color("dim"))

    def _mark(self, painter: QPainter, box: QRectF) -> None:
        """Put a small triangle under a tinted grey."""
        theme = self._bench.theme
        side = min(box.width(), box.height())
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.color("warns"))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        x, y = box.center().x(), box.top()
        painter.drawPolygon(_triangle(x, y, side))


def _triangle(x: float, y: float, side: float) -> QPolygonF:
    return QPolygonF([QPointF(x, y), QPointF(x - side / 2, y + side), QPointF(x + side / 2, y + side)])


def _light_of(lightness: float) -> float:
    """Return the luminance of a lightness L*, 0 … 1. [1]"""
    f = (lightness + 16.0) / 116.0
    return f**3 if f > 6.0 / 29.0 else (f - 4.0 / 29.0) * 3.0 * (6.0 / 29.0) ** 2


def grey_words(palette: Palette) -> str:
    """Return which greys are neutral and which is most tinted, in a sentence."""
    neutral, greys = palette.neutral_greys, palette.greys
    tinted = [grey for grey in greys if not grey.neutral]
    if not tinted:
        return f"All {len(greys)} greys are neutral: no tint of ΔE {NEUTRAL:g} or more."
    worst = max(tinted, key=lambda grey: grey.tint)
    few = len(neutral) <= _LISTED
    exist = f" (L* {', '.join(f'{grey.lightness:.0f}' for grey in neutral)})" if few else ""
    return (
        f"{len(neutral)} of {len(greys)} greys are neutral{exist}; {len(tinted)} are tinted, the worst "
        f"at L* {worst.lightness:.0f} by ΔE {worst.tint:.1f}."
    )
