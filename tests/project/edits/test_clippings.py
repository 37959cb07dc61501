"""Parts and legs, cut out and put in again."""

import pytest

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import GROUND, Capacitor, NodeId, PartId, Resistor
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import link_channels
from workbench.project.edits.clippings import Clipping, clip, leg_of, paste, pin_of, remove_leg
from workbench.project.edits.networks import put_networks
from workbench.project.edits.parts import split_in_series

RED, GREEN = Channel.RED, Channel.GREEN
OUT = NodeId("out")


def test_a_leg_is_what_serves_one_pin_alone(project: Project) -> None:
    split = split_in_series(project, RED, PartId("R1"))

    assert leg_of(split.channels.red, 0) == ("R1a", "R1b")
    assert leg_of(split.channels.red, 1) == ("R2",)
    assert pin_of(split.channels.red, PartId("R1b")) == 0


def test_rungs_and_shunts_belong_to_no_leg() -> None:
    ladder = r2r(4, 267.0, shunt_ohms=130.0)

    assert [leg_of(ladder, pin) for pin in range(4)] == [("R1",), ("R2",), ("R3",), ("R4",)]
    assert pin_of(ladder, PartId("RS")) is None


def test_a_part_goes_to_the_nodes_of_the_same_names_under_a_free_name(project: Project) -> None:
    copied = clip(project.channels.red, [PartId("R1")])

    edited = paste(project, GREEN, copied)

    added = edited.channels.green.resistors[-1]
    assert (added.id, added.a, added.b) == ("R4", "bit2", OUT)
    assert edited.channels.red == project.channels.red


def test_a_leg_brings_a_bit_of_its_own_each_time(project: Project) -> None:
    split = split_in_series(project, RED, PartId("R1"))
    leg = clip(split.channels.red, leg_of(split.channels.red, 0), [split.channels.red.pins[0]])

    edited = paste(paste(split, RED, leg), RED, leg)

    red = edited.channels.red
    assert red.pins == ("bit4", "bit3", "bit2", "bit1", "bit0")
    assert len(edited.wiring.red) == 5
    legs = [leg_of(red, pin) for pin in range(5)]
    assert [len(parts) for parts in legs] == [2, 1, 1, 2, 2]
    assert len({part for parts in legs for part in parts}) == 8


def test_the_output_goes_to_the_output_whatever_it_is_called(project: Project) -> None:
    clipping = Clipping((Resistor(PartId("RX"), NodeId("sum"), GROUND, 130.0),), (), (), NodeId("sum"))

    edited = paste(project, RED, clipping)

    assert edited.channels.red.resistors[-1] == Resistor(PartId("RX"), OUT, GROUND, 130.0)


def test_capacitors_and_new_nodes_come_along(project: Project) -> None:
    clipping = Clipping((), (Capacitor(PartId("CX"), OUT, NodeId("tap"), 1e-12),))

    edited = paste(project, RED, clipping)

    assert edited.channels.red.capacitors[-1].b == "tap"


def test_nothing_and_too_much_are_refused(project: Project) -> None:
    wide = put_networks(project, {RED: weighted(8, [500.0 * 2**k for k in range(8)])})
    leg = clip(wide.channels.red, ["R1"], ["bit7"])

    with pytest.raises(EditError, match="copy some first"):
        paste(project, RED, Clipping())
    with pytest.raises(EditError, match="at most 8 bits"):
        paste(wide, RED, leg)


def test_a_leg_goes_with_its_pin_and_the_other_pins_keep_their_names(project: Project) -> None:
    edited = remove_leg(link_channels(project, RED), RED, 0)

    assert [part.id for part in edited.channels.blue.resistors] == ["R2", "R3"]
    assert edited.channels.red.pins == ("bit1", "bit0")
    assert edited.wiring.red == project.wiring.red[1:]


def test_the_last_leg_stays(project: Project) -> None:
    single = put_networks(project, {RED: weighted(1, [270.0])})

    with pytest.raises(EditError, match="at least one bit"):
        remove_leg(single, RED, 0)
