"""A table of figures: numbers under each other, a sign where a row says one, one row lit."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QRectF, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QGuiApplication, QKeyEvent, QKeySequence, QPainter, QResizeEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableView,
    QWidget,
)

from workbench.gui.bench import Bench
from workbench.gui.widgets.signs import Sign, draw_sign
from workbench.gui.widgets.table_head import set_head_face
from workbench.gui.widgets.text import draw_text

__all__ = ["Column", "FigureRow", "FigureTable"]

Index = QModelIndex | QPersistentModelIndex
_NONE = QModelIndex()
_SIGN = 20


@dataclass(frozen=True, slots=True)
class Column:
    """A column: its head, the longest text it must hold, and how its cells are set."""

    title: str
    widest: str
    mono: bool = True
    right: bool = True
    takes_rest: bool = False
    """Whether it grows where there is room, and is cut where there is none."""
    least: str = ""
    """The text for which it must have room at least, where the table is narrow; the longest if left out."""
    spare: int = 0
    """When it goes where that is still too wide: the highest first, at 0 never. [1]"""


@dataclass(frozen=True, slots=True)
class FigureRow:
    """A row: its cells, what it stands for, and a sign before the first cell."""

    cells: tuple[str, ...]
    payload: object = None
    sign: Sign | None = None
    dim: bool = False
    tip: str = ""


class FigureModel(QAbstractTableModel):
    """Offers rows as a table."""

    def __init__(self, columns: tuple[Column, ...], parent: QWidget) -> None:
        super().__init__(parent)
        self.columns = columns
        self.rows: tuple[FigureRow, ...] = ()

    def show(self, rows: Sequence[FigureRow]) -> None:
        """Hold other rows."""
        self.beginResetModel()
        self.rows = tuple(rows)
        self.endResetModel()

    def rowCount(self, parent: Index = _NONE) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NONE) -> int:
        return 0 if parent.isValid() else len(self.columns)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole):
        if orientation != Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.DisplayRole:
            return self.columns[section].title
        if role == Qt.ItemDataRole.TextAlignmentRole:
            side = Qt.AlignmentFlag.AlignRight if self.columns[section].right else Qt.AlignmentFlag.AlignLeft
            return side | Qt.AlignmentFlag.AlignVCenter
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole):
        if not index.isValid():
            return None
        row = self.rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return row.cells[index.column()]
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return f"{self.columns[index.column()].title} {row.cells[index.column()]}"
        if role == Qt.ItemDataRole.ToolTipRole:
            return row.tip or None
        return None


class FigureDelegate(QStyledItemDelegate):
    """Paints the cells."""

    def __init__(self, bench: Bench, model: FigureModel, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench, self._model = bench, model
        self.current = -1

    def widths(self, *, least: bool = False) -> list[int]:
        """Return the width each column needs, or can do with at the least. [px]"""
        type_, px = self._bench.type, self._bench.px
        head = QFontMetricsF(type_.sans(0.86)).horizontalAdvance
        found = []
        for number, column in enumerate(self._model.columns):
            face = type_.mono(0.9) if column.mono else type_.sans(0.95)
            text = column.least if least and column.least else column.widest
            width = max(QFontMetricsF(face).horizontalAdvance(text), head(column.title))
            found.append(ceil(width) + px(22) + (px(_SIGN) if number == 0 else 0))
        return found

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        row, column = self._model.rows[index.row()], self._model.columns[index.column()]
        box = QRectF(option.rect)
        if index.row() == self.current:
            painter.fillRect(box, theme.lit("panel"))
            if index.column() == 0:
                painter.fillRect(QRectF(box.left(), box.top(), px(3), box.height()), theme.color("accent"))
        words = box.adjusted(px(10), 0, -px(10), 0)
        if index.column() == 0:
            if row.sign is not None:
                side = px(13)
                place = QRectF(words.left(), box.center().y() - side / 2, side, side)
                draw_sign(painter, place, row.sign, theme)
            words.setLeft(words.left() + px(_SIGN))
        face = type_.mono(0.9, 500 if index.column() == 0 else 400) if column.mono else type_.sans(0.95)
        align = Qt.AlignmentFlag.AlignRight if column.right else Qt.AlignmentFlag.AlignLeft
        ink = theme.color("dim" if row.dim else "text")
        draw_text(painter, words, row.cells[index.column()], face, ink, align=align, elide=True)


class FigureTable(QTableView):
    """Shows rows of figures; arrows and a click move the light, Enter or a second click picks."""

    pointed = Signal(object)
    """Payload of the row that the light came to; none for no row."""
    picked = Signal(object)
    """Payload of the row that was picked."""

    def __init__(
        self, bench: Bench, name: str, columns: tuple[Column, ...], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._bench = bench
        self.figures = FigureModel(columns, self)
        self.delegate = FigureDelegate(bench, self.figures, self)
        self.setAccessibleName(name)
        self.setModel(self.figures)
        self.setItemDelegate(self.delegate)
        self.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setShowGrid(False)
        self.setWordWrap(False)
        self.setTabKeyNavigation(False)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.verticalHeader().hide()
        head = self.horizontalHeader()
        head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        head.setSectionsClickable(False)
        head.setHighlightSections(False)
        head.viewport().setAutoFillBackground(False)
        self.viewport().setAutoFillBackground(False)
        self.selectionModel().currentRowChanged.connect(lambda now, _before: self._on_row(now.row()))
        self.doubleClicked.connect(lambda index: self._pick(index.row()))
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    @property
    def rows(self) -> tuple[FigureRow, ...]:
        """The rows shown."""
        return self.figures.rows

    @property
    def current(self) -> object:
        """Payload of the lit row; none for no row."""
        row = self.delegate.current
        return self.rows[row].payload if 0 <= row < len(self.rows) else None

    def show_rows(self, rows: Sequence[FigureRow], *, current: int = -1) -> None:
        """Show other rows and light one of them."""
        if tuple(rows) == self.rows and current == self.delegate.current:
            return
        self.delegate.current = -1
        self.figures.show(rows)
        if 0 <= current < len(rows):
            self.setCurrentIndex(self.figures.index(current, 0))
            self.scrollTo(self.figures.index(current, 0))
        self.viewport().update()

    def wanted_width(self) -> int:
        """Return the width in which every column fits. [px]"""
        return sum(self.delegate.widths()) + self._bench.px(12)

    def copy(self) -> None:
        """Copy the table as text, tabs between columns."""
        heads = tuple(column.title for column in self.figures.columns)
        lines = [heads, *(row.cells for row in self.rows)]
        text = "\n".join("\t".join(cells) for cells in lines).replace("\u2212", "-")
        QGuiApplication.clipboard().setText(text + "\n")
        self._bench.notice(f"Copied {len(self.rows)} rows as a table.")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._pick(self.delegate.current)
        elif event.matches(QKeySequence.StandardKey.Copy):
            self.copy()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _on_row(self, row: int) -> None:
        if row != self.delegate.current:
            self.delegate.current = row
            self.viewport().update()
            self.pointed.emit(self.current)

    def _pick(self, row: int) -> None:
        if 0 <= row < len(self.rows):
            self.picked.emit(self.rows[row].payload)

    def _fit(self) -> None:
        room = self.viewport().width()
        widths, shown = self._widths_in(room)
        rest = room - sum(widths[number] for number in shown)
        for number, (column, width) in enumerate(zip(self.figures.columns, widths, strict=True)):
            self.setColumnHidden(number, number not in shown)
            self.setColumnWidth(number, width + rest if column.takes_rest else width)
        last = self.figures.columns[shown[-1]] if shown else None
        self.horizontalHeader().setStretchLastSection(last is not None and not last.takes_rest)

    def _widths_in(self, room: int) -> tuple[list[int], list[int]]:
        """Return the widths of all columns, and which are shown: what can be spared goes. [px]"""
        columns, least = self.figures.columns, self.delegate.widths(least=True)
        # A column that could show its first letters only gives way to the others.
        cut = [
            min(width, self._bench.px(90)) if column.takes_rest and not column.least else width
            for column, width in zip(columns, least, strict=True)
        ]
        shown = list(range(len(columns)))
        for number in sorted(shown, key=lambda each: -columns[each].spare):
            if sum(cut[each] for each in shown) <= room:
                break
            if columns[number].spare or (columns[number].takes_rest and not columns[number].least):
                shown.remove(number)
        widths = self.delegate.widths()
        return (widths if sum(widths[each] for each in shown) <= room else cut), shown

    def _restyle(self) -> None:
        set_head_face(self.horizontalHeader(), self._bench.type.sans(0.86))
        self.verticalHeader().setDefaultSectionSize(self._bench.px(25))
        self._fit()
