"""The whole frame to scale: a line's blanking at the left, the frame's blanking below, the scanline on it."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QHelpEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QRegion
from PySide6.QtWidgets import QToolTip, QWidget

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.words import pixel_words
from workbench.gui.timing.frame_axes import paint_axes
from workbench.gui.timing.lesson import BORDER
from workbench.gui.timing.tints import region_tint
from workbench.gui.widgets import draw_text
from workbench.gui.widgets.tip import tip_text
from workbench.project.document import Direction, Project
from workbench.project.edits.picture import set_scanline, step_scanline
from workbench.timing.mode import Mode, Region

__all__ = ["FrameView"]

_CENTRE = Qt.AlignmentFlag.AlignHCenter
_LEFT, _TOP, _RIGHT, _FOOT = 46, 50, 92, 30
"""Room around the frame for its axes and names. [px at 14 px text]"""
_HEAD = 18
"""Height of the words over it. [px at 14 px text]"""
_LEFT_FOLDED, _RIGHT_FOLDED, _FOOT_FOLDED = 4, 40, 10
"""The same, where there is room neither for axes nor for words."""
_ROOM_FOR_WORDS, _ROOM_FOR_AXES = 420, 300
"""Widths from which these have room. [px at 14 px text]"""
_STEPS = {
    Qt.Key.Key_Up: -1,
    Qt.Key.Key_Down: 1,
    Qt.Key.Key_PageUp: -16,
    Qt.Key.Key_PageDown: 16,
}

_SIDEWAYS = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1, Qt.Key.Key_Home: -100, Qt.Key.Key_End: 100}
_WHAT = (
    "A whole frame: the pixels of a line across, the lines down, to scale. What is tinted is black: porches "
    "and sync. A click goes to a scanline and a pixel, arrow keys step. The dashed line is the border, "
    f"where the mode has one. {BORDER}"
)
"""What F1 says."""


class FrameView(QWidget):
    """Draws one mode as total pixels by total lines; a click or an arrow goes to a scanline and pixel."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Frame to scale")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setWhatsThis(_WHAT)
        self.mode: Mode | None = None
        self.scanline = 1
        bench.view.changed.connect(self.update)
        bench.theme_changed.connect(self.update)

    def show_project(self, project: Project) -> None:
        """Show a project's mode and scanline."""
        if (self.mode, self.scanline) != (project.mode, project.scanline):
            self.mode, self.scanline = project.mode, project.scanline
            self.setAccessibleDescription(
                f"{self.mode.h.total} by {self.mode.v.total}, scanline {self.scanline}"
            )
            self.update()

    def event(self, event: QEvent) -> bool:
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            # Only the head speaks of the border; a tip over the frame would stand in the way.
            told = tip_text(BORDER) if self.has_border and event.pos().y() < self.bench.px(_HEAD) else ""
            QToolTip.showText(event.globalPos(), told, self)
            return True
        return super().event(event)

    @property
    def has_border(self) -> bool:
        """Whether the standard draws a border in the mode."""
        return self.mode is not None and bool(self.mode.h.border or self.mode.v.border)

    @property
    def has_axes(self) -> bool:
        """Whether there is room for time axes."""
        return self.width() >= self.bench.px(_ROOM_FOR_AXES)

    @property
    def _has_words(self) -> bool:
        return self.width() >= self.bench.px(_ROOM_FOR_WORDS)

    def frame(self) -> QRectF:
        """Return where the frame lies, pixels and lines at one scale."""
        px = self.bench.px
        left, foot = (_LEFT, _FOOT) if self.has_axes else (_LEFT_FOLDED, _FOOT_FOLDED)
        right = _RIGHT if self._has_words else _RIGHT_FOLDED
        room = QRectF(self.rect()).adjusted(px(left), px(_TOP), -px(right), -px(foot))
        if self.mode is None or room.width() <= 0 or room.height() <= 0:
            return QRectF()
        scale = min(room.width() / self.mode.h.total, room.height() / self.mode.v.total)
        width, height = self.mode.h.total * scale, self.mode.v.total * scale
        return QRectF(room.left() + (room.width() - width) / 2, room.top(), width, height)

    def line_at(self, y: float) -> int | None:
        """Return the scanline at a height; none above and below the frame."""
        frame = self.frame()
        if self.mode is None or not frame.top() <= y < frame.bottom():
            return None
        return min(int((y - frame.top()) / frame.height() * self.mode.v.total) + 1, self.mode.v.total)

    def pixel_at(self, x: float) -> int | None:
        """Return the pixel at a place, from the front porch's start; none beside the frame."""
        frame = self.frame()
        if self.mode is None or not frame.left() <= x < frame.right():
            return None
        return min(int((x - frame.left()) / frame.width() * self.mode.h.total), self.mode.h.total - 1)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._choose(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._choose(event)

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        self.bench.session.release()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps, sideways = _STEPS.get(Qt.Key(event.key())), _SIDEWAYS.get(Qt.Key(event.key()))
        if sideways is not None and self.mode is not None:
            pixel = (self.bench.view.pixel or 0) + sideways
            self.bench.view.look_at(min(max(pixel, 0), self.mode.h.total - 1))
            return
        if steps is None:
            super().keyPressEvent(event)
            return
        self.bench.apply(
            "Another scanline", lambda project: step_scanline(project, steps), origin=self, quiet="scanline"
        )

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.mode is None:
            return
        with QPainter(self) as painter:
            self._paint_head(painter)
            frame = self.frame()
            if frame.isEmpty():
                return
            painter.fillRect(frame, self.bench.theme.color("plot"))
            self._paint_regions(painter, frame)
            if self.has_axes:
                paint_axes(painter, self.bench, frame, self.mode)
            self._paint_size(painter, frame)
            painter.setClipRegion(QRegion(self.rect()) - QRegion(self.size_box(frame).toAlignedRect()))
            self._paint_pixel(painter, frame)
            self._paint_scanline(painter, frame)

    def _choose(self, event: QMouseEvent) -> None:
        line, pixel = self.line_at(event.position().y()), self.pixel_at(event.position().x())
        if pixel is not None:
            self.bench.view.look_at(pixel)
        if line is not None and line != self.bench.session.project.scanline:
            self.bench.apply(
                f"Show scanline {line}",
                lambda project: set_scanline(project, line),
                origin=self,
                quiet="scanline",
            )

    def _paint_head(self, painter: QPainter) -> None:
        assert self.mode is not None
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(self.frame().left(), 0, self.width(), px(_HEAD))
        used = draw_text(painter, box, "FRAME TO SCALE", type_.caps(), theme.color("dim"))
        border = f", border {self.mode.h.border} px, {self.mode.v.border} lines" if self.mode.h.border else ""
        total = f"{self.mode.h.total} × {self.mode.v.total}"
        rest = box.adjusted(used + px(14), 0, -box.left(), 0)
        words = self.longest((f"{total}{border}", total), rest.width(), type_.mono(0.86))
        draw_text(painter, rest, words, type_.mono(0.86), theme.color("dim"))

    def _paint_regions(self, painter: QPainter, frame: QRectF) -> None:
        """Lay the tints of the frame's blanking, then the line's over them; what is left is the picture."""
        assert self.mode is not None
        theme, mode = self.bench.theme, self.mode
        across, down = frame.width() / mode.h.total, frame.height() / mode.v.total
        starts = (0, *mode.v.edges[:-1])
        for region, start, end in zip(Region, starts, mode.v.edges, strict=True):
            if region is not Region.ACTIVE:
                top = frame.top() + (mode.v.active + start) * down
                band = QRectF(frame.left(), top, frame.width(), (end - start) * down)
                painter.fillRect(band, region_tint(theme, region, Direction.VERTICAL))
        starts = (0, *mode.h.edges[:-1])
        for region, start, end in zip(Region, starts, mode.h.edges, strict=True):
            if region is not Region.ACTIVE:
                band = QRectF(
                    frame.left() + start * across, frame.top(), (end - start) * across, frame.height()
                )
                painter.fillRect(band, region_tint(theme, region, Direction.HORIZONTAL))
        picture = self._picture(frame)
        painter.fillRect(picture, region_tint(theme, Region.ACTIVE, Direction.HORIZONTAL))
        self._paint_outlines(painter, frame, picture)

    def _paint_outlines(self, painter: QPainter, frame: QRectF, picture: QRectF) -> None:
        assert self.mode is not None
        theme, mode = self.bench.theme, self.mode
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(theme.color("outline"), 1.0))
        painter.drawRect(frame)
        painter.setPen(QPen(theme.color("text"), 1.4))
        painter.drawRect(picture)
        if mode.h.border or mode.v.border:
            self._paint_border(painter, frame, picture)

    def _picture(self, frame: QRectF) -> QRectF:
        """Return where the active picture lies."""
        assert self.mode is not None
        across, down = frame.width() / self.mode.h.total, frame.height() / self.mode.v.total
        left, size = self.mode.h.blanking * across, (self.mode.h.active * across, self.mode.v.active * down)
        return QRectF(frame.left() + left, frame.top(), *size)

    def _size_words(self, room: float) -> tuple[tuple[str, QFont], tuple[str, QFont]]:
        """Return the two lines that say how large the picture is, as long as there is room. [px]"""
        assert self.mode is not None
        mode, large, small = self.mode, self.bench.type.mono(1.0, 500), self.bench.type.sans(0.86)
        share = f"{100.0 * mode.h.active * mode.v.active / (mode.h.total * mode.v.total):.1f} %"
        forms = (f"active, {share} of the time", f"{share} of the time", share)
        size = self.longest((f"{mode.h.active} × {mode.v.active}",), room, large)
        return (size, large), (self.longest(forms, room, small), small)

    def size_box(self, frame: QRectF) -> QRectF:
        """Return where the words in the picture stand; the lines over the frame leave it free."""
        px, picture = self.bench.px, self._picture(frame)
        lines = self._size_words(picture.width() - px(8))
        width = max(self.bench.type.width(words, font) for words, font in lines)
        if not width:
            return QRectF()
        middle, half = picture.center(), width / 2 + px(5)
        return QRectF(middle.x() - half, middle.y() - px(21), 2 * half, px(40))

    def _paint_size(self, painter: QPainter, frame: QRectF) -> None:
        theme, px, picture = self.bench.theme, self.bench.px, self._picture(frame)
        line = QRectF(picture.left(), picture.center().y() - px(20), picture.width(), px(18))
        inks = (theme.color("text"), theme.color("dim"))
        for (words, font), ink in zip(self._size_words(picture.width() - px(8)), inks, strict=True):
            draw_text(painter, line, words, font, ink, align=_CENTRE)
            line.translate(0, px(20))

    def longest(self, forms: Sequence[str], width: float, font: QFont) -> str:
        """Return the first of some words, long to short, that has room; nothing if none has."""
        return next((words for words in forms if self.bench.type.width(words, font) <= width), "")

    def _paint_border(self, painter: QPainter, frame: QRectF, picture: QRectF) -> None:
        """Draw what the standard calls border around the picture, cut where the frame ends."""
        assert self.mode is not None
        theme, mode = self.bench.theme, self.mode
        across, down = frame.width() / mode.h.total, frame.height() / mode.v.total
        sides = (mode.h.border * across, mode.v.border * down)
        painter.save()
        painter.setClipRect(frame)
        painter.setPen(QPen(theme.color("text"), 1.0, Qt.PenStyle.DashLine))
        painter.drawRect(picture.adjusted(-sides[0], -sides[1], sides[0], sides[1]))
        painter.restore()

    def _paint_pixel(self, painter: QPainter, frame: QRectF) -> None:
        """Draw where the cursor called here stands on the line."""
        assert self.mode is not None
        pixel = self.bench.view.pixel
        if pixel is None or not 0 <= pixel < self.mode.h.total:
            return
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        x = frame.left() + frame.width() * (pixel + 0.5) / self.mode.h.total
        painter.setPen(QPen(theme.color("accent"), 1.2, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(x, frame.top() - px(6)), QPointF(x, frame.bottom()))
        face, words = type_.sans(0.86, 500), pixel_words(pixel, self.mode)
        width = type_.width(words, face)
        left = max(min(x - width / 2, self.width() - width), 0.0)
        box = QRectF(left, frame.top() - px(24), width, px(18))
        draw_text(painter, box, words, face, theme.color("accent"))

    def _paint_scanline(self, painter: QPainter, frame: QRectF) -> None:
        """Draw the chosen scanline in the accent, and name it and the number of lines at the right."""
        assert self.mode is not None
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        y = frame.top() + frame.height() * (self.scanline - 0.5) / self.mode.v.total
        painter.setPen(QPen(theme.color("accent"), 2.0))
        painter.drawLine(QPointF(frame.left(), y), QPointF(frame.right() + px(6), y))
        right = QRectF(frame.right() + px(10), 0, px(_RIGHT), px(18))
        right.moveTop(y - px(9))
        words = f"scanline {self.scanline}" if self._has_words else str(self.scanline)
        draw_text(painter, right, words, type_.sans(0.86, 500), theme.color("accent"))
