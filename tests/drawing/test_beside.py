from hypothesis import given, settings

from tests.drawing.networks import board, networks, sheet
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import Cable, Network, PartId
from workbench.drawing import draw
from workbench.drawing.beside import note_place, place_of_node
from workbench.drawing.clipped import clipped
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

    assert place_of_node(drawing, drawing.output) is not None
    assert place_of_node(drawing, "nowhere") is None  # type: ignore[arg-type]


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
