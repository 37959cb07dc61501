import pytest

from workbench.circuit.network import OUTPUT, Capacitor, Network, NodeId, PartId
from workbench.drawing import H_SERIES, LOAD
from workbench.errors import EditError
from workbench.gui.network.preview import what_would_change
from workbench.gui.network.values import find_value
from workbench.project.document import Channel, Direction, Project
from workbench.project.edits.networks import put_networks
from workbench.project.edits.sync import set_sync_input


def lines(project: Project, part: PartId, new: float | None):
    value = find_value(project, Channel.RED, part)
    assert value is not None
    return {line.name: line for line in what_would_change(project, Channel.RED, value, new)}


def test_470_ohm_for_r1_raises_white_and_makes_a_long_step_in_the_middle(project: Project) -> None:
    found = lines(project, PartId("R1"), 470.0)

    # 3.3 V / 470 Ω instead of / 500 Ω into the node: white 0.762 V; the 48.1 mV step against 24.6 mV.
    assert (found["white"].before, found["white"].after) == ("0.743", "0.762 V")
    step = found["step 15 to 16"]
    assert (step.before, step.after, step.warn) == ("1.00", "1.96 LSB", True)


def test_a_small_change_is_not_pointed_out(project: Project) -> None:
    found = lines(project, PartId("R5"), 8.2e3)

    assert len(found) == 2
    assert not any(line.warn for line in found.values())


def test_a_capacitor_moves_the_edge(project: Project) -> None:
    (edge,) = lines(project, PartId("C1"), 100e-12).values()

    # 2.2 RC with 58.1 Ω and 100 pF is 12.8 ns; the driver's ramp adds a little.
    assert edge.name == "edge, 10–90 %"
    assert edge.before == "4.2 ns"
    assert edge.after == "13 ns"


def test_a_sync_resistor_moves_the_level_at_the_monitor(project: Project) -> None:
    loaded = set_sync_input(project, Direction.HORIZONTAL, 1e3)

    (line,) = lines(loaded, H_SERIES, 330.0).values()

    # 3.3 V · 1000 / 1330, the weak sync of the trade's fault table.
    assert line.after == "2.48 V"


def test_the_load_moves_white(project: Project) -> None:
    found = lines(project, LOAD, None)

    assert found["white"].after == "3.300 V"


def test_what_cannot_be_put_changes_nothing(project: Project) -> None:
    value = find_value(project, Channel.RED, PartId("R1"))
    assert value is not None

    assert what_would_change(project, Channel.RED, value, 1e15) == ()
    with pytest.raises(EditError, match="R1"):
        value.put(project, 1e15)


def test_a_network_without_levels_foretells_no_figure(project: Project) -> None:
    only = Network((NodeId("bit0"),), (), (Capacitor(PartId("C1"), NodeId("bit0"), OUTPUT, 30e-12),))
    broken = put_networks(project, dict.fromkeys(Channel, only))

    assert lines(broken, PartId("C1"), 100e-12) == {}
    assert lines(broken, LOAD, 50.0) == {}
