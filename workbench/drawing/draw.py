"""From a network to its drawing: the parts in rows, the nodes as buses, the board around them."""

from dataclasses import replace
from itertools import groupby, pairwise

from workbench.circuit.codes import pin_label
from workbench.circuit.network import GROUND, Load, Network, Resistor
from workbench.drawing.board import LOAD, Board
from workbench.drawing.elements import (
    Align,
    Drawing,
    Figure,
    Key,
    Label,
    OpenEnd,
    Place,
    Symbol,
    WireRole,
)
from workbench.drawing.faces import CAPTION, CURRENT, PIN, VOLTS
from workbench.drawing.geometry import Point, Rect
from workbench.drawing.layout import lay_out
from workbench.drawing.plan import Plan, make_plan
from workbench.drawing.runs import Bus, Run
from workbench.drawing.sheet import Sheet
from workbench.drawing.sketch import Sketch
from workbench.drawing.spots import find_spots
from workbench.drawing.stack import Row
from workbench.drawing.surroundings import draw_board, foot
from workbench.drawing.symbols import brace, hang, lie
from workbench.drawing.wires import find_crossings, find_dots

__all__ = ["draw"]


def draw(network: Network, board: Board, sheet: Sheet) -> Drawing:
    """Return the drawing of a network on its board.

    Parameters
    ----------
    network : Network
        Any network, sensible or not; every part of it is drawn once.
    board : Board
        Names and values around it.
    sheet : Sheet
        The room, and how wide texts are. A network that does not fit makes the drawing larger.

    Returns
    -------
    Drawing
        No two boxes overlap; wires of different nodes only cross, with a break.
    """
    if sheet.slim:
        # There the load is one more row, and what stands around the network is left out.
        network, board = _with_load(network, board.load), replace(board, sync=())
    sketch = Sketch(lay_out(make_plan(network), board, sheet))
    for index, row in enumerate(sketch.layout.plan.rows):
        _draw_row(sketch, index, row)
    _draw_rungs(sketch)
    _draw_exit(sketch)
    draw_board(sketch)
    _draw_buses(sketch)
    _draw_open_ends(sketch)
    return _finish(sketch)


def _with_load(network: Network, load: Load) -> Network:
    if load.ohms is None:
        return network
    fitted = Resistor(LOAD, network.output, GROUND, load.ohms)
    return replace(network, resistors=(*network.resistors, fitted))


def _finish(sketch: Sketch) -> Drawing:
    layout = sketch.layout
    wires = tuple(sketch.wires)
    drawing = Drawing(
        width=layout.columns.width,
        height=foot(sketch) + layout.pitch.feet,
        unit=sketch.unit,
        pitch=layout.pitch.row,
        zigzag=layout.sheet.zigzag,
        symbols=tuple(sketch.symbols),
        wires=wires,
        dots=find_dots(wires),
        crossings=find_crossings(wires),
        grounds=tuple(sketch.grounds),
        open_ends=tuple(sketch.open_ends),
        keys=tuple(sketch.keys),
        contacts=tuple(sketch.contacts),
        blocks=tuple(sketch.blocks),
        braces=tuple(sketch.braces),
        labels=tuple(sketch.labels),
        places=tuple(sketch.places),
        exit=Point(layout.text_x, layout.exit_y),
        output=layout.plan.network.output,
        boxes=layout.columns.boxes[0][0] if layout.columns.boxes else 0.0,
    )
    return replace(drawing, spots=find_spots(drawing))


def _draw_row(sketch: Sketch, index: int, row: Row) -> None:
    layout = sketch.layout
    y = layout.y(layout.levels[index])
    if row.pin is not None:
        _draw_key(sketch, row.pin, y)
    drawn = [
        (run, _draw_run(sketch, run, slot, y))
        for run, slot in zip(row.runs, layout.slots[index], strict=True)
    ]
    for _, pieces in groupby(drawn, key=lambda each: each[0].chain or each[0]):
        _draw_brace(sketch, [symbol for _, symbols in pieces for symbol in symbols])


