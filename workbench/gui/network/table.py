"""The table twin of the drawing: the same parts in the same order, typed into as in a spreadsheet."""

from PySide6.QtCore import QEvent, QModelIndex, QRect, Qt
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence, QPainter, QPen
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from workbench.gui.bench import Bench
from workbench.gui.network.table_model import COLUMNS, Index, PartsModel
from workbench.gui.network.table_rows import Column
from workbench.gui.network.wiring.clipboard import holds_parts
from workbench.gui.widgets.table_head import set_head_face
from workbench.project.document import Project

__all__ = ["PartsTable"]

VALUE = COLUMNS.index(Column.VALUE)
ENTER = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
PLAIN = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.KeypadModifier
Hint = QAbstractItemDelegate.EndEditHint

HELP = (
    "The parts of the drawing as a table. Typing writes into the marked cell, Tab keeps it and goes to the "
    "next cell, Enter keeps it and goes down, Esc leaves it as it was. Insert goes to the last row, where a "
    "part is made by typing its value and two nodes. Delete removes the part, Ctrl+C, Ctrl+X and Ctrl+V "
    "carry it, Ctrl+T goes back to the drawing."
)


class CellPainter(QStyledItemDelegate):
    """Paints the cells, and marks the one that typing goes into."""

    def __init__(self, bench: Bench, table: "PartsTable") -> None:
        super().__init__(table)
        self._bench, self._table = bench, table

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        field = super().createEditor(parent, option, index)
        field.setAccessibleName(COLUMNS[index.column()].value)
        return field

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        super().paint(painter, option, index)
        if index == self._table.currentIndex():
            box: QRect = option.rect
            role = "accent" if self._table.hasFocus() else "outline"
            painter.setPen(QPen(self._bench.theme.color(role), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(box.adjusted(1, 1, -1, -1))


class PartsTable(QTableView):
    """Shows a :class:`PartsModel`; the chosen part is its current row."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.parts = PartsModel(bench, self)
        self.setModel(self.parts)
        self.setItemDelegate(CellPainter(bench, self))
        self.setAccessibleName("Parts of the network")
        self.setWhatsThis(HELP)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setTabKeyNavigation(False)
        self.verticalHeader().hide()
        header = self.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        header.setHighlightSections(False)
        header.viewport().setAutoFillBackground(False)
        self.viewport().setAutoFillBackground(False)
        self.selectionModel().currentRowChanged.connect(self._on_row)
        bench.view.changed.connect(self._on_view)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_project(self, project: Project) -> None:
        """Show the drawn channel of a project."""
        self.parts.show_project(project, self._bench.view.channel)
        self._on_view()

    def focusInEvent(self, event: QFocusEvent) -> None:
        if not self.currentIndex().isValid():
            self._go(0, VALUE)
        super().focusInEvent(event)

    # Where typing goes

    def _new_row(self) -> int:
        return self.parts.rowCount() - 1

    def _go(self, row: int, column: int) -> None:
        self.setCurrentIndex(self.parts.index(row, column))

    def _step(self, way: int) -> bool:
        """Go to the next cell that can be typed into, as one reads; return whether there is one."""
        here = self.currentIndex()
        place = here.row() * len(COLUMNS) + here.column() + way
        while 0 <= place < self.parts.rowCount() * len(COLUMNS):
            index = self.parts.index(*divmod(place, len(COLUMNS)))
            if self.parts.typed(index):
                self.setCurrentIndex(index)
                return True
            place += way
        return False

    def _down(self) -> None:
        """Go down, or in the last row to what is still missing there."""
        here, missing = self.currentIndex(), self.parts.missing()
        if here.row() < self._new_row():
            self._go(here.row() + 1, here.column())
        elif missing:
            self._go(here.row(), min(missing, key=lambda column: (column <= here.column(), column)))

    def closeEditor(self, editor: QWidget, hint: Hint) -> None:
        """Go on from a cell that was typed: with Tab to the next one, with Enter down."""
        super().closeEditor(editor, Hint.NoHint)
        if self.parts.refused or hint in (Hint.NoHint, Hint.RevertModelCache):
            return
        if self.parts.made is not None:
            self.parts.made = None
            self._bench.live.refresh()
            self._go(self._new_row(), VALUE)
        elif hint is Hint.EditPreviousItem:
            self._step(-1)
        elif hint is Hint.SubmitModelCache or self.currentIndex().row() == self._new_row():
            self._down()
        else:
            self._step(1)

    def focusNextPrevChild(self, forward: bool) -> bool:
        return self._step(1 if forward else -1) or super().focusNextPrevChild(forward)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        keys, key, here = QKeySequence.StandardKey, event.key(), self.currentIndex()
        if self.state() is QAbstractItemView.State.EditingState:
            super().keyPressEvent(event)
        elif key == Qt.Key.Key_Insert:
            self._go(self._new_row(), VALUE)
            self.edit(self.currentIndex())
        elif key in ENTER:
            self._down()
        elif key == Qt.Key.Key_Delete:
            self._run("network.remove-part")
            self._bench.live.refresh()
            self._go(here.row(), here.column())
        elif event.matches(keys.Copy):
            self._run("network.copy")
        elif event.matches(keys.Cut):
            self._run("network.cut")
        elif here.isValid() and self._writes(event) and not self.parts.typed(here):
            self._bench.notice(self.parts.why_fixed(here), warning=True)
        elif key == Qt.Key.Key_Backspace:
            self.edit(here)
        else:
            super().keyPressEvent(event)

    @staticmethod
    def _writes(event: QKeyEvent) -> bool:
        """Return whether a key would write into a cell, or open it."""
        opens = event.key() in (Qt.Key.Key_F2, Qt.Key.Key_Backspace)
        return opens or (event.modifiers() in PLAIN and event.text().isprintable() and event.text() != "")

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

    # In step with the drawing

    def _on_row(self, row: QModelIndex) -> None:
        if self.isVisible():
            self._bench.view.choose(self.parts.part(row.row()))

    def _on_view(self) -> None:
        row = self.parts.row_of(self._bench.view.chosen)
        here = self.currentIndex()
        if row >= 0 and (row != here.row() or not self.selectionModel().hasSelection()):
            self._go(row, here.column() if here.isValid() else VALUE)

    def _restyle(self) -> None:
        self.verticalHeader().setDefaultSectionSize(self._bench.px(30))
        set_head_face(self.horizontalHeader(), self._bench.type.sans(0.86))
        self.horizontalHeader().setFixedHeight(self._bench.px(32))
