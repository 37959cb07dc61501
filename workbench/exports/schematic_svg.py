"""The network as a drawing for paper: black on white, the same geometry as in the window.

Channels whose networks are equal share one drawing; others follow below each other.
"""

from collections.abc import Iterator
from dataclasses import replace
from html import escape
from itertools import groupby

from workbench.circuit.network import Cable
from workbench.drawing import H_SERIES, V_SERIES, Board, Drawing, Sheet, SyncRow, draw
from workbench.drawing.elements import Align, BlockKind, Label, Symbol, SymbolKind, Wire, WireRole
from workbench.drawing.faces import Face, estimate
from workbench.drawing.geometry import Point, Rect
from workbench.drawing.wires import pieces
from workbench.drawing.zigzag import zigzag_points
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.units import format_quantity

__all__ = ["board_of", "schematic_svg"]

BASE = 14.0
WIDTH, TALLEST = 800.0, 980.0
HEAD = 86.0
"""Room for the title over the first drawing. [drawing units]"""
NAME_LINE = 19.0
"""Height of a line that names a channel. [drawing units]"""
GAP = 24.0
"""Room under a drawing. [drawing units]"""

CONTACTS = {Channel.RED: ("1", "6"), Channel.GREEN: ("2", "7"), Channel.BLUE: ("3", "8")}
"""Contacts of each colour and its return on the 15-pin connector; http://martin.hinner.info/vga/pinout.html,
which agrees with two further tables that were read. H sync is on 13, V sync on 14."""

_STYLE = """
text { fill: #000000; font-family: "IBM Plex Sans", "DejaVu Sans", sans-serif }
.mono { font-family: "IBM Plex Mono", "DejaVu Sans Mono", monospace }
.dim { fill: #404040 }
.wire { fill: none; stroke: #000000; stroke-width: 1.2; stroke-linecap: round; stroke-linejoin: round }
.bus { stroke-width: 2 }
.dashed { stroke-dasharray: 5 3 }
.part { fill: #ffffff; stroke: #000000; stroke-width: 1.5; stroke-linejoin: round }
.line { fill: none; stroke: #000000; stroke-width: 1.8; stroke-linecap: round; stroke-linejoin: round }
.body { fill: none; stroke: #606060; stroke-width: 0.9 }
.dot { fill: #000000 }
""".strip()


def board_of(project: Project, channel: Channel) -> Board:
    """Return what stands around the network of a channel."""
    contact, back = CONTACTS[channel]
    wiring, sync = project.wiring, project.sync
    return Board(
        pins=wiring[channel],
        controller=f"{format_quantity(project.driver.supply_volts, 'V')} microcontroller",
        contact=contact,
        return_contact=back,
        sync=(
            SyncRow(H_SERIES, wiring.h, "H sync", sync.h.series_ohms, "13"),
            SyncRow(V_SERIES, wiring.v, "V sync", sync.v.series_ohms, "14"),
        ),
        load=project.load,
        cable=project.cable,
    )


def schematic_svg(result: Result, *, zigzag: bool = False) -> bytes:
    """Return the schematic of all channels as an SVG drawing, UTF-8.

    Parameters
    ----------
    result : Result
        The project whose networks are drawn.
    zigzag : bool
        Whether resistors are zig-zags (IEEE 315) and not boxes (IEC 60617).
    """
    project = result.project
    sheets: list[str] = []
    width, top = WIDTH, HEAD
    for channels in _alike(project):
        board = board_of(project, channels[0])
        # The sync lines are one board's, so they stand in the first drawing only.
        board = replace(board, sync=()) if sheets else board
        drawing = draw(
            project.channels[channels[0]], board, Sheet(WIDTH, TALLEST, BASE, estimate(BASE), zigzag)
        )
        sheets += [f'<g transform="translate(0 {top:g})">', *_names(channels, project)]
        start = NAME_LINE * len(channels)
        sheets += [f'<g transform="translate(0 {start:g})">', *_drawing(drawing), "</g></g>"]
        width = max(width, drawing.width)
        top += start + drawing.height + GAP
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:g}" height="{top:g}" '
            f'viewBox="0 0 {width:g} {top:g}" role="img">',
            f"<title>{escape(project.name)}: schematic</title>",
            f"<style>{_STYLE}</style>",
            f'<rect width="{width:g}" height="{top:g}" fill="#ffffff"/>',
            *_head(project),
            *sheets,
            "</svg>",
            "",
        ]
    ).encode()


def _alike(project: Project) -> Iterator[tuple[Channel, ...]]:
    """Return the channels, those side by side with equal networks together."""
    for _, group in groupby(Channel, key=lambda channel: project.channels[channel]):
        yield tuple(group)


def _names(channels: tuple[Channel, ...], project: Project) -> Iterator[str]:
    """Name the channel that is drawn, and say which others are wired alike."""
    yield _plain_text(20, 8, channels[0].value, size=15, weight=600)
    for line, channel in enumerate(channels[1:], 1):
        contact, back = CONTACTS[channel]
        pins = ", ".join(project.wiring[channel])
        words = f"{channel.value} is built alike: pins {pins}; contact {contact}, return {back}"
        yield _plain_text(20, 8 + NAME_LINE * line, words, size=13)


