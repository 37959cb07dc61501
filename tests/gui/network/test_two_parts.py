import pytest

from workbench.circuit.network import PartId
from workbench.circuit.series import Series
from workbench.drawing import LOAD
from workbench.gui.network.two_parts import Pair, put_pair, read_pair
from workbench.gui.network.values import find_value, read_text
from workbench.project.document import Channel, Project

R1 = PartId("R1")


@pytest.mark.parametrize(
    ("text", "ohms", "parallel"),
    [
        ("820+150", (820.0, 150.0), False),
        (" 1k || 1,5k ", (1000.0, 1500.0), True),
        ("1e+3+4R7", (1000.0, 4.7), False),
    ],
)
def test_two_plain_values_are_two_parts(text: str, ohms: tuple[float, float], parallel: bool) -> None:
    assert read_pair(text) == Pair(ohms, parallel)


@pytest.mark.parametrize(
    "text", ["470", "1e+3", "+5", "-5", "1+2+3", "1k||1k||1k", "(1+2)||3", "1k||1k+5", "820+", "820+15x", ""]
)
def test_anything_else_is_no_pair(text: str) -> None:
    assert read_pair(text) is None


def test_two_parts_are_meant_where_both_are_made_and_their_sum_is_not() -> None:
    assert Pair((820.0, 150.0), parallel=False).meant(970.0, Series.E24)
    assert not Pair((820.0, 180.0), parallel=False).meant(1000.0, Series.E24)
    assert not Pair((777.0, 150.0), parallel=False).meant(927.0, Series.E24)


@pytest.mark.parametrize("ohms", [(1200.0, 4.7), (820.0, 150.0)])
@pytest.mark.parametrize("parallel", [False, True])
def test_the_two_have_exactly_what_was_typed(
    project: Project, ohms: tuple[float, float], parallel: bool
) -> None:
    edited = put_pair(Channel.RED, R1, project, Pair(ohms, parallel))

    for channel in Channel:
        found = {r.id: r.ohms for r in edited.channels[channel].resistors}
        assert (found["R1a"], found["R1b"]) == ohms
        assert len(found) == 1 + len(project.channels[channel].resistors)


def test_only_a_resistor_of_the_network_can_be_two(project: Project) -> None:
    load, resistor = (find_value(project, Channel.RED, part) for part in (LOAD, R1))
    assert load is not None
    assert resistor is not None

    assert read_text("50+25", load, project).pair is None
    reading = read_text("820+150", resistor, project)
    assert (reading.value, reading.kept(), reading.kept(other=True)) == (
        970.0,
        Pair((820.0, 150.0), parallel=False),
        970.0,
    )
