"""The board around a network: controller, sync lines, connector, cable and monitor."""

from workbench.circuit.network import GROUND, NodeId
from workbench.drawing.board import LOAD, SyncRow
from workbench.drawing.elements import (
    Align,
    Block,
    BlockKind,
    Contact,
    Figure,
    Label,
    OpenEnd,
    Place,
    Symbol,
    SymbolKind,
    WireRole,
)
from workbench.drawing.faces import CAPTION, CURRENT, LOADED, NAME, OPEN, PIN, STATE, VALUE, VOLTS
from workbench.drawing.geometry import Point, Rect
from workbench.drawing.layout import text_above
from workbench.drawing.runs import Bus
from workbench.drawing.sketch import Sketch
from workbench.drawing.symbols import body_height
from workbench.units import format_quantity

__all__ = ["draw_board", "foot"]

CONTACT = 10.5
"""Radius of a contact. [design px]"""


def draw_board(sketch: Sketch) -> None:
    """Draw everything that stands around the network; on a slim sheet only the volts."""
    if sketch.layout.sheet.slim:
        _draw_slim(sketch)
        return
    for index, row in enumerate(sketch.layout.board.sync):
        _draw_sync(sketch, index, row)
    _draw_bodies(sketch)
    _draw_load(sketch)
    _draw_return(sketch)
    _draw_captions(sketch)
    _draw_volts(sketch)


def _draw_slim(sketch: Sketch) -> None:
    """Say which row is the monitor's, and keep room for the output's volts."""
    load = next((symbol for symbol in sketch.symbols if symbol.part == LOAD), None)
    if load is not None:
        at = Point(6 * sketch.unit, load.body.centre.y)
        sketch.labels.append(Label("monitor", at, CAPTION))
    _draw_volts(sketch)


def _draw_sync(sketch: Sketch, index: int, row: SyncRow) -> None:
    layout, unit, wide = sketch.layout, sketch.unit, sketch.layout.sheet.wide
    y, columns = layout.sync_y(index), layout.columns
    role = WireRole.H_SYNC if index == 0 else WireRole.V_SYNC
    pin_node, out_node = NodeId(f"{row.part} pin"), NodeId(f"{row.part} line")
    left, right = columns.boxes[0] if columns.boxes else (columns.ranks[0] - 80 * unit, columns.ranks[0])
    plain = row.ohms == 0
    box = Rect.around(Point((left + right) / 2, y), right - left, body_height(layout.sheet, layout.pitch))
    body = box
    if layout.sheet.zigzag and not plain:
        body = Rect.around(box.centre, box.width, 16 * unit)
    symbol = Symbol(
        row.part,
        SymbolKind.WIRE if plain else SymbolKind.RESISTOR,
        body,
        Point(body.left, y),
        Point(body.right, y),
        (pin_node, out_node),
        flipped=False,
        vertical=False,
        value=Label(
            "wire" if plain else format_quantity(row.ohms, "Ω"),
            box.centre.moved(dy=20 * unit if body is not box else 0),
            VALUE,
            Align.CENTRE,
            strong=not plain,
        ),
        name=_sync_name(row, body, y, unit, above=layout.pitch.roomy),
        bands=None,
        field=box,
    )
    sketch.symbols.append(symbol)
    contact = Point(sum(columns.socket) / 2, y)
    end = Point(columns.monitor[0] + 12 * unit, y)
    sketch.wire(pin_node, Point(columns.block[1], y), symbol.a, role=role)
    sketch.wire(out_node, symbol.b, contact, end, role=role)
    sketch.contacts.append(Contact(row.contact, contact, CONTACT * unit, role))
    start = columns.block[0] + (11 if wide else 9) * unit
    widest = max((layout.sheet.measure(text, PIN) for text in layout.board.pins), default=0.0)
    sketch.labels.append(Label(row.pin, Point(start, y), PIN, strong=True))
    at = Point(start + max(widest, layout.sheet.measure(row.pin, PIN)) + 10 * unit, y)
    words = row.caption
    if at.x + layout.sheet.measure(words, CAPTION) > columns.block[1] - 4 * unit:
        words = words[:1]
    sketch.labels.append(Label(words, at, CAPTION))
    sketch.labels.append(Label(row.caption, end.moved(5 * unit), NAME, strong=True))
    if wide:
        volts = Point(columns.block[1] + 24 * unit, y + 11 * unit)
        sketch.places.append(Place(Figure.SYNC_VOLTS, volts, VOLTS, pin=index))


def _sync_name(row: SyncRow, body: Rect, y: float, unit: float, *, above: bool) -> Label:
    if above:
        return Label(row.part, Point(body.left + unit, body.top - 12.5 * unit), NAME)
    return Label(row.part, Point(body.right + 8 * unit, y - 10 * unit), NAME)


