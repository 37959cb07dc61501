"""Faces and pens of the drawing, made once for a theme and a text size."""

from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen, QPixmap, QRadialGradient

from workbench.drawing.elements import Align
from workbench.drawing.faces import Face
from workbench.drawing.geometry import Point
from workbench.gui.theme import Theme, Type
from workbench.gui.widgets.dashes import V_SYNC_DASH
from workbench.project.document import Channel

__all__ = ["Inks"]

LIGHT = (280.0, 96.0)
"""Half width and half height of the pool of light. [design px]"""
KEPT_WIDTHS = 2000
"""How many text widths are remembered. [1]"""


@dataclass(slots=True)
class Inks:
    """What a drawing is painted with."""

    theme: Theme
    type: Type
    unit: float
    """One design pixel. [px]"""
    _fonts: dict[tuple[Face, int], tuple[QFont, QFontMetricsF, float]] = field(default_factory=dict)
    _lights: dict[tuple[float, float], QPixmap] = field(default_factory=dict)
    _widths: dict[tuple[str, Face, int], float] = field(default_factory=dict)

    def measure(self, text: str, face: Face) -> float:
        """Return how wide a text is in a face of the drawing. [px]"""
        return self._width(text, face, face.weight)

    def text(
        self,
        painter: QPainter,
        text: str,
        at: Point,
        face: Face,
        color: QColor,
        align: Align = Align.LEFT,
        *,
        weight: int | None = None,
    ) -> float:
        """Draw a text with its capitals centred on a place; return its width. [px]"""
        if not text:
            return 0.0
        heavy = face.weight if weight is None else weight
        font, _, cap = self._font(face, heavy)
        width = self._width(text, face, heavy)
        x = at.x - {Align.LEFT: 0.0, Align.CENTRE: width / 2, Align.RIGHT: width}[align]
        painter.setFont(font)
        painter.setPen(color)
        painter.drawText(QPointF(round(x), round(at.y + cap / 2)), text)
        return width

    def pen(self, color: QColor, width: float, dashes: tuple[float, ...] = ()) -> QPen:
        """Return a pen of a width in design pixels, with round ends."""
        pen = QPen(color, width * self.unit)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap if dashes else Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        if dashes:
            pen.setDashPattern(list(dashes))
        return pen

    def light(self, strength: float, ratio: float) -> QPixmap:
        """Return the pool of light behind a part; filling it anew costs as much as all wires.

        Parameters
        ----------
        strength : float
            1 for what is chosen, less for what is pointed at. [1]
        ratio : float
            Pixels of the device in one of the window's. [1]
        """
        key = (strength, ratio)
        if key not in self._lights:
            wide, high = (2 * half * self.unit for half in LIGHT)
            pool = QPixmap(round(wide * ratio), round(high * ratio))
            pool.setDevicePixelRatio(ratio)
            pool.fill(Qt.GlobalColor.transparent)
            with QPainter(pool) as painter:
                painter.translate(wide / 2, high / 2)
                painter.scale(wide / 2, high / 2)
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(self._glow(strength))
                painter.drawEllipse(QPointF(0, 0), 1.0, 1.0)
            self._lights[key] = pool
        return self._lights[key]

    def _glow(self, strength: float) -> QRadialGradient:
        alpha = self.theme.light_alpha * strength
        glow = QRadialGradient(QPointF(0, 0), 1.0)
        for at, part in ((0.0, 1.0), (0.45, 0.38), (1.0, 0.0)):
            glow.setColorAt(at, self.theme.color("accent", alpha * part))
        return glow

    def low_wire(self) -> QPen:
        """Return the pen of a wire whose pin is low."""
        return self.pen(self.theme.color("dim"), 1.6)

    def high_wire(self, channel: Channel) -> QPen:
        """Return the pen of a wire whose pin is high."""
        return self.pen(self.theme.channel(channel), 2.2)

    def v_sync(self) -> QPen:
        """Return the pen of the V sync line."""
        return self.pen(self.theme.color("v_sync"), 1.8, V_SYNC_DASH)

    def _font(self, face: Face, weight: int) -> tuple[QFont, QFontMetricsF, float]:
        key = (face, weight)
        if key not in self._fonts:
            make = self.type.mono if face.mono else self.type.sans
            font = make(face.size, weight)
            metrics = QFontMetricsF(font)
            self._fonts[key] = (font, metrics, metrics.capHeight())
        return self._fonts[key]

    def _width(self, text: str, face: Face, weight: int) -> float:
        key = (text, face, weight)
        if key not in self._widths:
            if len(self._widths) > KEPT_WIDTHS:
                self._widths.clear()
            self._widths[key] = self._font(face, weight)[1].horizontalAdvance(text)
        return self._widths[key]
