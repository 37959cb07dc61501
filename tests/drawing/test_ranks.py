import pytest
from hypothesis import given, settings

from tests.drawing.networks import networks
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import GROUND, OUTPUT, Network, NodeId
from workbench.drawing.ranks import find_tail, rank_nodes
from workbench.drawing.runs import find_runs
from workbench.drawing.spines import find_spines, heads


def ranks(network: Network) -> dict[NodeId, int]:
    runs = find_runs(network)
    return rank_nodes(network, runs, find_spines(network, runs))


def test_a_weighted_ladder_has_its_pins_left_and_its_node_right() -> None:
    network = weighted(3, [500.0, 1e3, 2e3])

    assert ranks(network) == {**dict.fromkeys(network.pins, 0), OUTPUT: 1}


def test_a_series_resistor_puts_the_output_one_further_right() -> None:
    found = ranks(weighted(3, [500.0, 1e3, 2e3], series_ohms=33.0))

    assert (found[NodeId("sum")], found[OUTPUT]) == (1, 2)


def test_the_nodes_of_an_r2r_ladder_share_a_column_from_top_to_bottom() -> None:
    network = r2r(4, 267.0)

    (spine,) = find_spines(network, find_runs(network))

    assert spine.nodes == (OUTPUT, NodeId("n1"), NodeId("n2"), NodeId("n3"))
    assert len(spine.rungs) == 3


def test_a_weighted_ladder_has_no_column_of_nodes() -> None:
    network = weighted(4, [1e3] * 4)

    assert find_spines(network, find_runs(network)) == ()


@pytest.mark.parametrize(("series", "root"), [(None, OUTPUT), (33.0, NodeId("sum"))])
def test_the_tail_leads_back_to_where_the_network_branches(series: float | None, root: NodeId) -> None:
    network = weighted(3, [500.0, 1e3, 2e3], series_ohms=series, node_farads=30e-12)
    runs = find_runs(network)

    tail = find_tail(network, runs, ())

    assert tail.root == root
    assert len(tail.runs) == (series is not None)


@given(networks(most_parts=30))
@settings(max_examples=80, deadline=None)
def test_parts_always_join_two_ranks_except_along_the_spine_and_between_pins(network: Network) -> None:
    runs = find_runs(network)
    spines = find_spines(network, runs)
    found, head = rank_nodes(network, runs, spines), heads(spines)

    for run in runs:
        a, b = run.nodes
        along = head.get(a, a) == head.get(b, b)
        if GROUND in (a, b) or along or {a, b} <= set(network.pins):
            continue
        assert found[a] != found[b]
    assert found[network.output] == max(found.values()) or network.output in network.pins
