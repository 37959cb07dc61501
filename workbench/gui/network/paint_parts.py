"""Paints the parts: boxes or zig-zags, plates, names, values, colour bands, what was found."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from workbench.checks.finding import Severity
from workbench.drawing import LOAD, Drawing
from workbench.drawing.beside import SIGN
from workbench.drawing.elements import Align, Symbol, SymbolKind
from workbench.drawing.faces import CAPTION
from workbench.drawing.geometry import Point, Rect
from workbench.drawing.zigzag import zigzag_points
from workbench.gui.network.badges import paint_badge
from workbench.gui.network.inks import Inks
from workbench.gui.network.scene import Scene
from workbench.gui.widgets.signs import Sign, draw_sign

__all__ = ["paint_parts"]


def paint_parts(painter: QPainter, drawing: Drawing, scene: Scene, inks: Inks) -> None:
    """Paint every part of a drawing."""
    for symbol in drawing.symbols:
        _paint_body(painter, symbol, drawing, scene, inks)
        _paint_texts(painter, symbol, scene, inks)
        if symbol.part == scene.edited and symbol.part != scene.made:
            _paint_was(painter, symbol, inks)
        elif symbol.bands is not None and symbol.part != scene.edited:
            _paint_bands(painter, symbol.bands, scene.codes.get(symbol.part, ()), inks)
        if symbol.part in scene.findings and symbol.part != scene.edited:
            _paint_sign(painter, symbol, scene, inks)
    for badge in scene.badges:
        paint_badge(painter, badge, inks)
    for note in scene.notes:
        if note.part != scene.edited:
            ink = inks.theme.color("fails" if note.fails else "warns")
            inks.text(painter, note.words, note.at, CAPTION, ink)
    side = SIGN * inks.unit
    for sign in scene.node_signs:
        box = QRectF(sign.at.x - side / 2, sign.at.y - side / 2, side, side)
        draw_sign(painter, box, Sign.FAILS if sign.fails else Sign.WARNS, inks.theme)


def _paint_body(painter: QPainter, symbol: Symbol, drawing: Drawing, scene: Scene, inks: Inks) -> None:
    theme, chosen = inks.theme, symbol.part == scene.chosen
    line = theme.color("accent" if chosen else "text")
    painter.setPen(inks.pen(line, 2.4 if chosen else 1.7))
    painter.setBrush(theme.color("plot"))
    if symbol.kind is SymbolKind.CAPACITOR:
        _paint_plates(painter, symbol, inks, line)
    elif symbol.kind is SymbolKind.WIRE:
        _paint_gap(painter, symbol, inks, chosen=chosen)
    elif drawing.zigzag:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPolyline(QPolygonF([QPointF(p.x, p.y) for p in zigzag_points(symbol)]))
    else:
        painter.drawRoundedRect(_rect(symbol.body), 3 * inks.unit, 3 * inks.unit)
    if symbol.part == scene.pointed and not chosen:
        painter.setPen(inks.pen(theme.color("accent"), 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(_rect(symbol.body.grown(5 * inks.unit)), 6 * inks.unit, 6 * inks.unit)


def _rect(box: Rect) -> QRectF:
    return QRectF(box.left, box.top, box.width, box.height)


def _paint_plates(painter: QPainter, symbol: Symbol, inks: Inks, line: QColor) -> None:
    body = symbol.body
    painter.setPen(inks.pen(line, 2.4))
    if symbol.vertical:
        painter.drawLine(QPointF(body.left, body.top), QPointF(body.right, body.top))
        painter.drawLine(QPointF(body.left, body.bottom), QPointF(body.right, body.bottom))
    else:
        painter.drawLine(QPointF(body.left, body.top), QPointF(body.left, body.bottom))
        painter.drawLine(QPointF(body.right, body.top), QPointF(body.right, body.bottom))


def _paint_gap(painter: QPainter, symbol: Symbol, inks: Inks, *, chosen: bool) -> None:
    """Paint the place of a part that is a plain wire: dashed, so a value can be given."""
    line = inks.theme.color("accent" if chosen else "outline")
    painter.setPen(inks.pen(line, 2.0 if chosen else 1.4, (3.0, 2.4)))
    painter.drawRoundedRect(_rect(symbol.body), 3 * inks.unit, 3 * inks.unit)


def _paint_texts(painter: QPainter, symbol: Symbol, scene: Scene, inks: Inks) -> None:
    theme = inks.theme
    lit = symbol.part in (scene.chosen, scene.pointed)
    name, value = symbol.name, symbol.value
    role = "text" if lit else "dim"
    inks.text(
        painter, name.text, name.at, name.face, theme.color(role), name.align, weight=600 if lit else None
    )
    if symbol.part == scene.edited:
        return
    ink = theme.color("text" if value.strong else "dim")
    inks.text(painter, value.text, value.at, value.face, ink, value.align)
    if symbol.part == scene.chosen and symbol.part != LOAD and not symbol.vertical:
        _paint_steppers(painter, symbol, inks)


def _paint_was(painter: QPainter, symbol: Symbol, inks: Inks) -> None:
    """Say over an open field what stands there until the new value is kept."""
    at = Point(symbol.field.right + 10 * inks.unit, symbol.field.top - 13 * inks.unit)
    ink = inks.theme.color("dim")
    inks.text(painter, f"was {symbol.value.text}", at, CAPTION, ink, Align.RIGHT)


def _paint_steppers(painter: QPainter, symbol: Symbol, inks: Inks) -> None:
    """Paint the two small angles that say the arrows step the value."""
    unit, field = inks.unit, symbol.field
    free = field.width / 2 - inks.measure(symbol.value.text, symbol.value.face) / 2
    if free < 18 * unit or symbol.kind is SymbolKind.CAPACITOR:
        return
    x, y = field.right - 11 * unit, field.centre.y
    painter.setPen(inks.pen(inks.theme.color("dim"), 1.6))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for way in (-1.0, 1.0):
        tip = QPointF(x, y + way * 8 * unit)
        foot = y + way * 4 * unit
        corners = [QPointF(x - 4.5 * unit, foot), tip, QPointF(x + 4.5 * unit, foot)]
        painter.drawPolyline(QPolygonF(corners))


def _paint_bands(painter: QPainter, room: Rect, names: tuple[str, ...], inks: Inks) -> None:
    """Paint the colour code, the tolerance a little apart; black has an outline to be seen."""
    unit, x = inks.unit, room.right
    for place, name in enumerate(reversed(names)):
        x -= 4 * unit
        band = QRectF(x, room.top, 4 * unit, room.height)
        dark = name == ("black" if inks.theme.dark else "white")
        painter.setPen(inks.pen(inks.theme.color("outline"), 1.0) if dark else Qt.PenStyle.NoPen)
        painter.setBrush(inks.theme.band(name))
        painter.drawRect(band.adjusted(0.5, 0.5, -0.5, -0.5) if dark else band)
        x -= (5 if place == 0 else 3) * unit


def _paint_sign(painter: QPainter, symbol: Symbol, scene: Scene, inks: Inks) -> None:
    """Let the sign of a finding break the upper right corner of a part."""
    unit, body = inks.unit, symbol.body
    finding = scene.findings[symbol.part]
    side = 15 * unit
    box = QRectF(body.right - side + 4 * unit, body.top - 0.62 * side, side, side)
    if symbol.vertical:
        beside = symbol.value.at.x + inks.measure(symbol.value.text, symbol.value.face) + 6 * unit
        box.moveTo(beside, symbol.value.at.y - side / 2)
    if not symbol.vertical:
        # The triangle is open, so the outline behind it is wiped away first.
        grown = box.adjusted(-2.5 * unit, -2.5 * unit, 2.5 * unit, 1.5 * unit)
        top = QPointF(grown.center().x(), grown.top())
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(inks.theme.color("panel"))
        painter.drawPolygon(QPolygonF([top, grown.bottomRight(), grown.bottomLeft()]))
    fails = finding.severity is Severity.FAIL
    draw_sign(painter, box, Sign.FAILS if fails else Sign.WARNS, inks.theme)
