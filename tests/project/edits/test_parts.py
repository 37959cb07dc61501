"""Edits of parts: the value lands on the named part, in all channels where linked."""

from dataclasses import replace

import pytest

from workbench.circuit.network import GROUND, Capacitor, NodeId, PartId, Resistor
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import link_channels
from workbench.project.edits.parts import (
    add_capacitor,
    add_resistor,
    join,
    partner,
    remove_part,
    set_farads,
    set_rating,
    set_tolerance,
    set_value,
    set_values,
    split_in_parallel,
    split_in_series,
)

RED, GREEN = Channel.RED, Channel.GREEN
R1, R2, C1 = PartId("R1"), PartId("R2"), PartId("C1")
OUT = NodeId("out")


def ohms(project: Project, channel: Channel = RED) -> dict[str, float]:
    return {part.id: part.ohms for part in project.channels[channel].resistors}


def test_a_value_changes_in_its_channel_only(project: Project) -> None:
    edited = set_value(project, RED, R1, 510.0)

    assert ohms(edited) == {"R1": 510.0, "R2": 1000.0, "R3": 2000.0}
    assert edited.channels.green is project.channels.green


def test_a_value_changes_in_all_channels_where_linked(project: Project) -> None:
    edited = set_value(link_channels(project, RED), GREEN, R1, 510.0)

    assert [ohms(edited, channel)["R1"] for channel in Channel] == [510.0] * 3


def test_several_values_change_together(project: Project) -> None:
    edited = set_values(project, RED, {R1: 470.0, R2: 910.0})

    assert ohms(edited) == {"R1": 470.0, "R2": 910.0, "R3": 2000.0}


@pytest.mark.parametrize("value", [0.0, -5.0, float("nan"), float("inf"), 1e12])
def test_impossible_values_are_refused(project: Project, value: float) -> None:
    with pytest.raises(EditError, match=r"R1 cannot be .*: a resistance lies between 1 mΩ and 1 GΩ"):
        set_value(project, RED, R1, value)


def test_a_missing_part_is_named(project: Project) -> None:
    with pytest.raises(EditError, match="there is no resistor C1 in this network"):
        set_value(project, RED, C1, 500.0)


def test_an_equal_value_gives_the_same_project(project: Project) -> None:
    assert set_value(project, RED, R1, 500.0) is project


def test_capacitance_tolerance_and_rating(project: Project) -> None:
    edited = set_farads(project, RED, C1, 12e-12)
    edited = set_tolerance(edited, RED, R1, 0.05)
    edited = set_rating(edited, RED, R1, 0.125)

    assert edited.channels.red.capacitors[0].farads == 12e-12
    first = edited.channels.red.resistors[0]
    assert (first.tolerance, first.rating_watts) == (0.05, 0.125)


def test_new_parts_take_the_first_free_name(project: Project) -> None:
    edited = add_resistor(remove_part(project, RED, R2), RED, OUT, GROUND, 82.0)
    edited = add_capacitor(edited, RED, NodeId("bit2"), GROUND, 5e-12)

    assert edited.channels.red.resistors[-1] == Resistor(R2, OUT, GROUND, 82.0)
    assert edited.channels.red.capacitors[-1] == Capacitor(PartId("C2"), NodeId("bit2"), GROUND, 5e-12)


def test_a_part_needs_two_nodes_of_which_one_is_there(project: Project) -> None:
    with pytest.raises(EditError, match="both ends are on the node out"):
        add_resistor(project, RED, OUT, OUT, 82.0)
    with pytest.raises(EditError, match="neither x nor y is a node of this network"):
        add_capacitor(project, RED, NodeId("x"), NodeId("y"), 1e-12)

    assert len(add_resistor(project, RED, OUT, NodeId("x"), 82.0).channels.red.resistors) == 4


def test_parts_are_removed(project: Project) -> None:
    edited = remove_part(remove_part(project, RED, R1), RED, C1)

    assert ohms(edited) == {"R2": 1000.0, "R3": 2000.0}
    assert edited.channels.red.capacitors == ()


def test_two_in_series_keep_the_value(project: Project) -> None:
    edited = split_in_series(project, RED, R1, 180.0)

    one, other = edited.channels.red.resistors[:2]
    assert one == Resistor(PartId("R1a"), NodeId("bit2"), NodeId("R1m"), 180.0)
    assert other == Resistor(PartId("R1b"), NodeId("R1m"), OUT, 320.0)


def test_two_in_parallel_keep_the_value(project: Project) -> None:
    edited = split_in_parallel(project, RED, R1, 750.0)

    one, other = edited.channels.red.resistors[:2]
    assert (one.id, one.ohms, other.id) == ("R1a", 750.0, "R1b")
    assert 1 / (1 / one.ohms + 1 / other.ohms) == pytest.approx(500.0)


def test_a_part_of_a_sum_is_smaller_and_of_a_pair_side_by_side_larger(project: Project) -> None:
    with pytest.raises(EditError, match="in series, values add up"):
        split_in_series(project, RED, R1, 500.0)
    with pytest.raises(EditError, match="side by side, resistance falls"):
        split_in_parallel(project, RED, R1, 500.0)


@pytest.mark.parametrize("split", [split_in_series, split_in_parallel])
def test_joining_undoes_a_split(project: Project, split) -> None:
    parted = split(project, RED, R1)

    assert join(parted, RED, PartId("R1b")) == project


def test_a_split_part_splits_again(project: Project) -> None:
    edited = split_in_series(split_in_series(project, RED, R1), RED, PartId("R1a"))

    assert list(ohms(edited)) == ["R1aa", "R1ab", "R1b", "R2", "R3"]
    assert sum(list(ohms(edited).values())[:3]) == 500.0


def test_a_split_in_a_custom_direction_joins_the_right_way_round(project: Project) -> None:
    network = project.channels.red
    flipped = tuple(replace(part, a=part.b, b=part.a) for part in network.resistors)
    turned = replace(project, channels=replace(project.channels, red=replace(network, resistors=flipped)))

    assert join(split_in_series(turned, RED, R1), RED, PartId("R1a")) == turned


def test_parts_that_do_not_belong_together_are_not_joined(project: Project) -> None:
    with pytest.raises(EditError, match="R1 has no partner"):
        join(project, RED, R1)

    network = project.channels.red
    assert partner(network, network.resistors[0]) is None


def test_joining_two_parts_of_other_names_keeps_the_first(project: Project) -> None:
    edited = add_resistor(project, RED, NodeId("bit2"), OUT, 500.0)

    joined = join(edited, RED, PartId("R4"))

    assert ohms(joined) == {"R1": 250.0, "R2": 1000.0, "R3": 2000.0}
