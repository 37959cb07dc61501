"""The table twin typed into: names, nodes, new rows, removed rows; the drawing follows."""

import pytest
from PySide6.QtCore import Qt

from workbench.circuit.network import GROUND, PartId
from workbench.gui.network.table_rows import Column
from workbench.project.edits.networks import find_part, parts_of

Key = Qt.Key


@pytest.fixture(autouse=True)
def table_shown(panel) -> None:
    panel._bench.actions.action("network.table").trigger()


def red(panel):
    return panel._bench.session.project.channels.red


def type_in(panel, part: str | None, column: Column, text: str) -> bool:
    """Type into a cell of a part; of the last row for none."""
    model = panel.table.parts
    row = model.rowCount() - 1 if part is None else model.row_of(PartId(part))
    taken = model.setData(model.index(row, list(Column).index(column)), text)
    panel._bench.live.refresh()
    return taken


def ends(panel, part: str):
    found = find_part(red(panel), PartId(part))
    return found.a, found.b


def test_an_end_is_moved_by_typing_a_node(panel) -> None:
    assert type_in(panel, "R5", Column.TO, "ground")

    assert ends(panel, "R5") == ("bit0", GROUND)
    assert panel.canvas.drawing.symbol(PartId("R5")).nodes in ((GROUND, "bit0"), ("bit0", GROUND))
    assert panel._bench.session.undo_label == "Move end b of R5 to gnd"


def test_a_part_is_renamed_and_stays_chosen(panel) -> None:
    panel._bench.view.choose(PartId("R2"))

    assert type_in(panel, "R2", Column.PART, "Rmid")

    assert panel._bench.view.chosen == "Rmid"
    assert panel.canvas.drawing.symbol(PartId("Rmid")) is not None


def test_a_sync_pin_is_renamed_there_too(panel) -> None:
    assert type_in(panel, "RH", Column.FROM, "HS")

    assert panel._bench.session.project.wiring.h == "HS"


def test_the_last_row_makes_a_part_once_value_and_nodes_are_typed(panel) -> None:
    type_in(panel, None, Column.VALUE, "4k7")
    type_in(panel, None, Column.FROM, "bit2")
    assert len(red(panel).resistors) == 5
    type_in(panel, None, Column.TO, "tap")

    added = red(panel).resistors[-1]
    assert (added.id, added.ohms, added.a, added.b) == ("R6", 4700.0, "bit2", "tap")
    assert panel._bench.session.undo_label == "Add a resistor, bit2 to tap"


def test_a_value_in_farads_or_a_name_with_c_makes_a_capacitor(panel) -> None:
    for name, value in (("", "12pF"), ("Cin", "30p")):
        type_in(panel, None, Column.PART, name)
        type_in(panel, None, Column.FROM, "out")
        type_in(panel, None, Column.TO, "gnd")
        type_in(panel, None, Column.VALUE, value)

    assert [(c.id, c.farads) for c in red(panel).capacitors[1:]] == [("C2", 12e-12), ("Cin", 30e-12)]


def test_what_cannot_be_is_said_and_changes_nothing(panel) -> None:
    said = []
    panel._bench.noticed.connect(said.append)

    assert not type_in(panel, "R1", Column.TO, "bit4")
    assert not type_in(panel, "R1", Column.PART, "R2")
    assert not type_in(panel, None, Column.VALUE, "4k7k")
    assert not type_in(panel, None, Column.VALUE, "n1")
    assert not type_in(panel, None, Column.PART, "R2")
    type_in(panel, None, Column.FROM, "out")
    type_in(panel, None, Column.TO, "gnd")

    assert len(said) == 5
    assert panel.table.parts.missing() == [list(Column).index(Column.VALUE)]
    assert not panel._bench.session.can_undo


def test_delete_removes_the_row_and_insert_goes_to_the_last_one(qtbot, panel) -> None:
    panel.table.selectRow(panel.table.parts.row_of(PartId("R4")))

    qtbot.keyClick(panel.table, Key.Key_Delete)
    panel._bench.live.refresh()
    assert "R4" not in {part.id for part in parts_of(red(panel))}
    qtbot.keyClick(panel.table, Key.Key_Insert)

    assert panel.table.currentIndex().row() == panel.table.parts.rowCount() - 1
    assert panel.table.state() is panel.table.State.EditingState
