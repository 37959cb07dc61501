"""The table twin of the drawing: the same parts in the same order, every cell of a part editable."""

from PySide6.QtCore import QAbstractTableModel, QEvent, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QKeyEvent, QKeySequence, QPalette
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from workbench.circuit.network import PartId
from workbench.errors import WorkbenchError
from workbench.gui.bench import Bench
from workbench.gui.network.table_edits import TableEdits
from workbench.gui.network.table_rows import HEADINGS, Column, Row, Standing, table_rows
from workbench.gui.network.wiring.clipboard import holds_parts
from workbench.project.document import Channel, Project

__all__ = ["PartsModel", "PartsTable"]

COLUMNS = tuple(Column)
RIGHT = (Column.VALUE, Column.TOLERANCE, Column.RATING)
NEW = Row(PartId(""), ("", "", "", "", "", ""), Standing.NEW)
HINTS = {
    Column.PART: "new part",
    Column.VALUE: "value",
    Column.FROM: "node",
    Column.TO: "node",
}
"""What stands in the empty cells of the last row."""
Index = QModelIndex | QPersistentModelIndex


class PartsModel(QAbstractTableModel):
    """Shows the parts of the drawn channel; edits go to the session."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._edits = bench, TableEdits(bench)
        self._rows: tuple[Row, ...] = ()
        self._draft: dict[Column, str] = {}

    def show_project(self, project: Project, channel: Channel) -> None:
        """Show the parts of a channel; a table of the same parts keeps what is selected."""
        rows = (*table_rows(project, channel), NEW)
        if rows == self._rows:
            return
        if [row.part for row in rows] == [row.part for row in self._rows]:
            self._rows = rows
            self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, len(HEADINGS) - 1))
            return
        self.beginResetModel()
        self._rows = rows
        self.endResetModel()

    def part(self, row: int) -> PartId | None:
        """Return the part of a row; none for the last one, where a part is made."""
        return self._rows[row].part or None if 0 <= row < len(self._rows) else None

    def row_of(self, part: PartId | None) -> int:
        """Return the row of a part; -1 if it is not there."""
        return next((i for i, row in enumerate(self._rows) if row.part == part), -1)

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        return 0 if parent.isValid() else len(HEADINGS)

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
        if not index.isValid() or COLUMNS[index.column()] not in self._rows[index.row()].standing.typed:
            return flags
        return flags | Qt.ItemFlag.ItemIsEditable

    def setData(self, index: Index, typed: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        row, column, text = self._rows[index.row()], COLUMNS[index.column()], str(typed)
        try:
            if row.standing is Standing.NEW:
                return self._type_new(column, text)
            return self._edits.type_in(row, column, text)
        except WorkbenchError as reason:
            self._bench.notice(str(reason), warning=True)
            return False

    def _type_new(self, column: Column, text: str) -> bool:
        """Keep a cell of the last row; once value and nodes are there, the part is put in."""
        before = dict(self._draft)
        self._draft[column] = text.strip()
        if not self._draft[column]:
            del self._draft[column]
        try:
            part = self._edits.make(self._draft)
        except WorkbenchError:
            self._draft = before
            raise
        if part is not None:
            self._draft = {}
            self._bench.live.refresh()
            self._bench.view.choose(part)
        last = len(self._rows) - 1
        self.dataChanged.emit(self.index(last, 0), self.index(last, len(COLUMNS) - 1))
        return True


def _alignment(column: int) -> Qt.AlignmentFlag:
    right = COLUMNS[column] in RIGHT
    across = Qt.AlignmentFlag.AlignRight if right else Qt.AlignmentFlag.AlignLeft
    return across | Qt.AlignmentFlag.AlignVCenter


class PartsTable(QTableView):
    """Shows a :class:`PartsModel`; the chosen part is its current row."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.parts = PartsModel(bench, self)
        self.setModel(self.parts)
        self.setAccessibleName("Parts of the network")
        self.setWhatsThis(
            "The parts of the drawing as a table; every cell of a part can be typed over, its nodes too. "
            "Insert goes to the last row, where a part is made by typing its value and two nodes. "
            "Delete removes the part, Ctrl+C, Ctrl+X and Ctrl+V carry it."
        )
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        header = self.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        header.setHighlightSections(False)
        self.selectionModel().currentRowChanged.connect(self._on_row)
        bench.view.changed.connect(self._on_view)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_project(self, project: Project) -> None:
        """Show the drawn channel of a project."""
        self.parts.show_project(project, self._bench.view.channel)
        self._on_view()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        keys, key = QKeySequence.StandardKey, event.key()
        if self.state() is QAbstractItemView.State.EditingState:
            super().keyPressEvent(event)
        elif key == Qt.Key.Key_Insert:
            last = self.parts.index(self.parts.rowCount() - 1, COLUMNS.index(Column.VALUE))
            self.setCurrentIndex(last)
            self.edit(last)
        elif key == Qt.Key.Key_Delete:
            self._run("network.remove-part")
        elif key == Qt.Key.Key_Backspace:
            self.edit(self.currentIndex())
        elif event.matches(keys.Copy):
            self._run("network.copy")
        elif event.matches(keys.Cut):
            self._run("network.cut")
        else:
            super().keyPressEvent(event)

    def event(self, event: QEvent) -> bool:
        # Parts on the clipboard go into the network, and not an image into the picture.
        pasting = isinstance(event, QKeyEvent) and event.matches(QKeySequence.StandardKey.Paste)
        if pasting and holds_parts():
            if event.type() == QEvent.Type.ShortcutOverride:
                event.accept()
                return True
            if event.type() == QEvent.Type.KeyPress:
                self._run("network.paste")
                return True
        return super().event(event)

    def _run(self, action: str) -> None:
        self._bench.actions.refresh()
        self._bench.actions.action(action).trigger()

    def _on_row(self, row: QModelIndex) -> None:
        if self.isVisible():
            self._bench.view.choose(self.parts.part(row.row()))

    def _on_view(self) -> None:
        row = self.parts.row_of(self._bench.view.chosen)
        if row >= 0 and (row != self.currentIndex().row() or not self.selectionModel().hasSelection()):
            self.setCurrentIndex(self.parts.index(row, COLUMNS.index(Column.VALUE)))
            self.selectRow(row)

    def _restyle(self) -> None:
        self.verticalHeader().setDefaultSectionSize(self._bench.px(30))
        ground = self.palette()
        for role in (QPalette.ColorRole.Base, QPalette.ColorRole.Button, QPalette.ColorRole.Window):
            ground.setColor(role, self._bench.theme.color("panel"))
        self.horizontalHeader().setPalette(ground)
        self.horizontalHeader().setFont(self._bench.type.sans(0.86))
        self.horizontalHeader().setFixedHeight(self._bench.px(32))
