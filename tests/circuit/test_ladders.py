"""Ladders: what the templates make, and what is recognised in a network whatever its names."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.circuit.ladders import Topology, analyse, r2r, recognise, weighted
from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, PartId, Resistor
from workbench.errors import NetworkError

MAYBE_OHMS = st.none() | st.floats(1.0, 1e6)


def doubling(bits: int) -> list[float]:
    return [500.0 * 2**place for place in range(bits)]


@st.composite
def ladders(draw: st.DrawFn, least: int = 1) -> tuple[Topology, Network]:
    bits = draw(st.integers(least, 8))
    options = {
        "shunt_ohms": draw(MAYBE_OHMS),
        "series_ohms": draw(MAYBE_OHMS),
        "node_farads": draw(st.sampled_from([0.0, 30e-12])),
    }
    if draw(st.booleans()) and bits > 1:
        return Topology.R2R, r2r(bits, 256.0, **options)
    return Topology.WEIGHTED, weighted(bits, doubling(bits), **options)


def renamed(network: Network, names: dict[NodeId, NodeId]) -> Network:
    return Network(
        tuple(names[pin] for pin in network.pins),
        tuple(replace(part, a=names[part.a], b=names[part.b]) for part in network.resistors),
        tuple(replace(part, a=names[part.a], b=names[part.b]) for part in network.capacitors),
        names[network.output],
    )


def test_a_weighted_ladder_has_a_leg_for_each_pin() -> None:
    network = weighted(3, (500.0, 1000.0, 2000.0))

    assert network.pins == ("bit2", "bit1", "bit0")
    assert network.resistors == (
        Resistor(PartId("R1"), NodeId("bit2"), NodeId("out"), 500.0),
        Resistor(PartId("R2"), NodeId("bit1"), NodeId("out"), 1000.0),
        Resistor(PartId("R3"), NodeId("bit0"), NodeId("out"), 2000.0),
    )


def test_an_r2r_ladder_has_its_top_bit_at_the_output_and_a_terminator() -> None:
    network = r2r(3, 250.0)

    ends = [(part.id, part.a, part.b, part.ohms) for part in network.resistors]
    assert ends == [
        ("R1", "bit2", "out", 500.0),
        ("R2", "bit1", "n1", 500.0),
        ("R3", "bit0", "n2", 500.0),
        ("R4", "out", "n1", 250.0),
        ("R5", "n1", "n2", 250.0),
        ("R6", "n2", "gnd", 500.0),
    ]


def test_options_sit_between_the_legs_and_the_connector() -> None:
    network = weighted(1, (500.0,), shunt_ohms=130.0, series_ohms=20.0, node_farads=30e-12)

    assert network.resistors[1:] == (
        Resistor(PartId("RS"), NodeId("sum"), GROUND, 130.0),
        Resistor(PartId("RO"), NodeId("sum"), NodeId("out"), 20.0),
    )
    assert network.capacitors == (Capacitor(PartId("C1"), NodeId("sum"), GROUND, 30e-12),)


@pytest.mark.parametrize("bits", [0, 9, 1000])
def test_an_impossible_number_of_bits_is_refused(bits: int) -> None:
    with pytest.raises(NetworkError, match=f"a channel has 1 to 8 bits, not {bits}"):
        r2r(bits, 250.0)


def test_values_must_match_the_bits() -> None:
    with pytest.raises(NetworkError, match="a weighted ladder of 3 bits takes 3 values, not 2"):
        weighted(3, (500.0, 1000.0))


@given(made=ladders(), seed=st.randoms(use_true_random=False))
def test_a_ladder_is_recognised_whatever_its_names_and_order(made: tuple[Topology, Network], seed) -> None:
    topology, network = made
    nodes = sorted({node for part in network.resistors for node in (part.a, part.b)} - {GROUND})
    names = dict(zip(nodes, seed.sample([NodeId(f"x{i}") for i in range(50)], len(nodes)), strict=True))
    other = renamed(network, names | {GROUND: GROUND})
    shuffled = list(other.resistors)
    seed.shuffle(shuffled)
    flipped = tuple(replace(p, a=p.b, b=p.a) if seed.random() < 0.5 else p for p in shuffled)

    assert recognise(replace(other, resistors=flipped)) is topology


@given(made=ladders(least=2), place=st.integers(0, 30), series=st.booleans())
def test_a_split_part_counts_as_one(made: tuple[Topology, Network], place: int, series: bool) -> None:
    topology, network = made
    part = network.resistors[place % len(network.resistors)]
    middle = NodeId("middle")
    halves = (
        (replace(part, id=PartId("A"), b=middle), replace(part, id=PartId("B"), a=middle))
        if series
        else (replace(part, id=PartId("A")), replace(part, id=PartId("B")))
    )
    others = tuple(other for other in network.resistors if other is not part)
    split = replace(network, resistors=others + halves)

    assert recognise(split) is topology
    factor = 2.0 if series else 0.5
    ladder = analyse(split)
    branches = [*ladder.legs, *ladder.rungs, ladder.terminator, ladder.shunt, ladder.series]
    assert [b.ohms for b in branches if b and b.parts == ("A", "B")] == [pytest.approx(factor * part.ohms)]


def test_a_ladder_is_found_with_its_parts() -> None:
    ladder = analyse(r2r(3, 250.0, shunt_ohms=130.0, series_ohms=20.0))

    assert ladder.bus == "sum"
    assert [(leg.a, leg.b, leg.parts) for leg in ladder.legs] == [
        ("bit2", "sum", ("R1",)),
        ("bit1", "n1", ("R2",)),
        ("bit0", "n2", ("R3",)),
    ]
    assert [rung.parts for rung in ladder.rungs] == [("R4",), ("R5",)]
    assert ladder.terminator is not None
    assert ladder.terminator.parts == ("R6",)
    assert ladder.shunt is not None
    assert ladder.shunt.ohms == 130.0
    assert ladder.series is not None
    assert ladder.series.ohms == 20.0


@pytest.mark.parametrize(
    "network",
    [
        Network((), ()),
        replace(weighted(3, doubling(3)), resistors=weighted(3, doubling(3)).resistors[1:]),
        replace(weighted(2, doubling(2)), pins=(NodeId("bit1"), NodeId("bit1"))),
        replace(r2r(4, 250.0), pins=r2r(4, 250.0).pins[::-1]),
        replace(
            r2r(4, 250.0),
            resistors=(*r2r(4, 250.0).resistors, Resistor(PartId("X"), NodeId("bit3"), NodeId("n2"), 1e3)),
        ),
        Network((NodeId("out"),), (Resistor(PartId("R1"), NodeId("out"), GROUND, 1e3),)),
    ],
    ids=["no pins", "leg missing", "pin twice", "bits reversed", "extra path", "pin is output"],
)
def test_other_shapes_are_custom(network: Network) -> None:
    assert recognise(network) is Topology.CUSTOM


def test_branches_that_lead_nowhere_do_not_change_the_shape() -> None:
    network = weighted(3, doubling(3))
    stub = Resistor(PartId("R9"), NodeId("out"), NodeId("end"), 1e3)

    assert recognise(replace(network, resistors=(*network.resistors, stub))) is Topology.WEIGHTED
