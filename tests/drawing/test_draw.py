from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.networks import SHAPES, board, networks, sheet
from tests.drawing.readback import AROUND, Netlist
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import (
    GROUND,
    OUTPUT,
    Cable,
    Capacitor,
    Load,
    Network,
    NodeId,
    PartId,
    Resistor,
)
from workbench.drawing import H_SERIES, LOAD, V_SERIES, Drawing, draw
from workbench.drawing.elements import BlockKind, Figure, SymbolKind
from workbench.drawing.faces import estimate
from workbench.drawing.geometry import Rect
from workbench.drawing.sheet import Sheet

TIDE = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])

SEVERAL_WAYS = {
    "weighted 1": weighted(1, [280.0]),
    "weighted 5": TIDE,
    "weighted 8": weighted(8, [500.0 * 2**i for i in range(8)]),
    "shunt, series, capacitor": weighted(
        4, [510.0, 1e3, 2e3, 4.3e3], shunt_ohms=130.0, series_ohms=33.0, node_farads=30e-12
    ),
    "R-2R 2": r2r(2, 267.0),
    "R-2R 8": r2r(8, 267.857),
    "R-2R with everything": r2r(6, 267.0, shunt_ohms=130.0, series_ohms=20.0, node_farads=30e-12),
    "no pins": Network((), ()),
    "no parts": Network((NodeId("bit1"), NodeId("bit0")), ()),
    "pin on the output": Network((OUTPUT,), (Resistor(PartId("R1"), OUTPUT, GROUND, 75.0),)),
    "output on ground": Network(
        (NodeId("bit0"),), (Resistor(PartId("R1"), NodeId("bit0"), GROUND, 500.0),), output=GROUND
    ),
    "part on one node": Network(
        (NodeId("bit0"),),
        (
            Resistor(PartId("R1"), NodeId("bit0"), OUTPUT, 500.0),
            Resistor(PartId("R2"), OUTPUT, OUTPUT, 1e3),
        ),
    ),
}


def parts_of(network: Network) -> list[Resistor | Capacitor]:
    return [*network.resistors, *network.capacitors]


def check_connections(drawing: Drawing, network: Network) -> None:
    """Assert that the lines of a drawing say exactly what the network says."""
    netlist = Netlist(drawing)
    node_of: dict[int, NodeId] = {}

    def check(found: int | None, node: NodeId) -> None:
        assert found is not None, f"nothing is drawn at {node}"
        assert node_of.setdefault(found, node) == node, f"{node} is joined to {node_of[found]}"

    for part in parts_of(network):
        a, b = netlist.parts[part.id]
        check(a, part.a)
        check(b, part.b)
    for pin, node in enumerate(network.pins):
        check(netlist.keys[pin], node)
    check(netlist.output, network.output)
    if netlist.ground is not None:
        check(netlist.ground, GROUND)
    assert len(set(node_of.values())) == len(node_of), "a node is drawn in two pieces"


def check_bodies(drawing: Drawing, network: Network) -> None:
    """Assert that every part is drawn once, that none lies on another, and that no wire crosses one."""
    drawn = sorted(symbol.part for symbol in drawing.symbols if symbol.part not in AROUND)
    assert drawn == sorted(part.id for part in parts_of(network))
    for one, other in combinations(drawing.symbols, 2):
        assert not one.body.grown(2).overlaps(other.body), f"{one.part} lies on {other.part}"
    for symbol in drawing.symbols:
        inner = symbol.body.grown(-1)
        for wire in drawing.wires:
            for a, b in pairwise(wire.points):
                line = Rect.between(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))
                assert not line.grown(0.5).overlaps(inner), f"a wire of {wire.node} crosses {symbol.part}"


@given(networks(), st.sampled_from([540, 800]))
@settings(max_examples=120, deadline=None)
def test_any_network_is_drawn_once_without_overlap_and_reads_back(network: Network, width: int) -> None:
    drawing = draw(network, board(network.bits), sheet(width))

    check_bodies(drawing, network)
    check_connections(drawing, network)


