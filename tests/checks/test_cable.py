"""Ghosts are warned of, with the edit that ends them; so is a cable longer than any."""

from dataclasses import replace

import pytest

from tests.checks.conftest import LADDER
from workbench.checks import Severity
from workbench.circuit.network import Cable, Load
from workbench.project.document import Channel

SOURCE_OHMS = 1.0 / sum(1.0 / r.ohms for r in LADDER.resistors)


def reflection(ohms: float, line_ohms: float = 75.0) -> float:
    return (ohms - line_ohms) / (ohms + line_ohms)


def test_two_monitors_on_one_line_send_a_negative_ghost(board, found):
    """The lattice diagram: the echo is the step times both reflections, here 258 Ω and 37.5 Ω at 75 Ω."""
    project = board(load=Load(monitors=2), cable=Cable(2.0))

    finding = found(project, "ghost")

    expected = reflection(37.5) * reflection(SOURCE_OHMS)
    assert expected == pytest.approx(-0.183, abs=0.001)
    assert finding.severity is Severity.WARN
    assert finding.measured == pytest.approx(-100.0 * expected, rel=1e-3)
    assert finding.headline == "Every edge has a negative ghost of 18.3 %, 20.2 ns (0.51 px) after it."
    assert found(finding.remedy.edit(project), "ghost") is None
    assert finding.remedy.label == "Load each line with 75 Ω"


def test_a_cable_of_another_impedance_is_what_is_changed(board, found):
    project = board(cable=Cable(10.0, ohms=150.0, loss_db_per_m=0.1))

    finding = found(project, "ghost")
    mended = finding.remedy.edit(project)

    assert finding.remedy.label == "Take a cable of 75 Ω"
    assert mended.cable == replace(project.cable, ohms=75.0)
    assert found(mended, "ghost") is None


def test_where_capacitance_sends_the_edge_back_no_button_is_offered(board, found):
    project = board(load=Load(farads=100e-12), cable=Cable(10.0))

    finding = found(project, "ghost")

    assert finding.remedy is None
    assert "capacitance" in finding.remedy_text


def test_one_channel_alone_is_named(board, found):
    matched = replace(
        LADDER, resistors=tuple(replace(r, ohms=r.ohms * 75.0 / SOURCE_OHMS) for r in LADDER.resistors)
    )
    project = board(LADDER, green=matched, blue=matched, load=Load(50.0), cable=Cable(5.0))

    finding = found(project, "ghost")

    assert finding.channels == (Channel.RED,)
    assert finding.headline.startswith("Every edge of red has a")


@pytest.mark.parametrize(
    "fields",
    [
        pytest.param({"load": Load(37.5)}, id="no cable"),
        pytest.param({"cable": Cable(10.0)}, id="ended with its own impedance"),
        pytest.param({"cable": Cable(10.0), "load": Load(82.0)}, id="a small ghost"),
    ],
)
def test_nothing_is_said_of(board, found, fields):
    assert found(board(**fields), "ghost") is None


def test_a_kilometre_of_cable_is_remarked_on(board, found):
    finding = found(board(cable=Cable(1000.0)), "cable-length")

    assert finding.headline == "The cable is 1 km long: analog pictures seldom come over more than 50 m."
    assert finding.from_memory
    assert found(board(cable=Cable(50.0)), "cable-length") is None