def _draw_key(sketch: Sketch, pin: int, y: float) -> None:
    """Draw the state key of a pin, its texts and the wire to its bus."""
    layout, unit = sketch.layout, sketch.unit
    left, right = layout.columns.block
    node = layout.plan.network.pins[pin]
    box = Rect.around(Point(right, y), *layout.key_size)
    key = Key(pin, node, box, Point(box.right, y))
    sketch.keys.append(key)
    if not layout.sheet.slim:
        _draw_pin_texts(sketch, pin, left, y)
    if node == GROUND:
        sketch.ground(key.at, box.right + 20 * unit)
    else:
        bus = sketch.meet(Bus(node), y)
        sketch.wire(node, key.at, bus, role=WireRole.LEG, pin=pin)
        served = any(node in run.nodes for row in layout.plan.rows for run in row.runs)
        if served and not layout.sheet.slim:
            _draw_pin_places(sketch, pin, key, y)


def _draw_pin_texts(sketch: Sketch, pin: int, left: float, y: float) -> None:
    layout, unit = sketch.layout, sketch.unit
    kind, number = pin_label(layout.plan.network, pin)
    names = layout.board.pins
    name = names[pin] if pin < len(names) else ""
    start = left + (11 if layout.sheet.wide else 9) * unit
    widest = max((layout.sheet.measure(text, PIN) for text in names), default=0.0)
    sketch.labels.append(Label(name, Point(start, y), PIN, strong=True))
    room = layout.columns.block[1] - 22 * unit - start - widest - 10 * unit
    words = f"{kind} {number}" if layout.sheet.measure(f"{kind} 0", CAPTION) <= room else str(number)
    sketch.labels.append(Label(words, Point(start + widest + 10 * unit, y), CAPTION))


def _draw_pin_places(sketch: Sketch, pin: int, key: Key, y: float) -> None:
    layout, unit = sketch.layout, sketch.unit
    end, wide = layout.columns.ranks[0], layout.sheet.wide
    current = Point(end - (26 if wide else 20) * unit, y - 12 * unit)
    arrow = Point(end - (36 if wide else 14) * unit, y)
    sketch.places.append(Place(Figure.LEG_AMPS, current, CURRENT, Align.RIGHT, pin=pin))
    sketch.places.append(Place(Figure.ARROW, arrow, CURRENT, pin=pin))
    if wide:
        volts = Point(key.box.right + 9 * unit, y + 11 * unit)
        sketch.places.append(Place(Figure.PIN_VOLTS, volts, VOLTS, pin=pin))


def _draw_run(sketch: Sketch, run: Run, slot: int, y: float) -> list[Symbol]:
    """Draw a run between its two buses, or between a bus and a ground symbol."""
    layout = sketch.layout
    pin = _pin_of(layout.plan, run)
    role = WireRole.LEG if pin is not None else WireRole.PLAIN
    if run.end.node == GROUND and run.start.node not in layout.plan.network.pins:
        run = run.turned()
    left, right = layout.columns.boxes[slot]
    symbols = lie(run, left, right, y, layout.sheet, layout.pitch, first=slot == 0)
    sketch.symbols += symbols
    if not symbols:
        sketch.wire(run.start.node, sketch.meet(run.start, y), sketch.meet(run.end, y))
        return []
    _join(sketch, run.start, symbols[0].a, slot, role, pin)
    for one, other in pairwise(symbols):
        sketch.wire(one.nodes[1], one.b, other.a, role=role, pin=pin)
    _join(sketch, run.end, symbols[-1].b, slot, role, pin)
    return symbols


def _pin_of(plan: Plan, run: Run) -> int | None:
    """Return the pin whose current alone a run carries; none for one that begins at another node."""
    pins = {pin: index for index, pin in reversed(list(enumerate(plan.network.pins)))}
    if run.start.node in pins or not run.chain:
        return pins.get(run.start.node)
    pieces = (other for row in plan.rows for other in row.runs if other.chain == run.chain)
    return next((pins[piece.start.node] for piece in pieces if piece.start.node in pins), None)


