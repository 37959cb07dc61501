"""Edits of how parts hang together: ends, parts beside and behind each other, names."""

import pytest

from workbench.circuit.network import GROUND, Network, NodeId, PartId
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import link_channels
from workbench.project.edits.connecting import (
    End,
    PartKind,
    add_in_parallel,
    add_in_series,
    add_part,
    duplicate,
    move_end,
    rename_node,
    rename_part,
)
from workbench.project.edits.networks import find_part, parts_of

RED = Channel.RED
R1, R2 = PartId("R1"), PartId("R2")
OUT, PIN = NodeId("out"), NodeId("bit2")
RESISTOR, CAPACITOR = PartKind.RESISTOR, PartKind.CAPACITOR


def red(project: Project) -> Network:
    return project.channels.red


def ends(project: Project, part: str) -> tuple[NodeId, NodeId]:
    found = find_part(red(project), PartId(part))
    return found.a, found.b


def test_a_part_goes_between_any_two_nodes_with_a_first_value(project: Project) -> None:
    edited = add_part(add_part(project, RED, RESISTOR, PIN, GROUND), RED, CAPACITOR, OUT, PIN)

    assert ends(edited, "R4") == (PIN, GROUND)
    assert red(edited).resistors[-1].ohms == 1e3
    assert red(edited).capacitors[-1].farads == 30e-12


def test_a_part_to_nowhere_makes_a_node_of_its_own(project: Project) -> None:
    edited = add_part(project, RED, RESISTOR, OUT)

    assert ends(edited, "R4") == (OUT, NodeId("n1"))


def test_all_linked_channels_get_the_part(project: Project) -> None:
    edited = add_part(link_channels(project, RED), RED, RESISTOR, OUT, GROUND)

    assert [len(edited.channels[channel].resistors) for channel in Channel] == [4] * 3


def test_a_part_between_a_node_and_itself_or_two_unknown_ones_is_refused(project: Project) -> None:
    with pytest.raises(EditError, match="both ends are on the node out"):
        add_part(project, RED, RESISTOR, OUT, OUT)
    with pytest.raises(EditError, match="neither x nor y is a node"):
        add_part(project, RED, RESISTOR, NodeId("x"), NodeId("y"))


def test_a_name_that_is_taken_is_refused(project: Project) -> None:
    with pytest.raises(EditError, match="there is a part R1 already"):
        add_part(project, RED, RESISTOR, OUT, GROUND, part=R1)


@pytest.mark.parametrize("end", End)
def test_in_series_a_new_node_joins_the_old_part_and_the_new_one(project: Project, end: End) -> None:
    old = find_part(red(project), R1)

    edited = add_in_series(project, RED, R1, RESISTOR, end)

    assert ends(edited, "R4") == (NodeId("n1"), end.node(old))
    assert end.node(find_part(red(edited), R1)) == NodeId("n1")
    assert end.other.node(find_part(red(edited), R1)) == end.other.node(old)
    assert [part.id for part in red(edited).resistors] == ["R1", "R4", "R2", "R3"]
    assert red(edited).resistors[1].ohms == red(edited).resistors[0].ohms


def test_in_parallel_the_new_part_has_the_same_nodes(project: Project) -> None:
    edited = add_in_parallel(project, RED, R1, CAPACITOR)

    assert set(ends(edited, "C2" if len(red(project).capacitors) else "C1")) == set(ends(project, "R1"))


def test_a_duplicate_is_like_its_original_in_all_but_its_name(project: Project) -> None:
    edited = duplicate(project, RED, R2)

    one, other = (find_part(red(edited), PartId(name)) for name in ("R2", "R4"))
    assert (one.a, one.b) == (other.a, other.b)
    assert len(parts_of(red(edited))) == len(parts_of(red(project))) + 1


def test_an_end_moves_to_another_node_and_the_other_end_stays(project: Project) -> None:
    edited = move_end(project, RED, R1, End.B, GROUND)

    assert ends(edited, "R1") == (ends(project, "R1")[0], GROUND)


def test_an_end_does_not_move_onto_the_other_end(project: Project) -> None:
    with pytest.raises(EditError, match="the other end of R1 is on bit2 already"):
        move_end(project, RED, R1, End.B, PIN)


def test_a_node_is_renamed_wherever_it_stands(project: Project) -> None:
    edited = rename_node(rename_node(project, RED, OUT, "sum"), RED, PIN, "msb")

    assert red(edited).output == "sum"
    assert red(edited).pins[0] == "msb"
    assert ends(edited, "R1") == (NodeId("msb"), NodeId("sum"))


@pytest.mark.parametrize(("node", "name", "why"), [(OUT, "bit2", "already"), (GROUND, "x", "keeps its name")])
def test_a_name_that_would_join_nodes_or_move_ground_is_refused(
    project: Project, node: NodeId, name: str, why: str
) -> None:
    with pytest.raises(EditError, match=why):
        rename_node(project, RED, node, name)


def test_an_empty_name_is_refused(project: Project) -> None:
    with pytest.raises(EditError, match="is empty"):
        rename_node(project, RED, OUT, "  ")
    with pytest.raises(EditError, match="is empty"):
        rename_part(project, RED, R1, "")


def test_a_part_is_renamed_in_its_place(project: Project) -> None:
    edited = rename_part(project, RED, R2, "Rmid")

    assert [part.id for part in red(edited).resistors] == ["R1", "Rmid", "R3"]
    with pytest.raises(EditError, match="R1 already"):
        rename_part(project, RED, R2, "R1")
