"""Badges at the resistors: whether they lie in the person's drawer, and how many of each."""

from dataclasses import dataclass
from enum import Enum
from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from workbench.circuit.network import PartId
from workbench.drawing import Drawing
from workbench.drawing.beside import badge_place
from workbench.drawing.elements import Symbol
from workbench.drawing.faces import CAPTION
from workbench.drawing.geometry import Point
from workbench.gui.network.inks import Inks
from workbench.project.document import Channel, Project

if TYPE_CHECKING:
    from workbench.circuit.fit.drawer import Drawer
    from workbench.project.owned import Need

__all__ = ["Badge", "Owned", "badges", "paint_badge"]

GLYPH = 18.0, 13.0
"""Width and height of the little drawer. [design px]"""
SMALL = 17.0, 12.0
"""Width and height of the one without words, on a part's corner. [design px]"""
WORDS_FROM = 24.0
"""From the little drawer's left side to the words. [design px]"""


class Owned(Enum):
    """How much of what the board takes of a value there is."""

    ALL = "all"
    SOME = "some"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Badge:
    """What a drawer holds of one resistor's value, and where that is shown."""

    part: PartId
    at: Point
    """Middle of the little drawer's left side."""
    words: str
    owned: Owned
    small: bool
    """Whether there is room for the little drawer only; its words are in the part's tip."""


def badges(
    drawing: Drawing, project: Project, channel: Channel, drawer: "Drawer", inks: Inks
) -> tuple[Badge, ...]:
    """Return the badges of a drawing, with words where there is room; none while the drawer is empty."""
    if not drawer.parts:
        return ()
    # Imported late, as all that has to do with the drawer: the start has no need of it.
    from workbench.project.owned import needs, owned_words

    by_value = {need.ohms: need for need in needs(project, drawer)}
    made = []
    for resistor in project.channels[channel].resistors:
        symbol, need = drawing.symbol(resistor.id), by_value[resistor.ohms]
        if symbol is None:
            continue
        words, (at, room) = owned_words(need), badge_place(drawing, resistor.id)
        small = WORDS_FROM * inks.unit + inks.measure(words, CAPTION) > room
        made.append(Badge(resistor.id, _corner(symbol, inks) if small else at, words, _owned(need), small))
    return tuple(made)


def _owned(need: "Need") -> Owned:
    if need.owned == 0:
        return Owned.NONE
    return Owned.SOME if need.lacking else Owned.ALL


def _corner(symbol: Symbol, inks: Inks) -> Point:
    """Return the place on a part's lower left corner; beside a part that hangs, clear of its wire."""
    body, unit = symbol.body, inks.unit
    if symbol.vertical:
        return Point(body.left - 12 * unit, body.bottom - 7 * unit)
    return Point(body.left + 2 * unit, body.bottom + unit)


def paint_badge(painter: QPainter, badge: Badge, inks: Inks) -> None:
    """Paint a little drawer, full, half full or dashed and empty, and the words beside it."""
    unit, theme = inks.unit, inks.theme
    ink = theme.color("dim" if badge.owned is Owned.NONE else "passes")
    width, height = (side * unit for side in (SMALL if badge.small else GLYPH))
    box = QRectF(round(badge.at.x) + 0.5, round(badge.at.y - height / 2) + 0.5, width, height)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.color("panel"))
    painter.drawRect(box.adjusted(-1.5 * unit, -1.5 * unit, 1.5 * unit, 1.5 * unit))
    painter.setBrush(theme.mixed("panel", "passes", 0.4))
    if badge.owned is not Owned.NONE:
        painter.drawRect(box if badge.owned is Owned.ALL else box.adjusted(0, height / 2, 0, 0))
    painter.setPen(inks.pen(ink, 1.2, (2.4, 1.8) if badge.owned is Owned.NONE else ()))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(box, 2.5 * unit, 2.5 * unit)
    painter.setPen(inks.pen(ink, 1.6))
    middle, half = box.center(), QPointF(width / 6, 0)
    painter.drawLine(middle - half, middle + half)
    if not badge.small:
        inks.text(painter, badge.words, badge.at.moved(WORDS_FROM * unit), CAPTION, ink)
