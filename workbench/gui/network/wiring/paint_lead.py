"""Paints what is being joined: a rubber line, the nodes with their names, the ends of a part."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from workbench.drawing import Drawing
from workbench.drawing.elements import Align, Spot, Symbol
from workbench.drawing.faces import Face
from workbench.drawing.geometry import Point
from workbench.gui.network.inks import Inks
from workbench.gui.network.wiring.connecting import handles
from workbench.gui.network.wiring.lead import Lead, said
from workbench.gui.widgets.control import outlined

__all__ = ["paint_handles", "paint_lead"]

WORDS = Face(mono=False, size=0.94, weight=600)
KEYS = Face(mono=False, size=0.86, weight=400)
NAME = Face(mono=True, size=0.86, weight=500)


def paint_lead(painter: QPainter, drawing: Drawing, lead: Lead, inks: Inks, *, by_keys: bool) -> None:
    """Paint a lead over a drawing, with the nodes it can go to."""
    theme, unit = inks.theme, inks.unit
    pins = {key.node for key in drawing.keys}
    for spot in drawing.spots:
        _paint_node(painter, spot, inks, lit=spot.node == lead.over, left=spot.node not in pins)
    painter.setPen(inks.pen(theme.color("accent"), 2.4, (4.0, 2.6)))
    painter.drawLine(QPointF(lead.anchor.x, lead.anchor.y), QPointF(lead.tip.x, lead.tip.y))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.color("accent"))
    for end in (lead.anchor, lead.tip):
        painter.drawEllipse(QPointF(end.x, end.y), 4.6 * unit, 4.6 * unit)
    _paint_hint(painter, drawing, lead, inks, by_keys=by_keys)


def paint_handles(painter: QPainter, symbol: Symbol, inks: Inks) -> None:
    """Paint the ends of the chosen part, to be taken hold of."""
    painter.setPen(inks.pen(inks.theme.color("accent"), 1.6))
    painter.setBrush(inks.theme.color("panel"))
    for _, at in handles(symbol):
        painter.drawEllipse(QPointF(at.x, at.y), 4.2 * inks.unit, 4.2 * inks.unit)


def _paint_node(painter: QPainter, spot: Spot, inks: Inks, *, lit: bool, left: bool) -> None:
    """Ring a node and write its name beside it, on the side where less stands."""
    theme, unit, at = inks.theme, inks.unit, spot.at
    painter.setPen(inks.pen(theme.color("accent" if lit else "outline"), 2.0 if lit else 1.4))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    radius = (9 if lit else 7) * unit
    painter.drawEllipse(QPointF(at.x, at.y), radius, radius)
    width = inks.measure(spot.node, NAME) + 8 * unit
    start = at.x - 9 * unit - width if left else at.x + 9 * unit
    box = QRectF(start, at.y - 24 * unit, width, 16 * unit)
    line = QPen(theme.color("accent" if lit else "hairline"), 1.0)
    outlined(painter, box, 3 * unit, theme.color("raised"), line)
    centre = Point(box.center().x(), box.center().y())
    inks.text(painter, spot.node, centre, NAME, theme.color("text"), Align.CENTRE)


def _paint_hint(painter: QPainter, drawing: Drawing, lead: Lead, inks: Inks, *, by_keys: bool) -> None:
    """Say beside the loose end what letting go would do, and which keys help."""
    theme, unit = inks.theme, inks.unit
    words, keys = said(lead), _keys(lead, by_keys=by_keys)
    width = max(inks.measure(words, WORDS), inks.measure(keys, KEYS)) + 24 * unit
    height = 48 * unit
    left = min(lead.tip.x + 18 * unit, drawing.width - width - 4 * unit)
    top = lead.tip.y + 16 * unit
    if top + height > drawing.height:
        top = lead.tip.y - height - 28 * unit
    box = QRectF(max(left, 4 * unit), top, width, height)
    shade = theme.color("plot" if theme.dark else "outline", 0.55 if theme.dark else 0.35)
    outlined(painter, box.translated(2, 4), 6 * unit, shade, None)
    outlined(painter, box, 6 * unit, theme.color("raised"), QPen(theme.color("accent"), 1.2))
    start = box.left() + 12 * unit
    inks.text(painter, words, Point(start, box.top() + 16 * unit), WORDS, theme.color("text"))
    inks.text(painter, keys, Point(start, box.top() + 34 * unit), KEYS, theme.color("dim"))


def _keys(lead: Lead, *, by_keys: bool) -> str:
    kind = "" if lead.moved else "R resistor · C capacitor · "
    if by_keys:
        other = "E other end · " if lead.moved else ""
        return f"arrows or Tab · {kind}{other}G ground · N new node · Enter · Esc"
    return f"{kind}Esc leave"
