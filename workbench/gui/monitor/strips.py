"""Two strips to scale: the width a monitor shows with the soft bands in it, and where it takes black."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QLinearGradient, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.monitor.sentences import MOST_BANDS, band_count
from workbench.gui.timing.tints import region_tint
from workbench.gui.widgets import draw_text
from workbench.project.document import Direction
from workbench.timing.mode import Region
from workbench.timing.seen_as import Sighting

__all__ = ["BlackStrip", "ScreenStrip"]

_RIGHT = Qt.AlignmentFlag.AlignRight
_WINDOW = 8
"""Height of the time in which black is taken. [design px]"""
_LEAD = 0.12
"""Part of the bar that stands for the end of sync. [1]"""


class _Strip(QWidget):
    """A caption over a bar that shows one Sighting."""

    def __init__(self, bench: Bench, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.seen: Sighting | None = None
        self.setAccessibleName(name)
        bench.theme_changed.connect(self.updateGeometry)

    def show_sighting(self, seen: Sighting) -> None:
        """Show another sighting."""
        self.seen = seen
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(300), self.bench.px(52))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.bench.px(200), self.bench.px(50))

    @property
    def bar(self) -> QRectF:
        """Where the bar lies."""
        px = self.bench.px
        return QRectF(0.5, px(22) + 0.5, self.width() - 1, px(24))

    def caption(self, painter: QPainter, left: str, right: str) -> None:
        """Write over the bar."""
        theme, type_ = self.bench.theme, self.bench.type
        box = QRectF(0, 0, self.width(), self.bench.px(18))
        used = draw_text(painter, box, left, type_.sans(0.86), theme.color("dim"))
        rest = box.adjusted(used + self.bench.px(12), 0, 0, 0)
        draw_text(painter, rest, right, type_.mono(0.86), theme.color("text"), align=_RIGHT, elide=True)

    def outline(self, painter: QPainter, box: QRectF) -> None:
        """Draw the edge of a bar."""
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(self.bench.theme.color("outline"), 1))
        painter.drawRect(box)


class ScreenStrip(_Strip):
    """Draws the picture in the width that a monitor shows, and what is soft in it."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.seen is None:
            return
        theme, bar, place = self.bench.theme, self.bar, self.seen.horizontal
        scale = bar.width() / place.shown
        with QPainter(self) as painter:
            self.caption(
                painter,
                f"on the screen, {place.shown} px wide",
                band_count(self.seen),
            )
            painter.setClipRect(bar)
            painter.fillRect(bar, theme.color("plot"))
            picture = QRectF(bar.left() + place.shift * scale, bar.top(), place.length * scale, bar.height())
            painter.fillRect(picture, theme.mixed("plot", "text", 0.22))
            self._paint_bands(painter, picture)
            painter.setClipping(False)
            self.outline(painter, bar)

    def _paint_bands(self, painter: QPainter, picture: QRectF) -> None:
        """Shade from sharp to soft and back, once for every band."""
        assert self.seen is not None
        bands, active = self.seen.bands, self.seen.mode.h.active
        soft = self.bench.theme.color("warns", 0.75)
        clear = self.bench.theme.color("warns", 0.0)
        if len(bands.centres_px) > MOST_BANDS:
            painter.fillRect(picture, self.bench.theme.color("warns", 0.5))
            return
        half = bands.spacing_px / 2 if bands.per_line else 0.0
        for centre in bands.centres_px:
            left = picture.left() + (centre - half) / active * picture.width()
            right = picture.left() + (centre + half) / active * picture.width()
            shade = QLinearGradient(QPointF(left, 0), QPointF(right, 0))
            for at, colour in ((0.0, clear), (0.3, clear), (0.5, soft), (0.7, clear), (1.0, clear)):
                shade.setColorAt(at, colour)
            painter.fillRect(QRectF(left, picture.top(), right - left, picture.height()), shade)


class BlackStrip(_Strip):
    """Draws the back porch between sync and picture, and the time in which black is taken.

    The time lies along the foot of the bar, under the names, so that it crosses none of them.
    """

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(300), self.bench.px(56))

    @property
    def bar(self) -> QRectF:
        """Where the bar lies."""
        return super().bar.adjusted(0, 0, 0, self.bench.px(5))

    def areas(self) -> tuple[tuple[str, QRectF], ...]:
        """Return what follows each other along the bar: its name and where it lies. [px]"""
        porch = self._porch()
        bar = self.bar
        return (
            ("sync", QRectF(bar.left(), bar.top(), porch.left() - bar.left(), bar.height())),
            ("back porch", porch),
            ("picture", QRectF(porch.right(), bar.top(), bar.right() - porch.right(), bar.height())),
        )

    def names(self) -> tuple[tuple[str, QRectF], ...]:
        """Return the names and where each is written. [px]"""
        px = self.bench.px
        foot = px(_WINDOW + 3)
        return tuple((name, area.adjusted(px(4), 0, -px(4), -foot)) for name, area in self.areas())

    def window_box(self) -> QRectF:
        """Return where the time lies in which black is taken. [px]"""
        assert self.seen is not None
        black, bar, height = self.seen.black, self.bar, self.bench.px(_WINDOW)
        left, scale = self._porch().left() + black.start_s * self._scale, self._scale
        top = bar.bottom() - height - self.bench.px(2)
        return QRectF(left, top, (black.end_s - black.start_s) * scale, height)

    @property
    def _scale(self) -> float:
        """How long a second is. [px]"""
        assert self.seen is not None
        black = self.seen.black
        return (1 - _LEAD) * self.bar.width() / (max(black.back_porch_s, black.end_s) * 1.25)

    def _porch(self) -> QRectF:
        assert self.seen is not None
        bar = self.bar
        left = bar.left() + _LEAD * bar.width()
        return QRectF(left, bar.top(), self.seen.black.back_porch_s * self._scale, bar.height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.seen is None:
            return
        theme, black = self.bench.theme, self.seen.black
        fills = (
            region_tint(theme, Region.SYNC, Direction.HORIZONTAL),
            region_tint(theme, Region.BACK_PORCH, Direction.HORIZONTAL),
            theme.mixed("plot", "text", 0.22),
        )
        with QPainter(self) as painter:
            self.caption(
                painter, "black is taken in", f"{black.start_s * 1e6:.3f} … {black.end_s * 1e6:.3f} µs"
            )
            for (_, area), fill in zip(self.areas(), fills, strict=True):
                painter.fillRect(area, fill)
            self.outline(painter, self.bar)
            painter.setPen(QPen(theme.color("passes" if black.fits else "fails"), 2))
            painter.setBrush(theme.color("passes" if black.fits else "fails", 0.25))
            painter.drawRect(self.window_box())
            face = self.bench.type.sans(0.8)
            for name, box in self.names():
                draw_text(painter, box, name, face, theme.color("text"), elide=True)
