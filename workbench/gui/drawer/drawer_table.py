"""The drawer as a table to type in: one row a value, and an empty one below for the next."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QHeaderView,
    QLineEdit,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.errors import WorkbenchError
from workbench.files.drawer import COLUMNS as FIELDS
from workbench.files.drawer import changed_part, drawer_text
from workbench.gui.bench import Bench
from workbench.gui.widgets.figure_table import Column, FigureDelegate, FigureModel, FigureRow, Index
from workbench.units import format_percent, format_quantity

__all__ = ["DrawerTable"]

COLUMNS = (
    Column("value", "000.0 kΩ", right=False),
    Column("count", "0000000"),
    Column("tolerance", "00.00 %"),
    Column("measured", "000.000 kΩ"),
    Column("on this board", "12 on this board", mono=False, right=False, takes_rest=True),
)
NEW = FigureRow(("a value", "", "", "", ""), dim=True)
_VALUE = 0

Put = Callable[[Drawer], object]


class DrawerModel(FigureModel):
    """Offers a drawer's rows, and takes what is typed into them."""

    told = Signal(str)
    """Why a text was refused; empty when all is well."""

    def __init__(self, put: Put, parent: QWidget) -> None:
        super().__init__(COLUMNS, parent)
        self._put = put
        self.drawer = Drawer(())

    def show_drawer(self, drawer: Drawer, used: Callable[[OwnedPart], int]) -> None:
        """Hold other rows; ``used`` tells how many of a part are on the board."""
        rows = (*(_row(part, used(part)) for part in drawer.parts), NEW)
        same = len(rows) == len(self.rows)
        self.drawer = drawer
        if not same:
            self.show(rows)
        elif rows != self.rows:
            self.rows = rows
            self.dataChanged.emit(self.index(0, 0), self.index(len(rows) - 1, len(COLUMNS) - 1))

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        new = index.row() == len(self.drawer.parts)
        typed = index.column() < len(FIELDS) and (not new or index.column() == _VALUE)
        return flags | Qt.ItemFlag.ItemIsEditable if typed else flags

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole):
        if role == Qt.ItemDataRole.EditRole and index.isValid():
            text = self.rows[index.row()].cells[index.column()]
            return "" if index.row() == len(self.drawer.parts) or text == "many" else text
        return super().data(index, role)

    def setData(self, index: Index, value: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        if role != Qt.ItemDataRole.EditRole or str(value) == self.data(index, role):
            return False
        parts = list(self.drawer.parts)
        new = index.row() == len(parts)
        if new and not str(value).strip():
            return False
        try:
            part = changed_part(None if new else parts[index.row()], FIELDS[index.column()], str(value))
        except WorkbenchError as reason:
            self.told.emit(str(reason))
            return False
        parts[index.row() : index.row() + 1] = [part]
        self.told.emit("")
        self._put(replace(self.drawer, parts=tuple(parts)))
        return True


def _row(part: OwnedPart, used: int) -> FigureRow:
    nominal = part.ohms if part.nominal_ohms is None else part.nominal_ohms
    cells = (
        format_quantity(nominal, "Ω", 6),
        "many" if part.count is None else str(part.count),
        format_percent(part.tolerance, 3),
        "" if part.nominal_ohms is None else format_quantity(part.ohms, "Ω", 6),
        f"{used} on this board" if used else "",
    )
    return FigureRow(cells, part)


class CellDelegate(FigureDelegate):
    """Paints the cells, and lets a field open in them."""

    def createEditor(self, parent: QWidget, _option: QStyleOptionViewItem, index: Index) -> QWidget:
        field = QLineEdit(parent)
        field.setFont(self._bench.type.mono(0.9))
        field.setAccessibleName(COLUMNS[index.column()].title)
        field.setFrame(False)
        return field

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        if isinstance(editor, QLineEdit):
            editor.setText(str(index.data(Qt.ItemDataRole.EditRole)))
            editor.selectAll()

    def setModelData(self, editor: QWidget, model: object, index: Index) -> None:
        if isinstance(editor, QLineEdit) and isinstance(model, DrawerModel):
            model.setData(index, editor.text())


class DrawerTable(QTableView):
    """Takes typed, pasted and deleted rows."""

    pasted = Signal(str)
    """A text that was on the clipboard, to be read as rows."""

    def __init__(self, bench: Bench, put: Put, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.rows = DrawerModel(put, self)
        self.told = self.rows.told
        self._put = put
        self.cells = CellDelegate(bench, self.rows, self)
        self.setAccessibleName("Your drawer")
        self.setModel(self.rows)
        self.setItemDelegate(self.cells)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        trigger = QAbstractItemView.EditTrigger
        self.setEditTriggers(
            trigger.DoubleClicked | trigger.EditKeyPressed | trigger.AnyKeyPressed | trigger.SelectedClicked
        )
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().hide()
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        head.setSectionsClickable(False)
        head.setHighlightSections(False)
        head.viewport().setAutoFillBackground(False)
        self.viewport().setAutoFillBackground(False)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_drawer(self, drawer: Drawer, used: Callable[[OwnedPart], int]) -> None:
        """Show a drawer; the current cell stays where it is."""
        current = self.currentIndex()
        row, column = current.row(), current.column()
        self.rows.show_drawer(drawer, used)
        if not self.currentIndex().isValid():
            last = self.rows.rowCount() - 1
            self.setCurrentIndex(self.rows.index(min(max(row, 0), last), max(column, 0)))
        self.viewport().update()

    def wanted_width(self) -> int:
        """Return the width in which every column fits. [px]"""
        return sum(self.cells.widths()) + self._bench.px(12)

    def one_row(self) -> int:
        """Return the height of the head and the row to type in. [px]"""
        head = self.horizontalHeader().sizeHint().height()
        return head + self.verticalHeader().defaultSectionSize() + 2 * self.frameWidth()

    def copy(self) -> None:
        """Copy the drawer as text, tabs between columns."""
        QGuiApplication.clipboard().setText(drawer_text(self.rows.drawer).replace(",", "\t"))
        self._bench.notice(f"Copied {len(self.rows.drawer.parts)} rows of the drawer.")

    def paste(self) -> None:
        """Hand the text of the clipboard on."""
        self.pasted.emit(QGuiApplication.clipboard().text())

    def remove(self) -> None:
        """Take the rows of the selected cells out of the drawer."""
        gone = {index.row() for index in self.selectedIndexes()} or {self.currentIndex().row()}
        kept = [part for number, part in enumerate(self.rows.drawer.parts) if number not in gone]
        self._put(replace(self.rows.drawer, parts=tuple(kept)))

    def currentChanged(self, current: Index, previous: Index) -> None:
        super().currentChanged(current, previous)
        self.cells.current = current.row()
        self.viewport().update()

    def closeEditor(self, editor: QWidget, hint: QAbstractItemDelegate.EndEditHint) -> None:
        """After Enter go on below, where the next value is typed."""
        super().closeEditor(editor, hint)
        if hint == QAbstractItemDelegate.EndEditHint.SubmitModelCache:
            below = min(self.currentIndex().row() + 1, self.rows.rowCount() - 1)
            self.setCurrentIndex(self.rows.index(below, self.currentIndex().column()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        standard = QKeySequence.StandardKey
        if self.state() == QAbstractItemView.State.EditingState:
            # Enter comes by here on its way out of the field; the field has taken it.
            event.accept()
        elif event.matches(standard.Paste):
            self.paste()
        elif event.matches(standard.Copy):
            self.copy()
        elif event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.remove()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.edit(self.currentIndex())
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def cell_at(self, row: int, column: int) -> QPoint:
        """Return the middle of a cell. [px]"""
        return self.visualRect(self.rows.index(row, column)).center()

    def _fit(self) -> None:
        widths = self.cells.widths()
        rest = self.viewport().width() - sum(widths)
        for number, (column, width) in enumerate(zip(COLUMNS, widths, strict=True)):
            room = width + rest if column.takes_rest else width
            self.setColumnHidden(number, room < min(width, self._bench.px(90)))
            self.setColumnWidth(number, room)
        self.horizontalHeader().setStretchLastSection(rest < 0)

    def _restyle(self) -> None:
        self.horizontalHeader().setFont(self._bench.type.sans(0.86))
        self.verticalHeader().setDefaultSectionSize(self._bench.px(25))
        self._fit()
