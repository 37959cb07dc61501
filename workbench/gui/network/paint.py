"""Paints a drawing: bodies, the light on what is chosen, wires, parts, figures."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from workbench.drawing import Drawing
from workbench.drawing.elements import Align, Block, BlockKind, Contact, Figure, Key, Place, Wire, WireRole
from workbench.drawing.faces import CAPTION, PIN, STATE
from workbench.drawing.geometry import Rect
from workbench.drawing.wires import pieces
from workbench.gui.network.inks import Inks
from workbench.gui.network.paint_parts import paint_parts
from workbench.gui.network.scene import Scene
from workbench.gui.network.shown import PinState
from workbench.gui.network.targets import Kind, Target, box_of
from workbench.units import format_fixed

__all__ = ["Lines", "lines_of", "paint", "rect"]

Lines = tuple[tuple[Wire, list[QPolygonF]], ...]

NOTHING = "–"
"""What stands for a figure that means nothing."""
ITS_OWN = (Figure.PIN_VOLTS, Figure.SYNC_VOLTS)
"""Figures that need no network."""
BEHIND = (Figure.LOADED, Figure.OPEN, Figure.LOAD_AMPS, Figure.LOAD_ARROW)
"""Figures of the output and of what is behind it."""
RISE_LEAST = 1e-12
"""Current below which no arrow is drawn. [A]"""


def rect(box: Rect) -> QRectF:
    """Return a rectangle of a drawing as Qt's."""
    return QRectF(box.left, box.top, box.width, box.height)


def lines_of(drawing: Drawing) -> Lines:
    """Return the wires of a drawing as they are painted, buses last; worked out once for a drawing."""
    order = sorted(drawing.wires, key=lambda wire: wire.role is WireRole.BUS)
    return tuple(
        (wire, [QPolygonF([QPointF(p.x, p.y) for p in points]) for points in pieces(wire, drawing)])
        for wire in order
    )


