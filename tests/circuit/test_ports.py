import numpy as np
import pytest

from workbench.circuit.graph import wiring
from workbench.circuit.network import GROUND, Network, Resistor
from workbench.circuit.ports import reduce_to_ports

# A pin, 100 ohm, a node with 300 ohm to ground, 50 ohm, the output.
RESISTORS = (
    Resistor("R1", "bit0", "a", 100.0),
    Resistor("R2", "a", GROUND, 300.0),
    Resistor("R3", "a", "out", 50.0),
)
CHAIN = Network(("bit0",), RESISTORS)


def ports():
    structure = wiring(CHAIN)
    siemens = 1 / np.array([part.ohms for part in RESISTORS])
    return reduce_to_ports(structure, siemens, 1, (structure.output,)), structure


def test_seen_from_the_pin():
    reduced, structure = ports()

    assert reduced.admittance[0, 0] == pytest.approx(1 / 400)
    assert reduced.transfer[structure.output, 0] == pytest.approx(0.75)


def test_seen_from_the_output():
    reduced, structure = ports()

    assert reduced.impedance[structure.output, 0] == pytest.approx(50 + 75)
    assert reduced.impedance[0, 0] == 0.0


def test_a_load_is_added_without_solving_again():
    reduced, structure = ports()
    loaded = reduced.loaded(1 / 250)

    assert loaded.admittance[0, 0] == pytest.approx(1 / (100 + 150))
    assert loaded.transfer[structure.output, 0] == pytest.approx(150 / 250 * 250 / 300)
    assert loaded.impedance[structure.output, 0] == pytest.approx(1 / (1 / 125 + 1 / 250))


@pytest.mark.parametrize("on_ohms", [0.0, 100.0])
def test_sources_behind_the_pins(on_ohms):
    reduced, structure = ports()
    sources = reduced.behind(np.array([on_ohms]))

    upper = 100 + on_ohms
    assert sources.gain[structure.output, 0] == pytest.approx(300 / (300 + upper))
    assert sources.impedance[structure.output, 0] == pytest.approx(50 + 300 * upper / (300 + upper))
