from tests.drawing.networks import board, sheet
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import OUTPUT, NodeId, PartId
from workbench.drawing import H_SERIES, V_SERIES, draw
from workbench.drawing.elements import BlockKind
from workbench.drawing.geometry import Point
from workbench.gui.network.targets import (
    CONTROLLER,
    MONITOR,
    SCREEN,
    SOCKET,
    Kind,
    Target,
    box_of,
    in_order,
    target_at,
    towards,
)

TIDE = weighted(3, [500.0, 1e3, 2e3])
DRAWN = draw(TIDE, board(3), sheet())


def part(name: str) -> Target:
    return Target(Kind.PART, part=PartId(name))


def test_the_order_is_pins_parts_node_and_what_stands_around() -> None:
    pins = [Target(Kind.PIN, pin=pin) for pin in range(3)]
    parts = [*map(part, ("R1", "R2", "R3")), part(H_SERIES), part(V_SERIES)]

    node = Target(Kind.NODE, node=OUTPUT)
    assert list(in_order(DRAWN, OUTPUT)) == [*pins, *parts, node, SOCKET, MONITOR, SCREEN, CONTROLLER]


def test_a_target_lies_where_its_box_is() -> None:
    for target in in_order(DRAWN, OUTPUT):
        box = box_of(DRAWN, target)
        assert box is not None
        centre = box.centre if target is not SOCKET else Point(box.left + 3, box.top + 3)
        assert target_at(DRAWN, centre, OUTPUT) == target


def test_small_things_are_found_within_20_pixels() -> None:
    key = DRAWN.keys[0].box
    assert target_at(DRAWN, Point(key.left - 2, key.top - 2), OUTPUT) == Target(Kind.PIN, pin=0)
    assert min(box.height for t in in_order(DRAWN, OUTPUT) if (box := box_of(DRAWN, t))) >= 20


def test_nothing_lies_where_nothing_is_drawn() -> None:
    assert target_at(DRAWN, Point(240, DRAWN.keys[0].at.y + 40), OUTPUT) is None


def test_a_bus_is_its_node() -> None:
    ladder = draw(r2r(3, 267.0), board(3), sheet())
    rung = ladder.symbol(PartId("R4"))
    assert rung is not None

    found = target_at(ladder, Point(rung.b.x, rung.b.y + 6), OUTPUT)

    assert found == Target(Kind.NODE, node=NodeId("n1"))


def test_bodies_and_the_names_in_them_can_be_pointed_at() -> None:
    patch = DRAWN.block(BlockKind.PATCH)
    assert patch is not None

    assert target_at(DRAWN, patch.centre, OUTPUT) == SCREEN
    key, body = DRAWN.keys[1], DRAWN.block(BlockKind.CONTROLLER)
    assert body is not None
    assert target_at(DRAWN, Point(body.left + 14, key.at.y), OUTPUT) == Target(Kind.NAME, pin=1)
    assert target_at(DRAWN, Point(body.left + 14, key.at.y + 40), OUTPUT) == CONTROLLER
    h = DRAWN.symbol(H_SERIES)
    assert h is not None
    assert target_at(DRAWN, Point(body.left + 14, h.a.y), OUTPUT) == Target(Kind.NAME, part=H_SERIES)


def test_arrows_lead_along_the_row_and_down_the_column() -> None:
    targets = in_order(DRAWN, OUTPUT)

    assert towards(DRAWN, targets, Target(Kind.PIN, pin=1), 1, 0) == part("R2")
    assert towards(DRAWN, targets, part("R2"), 0, 1) == part("R3")
    assert towards(DRAWN, targets, part("R1"), 0, -1) is None
    assert towards(DRAWN, targets, Target(Kind.PIN, pin=0), -1, 0) is None
