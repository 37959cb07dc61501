from itertools import combinations, pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.networks import board, networks, sheet
from tests.drawing.readback import AROUND, Netlist
from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, Resistor
from workbench.drawing import Drawing, draw
from workbench.drawing.geometry import Rect


def parts_of(network: Network) -> list[Resistor | Capacitor]:
    return [*network.resistors, *network.capacitors]


def connections(drawing: Drawing, network: Network) -> None:
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


@given(networks(), st.sampled_from([540, 800]))
@settings(max_examples=150, deadline=None)
def test_any_network_is_drawn_once_without_overlap_and_reads_back(network: Network, width: int) -> None:
    drawing = draw(network, board(network.bits), sheet(width))

    drawn = sorted(symbol.part for symbol in drawing.symbols if symbol.part not in AROUND)
    assert drawn == sorted(part.id for part in parts_of(network))
    for one, other in combinations(drawing.symbols, 2):
        assert not one.body.grown(2).overlaps(other.body), f"{one.part} lies on {other.part}"
    connections(drawing, network)


@given(networks(), st.sampled_from([540, 800]))
@settings(max_examples=100, deadline=None)
def test_no_wire_runs_through_a_body(network: Network, width: int) -> None:
    drawing = draw(network, board(network.bits), sheet(width))

    for symbol in drawing.symbols:
        inner = symbol.body.grown(-1)
        for wire in drawing.wires:
            for a, b in pairwise(wire.points):
                line = Rect.between(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))
                assert not line.grown(0.5).overlaps(inner), f"a wire of {wire.node} crosses {symbol.part}"
