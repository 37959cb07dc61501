"""What belongs together lies together: a leg in its own row, a group beside its leg, a bridge upright."""

import pytest

from tests.drawing.networks import SHAPES, board, sheet
from workbench.circuit.network import Network, PartId
from workbench.drawing import Drawing, draw
from workbench.drawing.elements import Symbol


def drawn(network: Network, width: float = 800, height: float = 900) -> Drawing:
    return draw(network, board(network.bits), sheet(width, height))


def part(drawing: Drawing, name: str) -> Symbol:
    symbol = drawing.symbol(PartId(name))
    assert symbol is not None
    return symbol


def row(drawing: Drawing, name: str) -> float:
    return part(drawing, name).body.centre.y


def test_a_bridge_is_two_rows_with_the_part_between_them_upright() -> None:
    drawing = drawn(SHAPES["bridge"])

    assert row(drawing, "R1") == row(drawing, "R4") == drawing.keys[0].at.y
    assert row(drawing, "R2") == row(drawing, "R3")
    middle = part(drawing, "R5")
    assert middle.vertical
    assert row(drawing, "R1") < middle.body.top < middle.body.bottom < row(drawing, "R2")
    assert drawing.crossings == ()


def test_each_of_two_bridges_stands_upright() -> None:
    drawing = drawn(SHAPES["two bridges"], width=1000)

    assert part(drawing, "R5").vertical
    assert part(drawing, "Q5").vertical
    assert drawing.crossings == ()


@pytest.mark.parametrize("width", [540, 800])
def test_a_leg_of_three_in_series_is_one_row_over_one_brace(width: float) -> None:
    drawing = drawn(SHAPES["three parts a leg"], width)

    assert row(drawing, "R3") == row(drawing, "R3b") == row(drawing, "R3c") == drawing.keys[2].at.y
    braces = [brace for brace in drawing.braces if brace.left.x == part(drawing, "R3").body.left]
    assert any(brace.right.x == part(drawing, "R3c").body.right for brace in braces)
    assert any("2.16 kΩ" in label.text for label in drawing.labels)


def test_parallel_parts_within_a_leg_stay_between_its_pin_and_the_next_one() -> None:
    drawing = drawn(SHAPES["three parts a leg"])
    pins = [key.at.y for key in drawing.keys]

    assert row(drawing, "R4") == row(drawing, "R4b") == pins[3]
    assert pins[3] < row(drawing, "R4c") < pins[4]
    assert row(drawing, "R5") == row(drawing, "R5c") == pins[4]
    assert pins[4] < row(drawing, "R5b")
    assert drawing.crossings == ()


def test_no_part_of_a_leg_hangs_on_the_output() -> None:
    for name in ("three parts a leg", "one value"):
        assert not any(symbol.vertical for symbol in drawn(SHAPES[name]).symbols if symbol.part != "load")


def test_a_long_leg_is_one_row() -> None:
    drawing = drawn(SHAPES["one value"])

    assert len({row(drawing, f"R3{letter}") for letter in "abcd"}) == 1


def test_what_joins_a_group_of_legs_lies_among_them() -> None:
    drawing = drawn(SHAPES["two groups"])
    pins = [key.at.y for key in drawing.keys]

    assert row(drawing, "R5") in pins[:2]
    assert row(drawing, "R6") in pins[2:]
    assert drawing.crossings == ()


def test_a_way_to_ground_beside_the_output_is_read_from_left_to_right() -> None:
    drawing = drawn(SHAPES["beside the output"])

    assert row(drawing, "R6") == row(drawing, "R7")
    assert part(drawing, "R7").body.right < part(drawing, "R6").body.left
