"""Badges under the resistors: how many of each lie in the person's drawer."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from workbench.circuit.network import Network
from workbench.drawing import Drawing
from workbench.drawing.beside import badge_place
from workbench.drawing.faces import CAPTION
from workbench.drawing.geometry import Point
from workbench.gui.network.inks import Inks

if TYPE_CHECKING:
    from workbench.circuit.fit.drawer import Drawer

__all__ = ["Badge", "badges", "paint_badge"]

GLYPH = 18.0, 13.0
"""Width and height of the little drawer. [design px]"""
WORDS_FROM = 24.0
"""From the little drawer's left side to the words. [design px]"""


@dataclass(frozen=True, slots=True)
class Badge:
    """What a drawer holds of one resistor's value, and where that is said."""

    at: Point
    words: str
    owned: bool


def badges(drawing: Drawing, network: Network, drawer: "Drawer", inks: Inks) -> tuple[Badge, ...]:
    """Return the badges of a drawing that have room; none while the drawer is empty."""
    if not drawer.parts:
        return ()
    # Imported late, as all that has to do with the drawer: the start has no need of it.
    from workbench.project.owned import owned_words

    made = []
    for resistor in network.resistors:
        count = drawer.count_of(resistor.ohms)
        words, (at, room) = owned_words(count), badge_place(drawing, resistor.id)
        if WORDS_FROM * inks.unit + inks.measure(words, CAPTION) <= room:
            made.append(Badge(at, words, count != 0))
    return tuple(made)


def paint_badge(painter: QPainter, badge: Badge, inks: Inks) -> None:
    """Paint a little drawer, filled if it holds the part and dashed if not, and the words beside it."""
    unit, ink = inks.unit, inks.theme.color("passes" if badge.owned else "dim")
    width, height = (side * unit for side in GLYPH)
    box = QRectF(badge.at.x + 0.5, round(badge.at.y - height / 2) + 0.5, width, height)
    painter.setPen(inks.pen(ink, 1.2, () if badge.owned else (2.4, 1.8)))
    painter.setBrush(inks.theme.mixed("panel", "passes", 0.25) if badge.owned else Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(box, 2.5 * unit, 2.5 * unit)
    painter.setPen(inks.pen(ink, 1.6))
    middle = box.center()
    painter.drawLine(middle - QPointF(3 * unit, 0), middle + QPointF(3 * unit, 0))
    inks.text(painter, badge.words, badge.at.moved(WORDS_FROM * unit), CAPTION, ink)