def _head(project: Project) -> Iterator[str]:
    yield _plain_text(20, 32, project.name, size=20, weight=600)
    mode = project.mode
    words = f"{mode.name}; pins at {format_quantity(project.driver.supply_volts, 'V')}"
    yield _plain_text(20, 54, f"{words}; {_cable_words(project.cable)}", size=13)


def _cable_words(cable: Cable | None) -> str:
    if cable is None:
        return "no cable"
    return f"cable {format_quantity(cable.metres, 'm')} of {format_quantity(cable.ohms, 'Ω')}"


def _plain_text(x: float, y: float, text: str, *, size: float, weight: int = 400) -> str:
    return f'<text x="{x:g}" y="{y:g}" font-size="{size:g}" font-weight="{weight}">{escape(text)}</text>'


def _drawing(drawing: Drawing) -> Iterator[str]:
    for block in drawing.blocks:
        if block.kind is not BlockKind.PATCH:
            yield _rect(block.box, "body", 8)
    for wire in drawing.wires:
        for points in pieces(wire, drawing):
            yield _polyline(points, _wire_class(wire))
    for dot in drawing.dots:
        yield f'<circle class="dot" cx="{dot.x:g}" cy="{dot.y:g}" r="4"/>'
    for end in drawing.open_ends:
        yield f'<circle class="part" cx="{end.at.x:g}" cy="{end.at.y:g}" r="4.5"/>'
    for ground in drawing.grounds:
        yield from _ground(ground.at)
    for symbol in drawing.symbols:
        yield from _symbol(symbol, drawing)
    for key in drawing.keys:
        yield _polyline((key.box.centre, key.at), "wire")
    for contact in drawing.contacts:
        at = contact.at
        yield f'<circle class="part" cx="{at.x:g}" cy="{at.y:g}" r="{contact.radius:g}"/>'
        yield _text(
            Label(contact.number, at, Face(mono=False, size=0.86, weight=500), Align.CENTRE, strong=True)
        )
    for brace in drawing.braces:
        left, right = brace.left, brace.right
        ends = (left, left.moved(dy=brace.drop), right.moved(dy=brace.drop), right)
        yield _polyline(ends, "wire")
    for label in drawing.labels:
        if not label.live:
            yield _text(label)


def _wire_class(wire: Wire) -> str:
    names = {WireRole.BUS: "wire bus", WireRole.V_SYNC: "wire dashed"}
    return names.get(wire.role, "wire")


def _ground(at: Point) -> Iterator[str]:
    for row, half in enumerate((10.0, 6.5, 3.0)):
        y = at.y + 4.5 * row
        yield _polyline((Point(at.x - half, y), Point(at.x + half, y)), "line")


def _symbol(symbol: Symbol, drawing: Drawing) -> Iterator[str]:
    body = symbol.body
    if symbol.kind is SymbolKind.CAPACITOR:
        corners = (Point(body.left, body.top), Point(body.right, body.bottom))
        first, second = corners
        if symbol.vertical:
            yield _polyline((first, Point(second.x, first.y)), "line")
            yield _polyline((Point(first.x, second.y), second), "line")
        else:
            yield _polyline((first, Point(first.x, second.y)), "line")
            yield _polyline((Point(second.x, first.y), second), "line")
    elif symbol.kind is SymbolKind.WIRE:
        yield _polyline((symbol.a, symbol.b), "wire")
    elif drawing.zigzag:
        yield _polyline(zigzag_points(symbol), "line")
    else:
        yield _rect(body, "part", 2)
    if symbol.kind is not SymbolKind.WIRE:
        yield _text(symbol.value)
    yield _text(symbol.name)


def _rect(box: Rect, style: str, radius: float) -> str:
    return (
        f'<rect class="{style}" x="{box.left:g}" y="{box.top:g}" width="{box.width:g}" '
        f'height="{box.height:g}" rx="{radius:g}"/>'
    )


def _polyline(points: tuple[Point, ...], style: str) -> str:
    return f'<polyline class="{style}" points="{" ".join(f"{p.x:g},{p.y:g}" for p in points)}"/>'


def _text(label: Label) -> str:
    """Return a text whose capitals are centred on its place; 0.7 is the height of capitals."""
    if not label.text:
        return ""
    size = label.face.size * BASE
    anchor = {Align.LEFT: "start", Align.CENTRE: "middle", Align.RIGHT: "end"}[label.align]
    names = [*(["mono"] if label.face.mono else []), *([] if label.strong else ["dim"])]
    style = f' class="{" ".join(names)}"' if names else ""
    return (
        f'<text{style} x="{label.at.x:g}" y="{label.at.y + 0.35 * size:.1f}" font-size="{size:.1f}" '
        f'font-weight="{label.face.weight}" text-anchor="{anchor}">{escape(label.text)}</text>'
    )
