"""Texts keep clear of what stands beside them."""

from itertools import combinations

import pytest

from tests.drawing.networks import board, sheet, wired
from workbench.circuit.ladders import weighted
from workbench.circuit.network import PartId
from workbench.drawing import draw
from workbench.drawing.elements import Align, BlockKind, Figure, Label
from workbench.drawing.geometry import Rect

OHMS = (500.0, 1e3, 2e3, 4e3, 8e3)


def room(label: Label) -> Rect:
    """Return the room a text takes, with the measure the drawing was made with."""
    width, height = sheet().measure(label.text, label.face), 0.7 * label.face.size * 14.0
    left = label.at.x - {Align.LEFT: 0.0, Align.CENTRE: width / 2, Align.RIGHT: width}[label.align]
    return Rect(left, label.at.y - height / 2, width, height)


@pytest.mark.parametrize("width", [540, 620, 800, 1100])
@pytest.mark.parametrize("series_ohms", [None, 33.0])
def test_the_volts_of_the_output_keep_clear_of_the_socket(width: float, series_ohms: float | None) -> None:
    network = weighted(5, OHMS, series_ohms=series_ohms)

    drawing = draw(network, board(5), sheet(width, 600))

    loaded, socket = drawing.place(Figure.LOADED), drawing.block(BlockKind.SOCKET)
    assert loaded is not None
    assert socket is not None
    wide = sheet().measure("0.000 V", loaded.face)
    right = loaded.at.x + (wide if loaded.align is Align.LEFT else 0.0)
    assert right <= socket.left - 6


def test_volts_after_an_output_resistor_stand_behind_it() -> None:
    drawing = draw(weighted(5, OHMS, series_ohms=33.0), board(5), sheet(800, 600))

    loaded, series = drawing.place(Figure.LOADED), drawing.symbol(PartId("RO"))
    assert loaded is not None
    assert series is not None
    assert loaded.at.x - sheet().measure("0.000 V", loaded.face) > series.body.right


@pytest.mark.parametrize("width", [400, 540])
def test_among_low_zigzags_no_value_stands_on_another(width: float) -> None:
    network = weighted(5, OHMS, shunt_ohms=75.0, node_farads=30e-12)

    symbols = draw(network, board(5), sheet(width, 420, zigzag=True)).symbols

    boxes = [room(symbol.value) for symbol in symbols if not symbol.vertical]
    assert not any(one.overlaps(other) for one, other in combinations(boxes, 2))


def test_name_and_value_of_a_capacitor_keep_clear_of_its_focus_ring() -> None:
    drawing = draw(weighted(5, OHMS, node_farads=30e-12), board(5), sheet())

    symbol = drawing.symbol(PartId("C1"))
    assert symbol is not None
    ring = symbol.body.grown(7)
    assert room(symbol.name).right < ring.left
    assert room(symbol.value).left > ring.right


@pytest.mark.parametrize("width", [540, 800])
@pytest.mark.parametrize(
    "parts",
    [
        ("R1 bit0 out 270", "R2 bit0 n1 330", "C1 out gnd 30"),
        ("R1 bit1 out 270", "R2 bit0 out 330", "R3 out n1 100", "R4 bit1 n2 100"),
    ],
    ids=["beside the leg", "behind the output"],
)
def test_the_ring_of_an_open_end_keeps_clear_of_the_volts(width: float, parts: tuple[str, ...]) -> None:
    drawing = draw(wired(2, *parts), board(2), sheet(width, 600))

    rooms = [
        Rect(place.at.x, place.at.y - 9, sheet().measure("0.000 V", place.face), 18 + 17)
        for figure in (Figure.LOADED, Figure.OPEN)
        if (place := drawing.place(figure)) is not None
    ]
    assert drawing.open_ends
    for end in drawing.open_ends:
        assert not any(Rect.around(end.at, 12, 12).overlaps(room) for room in rooms)
