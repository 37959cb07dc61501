from workbench.circuit.network import GROUND, OUTPUT, Network, NodeId, PartId, Resistor
from workbench.drawing.runs import JOINED, find_runs

PIN, INNER, FAR = NodeId("bit0"), NodeId("m"), NodeId("f")


def resistor(name: str, a: NodeId, b: NodeId) -> Resistor:
    return Resistor(PartId(name), a, b, 1e3)


def test_parts_that_follow_each_other_alone_are_one_run() -> None:
    network = Network((PIN,), (resistor("R1", PIN, INNER), resistor("R2", OUTPUT, INNER)))

    (run,) = find_runs(network)

    assert run.seen_from(PIN).nodes == (PIN, OUTPUT)
    assert [step.part.id for step in run.seen_from(PIN).steps] == ["R1", "R2"]
    assert run.between == (INNER,)


def test_a_node_where_three_parts_meet_ends_a_run() -> None:
    parts = (resistor("R1", PIN, INNER), resistor("R2", INNER, OUTPUT), resistor("R3", INNER, GROUND))

    runs = find_runs(Network((PIN,), parts))

    assert [len(run.steps) for run in runs] == [1, 1, 1]


def test_a_long_chain_is_cut_so_that_a_run_has_two_parts_at_most() -> None:
    parts = (resistor("R1", PIN, INNER), resistor("R2", INNER, FAR), resistor("R3", FAR, OUTPUT))

    runs = find_runs(Network((PIN,), parts))

    assert sorted(len(run.steps) for run in runs) == [1, JOINED]


def test_a_loop_in_the_air_is_walked_once() -> None:
    parts = (resistor("R1", INNER, FAR), resistor("R2", FAR, INNER))

    runs = find_runs(Network((PIN,), parts))

    assert [step.part.id for run in runs for step in run.steps] == ["R1", "R2"]


def test_a_turned_run_meets_its_parts_the_other_way() -> None:
    (run,) = find_runs(Network((PIN,), (resistor("R1", PIN, OUTPUT),)))

    turned = run.turned()

    assert turned.nodes == run.nodes[::-1]
    assert turned.steps[0].flipped is not run.steps[0].flipped
    assert turned.turned() == run
