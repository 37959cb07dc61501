"""The parts of the drawn channel as a model of rows and cells; what is typed goes to the session."""

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtWidgets import QWidget

from workbench.circuit.network import PartId
from workbench.errors import WorkbenchError
from workbench.gui.bench import Bench
from workbench.gui.network.table_edits import TableEdits
from workbench.gui.network.table_rows import HEADINGS, Column, Row, Standing, table_rows
from workbench.project.document import Channel, Project

__all__ = ["COLUMNS", "Index", "PartsModel"]

COLUMNS = tuple(Column)
RIGHT = (Column.VALUE, Column.TOLERANCE, Column.RATING)
NEW = Row(PartId(""), ("", "", "", "", "", ""), Standing.NEW)
HINTS = {Column.PART: "new part", Column.VALUE: "value", Column.FROM: "node", Column.TO: "node"}
"""What stands in the empty cells of the last row."""
Index = QModelIndex | QPersistentModelIndex


class PartsModel(QAbstractTableModel):
    """Shows the parts of the drawn channel; edits go to the session."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._edits = bench, TableEdits(bench)
        self._rows: tuple[Row, ...] = ()
        self._draft: dict[Column, str] = {}
        self.refused = False
        """Whether what was typed last could not be kept."""
        self.made: PartId | None = None
        """The part that what was typed last put in."""

    def show_project(self, project: Project, channel: Channel) -> None:
        """Show the parts of a channel; rows that stay keep what is selected and typed in them."""
        rows, before = (*table_rows(project, channel), NEW), self._rows
        if rows == before:
            return
        head, tail = _shared([row.part for row in before], [row.part for row in rows])
        gone, come = (len(each) - head - tail for each in (before, rows))
        if gone:
            self.beginRemoveRows(QModelIndex(), head, head + gone - 1)
            self._rows = (*before[:head], *before[head + gone :])
            self.endRemoveRows()
        if come:
            self.beginInsertRows(QModelIndex(), head, head + come - 1)
            self._rows = rows
            self.endInsertRows()
        self._rows = rows
        self._tell_changed(0)

    def _tell_changed(self, first: int) -> None:
        """Tell that rows from one on read otherwise."""
        self.dataChanged.emit(self.index(first, 0), self.index(len(self._rows) - 1, len(COLUMNS) - 1))

    def missing(self) -> list[int]:
        """Return the columns of the last row that still have to be typed for a part to be made."""
        needed = (Column.VALUE, Column.FROM, Column.TO)
        return [COLUMNS.index(column) for column in needed if column not in self._draft]

    def typed(self, index: Index) -> bool:
        """Return whether a cell can be typed into."""
        return COLUMNS[index.column()] in self._rows[index.row()].standing.typed

    def why_fixed(self, index: Index) -> str:
        """Say why a cell takes no typing."""
        row, column = self._rows[index.row()], COLUMNS[index.column()]
        if row.standing is Standing.NEW:
            return f"First value, from and to: the {column.value} is typed once the part is there."
        if row.standing is Standing.CAPACITOR:
            return f"{row.part} is a capacitor: no {column.value} is kept for it."
        return f"{row.part} stands around the network: its {column.value} cannot be typed here."

    def part(self, row: int) -> PartId | None:
        """Return the part of a row; none for the last one, where a part is made."""
        return self._rows[row].part or None if 0 <= row < len(self._rows) else None

    def row_of(self, part: PartId | None) -> int:
        """Return the row of a part; -1 if it is not there."""
        return next((i for i, row in enumerate(self._rows) if row.part == part), -1)

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        return 0 if parent.isValid() else len(COLUMNS)

    def headerData(
        self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole
    ) -> object:
        if role == Qt.ItemDataRole.DisplayRole and orientation is Qt.Orientation.Horizontal:
            return HEADINGS[section]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(section)
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if not index.isValid():
            return None
        row, column = self._rows[index.row()], COLUMNS[index.column()]
        new = row.standing is Standing.NEW
        if role == Qt.ItemDataRole.EditRole:
            return self._draft.get(column, "") if new else row.texts[index.column()]
        if role == Qt.ItemDataRole.DisplayRole:
            return self._draft.get(column) or HINTS.get(column, "") if new else row.texts[index.column()]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(index.column())
        if role == Qt.ItemDataRole.ForegroundRole and new and column not in self._draft:
            return self._bench.theme.color("dim")
        if role == Qt.ItemDataRole.FontRole:
            type_ = self._bench.type
            return type_.sans(1.0, 500) if column is Column.PART else type_.mono(0.95)
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        if not index.isValid() or not self.typed(index):
            return flags
        return flags | Qt.ItemFlag.ItemIsEditable

    def setData(self, index: Index, typed: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        row, column, text = self._rows[index.row()], COLUMNS[index.column()], str(typed)
        self.refused, self.made = False, None
        try:
            if row.standing is Standing.NEW:
                return self._type_new(column, text)
            return self._edits.type_in(row, column, text)
        except WorkbenchError as reason:
            self.refused = True
            self._bench.notice(str(reason), warning=True)
            return False

    def _type_new(self, column: Column, text: str) -> bool:
        """Keep a cell of the last row, if it can be; once value and nodes are there, put the part in."""
        draft = {**self._draft, column: text.strip()}
        self.made = self._edits.make({key: text for key, text in draft.items() if text})
        self._draft = {} if self.made is not None else {key: text for key, text in draft.items() if text}
        self._tell_changed(len(self._rows) - 1)
        return True


def _shared(before: list[PartId], after: list[PartId]) -> tuple[int, int]:
    """Return how many rows two tables have in common at the head and, apart from those, at the tail."""
    most = min(len(before), len(after))
    head = next((i for i in range(most) if before[i] != after[i]), most)
    tail = next((i for i in range(most - head) if before[-1 - i] != after[-1 - i]), most - head)
    return head, tail


def _alignment(column: int) -> Qt.AlignmentFlag:
    right = COLUMNS[column] in RIGHT
    across = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
    return across | Qt.AlignmentFlag.AlignVCenter
