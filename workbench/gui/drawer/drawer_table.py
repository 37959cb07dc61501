"""The drawer as a table to type in: one row a value, and an empty one below for the next."""

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtCore import QPoint, QRect, Qt, Signal
from PySide6.QtGui import QFocusEvent, QGuiApplication, QKeyEvent, QKeySequence, QPainter, QPen, QResizeEvent
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
from workbench.files.drawer import drawer_text
from workbench.gui.bench import Bench
from workbench.gui.drawer.drawer_model import COLUMNS, VALUE, DrawerModel, Put
from workbench.gui.widgets.figure_table import FigureDelegate, Index
from workbench.gui.widgets.signs import Sign
from workbench.gui.widgets.table_head import set_head_face

__all__ = ["DrawerTable"]

ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
PLAIN = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.KeypadModifier
Hint = QAbstractItemDelegate.EndEditHint
HELP = (
    "The resistors you own. Typing writes into the marked cell, Tab keeps it and goes on to count, tolerance "
    "and measured value, Enter keeps it and goes below, Esc leaves it as it was. Delete takes the row out, "
    "Ctrl+V puts copied rows in."
)


class CellField(QLineEdit):
    """A field in a cell, outlined while its text is refused."""

    def __init__(self, bench: Bench, name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._face = bench.type.mono(0.9)
        self.setFont(self._face)
        self.setAccessibleName(name)
        self.setFrame(False)
        self.textEdited.connect(lambda: self.set_refused(refused=False))

    def set_refused(self, *, refused: bool) -> None:
        """Outline the text as one that is not kept, or as any other."""
        state = "fails" if refused else ""
        if state != (self.property("state") or ""):
            self.setProperty("state", state)
            self.style().unpolish(self)
            self.style().polish(self)
            self.setFont(self._face)


class CellDelegate(FigureDelegate):
    """Paints the cells, marks the one that typing goes into, and lets a field open in it."""

    def createEditor(self, parent: QWidget, _option: QStyleOptionViewItem, index: Index) -> QWidget:
        return CellField(self._bench, COLUMNS[index.column()].title, parent)

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        # What is being typed stays while other rows come and go.
        if isinstance(editor, CellField) and not editor.isModified():
            editor.setText(str(index.data(Qt.ItemDataRole.EditRole)))
            editor.selectAll()

    def setModelData(self, editor: QWidget, model: object, index: Index) -> None:
        if isinstance(editor, CellField) and isinstance(model, DrawerModel):
            model.setData(index, editor.text())

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        super().paint(painter, option, index)
        table = self.parent()
        if isinstance(table, DrawerTable) and table.hasFocus() and index == table.currentIndex():
            box: QRect = option.rect
            painter.setPen(QPen(self._bench.theme.color("accent"), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box.adjusted(1, 1, -1, -1))


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
        self.setWhatsThis(HELP)
        self.setModel(self.rows)
        self.setItemDelegate(self.cells)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectItems)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        trigger = QAbstractItemView.EditTrigger
        # Not on a click of what is chosen: keys that come within Qt's wait for a second click would be lost.
        self.setEditTriggers(trigger.DoubleClicked | trigger.EditKeyPressed | trigger.AnyKeyPressed)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.verticalHeader().hide()
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        head.setSectionsClickable(False)
        head.setHighlightSections(False)
        head.viewport().setAutoFillBackground(False)
        self.viewport().setAutoFillBackground(False)
        self.clicked.connect(self._on_click)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_drawer(self, drawer: Drawer, used: Callable[[OwnedPart], int]) -> None:
        """Show a drawer; the current cell stays where it is."""
        self.rows.show_drawer(drawer, used)
        if not self.currentIndex().isValid():
            self._go(self.rows.rowCount() - 1, VALUE)
        self.viewport().update()

    def wanted_width(self) -> int:
        """Return the width in which every column fits. [px]"""
        return sum(self.cells.widths()) + self._bench.px(12)

    def one_row(self) -> int:
        """Return the height of the head and the row to type in. [px]"""
        head = self.horizontalHeader().sizeHint().height()
        return head + self.verticalHeader().defaultSectionSize() + 2 * self.frameWidth()

    def cell_at(self, row: int, column: int) -> QPoint:
        """Return the middle of a cell. [px]"""
        return self.visualRect(self.rows.index(row, column)).center()

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

    # Where typing goes

    def currentChanged(self, current: Index, previous: Index) -> None:
        super().currentChanged(current, previous)
        self.cells.current = current.row()
        self.viewport().update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.viewport().update()

    def closeEditor(self, editor: QWidget, hint: Hint) -> None:
        """Go on from a cell that was kept: with Tab to the next one, with Enter below.

        What could not be kept stays open, to be mended or left with Esc.
        """
        left = hint is Hint.RevertModelCache
        if self.rows.refused and hint is not Hint.NoHint and not left:
            if isinstance(editor, CellField):
                editor.set_refused(refused=True)
            return
        super().closeEditor(editor, Hint.NoHint)
        if left:
            self.rows.refused = False
            self.told.emit(None, "")
        elif hint is Hint.SubmitModelCache:
            self._below()
        elif hint is not Hint.NoHint:
            self._step(-1 if hint is Hint.EditPreviousItem else 1)

    def focusNextPrevChild(self, forward: bool) -> bool:
        return self._step(1 if forward else -1) or super().focusNextPrevChild(forward)

    def _on_click(self, index: Index) -> None:
        """Open the field for the next value; other cells open with a second click."""
        if self.rows.is_new(index) and self.rows.typed(index):
            self.edit(index)

    def _go(self, row: int, column: int) -> None:
        self.setCurrentIndex(self.rows.index(row, column))

    def _below(self) -> None:
        """Go down; in the last row, only the value can be typed."""
        here = self.currentIndex()
        row = min(here.row() + 1, self.rows.rowCount() - 1)
        self._go(row, here.column() if self.rows.typed(self.rows.index(row, here.column())) else VALUE)

    def _step(self, way: int) -> bool:
        """Go to the next cell that can be typed into, as one reads; return whether there is one."""
        here = self.currentIndex()
        place = here.row() * len(COLUMNS) + here.column() + way
        while 0 <= place < self.rows.rowCount() * len(COLUMNS):
            index = self.rows.index(*divmod(place, len(COLUMNS)))
            if self.rows.typed(index):
                self.setCurrentIndex(index)
                return True
            place += way
        return False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        standard, key, here = QKeySequence.StandardKey, event.key(), self.currentIndex()
        if self.state() == QAbstractItemView.State.EditingState:
            # Enter comes by here on its way out of the field; the field has taken it.
            event.accept()
        elif event.matches(standard.Paste):
            self.paste()
        elif event.matches(standard.Copy):
            self.copy()
        elif key == Qt.Key.Key_Delete:
            self.remove()
        elif here.isValid() and self._writes(event) and not self.rows.typed(here):
            self.told.emit(Sign.NOTE, self.rows.why_fixed(here))
        elif key in ENTER or key == Qt.Key.Key_Backspace:
            self.edit(here)
        else:
            super().keyPressEvent(event)

    @staticmethod
    def _writes(event: QKeyEvent) -> bool:
        """Return whether a key would write into a cell, or open it."""
        opens = event.key() in (*ENTER, Qt.Key.Key_F2, Qt.Key.Key_Backspace)
        return opens or (event.modifiers() in PLAIN and event.text().isprintable() and event.text() != "")

    # How it looks

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        widths = self.cells.widths()
        rest = self.viewport().width() - sum(widths)
        for number, (column, width) in enumerate(zip(COLUMNS, widths, strict=True)):
            room = width + rest if column.takes_rest else width
            self.setColumnHidden(number, room < min(width, self._bench.px(90)))
            self.setColumnWidth(number, room)
        self.horizontalHeader().setStretchLastSection(rest < 0)

    def _restyle(self) -> None:
        set_head_face(self.horizontalHeader(), self._bench.type.sans(0.86))
        self.verticalHeader().setDefaultSectionSize(self._bench.px(25))
        self._fit()
