"""The names of the nodes stand on no figure, no text and no part, as long as there is any room."""

from itertools import combinations

import pytest

from tests.drawing.networks import SHAPES, board, sheet
from workbench.circuit.ladders import r2r, weighted
from workbench.drawing import draw
from workbench.drawing.elements import Align, Figure
from workbench.drawing.geometry import Rect
from workbench.drawing.node_names import name_boxes

NETWORKS = {
    "tide": weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3], node_farads=30e-12),
    "R-2R": r2r(5, 267.0),
    **SHAPES,
}


@pytest.mark.parametrize("size", [(540, 560), (600, 560), (800, 760)])
@pytest.mark.parametrize("name", NETWORKS)
def test_every_node_has_a_name_that_covers_nothing(name: str, size: tuple[int, int]) -> None:
    network, room = NETWORKS[name], sheet(*size)
    drawing = draw(network, board(network.bits), room)

    boxes = name_boxes(drawing, room.measure)

    assert set(boxes) == {spot.node for spot in drawing.spots}
    assert not any(one.overlaps(other) for one, other in combinations(boxes.values(), 2))
    figures = [place for place in drawing.places if place.figure is Figure.LEG_AMPS]
    for place in figures:
        wide = room.measure("0.000 mA", place.face)
        assert place.align is Align.RIGHT
        text = Rect(place.at.x - wide, place.at.y - 6, wide, 12)
        assert not any(box.overlaps(text) for box in boxes.values())
    for symbol in drawing.symbols:
        assert not any(box.overlaps(symbol.body) for box in boxes.values())