@pytest.mark.parametrize("width", [540, 800, 1100])
@pytest.mark.parametrize("network", [*SEVERAL_WAYS.values(), *SHAPES.values()], ids=[*SEVERAL_WAYS, *SHAPES])
def test_ladders_and_odd_networks_read_back(network: Network, width: int) -> None:
    drawing = draw(network, board(network.bits, cable=Cable(2.0)), sheet(width))

    check_bodies(drawing, network)
    check_connections(drawing, network)


def test_the_wide_columns_are_where_the_page_of_the_look_has_them() -> None:
    drawing = draw(TIDE, board(5, cable=Cable(2.0)), sheet(800, 760))

    r1 = drawing.symbol(PartId("R1"))
    assert r1 is not None
    assert (r1.body.left, r1.body.right, r1.body.height) == (300, 412, 32)
    socket, monitor = drawing.block(BlockKind.SOCKET), drawing.block(BlockKind.MONITOR)
    assert socket is not None
    assert monitor is not None
    assert (socket.left, socket.right) == (580, 622)
    assert (monitor.left, monitor.right) == (690, 780)


def test_the_narrow_columns_are_where_the_page_of_the_look_has_them() -> None:
    drawing = draw(TIDE, board(5), sheet(540, 560))

    r1, socket = drawing.symbol(PartId("R1")), drawing.block(BlockKind.SOCKET)
    assert r1 is not None
    assert socket is not None
    # A few pixels less than there, so that the output's volts do not touch the socket.
    assert (r1.body.left, r1.body.right) == pytest.approx((204, 296), abs=6)
    assert (socket.left, socket.right) == pytest.approx((414, 450), abs=6)


def test_eight_legs_fit_in_the_least_row_pitch() -> None:
    network = SEVERAL_WAYS["weighted 8"]

    drawing = draw(network, board(8), sheet(540, 545))

    assert drawing.pitch >= 52
    assert drawing.height <= 545


def test_a_low_room_makes_the_drawing_higher_than_the_room_and_never_tighter() -> None:
    drawing = draw(SEVERAL_WAYS["weighted 8"], board(8), sheet(540, 300))

    assert drawing.pitch == 52
    assert drawing.height > 300


def test_everything_grows_with_the_text() -> None:
    small = draw(TIDE, board(5, cable=Cable(2.0)), sheet(800, 760))
    large = draw(TIDE, board(5, cable=Cable(2.0)), sheet(1600, 1520, base=28.0))

    for one, other in zip(small.symbols, large.symbols, strict=True):
        assert other.body.left == pytest.approx(2 * one.body.left, abs=2)
        assert other.body.width == pytest.approx(2 * one.body.width, abs=2)


def test_the_output_leaves_the_bus_half_way_between_rows_so_no_wires_cross() -> None:
    drawing = draw(TIDE, board(5), sheet())

    rows = [key.at.y for key in drawing.keys]
    assert drawing.exit.y == pytest.approx((rows[2] + rows[3]) / 2, abs=1)
    assert drawing.crossings == ()
    assert len(drawing.dots) == 4, "three legs and the exit meet the bus in a T; its ends are corners"


def test_an_r2r_ladder_hangs_its_rungs_on_one_column() -> None:
    drawing = draw(r2r(5, 267.0), board(5), sheet())

    rungs = [symbol for symbol in drawing.symbols if symbol.vertical and symbol.part != LOAD]
    assert [symbol.part for symbol in rungs] == ["R6", "R7", "R8", "R9"]
    assert len({symbol.body.centre.x for symbol in rungs}) == 1
    assert drawing.crossings == ()


