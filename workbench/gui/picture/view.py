"""The picture on screen: the pixel that is looked at stands under two lines; arrows move it."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFontMetricsF,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
    QRadialGradient,
)
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.picture.images import Side
from workbench.gui.picture.screen import Shot
from workbench.gui.theme import DUSK
from workbench.gui.widgets import Sign, draw_sign, draw_text
from workbench.gui.widgets.control import outlined
from workbench.picture.shape import screen_aspect
from workbench.waveform.places import Places
from workbench.waveform.verdict import Standing

__all__ = ["PictureView"]

COARSE = 8
"""Pixels that a key moves with Shift. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class _Shown:
    """What is painted: an image, and where its dots lie in the picture."""

    image: QImage
    every: int
    places: Places | None
    aspect: float
    """Width of the screen over its height. [1]"""


class PictureView(QWidget):
    """Draws a shot; a click or the arrows choose a pixel."""

    picked = Signal(int, int)
    """Column and row of the picture that are to be looked at."""
    let_go = Signal()
    """A drag is over."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._shown: _Shown | None = None
        self._pixel: tuple[int, int] | None = None
        self._size = QSize(640, 480)
        self._said: tuple[str, str] | None = None
        self.side = Side.SEEN
        self.setAccessibleName("Picture")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.setWhatsThis(
            "The frame, as sent or as a monitor would show it. Click a pixel, or move with the arrows (with "
            "Shift eight at a time): the scanline, the pins and the working go there."
        )
        bench.theme_changed.connect(self.update)

    def show_shot(self, shot: Shot) -> None:
        """Show a look at the picture, on the side that is chosen."""
        mode = shot.result.project.mode
        self._size = QSize(mode.h.active, mode.v.active)
        self._said = None
        image = shot.images.get(self.side)
        if image is None:
            # There is no picture that stands still: a dark screen that says why.
            verdict = shot.look.verdict
            self._said = verdict.standing.value, verdict.sentence
            image = QImage(shot.images[Side.SENT].size(), QImage.Format.Format_RGB32)
            image.fill(0)
        elif self.side is Side.SEEN and shot.look.verdict.standing is Standing.GUESSED:
            self._said = shot.look.verdict.standing.value, shot.look.verdict.sentence
        places = None if self.side is Side.SENT else shot.places
        size = shot.look.size if self.side is not Side.SENT and shot.places is not None else None
        aspect = screen_aspect(*(size or (mode.h.active, mode.v.active)))
        self._shown = _Shown(image, shot.every, places, aspect)
        self.update()

    @property
    def image(self) -> QImage | None:
        """The image shown, dot for dot."""
        return self._shown.image if self._shown else None

    def show_pixel(self, pixel: tuple[int, int] | None) -> None:
        """Stand on a pixel of the picture, column and row; on none in blanking."""
        if pixel != self._pixel:
            self._pixel = pixel
            words = "in blanking" if pixel is None else f"column {pixel[0]}, scanline {pixel[1] + 1}"
            self.setAccessibleDescription(words)
            self.update()

    @property
    def pixel(self) -> tuple[int, int] | None:
        """The pixel that is stood on."""
        return self._pixel

    def frame(self) -> QRectF:
        """Return where the picture lies: as large as fits, in the shape of the screen."""
        if self._shown is None:
            return QRectF()
        room = QRectF(self.rect()).adjusted(1, 1, -1 - self._bench.px(8), -1)
        height = max(1.0, min(room.height(), room.width() / self._shown.aspect))
        width = max(1.0, height * self._shown.aspect)
        return QRectF(room.left(), room.top() + round((room.height() - height) / 2), width, height)

    # Pointing -------------------------------------------------------------------------------

    def pixel_at(self, place: QPointF) -> tuple[int, int] | None:
        """Return the pixel of the picture under a place of the widget; none where there is none."""
        frame = self.frame()
        if self._shown is None or not frame.contains(place):
            return None
        shown = self._shown
        x = min(
            int((place.x() - frame.left()) / frame.width() * shown.image.width()), shown.image.width() - 1
        )
        y = min(
            int((place.y() - frame.top()) / frame.height() * shown.image.height()), shown.image.height() - 1
        )
        if shown.places is None:
            column, row = x * shown.every, y * shown.every
        else:
            column, row = int(shown.places.columns[x]), int(shown.places.rows[y])
        inside = 0 <= column < self._size.width() and 0 <= row < self._size.height()
        return (column, row) if inside else None

    def place_of(self, pixel: tuple[int, int]) -> QRectF | None:
        """Return where a pixel of the picture is drawn; none where the monitor cuts it off."""
        if self._shown is None:
            return None
        shown, frame = self._shown, self.frame()
        if shown.places is None:
            dot: tuple[float, float] | None = pixel[0] / shown.every, pixel[1] / shown.every
        else:
            dot = shown.places.dot_of(*pixel)
        if dot is None:
            return None
        wide, high = frame.width() / shown.image.width(), frame.height() / shown.image.height()
        return QRectF(frame.left() + dot[0] * wide, frame.top() + dot[1] * high, wide, high)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton:
            self._pick(event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._pick(event.position())

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        self.let_go.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = {
            Qt.Key.Key_Left: (-1, 0),
            Qt.Key.Key_Right: (1, 0),
            Qt.Key.Key_Up: (0, -1),
            Qt.Key.Key_Down: (0, 1),
        }.get(Qt.Key(event.key()))
        if step is None:
            super().keyPressEvent(event)
            return
        factor = COARSE if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
        column, row = self._pixel or (0, 0)
        self._choose(column + factor * step[0], row + factor * step[1])

    def _pick(self, place: QPointF) -> None:
        pixel = self.pixel_at(place)
        if pixel is not None:
            self._choose(*pixel)

    def _choose(self, column: int, row: int) -> None:
        last_x, last_y = self._size.width() - 1, self._size.height() - 1
        self.picked.emit(min(max(column, 0), last_x), min(max(row, 0), last_y))

    # Painting -------------------------------------------------------------------------------

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        with QPainter(self) as painter:
            if self._shown is None:
                return
            frame = self.frame()
            enlarged = frame.width() > 1.5 * self._shown.image.width() and self._shown.every == 1
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, not enlarged)
            painter.drawImage(frame, self._shown.image)
            line = QPen(theme.color("outline"), 1.1)
            outlined(painter, frame.adjusted(-1, -1, 1, 1), px(2), None, line)
            if self._said is not None:
                self._paint_said(painter, frame, *self._said)
            elif self._pixel is not None:
                self._paint_pixel(painter, frame, self._pixel)
            if self.hasFocus():
                painter.setPen(QPen(theme.color("accent"), 2))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRoundedRect(frame.adjusted(0, 0, 0, 0), px(3), px(3))

    def _paint_pixel(self, painter: QPainter, frame: QRectF, pixel: tuple[int, int]) -> None:
        """Cross the picture with a line along the scanline and one down the column."""
        theme, px = self._bench.theme, self._bench.px
        place = self.place_of(pixel)
        if place is None:
            return
        centre = place.center()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.save()
        painter.setClipRect(frame)
        light = QRadialGradient(centre, px(46))
        light.setColorAt(0.0, theme.color("accent", 0.45))
        light.setColorAt(1.0, theme.color("accent", 0.0))
        painter.fillRect(QRectF(centre.x() - px(46), centre.y() - px(46), px(92), px(92)), light)
        for pen, along in ((QPen(theme.color("accent"), 1.6), True), (QPen(DUSK.color("text"), 1.2), False)):
            if along:
                ends = QPointF(frame.left(), centre.y()), QPointF(frame.right(), centre.y())
            else:
                ends = QPointF(centre.x(), frame.top()), QPointF(centre.x(), frame.bottom())
            # A dark line under the bright one: seen on white and on black.
            painter.setPen(QPen(DUSK.color("plot", 0.6), pen.widthF() + 1.6))
            painter.drawLine(*ends)
            painter.setPen(pen)
            painter.drawLine(*ends)
        side = max(px(14), place.width() + px(4))
        box = QRectF(centre.x() - side / 2, centre.y() - side / 2, side, side)
        outlined(
            painter, box.adjusted(-1.4, -1.4, 1.4, 1.4), px(3), None, QPen(DUSK.color("plot", 0.65), 1.6)
        )
        outlined(painter, box, px(3), None, QPen(theme.color("accent"), 2.0))
        painter.restore()
        tip = QPointF(frame.right() + px(9), centre.y())
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.color("accent"))
        back = frame.right() + px(1)
        painter.drawPolygon(
            QPolygonF([tip, QPointF(back, centre.y() - px(5)), QPointF(back, centre.y() + px(5))])
        )

    def _paint_said(self, painter: QPainter, frame: QRectF, headline: str, sentence: str) -> None:
        """Say large over the screen why there is no picture, or why it is only a guess."""
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        pad, side = px(16), px(22)
        flags = int(Qt.TextFlag.TextWordWrap)
        room = QRectF(0, 0, min(frame.width() - 2 * pad, px(560)) - 2 * pad, 10_000)
        face = next(
            face
            for face in (type_.sans(1.15), type_.sans(), type_.sans(0.86))
            if QFontMetricsF(face).boundingRect(room, flags, sentence).height() < frame.height() - px(70)
            or face.pixelSize() <= type_.sans(0.86).pixelSize()
        )
        high = QFontMetricsF(face).boundingRect(room, flags, sentence).height()
        plate = QRectF(0, 0, room.width() + 2 * pad, high + px(30) + 2.5 * pad)
        plate.moveCenter(frame.center())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        outlined(painter, plate, px(6), theme.color("raised"), QPen(theme.color("warns"), 1.4))
        inside = plate.adjusted(pad, pad, -pad, -pad)
        draw_sign(painter, QRectF(inside.left(), inside.top() + px(2), side, side), Sign.WARNS, theme)
        head = QRectF(inside.left() + side + px(10), inside.top(), inside.width() - side - px(10), px(26))
        draw_text(painter, head, headline, type_.sans(1.35, 600), theme.color("text"))
        painter.setFont(face)
        painter.setPen(theme.color("text"))
        painter.drawText(inside.adjusted(0, px(38), 0, pad), flags, sentence)
