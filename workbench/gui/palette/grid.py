"""The grid of colours: one is looked at by a click or the arrows."""

from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.palette.sheet import Sheet, sheet_of
from workbench.gui.picture.images import picture_image
from workbench.gui.widgets.caption import draw_caption
from workbench.gui.widgets.control import outlined
from workbench.picture.dither import Levels3

__all__ = ["ColourGrid"]

Colour = tuple[int, int, int]
_FOOT = 18
_EDGE = 8
"""Room around the colours for the frame of the one that is looked at. [design px]"""


class ColourGrid(QWidget):
    """Draws every colour of a board, a tile a code of blue."""

    looked_at = Signal(object)
    """Codes of the colour that is looked at: red, green, blue."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._levels: Levels3 | None = None
        self.sheet: Sheet | None = None
        self.colour: Colour = (0, 0, 0)
        self.setAccessibleName("Colours of the board")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.setWhatsThis(
            "Every colour the board can make: a tile for each code of blue, red from left to right, green "
            "from top to bottom. Arrows change red and green, Page Up and Page Down blue."
        )
        bench.theme_changed.connect(self.update)

    def show_levels(self, levels: Levels3) -> None:
        """Show the colours that levels make."""
        self._levels = levels
        self._lay_out()

    def look_at(self, colour: Colour) -> None:
        """Look at a colour, kept inside what the board has."""
        if self._levels is None:
            return
        red, green, blue = (
            min(max(code, 0), len(volts) - 1) for code, volts in zip(colour, self._levels, strict=True)
        )
        if (red, green, blue) != self.colour:
            self.colour = (red, green, blue)
            self.update()
            self.looked_at.emit(self.colour)

    def area(self) -> QRectF:
        """Return where the colours lie, with room around for the frame of one at the edge."""
        if self.sheet is None:
            return QRectF()
        high, wide, _ = self.sheet.rgb.shape
        room = self._room()
        scale = min(room.width() / wide, room.height() / high)
        return QRectF(room.left(), room.top(), wide * scale, high * scale)

    def outline(self) -> QPainterPath:
        """Return the outline of the tiles: the last row may be short."""
        assert self.sheet is not None
        area = self.area()
        rows = self.sheet.rgb.shape[0] / len(self.sheet.codes[1])
        end = area.left() + area.width() * self.sheet.last_row
        above = area.bottom() - area.height() / rows
        corners = [area.topLeft(), area.topRight(), QPointF(area.right(), above), QPointF(end, above)]
        path = QPainterPath()
        path.addPolygon(QPolygonF([*corners, QPointF(end, area.bottom()), area.bottomLeft()]))
        path.closeSubpath()
        return path

    def resizeEvent(self, _event: object) -> None:
        self._lay_out()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._point(event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._point(event.position())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        steps = {
            Qt.Key.Key_Left: (-1, 0, 0),
            Qt.Key.Key_Right: (1, 0, 0),
            Qt.Key.Key_Up: (0, -1, 0),
            Qt.Key.Key_Down: (0, 1, 0),
            Qt.Key.Key_PageUp: (0, 0, -1),
            Qt.Key.Key_PageDown: (0, 0, 1),
        }
        step = steps.get(Qt.Key(event.key()))
        if step is None:
            super().keyPressEvent(event)
            return
        red, green, blue = (code + by for code, by in zip(self.colour, step, strict=True))
        self.look_at((red, green, blue))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        with QPainter(self) as painter:
            if self.sheet is None:
                return
            area = self.area()
            outline = self.outline()
            painter.save()
            painter.setClipPath(outline)
            painter.drawImage(area, self._image)
            painter.restore()
            painter.strokePath(outline, QPen(theme.color("outline"), 1.1))
            x, y = self.sheet.place_of(self.colour)
            high, wide, _ = self.sheet.rgb.shape
            dot = QRectF(
                area.left() + x * area.width() / wide,
                area.top() + y * area.height() / high,
                area.width() / wide,
                area.height() / high,
            )
            lacking = max(0.0, px(8) - dot.width()) / 2
            frame = dot.adjusted(-lacking - 1, -lacking - 1, lacking + 1, lacking + 1)
            outlined(
                painter, frame.adjusted(-1.5, -1.5, 1.5, 1.5), px(3), None, QPen(theme.color("panel"), 2)
            )
            outlined(painter, frame, px(3), None, QPen(theme.color("accent"), 2))
            if self.hasFocus():
                outlined(painter, area.adjusted(-3, -3, 3, 3), px(4), None, QPen(theme.color("accent"), 2))
            foot = QRectF(area.left(), area.bottom() + px(_EDGE), self.width() - area.left(), px(_FOOT))
            small = self._bench.type.sans(0.86)
            draw_caption(painter, foot, self._wordings(), small, theme.color("dim"))

    def _lay_out(self) -> None:
        room = self._room()
        if self._levels is None or room.height() <= 0:
            return
        self.sheet = sheet_of(self._levels, max(0.2, room.width() / room.height()))
        self._image = picture_image(self.sheet.rgb)
        self.update()

    def _room(self) -> QRectF:
        """Return where the colours may lie."""
        edge = self._bench.px(_EDGE)
        return QRectF(self.rect()).adjusted(edge, edge, -edge, -edge - self._bench.px(_FOOT))

    def _wordings(self) -> tuple[str, ...]:
        """Say how the colours lie, longest wording first."""
        assert self.sheet is not None
        how = "red across, green down, a tile for each code of blue", "red across, green down, blue by tiles"
        if self.sheet.thinned:
            return f"{how[0]}; with so many codes some are left out", f"{how[1]}; some left out"
        return *how, "red across, green down"

    def _point(self, place: QPointF) -> None:
        area = self.area()
        if self.sheet is None or not area.contains(place):
            return
        high, wide, _ = self.sheet.rgb.shape
        x = min(int((place.x() - area.left()) / area.width() * wide), wide - 1)
        y = min(int((place.y() - area.top()) / area.height() * high), high - 1)
        colour = self.sheet.colour_at(x, y)
        if colour is not None:
            self.look_at(colour)