def test_two_parts_in_series_stand_joined_over_a_brace_with_their_sum() -> None:
    parts = (*TIDE.resistors[:3], Resistor(PartId("R4a"), NodeId("bit1"), NodeId("R4m"), 3.3e3))
    split = replace(
        TIDE,
        resistors=(*parts, Resistor(PartId("R4b"), NodeId("R4m"), OUTPUT, 680.0), TIDE.resistors[4]),
    )

    drawing = draw(split, board(5), sheet())

    one, other = drawing.symbol(PartId("R4a")), drawing.symbol(PartId("R4b"))
    assert one is not None
    assert other is not None
    assert one.body.centre.y == other.body.centre.y
    assert one.b.x < other.a.x < one.b.x + 20
    assert len(drawing.braces) == 1
    assert any("3.98 kΩ" in label.text for label in drawing.labels)


def test_two_parts_in_parallel_lie_under_each_other() -> None:
    twin = replace(TIDE, resistors=(*TIDE.resistors, Resistor(PartId("R6"), NodeId("bit3"), OUTPUT, 2e3)))

    drawing = draw(twin, board(5), sheet())

    r2, r6, r3 = (drawing.symbol(PartId(name)) for name in ("R2", "R6", "R3"))
    assert r2 is not None
    assert r6 is not None
    assert r3 is not None
    assert r2.body.bottom < r6.body.top
    assert r6.body.bottom < r3.body.top
    assert (r2.body.left, r2.body.right) == (r6.body.left, r6.body.right)


def test_an_edit_near_the_output_leaves_the_legs_where_they_were() -> None:
    shunted = replace(TIDE, resistors=(*TIDE.resistors, Resistor(PartId("RS"), OUTPUT, GROUND, 130.0)))

    before, after = (draw(network, board(5), sheet(800, 2000)) for network in (TIDE, shunted))

    for part in TIDE.resistors:
        one, other = before.symbol(part.id), after.symbol(part.id)
        assert one is not None
        assert other is not None
        assert one.body == other.body


def test_a_sync_line_without_resistor_is_a_place_for_one() -> None:
    drawing = draw(TIDE, board(5), sheet())

    h, v = drawing.symbol(H_SERIES), drawing.symbol(V_SERIES)
    assert h is not None
    assert v is not None
    assert (h.kind, v.kind) == (SymbolKind.RESISTOR, SymbolKind.WIRE)


def test_a_missing_load_ends_open() -> None:
    drawing = draw(TIDE, board(5, load=Load(None)), sheet())

    assert len(drawing.open_ends) == 1
    load = drawing.symbol(LOAD)
    assert load is not None
    assert load.value.text == "no load"


def test_two_monitors_are_said() -> None:
    drawing = draw(TIDE, board(5, load=Load(monitors=2)), sheet())

    assert any(label.text == "× 2" for label in drawing.labels)


def test_a_slim_sheet_draws_keys_boxes_and_volts_and_the_load_as_a_row() -> None:
    drawing = draw(TIDE, board(5), sheet(290, 400))

    assert drawing.width == 290
    assert drawing.blocks == ()
    load, r5 = drawing.symbol(LOAD), drawing.symbol(PartId("R5"))
    assert load is not None
    assert r5 is not None
    assert (load.body.left, load.body.width) == (r5.body.left, r5.body.width)
    assert {place.figure for place in drawing.places} == {Figure.LOADED, Figure.OPEN}


def test_a_zigzag_has_its_value_below() -> None:
    drawing = draw(TIDE, board(5), sheet(zigzag=True))

    r1 = drawing.symbol(PartId("R1"))
    assert r1 is not None
    assert r1.value.at.y > r1.body.bottom


def test_every_leg_has_room_for_its_current_left_of_the_box() -> None:
    drawing = draw(TIDE, board(5), sheet())

    for pin in range(5):
        place, symbol = drawing.place(Figure.LEG_AMPS, pin), drawing.symbol(PartId(f"R{pin + 1}"))
        assert place is not None
        assert symbol is not None
        width = estimate(14.0)("00.000 mA", place.face)
        assert place.at.x <= symbol.body.left
        assert place.at.x - width >= drawing.keys[pin].box.right


def test_a_sheet_is_the_same_whatever_measures_it() -> None:
    assert Sheet(800, 600, 14.0, estimate(14.0)) == Sheet(800, 600, 14.0, estimate(15.0))