def paint(painter: QPainter, drawing: Drawing, lines: Lines, scene: Scene, inks: Inks) -> None:
    """Paint a drawing and what is known about it; ``lines`` are its wires."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _paint_blocks(painter, drawing, scene, inks)
    _paint_light(painter, drawing, scene, inks)
    _paint_wires(painter, lines, scene, inks)
    _paint_joints(painter, drawing, scene, inks)
    for contact in drawing.contacts:
        _paint_contact(painter, contact, scene, inks)
    paint_parts(painter, drawing, scene, inks)
    for key in drawing.keys:
        _paint_key(painter, key, scene, inks)
    _paint_labels(painter, drawing, inks)
    for place in drawing.places:
        _paint_figure(painter, place, scene, inks)
    _paint_focus(painter, drawing, scene, inks)


def _paint_blocks(painter: QPainter, drawing: Drawing, scene: Scene, inks: Inks) -> None:
    for block in drawing.blocks:
        if block.kind is BlockKind.PATCH:
            _paint_patch(painter, block, scene, inks)
            continue
        painter.setPen(inks.pen(inks.theme.color("outline"), 1.2))
        painter.setBrush(inks.theme.color("raised"))
        radius = 8 * inks.unit
        painter.drawRoundedRect(rect(block.box), radius, radius)


def _paint_patch(painter: QPainter, block: Block, scene: Scene, inks: Inks) -> None:
    """Paint the piece of screen in the grey that all three colours at this level would make."""
    light = scene.shown.lightness
    grey = QColor(*[scene.shown.grey] * 3)
    painter.setPen(inks.pen(inks.theme.color("hairline"), 1.0))
    painter.setBrush(grey if scene.shown.sound else Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(rect(block.box), 3 * inks.unit, 3 * inks.unit)
    ink = inks.theme.color(_readable_on(light, inks))
    centre = block.box.centre
    if not scene.shown.sound:
        inks.text(painter, NOTHING, centre, CAPTION, inks.theme.color("dim"), Align.CENTRE)
        return
    if block.box.height < 40 * inks.unit:
        words = f"grey L* {light:.0f}"
        if inks.measure(words, CAPTION) > 0.9 * block.box.width:
            words = f"L* {light:.0f}"
        inks.text(painter, words, centre, CAPTION, ink, Align.CENTRE, weight=600)
        return
    inks.text(painter, "as grey, L*", centre.moved(dy=-9 * inks.unit), CAPTION, ink, Align.CENTRE)
    inks.text(painter, f"{light:.0f}", centre.moved(dy=10 * inks.unit), PIN, ink, Align.CENTRE, weight=600)


def _readable_on(light: float, inks: Inks) -> str:
    """Return the role of the two, panel or text, that can be read on a grey."""
    return "panel" if (light > 50) == inks.theme.dark else "text"


def _paint_light(painter: QPainter, drawing: Drawing, scene: Scene, inks: Inks) -> None:
    """Lay the pool of light behind the chosen part, a weaker one behind what is pointed at."""
    for part, strength in ((scene.chosen, 1.0), (scene.pointed, 0.45)):
        symbol = drawing.symbol(part) if part is not None else None
        if symbol is None or (strength < 1.0 and part == scene.chosen):
            continue
        pool, centre = inks.light(strength, painter.device().devicePixelRatioF()), symbol.field.centre
        half = pool.deviceIndependentSize() / 2
        painter.drawPixmap(QPointF(centre.x - half.width(), centre.y - half.height()), pool)


def _wire_pen(wire: Wire, scene: Scene, inks: Inks) -> QPen:
    theme = inks.theme
    if wire.role is WireRole.LEG and wire.pin is not None and wire.pin < len(scene.shown.states):
        state = scene.shown.states[wire.pin]
        if state is PinState.HIGH:
            return inks.high_wire(scene.channel)
        return inks.pen(theme.color("dim"), 1.6, (3, 2.4) if state is PinState.FLOATING else ())
    if wire.role is WireRole.BUS:
        return inks.pen(theme.channel(scene.channel), 2.4)
    if wire.role is WireRole.H_SYNC:
        return inks.pen(theme.color("h_sync"), 1.8)
    if wire.role is WireRole.V_SYNC:
        return inks.v_sync()
    return inks.pen(theme.color("text"), 1.5) if wire.role is WireRole.RETURN else inks.low_wire()


def _paint_wires(painter: QPainter, lines: Lines, scene: Scene, inks: Inks) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    pens: dict[tuple[WireRole, int | None], QPen] = {}
    for wire, polygons in lines:
        key = wire.role, wire.pin
        if key not in pens:
            pens[key] = _wire_pen(wire, scene, inks)
        painter.setPen(pens[key])
        for polygon in polygons:
            painter.drawPolyline(polygon)


def _paint_joints(painter: QPainter, drawing: Drawing, scene: Scene, inks: Inks) -> None:
    unit, theme = inks.unit, inks.theme
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.channel(scene.channel))
    for dot in drawing.dots:
        painter.drawEllipse(QPointF(dot.x, dot.y), 4.2 * unit, 4.2 * unit)
    painter.setPen(inks.pen(theme.color("text"), 1.6))
    painter.setBrush(theme.color("plot"))
    for end in drawing.open_ends:
        painter.drawEllipse(QPointF(end.at.x, end.at.y), 5 * unit, 5 * unit)
    for ground in drawing.grounds:
        for row, half in enumerate((10.0, 6.5, 3.0)):
            y = ground.at.y + 4.5 * row * unit
            painter.drawLine(QPointF(ground.at.x - half * unit, y), QPointF(ground.at.x + half * unit, y))


def _paint_contact(painter: QPainter, contact: Contact, scene: Scene, inks: Inks) -> None:
    theme = inks.theme
    inkings = {
        WireRole.BUS: theme.channel(scene.channel),
        WireRole.H_SYNC: theme.color("h_sync"),
        WireRole.V_SYNC: theme.color("v_sync"),
    }
    painter.setPen(inks.pen(inkings.get(contact.role, theme.color("text")), 1.8))
    painter.setBrush(theme.color("plot"))
    painter.drawEllipse(QPointF(contact.at.x, contact.at.y), contact.radius, contact.radius)
    inks.text(painter, contact.number, contact.at, CAPTION, theme.color("text"), Align.CENTRE, weight=500)


def _paint_key(painter: QPainter, key: Key, scene: Scene, inks: Inks) -> None:
    theme, unit = inks.theme, inks.unit
    state = scene.shown.states[key.pin] if key.pin < len(scene.shown.states) else PinState.FLOATING
    pointed = scene.hover == Target(Kind.PIN, pin=key.pin)
    high = state is PinState.HIGH
    fill = theme.color("text") if high else theme.color("plot" if theme.dark else "panel")
    if pointed:
        fill = theme.mixed("text" if high else "plot", "accent", 0.25)
    dashes = (3.0, 2.0) if state is PinState.FLOATING else ()
    painter.setPen(inks.pen(theme.color("text" if high else "outline"), 1.5, dashes))
    painter.setBrush(fill)
    painter.drawRoundedRect(rect(key.box), 5 * unit, 5 * unit)
    ink = theme.color("panel" if high else "text")
    inks.text(painter, state.value, key.box.centre, STATE, ink, Align.CENTRE)


def _paint_labels(painter: QPainter, drawing: Drawing, inks: Inks) -> None:
    theme, unit = inks.theme, inks.unit
    for label in drawing.labels:
        ink = theme.color("text" if label.strong else "dim")
        inks.text(painter, label.text, label.at, label.face, ink, label.align)
    painter.setPen(inks.pen(theme.color("dim"), 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for brace in drawing.braces:
        left, right, foot = brace.left, brace.right, brace.left.y + brace.drop
        corners = ((left.x, left.y), (left.x, foot), (right.x, foot), (right.x, right.y))
        painter.drawPolyline(QPolygonF([QPointF(x + unit / 2, y) for x, y in corners]))


def _paint_figure(painter: QPainter, place: Place, scene: Scene, inks: Inks) -> None:
    theme, shown = inks.theme, scene.shown
    text, dim = theme.color("text"), theme.color("dim")
    if not shown.sound and (place.figure in BEHIND or not shown.solved) and place.figure not in ITS_OWN:
        if place.figure in (Figure.LOADED, Figure.OPEN):
            inks.text(painter, NOTHING, place.at, place.face, dim, place.align)
        return
    if place.figure in (Figure.ARROW, Figure.LOAD_ARROW):
        _paint_arrow(painter, place, scene, inks)
        return
    words, ink = "", text
    if place.figure is Figure.LEG_AMPS and place.pin is not None:
        words = format_fixed(abs(shown.leg_amps[place.pin]), "A", prefix="m")
    elif place.figure is Figure.PIN_VOLTS and place.pin is not None:
        words, ink = format_fixed(shown.pin_volts[place.pin], "V", decimals=2), dim
    elif place.figure is Figure.LOADED:
        words = format_fixed(shown.loaded_volts, "V")
    elif place.figure is Figure.OPEN:
        words, ink = format_fixed(shown.open_volts, "V"), theme.mixed("text", "dim", 0.35)
    elif place.figure is Figure.NODE_VOLTS and place.node is not None:
        words, ink = format_fixed(shown.node_volts.get(place.node, 0.0), "V"), dim
    elif place.figure is Figure.LOAD_AMPS:
        words = format_fixed(shown.load_amps, "A", prefix="m")
    elif place.figure is Figure.SYNC_VOLTS and place.pin is not None:
        words, ink = format_fixed(scene.sync_volts[place.pin], "V", decimals=2), dim
    inks.text(painter, words, place.at, place.face, ink, place.align)


def _paint_arrow(painter: QPainter, place: Place, scene: Scene, inks: Inks) -> None:
    """Paint the head of an arrow the way the current runs."""
    load = place.figure is Figure.LOAD_ARROW
    amps = scene.shown.load_amps if load or place.pin is None else scene.shown.leg_amps[place.pin]
    if abs(amps) < RISE_LEAST:
        return
    high = load or (place.pin is not None and scene.shown.states[place.pin] is PinState.HIGH)
    way, unit = (1.0 if amps > 0 else -1.0), inks.unit
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(inks.theme.channel(scene.channel) if high else inks.theme.color("dim"))
    tip = QPointF(place.at.x + way * 5.5 * unit, place.at.y)
    back = place.at.x - way * 4.5 * unit
    head = [tip, QPointF(back, place.at.y - 4.2 * unit), QPointF(back, place.at.y + 4.2 * unit)]
    painter.drawPolygon(QPolygonF(head))


def _paint_focus(painter: QPainter, drawing: Drawing, scene: Scene, inks: Inks) -> None:
    """Ring what the keys are on: 2 px, 2.5 px outside."""
    box = box_of(drawing, scene.focus) if scene.focus is not None else None
    if box is None:
        return
    symbol = drawing.symbol(scene.focus.part) if scene.focus and scene.focus.part else None
    around = symbol.body.grown(1) if symbol is not None and not symbol.vertical else box
    painter.setPen(QPen(inks.theme.color("accent"), 2.0))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(rect(around.grown(4.0)), 6 * inks.unit, 6 * inks.unit)
