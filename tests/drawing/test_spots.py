from hypothesis import given, settings

from tests.drawing.networks import board, networks, sheet
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import GROUND, OUTPUT, Network, NodeId
from workbench.drawing import draw
from workbench.drawing.geometry import Point
from workbench.drawing.spots import node_at

TIDE = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])


def nodes_of(network: Network) -> set[NodeId]:
    parts = (*network.resistors, *network.capacitors)
    return {*network.pins, network.output, GROUND, *(n for part in parts for n in (part.a, part.b))}


@given(networks())
@settings(max_examples=60, deadline=None)
def test_every_node_of_any_network_has_one_spot_and_is_found_there(network: Network) -> None:
    drawing = draw(network, board(network.bits), sheet())

    spots = drawing.spots

    assert {spot.node for spot in spots} == nodes_of(network)
    assert len({spot.node for spot in spots}) == len(spots)
    for spot in spots:
        assert node_at(drawing, spot.at, 8.0) == spot.node


def test_the_wire_nearest_to_a_place_is_meant() -> None:
    drawing = draw(TIDE, board(5), sheet())
    key = drawing.keys[2]

    assert node_at(drawing, Point(key.at.x + 20, key.at.y + 3), 10.0) == "bit2"
    assert node_at(drawing, Point(drawing.exit.x, drawing.exit.y + 5), 10.0) == OUTPUT
    assert node_at(drawing, drawing.grounds[0].at.moved(4, 6), 10.0) == GROUND
    assert node_at(drawing, Point(key.at.x + 20, key.at.y + 40), 10.0) is None


def test_sync_lines_are_no_nodes_of_the_network() -> None:
    drawing = draw(TIDE, board(5), sheet())
    contact = drawing.contacts[0]

    assert node_at(drawing, contact.at, 10.0) is None


def test_spots_go_down_the_drawing() -> None:
    spots = draw(r2r(4, 267.0), board(4), sheet()).spots

    assert [spot.at.y for spot in spots] == sorted(spot.at.y for spot in spots)