def _return_y(sketch: Sketch) -> float:
    """Return the height of the colour's return contact: below the output's figures."""
    layout, unit = sketch.layout, sketch.unit
    y = layout.exit_y + max(104 * unit, round(1.52 * layout.pitch.row))
    if layout.plan.rungs:
        # A rung's value stands between two rows, so the ground symbol keeps to a row.
        rows = [layout.y(level) for level in layout.levels]
        y = min((row for row in rows if row >= y), default=y)
    return min(y, layout.sync_y(0) - 44 * unit) if layout.board.sync else y


def foot(sketch: Sketch) -> float:
    """Return the height at which the bodies end. [px]"""
    layout = sketch.layout
    rows = len(layout.board.sync)
    last = layout.sync_y(rows - 1) if rows else layout.y(layout.levels[-1] if layout.levels else 0)
    return (last if layout.sheet.slim else max(last, _return_y(sketch))) + layout.pitch.below


def _draw_bodies(sketch: Sketch) -> None:
    layout, unit, columns = sketch.layout, sketch.unit, sketch.layout.columns
    top, end, y = layout.pitch.captions, foot(sketch), layout.exit_y
    socket_top = max(top, y - 22 * unit)
    monitor_top, patch = _screen(sketch, top, y)
    add = sketch.blocks.append
    add(Block(BlockKind.CONTROLLER, Rect.between(columns.block[0], top, columns.block[1], end)))
    add(Block(BlockKind.SOCKET, Rect.between(columns.socket[0], socket_top, columns.socket[1], end)))
    if columns.cable[1] > columns.cable[0]:
        cable = Rect.between(columns.cable[0], socket_top + 7 * unit, columns.cable[1], end - 24 * unit)
        add(Block(BlockKind.CABLE, cable))
    add(Block(BlockKind.MONITOR, Rect.between(columns.monitor[0], monitor_top, columns.monitor[1], end)))
    add(Block(BlockKind.PATCH, patch))


def _screen(sketch: Sketch, top: float, y: float) -> tuple[float, Rect]:
    """Return the top of the monitor, and the patch of screen: over the output, or under the load."""
    layout, inset = sketch.layout, 8 * sketch.unit
    left, right = layout.columns.monitor
    above = y - layout.screen_height - 30 * sketch.unit
    monitor_top = above if layout.screen_above else max(top, y - 22 * sketch.unit)
    patch_top = above + inset if layout.screen_above else y + layout.load_height + 52 * sketch.unit
    return monitor_top, Rect(left + inset, patch_top, right - left - 2 * inset, layout.screen_height)


def _draw_load(sketch: Sketch) -> None:
    """Draw the termination in the monitor, or the open end where none is fitted."""
    layout, unit, columns = sketch.layout, sketch.unit, sketch.layout.columns
    y, load, out = layout.exit_y, layout.board.load, layout.plan.network.output
    contact = Point(sum(columns.socket) / 2, y)
    x = columns.monitor[0] + round((26 if layout.sheet.wide else 20) * unit)
    sketch.contacts.append(Contact(layout.board.contact, contact, CONTACT * unit, WireRole.BUS))
    body = Rect(x - 9 * unit, y + 13 * unit, 18 * unit, layout.load_height)
    text = "no load" if load.ohms is None else format_quantity(load.ohms, "Ω")
    at = Point(body.right + 6 * unit, body.centre.y)
    # The ring of the focus around it still lies inside the monitor.
    field = Rect.between(at.x - 5 * unit, at.y - 13 * unit, columns.monitor[1] - 9 * unit, at.y + 13 * unit)
    fitted = load.ohms is not None
    sketch.symbols.append(
        Symbol(
            LOAD,
            SymbolKind.RESISTOR if fitted else SymbolKind.WIRE,
            body,
            Point(x, body.top),
            Point(x, body.bottom),
            (out, GROUND),
            flipped=False,
            vertical=True,
            value=Label(text, at, VALUE if fitted else CAPTION, strong=fitted),
            name=Label("", at, NAME),
            bands=None,
            field=field,
        )
    )
    sketch.wire(out, contact, Point(x, y), Point(x, body.top), role=WireRole.BUS)
    if fitted:
        sketch.ground(Point(x, body.bottom), x)
    else:
        sketch.open_ends.append(OpenEnd(Point(x, body.top), out))
    if fitted and load.monitors > 1:
        twice = Label(f"× {load.monitors}", at.moved(dy=17 * unit), CAPTION)
        sketch.labels.append(twice)
    if columns.cable[1] - columns.cable[0] > 36 * unit:
        middle = sum(columns.cable) / 2
        if columns.cable[1] - columns.cable[0] > layout.sheet.measure("00.000 mA", CURRENT):
            at = Point(middle, y + 14 * unit)
            sketch.places.append(Place(Figure.LOAD_AMPS, at, CURRENT, Align.CENTRE))
        sketch.places.append(Place(Figure.LOAD_ARROW, Point(middle, y), CURRENT))
        _draw_cable_texts(sketch, middle)


