"""Edits of ladders: bits come and go at the far end, values stay where they were."""

import pytest

from workbench.circuit.ladders import Topology, analyse, r2r, recognise, segmented, weighted
from workbench.circuit.network import GROUND, NodeId, PartId, Resistor
from workbench.circuit.series import Series, is_in
from workbench.circuit.wish import LadderWish, Shape
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import link_channels
from workbench.project.edits.connecting import PartKind, add_part
from workbench.project.edits.drive import set_supply
from workbench.project.edits.ladders import (
    add_bit,
    remove_bit,
    set_capacitor,
    set_ladders,
    set_output_series,
    set_shunt,
    use_series_values,
)
from workbench.project.edits.networks import put_networks
from workbench.project.edits.parts import add_resistor, split_in_series
from workbench.project.edits.picture import set_blanking_code

RED = Channel.RED


def wishes(red: int, green: int, blue: int, shape: Shape = Shape.WEIGHTED):
    """Return wishes for E24 ladders of so many bits."""
    return tuple(LadderWish(shape, bits, series=Series.E24) for bits in (red, green, blue))


def with_red(project: Project, network) -> Project:
    return put_networks(project, {RED: network})


def test_a_weighted_ladder_grows_by_a_leg_of_twice_the_value(project: Project) -> None:
    edited = add_bit(project, RED)

    red = edited.channels.red
    assert red.pins == ("bit3", "bit2", "bit1", "bit0")
    assert [part.ohms for part in red.resistors] == [500.0, 1000.0, 2000.0, 4000.0]
    assert red.resistors[-1] == Resistor(PartId("R4"), NodeId("bit0"), NodeId("out"), 4000.0)
    assert recognise(red) is Topology.WEIGHTED


def test_a_new_bit_gets_a_free_pin_of_the_controller(project: Project) -> None:
    edited = add_bit(project, RED)

    assert edited.wiring.red == ("P0", "P1", "P2", "P11")
    assert edited.wiring.green == project.wiring.green


def test_an_r2r_ladder_grows_at_the_terminator(project: Project) -> None:
    edited = add_bit(with_red(project, r2r(3, 250.0, shunt_ohms=130.0)), RED)

    ladder = analyse(edited.channels.red)
    assert ladder.topology is Topology.R2R
    assert [leg.ohms for leg in ladder.legs] == [500.0] * 4
    assert [rung.ohms for rung in ladder.rungs] == [250.0] * 3
    assert ladder.terminator is not None
    assert (ladder.terminator.a, ladder.terminator.ohms) == ("n3", 500.0)


@pytest.mark.parametrize(
    "network",
    [
        weighted(3, (500.0, 1000.0, 2000.0), shunt_ohms=130.0, series_ohms=20.0, node_farads=3e-11),
        r2r(3, 250.0, shunt_ohms=130.0, series_ohms=20.0, node_farads=3e-11),
        segmented(4, 2, (1000.0, 2000.0, 4000.0), shunt_ohms=130.0, series_ohms=20.0),
        segmented(2, 2, (1000.0,)),
    ],
    ids=["weighted", "r2r", "segmented", "equal legs only"],
)
def test_adding_and_removing_a_bit_leads_back(project: Project, network) -> None:
    start = with_red(project, network)

    assert remove_bit(add_bit(start, RED), RED) == start


def test_a_bit_made_of_two_parts_goes_with_both(project: Project) -> None:
    edited = remove_bit(split_in_series(project, RED, PartId("R3")), RED)

    assert [part.id for part in edited.channels.red.resistors] == ["R1", "R2"]
    assert edited.wiring.red == ("P0", "P1")


def test_a_code_in_blanking_is_cut_to_the_bits_left(project: Project) -> None:
    edited = remove_bit(set_blanking_code(project, RED, 7), RED)

    assert edited.picture.blanking == (3, 0, 0)


def test_bits_end_at_one_and_eight(project: Project) -> None:
    with pytest.raises(EditError, match="this is the last one"):
        remove_bit(with_red(project, weighted(1, (500.0,))), RED)
    with pytest.raises(EditError, match="at most 8 bits"):
        add_bit(with_red(project, r2r(8, 250.0)), RED)


