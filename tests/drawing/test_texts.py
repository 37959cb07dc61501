"""Texts lie on no other text, no box and no wire, in ladders and in networks of other shapes."""

from itertools import combinations, pairwise

import pytest

from tests.drawing.networks import SHAPES, board, sheet
from tests.drawing.test_draw import SEVERAL_WAYS
from workbench.drawing import Drawing, draw
from workbench.drawing.elements import Align, Label
from workbench.drawing.faces import estimate
from workbench.drawing.geometry import Rect


def box_of(label: Label, base: float) -> Rect:
    """Return the room a text takes, with the measure the drawing was made with."""
    width, height = estimate(base)(label.text, label.face), 0.7 * label.face.size * base
    left = label.at.x - {Align.LEFT: 0.0, Align.CENTRE: width / 2, Align.RIGHT: width}[label.align]
    return Rect(left, label.at.y - height / 2, width, height)


def texts_of(drawing: Drawing) -> list[Label]:
    labels = [*drawing.labels]
    for symbol in drawing.symbols:
        labels += [symbol.name, symbol.value]
    return [label for label in labels if label.text]


@pytest.mark.parametrize("width", [540, 800])
@pytest.mark.parametrize("height", [560, 900])
@pytest.mark.parametrize("name", [*SHAPES, *(n for n in SEVERAL_WAYS if "R-2R" in n or "weighted" in n)])
def test_no_text_lies_on_another_or_on_a_box_or_on_a_wire(name: str, width: int, height: int) -> None:
    network = {**SEVERAL_WAYS, **SHAPES}[name]

    drawing = draw(network, board(network.bits), sheet(width, height))

    boxes = [(label.text, box_of(label, 14.0)) for label in texts_of(drawing)]
    for (text, one), (other_text, other) in combinations(boxes, 2):
        assert not one.overlaps(other), f"{text} lies on {other_text}"
    for symbol in drawing.symbols:
        for text, room in boxes:
            inside = text == symbol.value.text and room.overlaps(symbol.body)
            assert inside or not room.overlaps(symbol.body), f"{text} lies on {symbol.part}"
    for wire in drawing.wires:
        for a, b in pairwise(wire.points):
            line = Rect.between(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x) + 0.1, max(a.y, b.y) + 0.1)
            crossed = [text for text, room in boxes if room.overlaps(line)]
            assert crossed == [], f"a wire of {wire.node} crosses {crossed}"