def _draw_cable_texts(sketch: Sketch, middle: float) -> None:
    cable = sketch.layout.board.cable
    if cable is None:
        return
    y = sketch.layout.exit_y + 52 * sketch.unit
    for line, text in enumerate((format_quantity(cable.metres, "m"), format_quantity(cable.ohms, "Ω"))):
        at = Point(middle, y + 18 * line * sketch.unit)
        sketch.labels.append(Label(text, at, VOLTS, Align.CENTRE))


def _draw_return(sketch: Sketch) -> None:
    """Draw the colour's return contact with its ground."""
    layout, unit, columns = sketch.layout, sketch.unit, sketch.layout.columns
    contact = Point(sum(columns.socket) / 2, _return_y(sketch))
    sketch.contacts.append(Contact(layout.board.return_contact, contact, CONTACT * unit, WireRole.RETURN))
    sketch.ground(contact, columns.socket[0] - 24 * unit)


def _draw_captions(sketch: Sketch) -> None:
    layout, unit, columns = sketch.layout, sketch.unit, sketch.layout.columns
    if not layout.sheet.wide:
        return

    def put(text: str, x: float, y: float, *, live: bool = False) -> None:
        sketch.labels.append(Label(text, Point(x, y), CAPTION, Align.CENTRE, live=live))

    head, below = layout.pitch.captions - 12 * unit, foot(sketch) + 16 * unit
    put("pins", sum(columns.block) / 2, head)
    put("leg current", columns.ranks[0] - 54 * unit, head, live=True)
    if columns.boxes:
        put("resistor", sum(columns.boxes[0]) / 2, head)
        put("node", layout.text_x, head)
    put("J1", sum(columns.socket) / 2, below)
    if columns.cable[1] > columns.cable[0]:
        put("cable", sum(columns.cable) / 2, below)
    put("monitor", sum(columns.monitor) / 2, below)
    left = Label(layout.board.controller, Point(columns.block[0] + 2 * unit, below), CAPTION)
    sketch.labels.append(left)


def _draw_volts(sketch: Sketch) -> None:
    """Keep room for the output's volts, loaded and open, and for those of the spine's nodes.

    They stand right of the last bus; after a resistor at the output they stand at the connector's
    side, since they are those after it.
    """
    layout = sketch.layout
    if text_above(layout.plan):
        _volts_above(sketch)
    else:
        _volts_below(sketch)
    if layout.sheet.wide:
        _keep_node_volts(sketch)


def _volts_above(sketch: Sketch) -> None:
    layout, unit = sketch.layout, sketch.unit
    after = bool(layout.plan.tail.runs)
    upper = layout.exit_y - (73 if after else 51) * unit
    x = layout.text_x + 13 * unit
    beside = x + layout.sheet.measure("0.000 V ", CURRENT)
    if after:
        beside = _end(sketch) - layout.sheet.measure("loaded", CAPTION)
        x = beside - layout.sheet.measure("0.000 V ", CURRENT)
    for figure, words, y in ((Figure.LOADED, "loaded", upper), (Figure.OPEN, "open", upper + 19 * unit)):
        sketch.places.append(Place(figure, Point(x, y), CURRENT))
        sketch.labels.append(Label(words, Point(beside, y), CAPTION, live=True))


def _volts_below(sketch: Sketch) -> None:
    layout, unit, sheet = sketch.layout, sketch.unit, sketch.layout.sheet
    roomy, after = layout.pitch.roomy, bool(layout.plan.tail.runs)
    x, align = (_end(sketch), Align.RIGHT) if after else (layout.text_x + 13 * unit, Align.LEFT)
    # The box of the resistor at the output comes first, or the value under its zig-zag.
    lower = (20 if sheet.zigzag else 7) if after else 0
    y = layout.exit_y + ((28 if roomy else 20) + lower) * unit
    line, pair = (17, 45) if roomy else (15, 37)
    faces = (STATE, CURRENT) if sheet.slim else (LOADED, OPEN)
    for figure, words, face in zip((Figure.LOADED, Figure.OPEN), ("loaded", "open"), faces, strict=True):
        sketch.places.append(Place(figure, Point(x, y), face, align))
        sketch.labels.append(Label(words, Point(x, y + line * unit), CAPTION, align, live=True))
        y += pair * unit


def _end(sketch: Sketch) -> float:
    """Return where texts before the connector end. [px]"""
    return sketch.layout.columns.socket[0] - 9 * sketch.unit


def _keep_node_volts(sketch: Sketch) -> None:
    layout, plan = sketch.layout, sketch.layout.plan
    for rung in plan.rungs:
        node = rung.run.end.node
        at = Point(layout.x(Bus(node)) + 12 * sketch.unit, layout.y(layout.levels[rung.below]))
        if plan.rank[Bus(node)] == plan.ranks and rung.below != plan.exit.upper:
            sketch.places.append(Place(Figure.NODE_VOLTS, at, VOLTS, node=node))
