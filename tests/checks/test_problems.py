import pytest

from workbench.checks import Severity
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Capacitor, Network, Resistor

LADDER = weighted(3, [500.0, 1e3, 2e3])


def with_part(*resistors: Resistor) -> Network:
    return Network(LADDER.pins, (*LADDER.resistors, *resistors))


@pytest.mark.parametrize(
    ("network", "rule"),
    [
        pytest.param(Network((), ()), "network-no-pins", id="no pins"),
        pytest.param(
            Network(("bit0",), (Resistor("R1", "bit0", "x", 1e3),)), "network-floating-output", id="float"
        ),
        pytest.param(Network(("gnd",), (Resistor("R1", "gnd", "out", 1e3),)), "network-short", id="short"),
    ],
)
def test_a_network_without_levels_fails_and_is_not_judged_further(board, pipeline, network, rule):
    findings = pipeline.run(board(network)).findings

    assert rule in {f.id for f in findings if f.severity is Severity.FAIL}
    assert not {"full-scale", "monotonic", "dnl"} & {f.id for f in findings}


@pytest.mark.parametrize(
    ("part", "rule"),
    [
        pytest.param(Resistor("R9", "x", "y", 1e3), "network-island", id="island"),
        pytest.param(Resistor("R9", "out", "x", 1e3), "network-dead-part", id="dead part"),
    ],
)
@pytest.mark.parametrize("linked", [True, False])
def test_a_useless_part_warns_and_can_be_taken_out(board, found, part, rule, linked):
    project = board(with_part(part), linked=linked)
    finding = found(project, rule)

    assert finding.severity is Severity.WARN
    assert finding.remedy.label == "Take out R9"
    assert found(finding.remedy.edit(project), rule) is None


def test_a_sound_network_has_no_problems(board, pipeline):
    assert not [f for f in pipeline.run(board(LADDER)).findings if f.id.startswith("network-")]


@pytest.mark.parametrize(
    ("network", "rule", "advice"),
    [
        pytest.param(
            Network(LADDER.pins, (), (Capacitor("C1", "bit0", "out", 30e-12),)),
            "network-floating-output",
            "Add a resistor from each pin to out: capacitors alone pass no level.",
            id="capacitors only",
        ),
        pytest.param(
            Network(("bit0",), (Resistor("R1", "out", "gnd", 1e3),)),
            "network-undriven-output",
            "Add a resistor from each pin to out.",
            id="undriven",
        ),
        pytest.param(
            Network(("bit1", "bit0"), (Resistor("R1", "bit1", "out", 1e3),)),
            "network-dead-pin",
            "Add a resistor from bit0 to out.",
            id="dead pin",
        ),
        pytest.param(Network((), ()), "network-no-pins", "Add a bit, or make a new ladder.", id="no pins"),
        pytest.param(
            Network(("bit0", "bit0"), (Resistor("R1", "bit0", "out", 1e3),)),
            "network-short",
            "Put a resistor between each of these pins and bit0.",
            id="tied pins",
        ),
    ],
)
def test_the_remedy_names_what_to_add(board, found, network, rule, advice):
    assert found(board(network), rule).remedy_text == advice