def test_the_equal_legs_go_together_or_not_at_all(project: Project) -> None:
    start = with_red(project, segmented(3, 2, (1000.0, 2000.0)))

    shorter = remove_bit(start, RED)

    assert shorter.channels.red.pins == ("step1", "step2", "step3")
    assert shorter.wiring.red == start.wiring.red[:3]
    with pytest.raises(EditError, match="only the 2 bits of the equal legs are left"):
        remove_bit(shorter, RED)


def test_a_custom_network_has_no_bits_to_add(project: Project) -> None:
    custom = add_resistor(project, RED, NodeId("bit2"), NodeId("bit1"), 1e3)

    with pytest.raises(EditError, match="bits can be added to ladders only"):
        add_bit(custom, RED)


def test_linked_channels_grow_together(project: Project) -> None:
    edited = add_bit(link_channels(project, RED), Channel.BLUE)

    assert [edited.channels[channel].bits for channel in Channel] == [4, 4, 4]
    names = [*edited.wiring.red, *edited.wiring.green, *edited.wiring.blue, edited.wiring.h, edited.wiring.v]
    assert len(names) == len(set(names)) == 14


def test_a_shunt_comes_changes_and_goes(project: Project) -> None:
    fitted = set_shunt(project, RED, 130.0)
    assert fitted.channels.red.resistors[-1] == Resistor(PartId("RS"), NodeId("out"), GROUND, 130.0)
    assert set_shunt(fitted, RED, 120.0).channels.red.resistors[-1].ohms == 120.0

    assert set_shunt(fitted, RED, None) == project
    assert set_shunt(project, RED, None) is project


def test_a_series_resistor_comes_changes_and_goes(project: Project) -> None:
    fitted = set_output_series(set_shunt(project, RED, 130.0), RED, 20.0)

    ladder = analyse(fitted.channels.red)
    assert (ladder.bus, ladder.topology) == ("sum", Topology.WEIGHTED)
    assert ladder.series is not None
    assert ladder.series.parts == ("RO",)
    assert fitted.channels.red.capacitors[0].a == "sum"
    changed = set_output_series(fitted, RED, 22.0)
    assert changed.channels.red.resistors[-1].ohms == 22.0
    assert set_output_series(changed, RED, None) == set_shunt(project, RED, 130.0)


def test_a_new_ladder_keeps_each_capacitor_of_the_shared_node(project: Project) -> None:
    bus = project.channels.red.output
    two = add_part(project, RED, PartKind.CAPACITOR, bus, GROUND, value=100e-12)
    kept = [(part.id, part.farads) for part in two.channels.red.capacitors]
    assert len(kept) == 2

    made = set_ladders(two, wishes(5, 5, 5, Shape.R2R))

    network = made.channels.red
    assert [(part.id, part.farads) for part in network.capacitors] == kept
    assert {(part.a, part.b) for part in network.capacitors} == {(network.output, GROUND)}


def test_a_capacitor_comes_changes_and_goes(project: Project) -> None:
    bare = set_capacitor(project, RED, None)
    assert bare.channels.red.capacitors == ()

    assert set_capacitor(bare, RED, 30e-12) == project
    assert set_capacitor(project, RED, 12e-12).channels.red.capacitors[0].farads == 12e-12


def test_new_ladders_take_values_of_the_series(project: Project) -> None:
    edited = set_ladders(project, wishes(4, 4, 3, shape=Shape.R2R))

    assert [recognise(edited.channels[channel]) for channel in Channel] == [Topology.R2R] * 3
    assert [edited.channels[channel].bits for channel in Channel] == [4, 4, 3]
    assert all(is_in(part.ohms, Series.E24) for part in edited.channels.red.resistors)
    assert edited.channels.red.capacitors[0].farads == 30e-12


def test_channels_with_other_bits_part_ways(project: Project) -> None:
    linked = link_channels(project, RED)

    assert set_ladders(linked, wishes(4, 4, 4)).linked
    assert not set_ladders(linked, wishes(3, 3, 2)).linked


def test_a_supply_too_low_for_white_is_said(project: Project) -> None:
    with pytest.raises(EditError, match=r"no resistors bring white to the wanted level from 600 mV"):
        set_ladders(set_supply(project, 0.6), wishes(3, 3, 3))


def test_values_move_to_the_nearest_of_a_series(project: Project) -> None:
    edited = use_series_values(project, RED, Series.E12)

    assert [part.ohms for part in edited.channels.red.resistors] == [470.0, 1000.0, 1800.0]
