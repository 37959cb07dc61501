import pytest
from hypothesis import given, settings

from tests.drawing.networks import SHAPES, board, networks, sheet
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import Cable, Network, PartId
from workbench.drawing import draw
from workbench.drawing.beside import SIGN, note_place, sign_place
from workbench.drawing.clipped import clipped
from workbench.drawing.elements import Align, Figure
from workbench.drawing.geometry import Rect

TIDE = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])


def test_between_a_leg_and_its_bus_there_is_room_on_a_wide_sheet() -> None:
    drawing = draw(TIDE, board(5, cable=Cable(2.0)), sheet(1100))
    symbol = drawing.symbol(PartId("R2"))
    assert symbol is not None

    at, room = note_place(drawing, PartId("R2"))

    assert at.x > symbol.body.right
    assert 40 < room <= drawing.exit.x - at.x


def test_there_is_none_where_the_name_stands_or_the_part_hangs() -> None:
    low, ladder = draw(TIDE, board(5), sheet(540, 400)), draw(r2r(4, 267.0), board(4), sheet())

    assert note_place(low, PartId("R2"))[1] == 0.0
    assert note_place(ladder, PartId("R5"))[1] == 0.0
    assert note_place(ladder, PartId("R99"))[1] == 0.0


@given(networks(most_parts=30))
@settings(max_examples=40, deadline=None)
def test_words_that_fit_lie_on_no_part(network: Network) -> None:
    drawing = draw(network, board(network.bits), sheet(1000))

    for symbol in drawing.symbols:
        at, room = note_place(drawing, symbol.part)
        words = Rect(at.x, at.y - 5, room, 10)
        if room > 0:
            assert not any(other.body.overlaps(words) for other in drawing.symbols)


def test_a_node_has_a_place_if_it_is_drawn() -> None:
    drawing = draw(TIDE, board(5), sheet())

    assert sign_place(drawing, drawing.output) is not None
    assert sign_place(drawing, "nowhere") is None  # type: ignore[arg-type]


@pytest.mark.parametrize("width", [540, 800])
@pytest.mark.parametrize("name", [*SHAPES, "R-2R", "tide", "series"])
def test_the_sign_of_the_output_keeps_clear_of_its_volts_and_of_every_part(name: str, width: int) -> None:
    ladders = {
        "R-2R": r2r(5, 270.0),
        "tide": TIDE,
        "series": weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3], series_ohms=33.0),
    }
    network = {**SHAPES, **ladders}[name]
    drawing = draw(network, board(network.bits), sheet(width))

    at = sign_place(drawing, drawing.output)
    assert at is not None
    box = Rect.around(at, SIGN, SIGN)
    volts = drawing.place(Figure.LOADED)
    assert volts is not None
    wide = sheet().measure("0.000 V", volts.face)
    left = volts.at.x - (wide if volts.align is Align.RIGHT else 0.0)
    assert not box.overlaps(Rect(left, volts.at.y - 9, wide, 18))
    assert not any(box.overlaps(symbol.body) for symbol in drawing.symbols)


@given(networks())
@settings(max_examples=30, deadline=None)
def test_a_clipped_drawing_keeps_what_lies_in_its_rectangle(network: Network) -> None:
    drawing = draw(network, board(network.bits), sheet())
    seen = Rect(0, drawing.height / 3, drawing.width, drawing.height / 3)

    part = clipped(drawing, seen)

    for symbol in drawing.symbols:
        if symbol.body.overlaps(seen):
            assert symbol in part.symbols
    for crossing in drawing.crossings:
        if seen.contains(crossing.at):
            assert crossing in part.crossings
    assert set(part.wires) <= set(drawing.wires)
    assert clipped(drawing, Rect(-50, -50, drawing.width + 100, drawing.height + 100)) == drawing