def _join(sketch: Sketch, bus: Bus, end: Point, slot: int, role: WireRole, pin: int | None) -> None:
    """Draw the wire from the end of a symbol to its bus, or to a ground symbol beside it."""
    if bus.node != GROUND:
        sketch.wire(bus.node, sketch.meet(bus, end.y), end, role=role, pin=pin)
        return
    columns, unit = sketch.layout.columns, sketch.unit
    left, right = columns.boxes[slot]
    if end.x > (left + right) / 2:
        sketch.ground(end, end.x + 18 * unit)
    else:
        sketch.ground(end, min(end.x - 18 * unit, columns.ranks[0] - 14 * unit if slot == 0 else end.x))


def _draw_brace(sketch: Sketch, symbols: list[Symbol]) -> None:
    parts = {part.id: part for part in sketch.layout.plan.network.resistors}
    found = brace(
        symbols, [parts.get(symbol.part) for symbol in symbols], sketch.layout.sheet, sketch.layout.pitch
    )
    if found:
        sketch.braces.append(found[0])
        sketch.labels.append(found[1])


def _draw_rungs(sketch: Sketch) -> None:
    layout = sketch.layout
    for rung in layout.plan.rungs:
        top, bottom = (layout.y(layout.levels[row]) for row in (rung.above, rung.below))
        x = layout.x(rung.run.start)
        room = layout.columns.socket[0] - x - 16 * sketch.unit
        symbols = hang(rung.run, x, top, bottom, layout.sheet, room)
        sketch.symbols += symbols
        sketch.meet(rung.run.start, symbols[0].a.y)
        sketch.meet(rung.run.end, symbols[-1].b.y)
        for one, other in pairwise(symbols):
            sketch.wire(one.nodes[1], one.b, other.a, role=WireRole.BUS)


def _draw_exit(sketch: Sketch) -> None:
    """Draw the way from the last bus through the tail to the connector's contact."""
    layout, y = sketch.layout, sketch.layout.exit_y
    plan = layout.plan
    contact = Point(sum(layout.columns.socket) / 2, y)
    if plan.network.output == GROUND:
        start = Point(layout.columns.socket[0] - 40 * sketch.unit, y)
        sketch.ground(start, start.x)
        sketch.wire(GROUND, start, contact, role=WireRole.BUS)
        return
    for run in plan.tail.runs:
        left, right = layout.columns.boxes[plan.rank[run.start]]
        symbols = lie(run, left, right, y, layout.sheet, layout.pitch, above=True)
        sketch.symbols += symbols
        sketch.wire(run.start.node, sketch.meet(run.start, y), symbols[0].a, role=WireRole.BUS)
        for one, other in pairwise(symbols):
            sketch.wire(one.nodes[1], one.b, other.a, role=WireRole.BUS)
        sketch.wire(run.end.node, symbols[-1].b, sketch.meet(run.end, y), role=WireRole.BUS)
    out = sketch.meet(Bus(plan.network.output), y)
    if not layout.sheet.slim:
        sketch.wire(plan.network.output, out, contact, role=WireRole.BUS)


def _draw_buses(sketch: Sketch) -> None:
    for bus, reach in sketch.reach.items():
        x, top, bottom = sketch.layout.x(bus), min(reach), max(reach)
        if top < bottom:
            sketch.wire(bus.node, Point(x, top), Point(x, bottom), role=WireRole.BUS)


def _draw_open_ends(sketch: Sketch) -> None:
    """Put a ring where a node has one wire only and leads nowhere."""
    for bus, reach in sketch.reach.items():
        if len(reach) == 1 and bus.number == 0:
            end = Point(sketch.layout.x(bus), reach[0])
            if bus.node in sketch.layout.plan.network.pins:
                end = end.moved(30 * sketch.unit)
                sketch.wire(bus.node, Point(sketch.layout.x(bus), end.y), end)
            sketch.open_ends.append(OpenEnd(end, bus.node))
