"""Paints what is being joined: a rubber line, the nodes with their names, the ends of a part."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from workbench.circuit.network import NodeId
from workbench.drawing import Drawing
from workbench.drawing.elements import Align, Spot, Symbol
from workbench.drawing.faces import Face
from workbench.drawing.geometry import Point, Rect
from workbench.drawing.node_names import NODE_NAME
from workbench.gui.network.inks import Inks
from workbench.gui.network.wiring.connecting import handles
from workbench.gui.network.wiring.lead import Lead, said
from workbench.gui.widgets.control import outlined
from workbench.project.edits.connecting import End

__all__ = ["hint_box", "paint_handles", "paint_hint", "paint_lead"]

WORDS = Face(mono=False, size=0.94, weight=600)
KEYS = Face(mono=False, size=0.86, weight=400)


def paint_lead(
    painter: QPainter,
    drawing: Drawing,
    lead: Lead,
    names: dict[NodeId, Rect],
    inks: Inks,
) -> None:
    """Paint a lead over a drawing, with the ``names`` of the nodes it can go to."""
    theme, unit = inks.theme, inks.unit
    for spot in drawing.spots:
        _paint_node(painter, spot, names[spot.node], inks, lit=spot.node == lead.over)
    painter.setPen(inks.pen(theme.color("accent"), 2.4, (4.0, 2.6)))
    painter.drawLine(QPointF(lead.anchor.x, lead.anchor.y), QPointF(lead.tip.x, lead.tip.y))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.color("accent"))
    for end in (lead.anchor, lead.tip):
        painter.drawEllipse(QPointF(end.x, end.y), 4.6 * unit, 4.6 * unit)


def paint_handles(painter: QPainter, symbol: Symbol, inks: Inks, *, here: End | None) -> None:
    """Paint the ends of the chosen part, to be taken hold of; the one that counts as here is filled."""
    accent, ground = inks.theme.color("accent"), inks.theme.color("panel")
    painter.setPen(inks.pen(accent, 1.6))
    for end, at in handles(symbol):
        painter.setBrush(accent if end is here else ground)
        painter.drawEllipse(QPointF(at.x, at.y), 4.2 * inks.unit, 4.2 * inks.unit)


def _paint_node(painter: QPainter, spot: Spot, name: Rect, inks: Inks, *, lit: bool) -> None:
    """Ring a node and write its name beside it."""
    theme, unit, at = inks.theme, inks.unit, spot.at
    painter.setPen(inks.pen(theme.color("accent" if lit else "outline"), 2.0 if lit else 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    radius = (9 if lit else 7) * unit
    painter.drawEllipse(QPointF(at.x, at.y), radius, radius)
    line = QPen(theme.color("accent" if lit else "hairline"), 1.0)
    box = QRectF(name.left, name.top, name.width, name.height)
    outlined(painter, box, 3 * unit, theme.color("raised"), line)
    inks.text(painter, spot.node, name.centre, NODE_NAME, theme.color("text"), Align.CENTRE)


def hint_box(lead: Lead, inks: Inks, seen: Rect, *, by_keys: bool) -> tuple[Rect, list[str]]:
    """Return where the card beside a loose end stands, all of it in what is ``seen``, and its lines.

    The first one says what letting go would do, the others which keys help.
    """
    unit = inks.unit
    inset, edge = 24 * unit, 4 * unit
    lines = [said(lead), *_broken(_keys(lead, by_keys=by_keys), seen.width - inset - 2 * edge, inks)]
    widths = [inks.measure(line, KEYS if number else WORDS) for number, line in enumerate(lines)]
    width, height = max(widths) + inset, (12 + 18 * len(lines)) * unit
    left = min(lead.tip.x + 18 * unit, seen.right - width - edge)
    top = lead.tip.y + 16 * unit
    if top + height > seen.bottom - edge:
        top = lead.tip.y - height - 28 * unit
    return Rect(max(left, seen.left + edge), max(top, seen.top + edge), width, height), lines


def _broken(keys: list[str], room: float, inks: Inks) -> list[str]:
    """Return the words about keys in as many lines as they need."""
    lines = [keys[0]]
    for words in keys[1:]:
        longer = f"{lines[-1]} · {words}"
        if inks.measure(longer, KEYS) <= room:
            lines[-1] = longer
        else:
            lines.append(words)
    return lines


def paint_hint(painter: QPainter, lead: Lead, inks: Inks, seen: Rect, *, by_keys: bool) -> None:
    """Say beside the loose end what letting go would do, and which keys help."""
    theme, unit = inks.theme, inks.unit
    place, lines = hint_box(lead, inks, seen, by_keys=by_keys)
    box = QRectF(place.left, place.top, place.width, place.height)
    shade = theme.color("plot" if theme.dark else "outline", 0.55 if theme.dark else 0.35)
    outlined(painter, box.translated(2, 4), 6 * unit, shade, None)
    outlined(painter, box, 6 * unit, theme.color("raised"), QPen(theme.color("accent"), 1.2))
    at = Point(box.left() + 12 * unit, box.top() + 16 * unit)
    for number, line in enumerate(lines):
        face, role = (KEYS, "dim") if number else (WORDS, "text")
        inks.text(painter, line, at.moved(dy=18 * number * unit), face, theme.color(role))


def _keys(lead: Lead, *, by_keys: bool) -> list[str]:
    kinds = [] if lead.moved else ["R resistor", "C capacitor"]
    if by_keys:
        other = ["E other end"] if lead.moved else []
        return ["arrows or Tab", *kinds, *other, "G ground", "N new node", "Enter", "Esc"]
    return [*kinds, "Esc leave"]
