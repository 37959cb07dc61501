from dataclasses import replace

from tests.drawing.networks import board, sheet
from workbench.circuit.ladders import weighted
from workbench.circuit.network import NodeId
from workbench.drawing import draw
from workbench.drawing.elements import Crossing, Wire
from workbench.drawing.geometry import Point
from workbench.drawing.wires import find_crossings, find_dots, pieces

A, B = NodeId("a"), NodeId("b")
LEVEL = Wire(A, (Point(0, 10), Point(100, 10)))
UPRIGHT = Wire(B, (Point(50, 0), Point(50, 40)))


def test_wires_of_two_nodes_that_pass_each_other_cross() -> None:
    assert find_crossings((LEVEL, UPRIGHT)) == (Crossing(Point(50, 10)),)


def test_wires_of_one_node_never_cross_they_meet_in_a_dot() -> None:
    same = replace(UPRIGHT, node=A, points=(Point(50, 10), Point(50, 40)))

    assert find_crossings((LEVEL, same)) == ()
    assert find_dots((LEVEL, same)) == (Point(50, 10),)


def test_a_corner_has_no_dot() -> None:
    corner = Wire(A, (Point(0, 10), Point(50, 10), Point(50, 40)))

    assert find_dots((corner,)) == ()


def test_an_upright_wire_is_broken_at_a_crossing_and_the_level_one_is_not() -> None:
    drawing = draw(weighted(1, [500.0]), board(1), sheet())
    drawing = replace(drawing, crossings=(Crossing(Point(50, 10)),))

    assert pieces(LEVEL, drawing) == [(Point(0, 10), Point(100, 10))]
    assert pieces(UPRIGHT, drawing) == [
        (Point(50, 0), Point(50, 5)),
        (Point(50, 15), Point(50, 40)),
    ]


def test_a_wire_upward_is_broken_as_well() -> None:
    drawing = draw(weighted(1, [500.0]), board(1), sheet())
    drawing = replace(drawing, crossings=(Crossing(Point(50, 10)),))
    upward = replace(UPRIGHT, points=UPRIGHT.points[::-1])

    assert pieces(upward, drawing) == [
        (Point(50, 40), Point(50, 15)),
        (Point(50, 5), Point(50, 0)),
    ]
