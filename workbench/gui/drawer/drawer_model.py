"""The drawer's rows as a model of cells: what is typed is read, and kept or refused with a reason."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QModelIndex, Qt, Signal
from PySide6.QtWidgets import QWidget

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.errors import WorkbenchError
from workbench.files.drawer import COLUMNS as FIELDS
from workbench.files.drawer import MANY, changed_part
from workbench.gui.widgets.figure_table import Column, FigureModel, FigureRow, Index
from workbench.gui.widgets.signs import Sign
from workbench.project.plausible import implausible_measured
from workbench.units import format_percent, format_quantity

__all__ = ["COLUMNS", "VALUE", "DrawerModel", "Put"]

COLUMNS = (
    Column("value", "000.0 kΩ", right=False),
    Column("count", "0000000"),
    Column("tolerance", "00.00 %"),
    Column("measured", "000.000 kΩ"),
    Column("on this board", "12 on this board", mono=False, right=False, takes_rest=True),
)
NEW = FigureRow(("a value", "", "", "", ""), dim=True)
VALUE = 0
VALUE_FIRST = "First the value: a row starts with its resistance, like 4k7."
COUNTED = "What is on this board is counted: change the network to change it."

Put = Callable[[Drawer], object]


class DrawerModel(FigureModel):
    """Offers a drawer's rows, and takes what is typed into them."""

    told = Signal(object, str)
    """A sign, none if all is well, and why a text was refused or what is asked about it."""

    def __init__(self, put: Put, parent: QWidget) -> None:
        super().__init__(COLUMNS, parent)
        self._put = put
        self.drawer = Drawer(())
        self.refused = False
        """Whether what was typed last could not be kept."""

    def show_drawer(self, drawer: Drawer, used: Callable[[OwnedPart], int]) -> None:
        """Hold other rows; ``used`` tells how many of a part are on the board.

        Rows come and go at the end, so that the cell that is being typed into stays.
        """
        rows, before = (*(_row(part, used(part)) for part in drawer.parts), NEW), len(self.rows)
        self.drawer = drawer
        if rows == self.rows:
            return
        if len(rows) > before:
            self.beginInsertRows(QModelIndex(), before, len(rows) - 1)
            self.rows = rows
            self.endInsertRows()
        elif len(rows) < before:
            self.beginRemoveRows(QModelIndex(), len(rows), before - 1)
            self.rows = rows
            self.endRemoveRows()
        self.rows = rows
        self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, len(COLUMNS) - 1))

    def is_new(self, index: Index) -> bool:
        """Return whether a cell is in the last row, where the next value is typed."""
        return index.row() == len(self.drawer.parts)

    def typed(self, index: Index) -> bool:
        """Return whether a cell can be typed into."""
        return index.column() < len(FIELDS) and (not self.is_new(index) or index.column() == VALUE)

    def why_fixed(self, index: Index) -> str:
        """Say why a cell takes no typing."""
        return COUNTED if index.column() >= len(FIELDS) else VALUE_FIRST

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        return flags | Qt.ItemFlag.ItemIsEditable if index.isValid() and self.typed(index) else flags

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole):
        if role == Qt.ItemDataRole.EditRole and index.isValid():
            text = self.rows[index.row()].cells[index.column()]
            return "" if self.is_new(index) or text == MANY else text
        return super().data(index, role)

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        text, new = str(value).strip(), self.is_new(index)
        self.refused = False
        if role != Qt.ItemDataRole.EditRole or text == self.data(index, role) or (new and not text):
            return False
        parts = list(self.drawer.parts)
        try:
            part = changed_part(None if new else parts[index.row()], FIELDS[index.column()], text)
        except WorkbenchError as reason:
            self.refused = True
            self.told.emit(Sign.FAILS, str(reason))
            return False
        parts[index.row() : index.row() + 1] = [part]
        self._put(replace(self.drawer, parts=tuple(parts)))
        doubt = implausible_measured(part.nominal_ohms, part.ohms)
        self.told.emit(Sign.WARNS if doubt else None, doubt or "")
        return True


def _row(part: OwnedPart, used: int) -> FigureRow:
    nominal = part.ohms if part.nominal_ohms is None else part.nominal_ohms
    doubt = implausible_measured(part.nominal_ohms, part.ohms)
    cells = (
        format_quantity(nominal, "Ω", 6),
        MANY if part.count is None else str(part.count),
        format_percent(part.tolerance, 3),
        "" if part.nominal_ohms is None else format_quantity(part.ohms, "Ω", 6),
        f"{used} on this board" if used else "",
    )
    return FigureRow(cells, part, Sign.WARNS if doubt else None, tip=doubt or "")
