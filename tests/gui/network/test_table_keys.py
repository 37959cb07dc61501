"""The table twin by keys alone, as a spreadsheet: Tab to the next cell, Enter down; nothing gets lost."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from workbench.circuit.network import Capacitor, PartId
from workbench.gui.network.table_rows import Column
from workbench.project.edits.networks import parts_of

Key = Qt.Key
COLUMNS = list(Column)


@pytest.fixture
def table(panel, qtbot):
    """The table twin, with the focus."""
    panel._bench.actions.action("network.table").trigger()
    qtbot.waitUntil(panel.table.hasFocus)
    return panel.table


def press(qtbot, table, *keys: str | Qt.Key) -> None:
    """Press keys where the focus is, and let what they do be done."""
    single = [each for key in keys for each in (key if isinstance(key, str) else [key])]
    for key in single:
        target = QApplication.focusWidget()
        assert target is table or table.isAncestorOf(target), f"the focus went to {target}"
        qtbot.keyClick(target, key)
        QApplication.processEvents()
        table._bench.live.refresh()


def at(table) -> tuple[str, Column]:
    here = table.currentIndex()
    return table.parts.part(here.row()) or "new", COLUMNS[here.column()]


def go(table, part: str, column: Column) -> None:
    table._go(table.parts.row_of(PartId(part)), COLUMNS.index(column))


def parts(panel) -> dict[str, tuple[float, str, str]]:
    found = parts_of(panel._bench.session.project.channels.red)
    return {
        part.id: (part.farads if isinstance(part, Capacitor) else part.ohms, part.a, part.b) for part in found
    }


@pytest.mark.parametrize("onward", [Key.Key_Tab, Key.Key_Return], ids=["Tab", "Enter"])
def test_a_part_is_made_by_value_from_and_to(qtbot, panel, table, onward) -> None:
    press(qtbot, table, Key.Key_Insert, "4k7", onward)
    assert at(table) == ("new", Column.FROM)
    press(qtbot, table, "bit2", onward)
    assert at(table) == ("new", Column.TO)
    press(qtbot, table, "gnd", onward)

    assert parts(panel)["R6"] == (4700.0, "bit2", "gnd")
    assert at(table) == ("new", Column.VALUE), "ready for the next part"
    assert table.hasFocus()

    press(qtbot, table, "100p", onward, "bit0", onward, "gnd", onward)
    assert parts(panel)["C2"] == (100e-12, "bit0", "gnd")


def test_a_value_that_is_none_is_refused_at_once_and_the_cell_stays(qtbot, panel, table) -> None:
    said = []
    panel._bench.noticed.connect(said.append)

    press(qtbot, table, Key.Key_Insert, "gnd", Key.Key_Tab)

    assert len(said) == 1
    assert at(table) == ("new", Column.VALUE)
    assert table.parts.data(table.currentIndex()) == "value"


def test_enter_keeps_a_cell_and_goes_down_its_column(qtbot, panel, table) -> None:
    go(table, "R2", Column.VALUE)

    press(qtbot, table, "1k1", Key.Key_Return)
    assert at(table) == ("R3", Column.VALUE)
    press(qtbot, table, "2k2", Key.Key_Return)

    assert (parts(panel)["R2"][0], parts(panel)["R3"][0]) == (1100.0, 2200.0)


def test_tab_goes_on_to_the_next_cell_that_can_be_typed(qtbot, panel, table) -> None:
    go(table, "R5", Column.RATING)

    press(qtbot, table, Key.Key_Tab, Key.Key_Tab, Key.Key_Tab)
    assert at(table) == ("C1", Column.FROM)
    qtbot.keyClick(table, Key.Key_Backtab)
    press(qtbot, table, "47p", Key.Key_Tab)

    assert at(table) == ("C1", Column.FROM)
    assert parts(panel)["C1"][0] == pytest.approx(47e-12)


def test_typing_where_nothing_is_kept_says_why(qtbot, panel, table) -> None:
    said = []
    panel._bench.noticed.connect(said.append)

    for part, column in (("C1", Column.TOLERANCE), ("RH", Column.TO), ("load", Column.PART)):
        go(table, part, column)
        press(qtbot, table, "5")
    table._go(table._new_row(), COLUMNS.index(Column.RATING))
    press(qtbot, table, "5")

    assert [notice.text.split()[0] for notice in said] == ["C1", "RH", "load", "First"]
    assert not panel._bench.session.can_undo


def test_the_current_cell_is_marked_and_not_only_its_row(qtbot, panel, table) -> None:
    def marked(column: Column) -> bool:
        go(table, "R3", column)
        QApplication.processEvents()
        box = table.visualRect(table.currentIndex())
        picture = table.viewport().grab().toImage()
        return picture.pixelColor(box.left() + 2, box.top() + 1) == panel._bench.theme.color("accent")

    assert marked(Column.VALUE)
    assert marked(Column.TO)


def test_a_row_that_is_taken_away_leaves_the_keys_in_the_table(qtbot, panel, table) -> None:
    go(table, "R4", Column.FROM)

    press(qtbot, table, Key.Key_Delete)

    assert at(table) == ("R5", Column.FROM)
    assert table.hasFocus()
