import numpy as np
import pytest

from workbench.circuit.graph import MAX_PINS, ProblemKind, wiring
from workbench.circuit.network import GROUND, Capacitor, Network, Resistor


def network(*ends, pins=("bit1", "bit0"), capacitors=()):
    resistors = tuple(Resistor(f"R{i}", a, b, 1e3) for i, (a, b) in enumerate(ends, 1))
    return Network(
        pins, resistors, tuple(Capacitor(f"C{i}", a, b, 1e-12) for i, (a, b) in enumerate(capacitors, 1))
    )


LEGS = (("bit1", "out"), ("bit0", "out"))


def test_pins_come_first_and_ground_is_left_out():
    structure = wiring(network(("x", GROUND), *LEGS, ("out", "x")))

    assert structure.nodes == ("bit1", "bit0", "out", "x")
    assert structure.nodes[structure.output] == "out"


def test_incidence_has_a_plus_at_a_and_a_minus_at_b():
    structure = wiring(network(*LEGS, ("out", GROUND)))

    np.testing.assert_array_equal(structure.incidence, [[1, 0, -1], [0, 1, -1], [0, 0, 1]])


def test_a_structure_is_worked_out_once_whatever_the_values():
    first = network(*LEGS)
    second = Network(first.pins, tuple(Resistor(r.id, r.a, r.b, 2 * r.ohms) for r in first.resistors))

    assert wiring(first) is wiring(second)


def test_nodes_that_only_capacitors_reach_are_not_held():
    structure = wiring(network(*LEGS, capacitors=[("out", "x"), ("x", GROUND)]))

    assert dict(zip(structure.nodes, structure.held, strict=True)) == {"bit1": 1, "bit0": 1, "out": 1, "x": 0}


def test_islands_of_pins_without_ground():
    structure = wiring(network(*LEGS, ("bit9", GROUND), pins=("bit9", "bit1", "bit0")))

    np.testing.assert_array_equal(structure.afloat, [[False, True, True]])


def test_every_island_is_named_with_its_parts():
    problems = wiring(network(*LEGS, ("a", "b"), ("b", "c"), ("d", "e"))).problems

    assert [problem.parts for problem in problems] == [("R3", "R4"), ("R5",)]
    assert {problem.kind for problem in problems} == {ProblemKind.ISLAND}
    assert problems[0].sentence.startswith("R3 and R4 hang")


def test_all_parts_of_a_dead_branch_are_named():
    problems = wiring(network(*LEGS, ("out", "a"), ("a", "b"), ("b", "a"))).problems

    assert [problem.parts for problem in problems] == [("R3",), ("R4",), ("R5",)]


def test_a_bridge_is_not_dead():
    assert (
        wiring(
            network(("bit1", "a"), ("bit1", "b"), ("a", "b"), ("a", "out"), ("b", "out"), LEGS[1])
        ).problems
        == ()
    )


def test_a_capacitor_that_leads_nowhere_is_dead():
    (problem,) = wiring(network(*LEGS, capacitors=[("out", "x")])).problems

    assert problem.parts == ("C1",)


def test_a_pin_behind_ground_is_dead():
    (problem,) = wiring(network(LEGS[0], ("bit0", "x"), ("x", GROUND))).problems

    assert problem.kind is ProblemKind.DEAD_PIN
    assert problem.nodes == ("bit0",)


def test_as_many_pins_as_are_solved():
    pins = tuple(f"p{i}" for i in range(MAX_PINS))

    assert wiring(network(*((pin, "out") for pin in pins), pins=pins)).problems == ()
    assert wiring(network(pins=(*pins, "one more"))).fatal


@pytest.mark.parametrize("kind", ProblemKind)
def test_fatal_kinds_are_those_without_any_voltage(kind):
    harmless = {"floating output", "undriven output", "island", "dead pin", "dead part"}

    assert kind.fatal == (kind.value not in harmless)
