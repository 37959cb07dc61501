"""A list to pick one thing from: a title, a few dim words, and figures on the right."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QKeyEvent, QPainter
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from workbench.gui.bench import Bench
from workbench.gui.widgets.text import draw_text

__all__ = ["ChoiceList", "Row"]

Index = QModelIndex | QPersistentModelIndex


@dataclass(frozen=True, slots=True)
class Row:
    """One thing that can be picked."""

    title: str
    detail: str = ""
    """A few words after the title, dim."""
    figures: str = ""
    """Numbers or a key, right aligned, in the mono face."""
    payload: object = None
    refused: str = ""
    """Why it cannot be picked; empty if it can."""
    note: str = ""
    """A few words more after the detail, said in place of a longer reason."""
    dim: bool = False
    """Whether it stands back, though it can be picked."""


class Rows(QAbstractListModel):
    """The rows as Qt asks for them."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[Row, ...] = ()

    def show(self, rows: Sequence[Row]) -> None:
        """Hold other rows."""
        self.beginResetModel()
        self._rows = tuple(rows)
        self.endResetModel()

    def row(self, index: Index) -> Row:
        """Return the row at an index."""
        return self._rows[index.row()]

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008  Qt's own signature
        return 0 if parent.isValid() else len(self._rows)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return row.title
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return ", ".join(
                part for part in (row.title, row.detail, row.note, row.figures, row.refused) if part
            )
        if role == Qt.ItemDataRole.ToolTipRole:
            return row.refused or None
        return None


class RowPainter(QStyledItemDelegate):
    """Paints a row."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = bench

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        return QSize(self._bench.px(200), self._bench.px(30))

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        model = index.model()
        assert isinstance(model, Rows)
        row = model.row(index)
        box = QRectF(option.rect)
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        painter.save()
        if chosen:
            painter.fillRect(box, theme.lit("raised"))
            painter.fillRect(QRectF(box.left(), box.top(), px(3), box.height()), theme.color("accent"))
        words = box.adjusted(px(14), 0, -px(14), 0)
        face = type_.mono(0.9)
        ends = type_.width(row.figures, face) if row.figures else 0
        draw_text(painter, words, row.figures, face, theme.color("dim"), align=Qt.AlignmentFlag.AlignRight)
        words.setRight(words.right() - ends - px(12))
        ink = theme.color("dim" if row.refused or row.dim else "text")
        used = draw_text(painter, words, row.title, type_.sans(1.0, 500), ink, elide=True)
        words.setLeft(words.left() + used + px(12))
        said = f"{row.detail} · {row.note}" if row.note else row.refused or row.detail
        draw_text(painter, words, said, type_.sans(0.9), theme.color("dim"), elide=True)
        painter.restore()


class ChoiceList(QListView):
    """Shows rows; Enter or a click picks one, arrows move."""

    picked = Signal(object)
    """The :class:`Row` that was picked."""
    refused = Signal(str)
    """Why the row that was picked cannot be taken."""

    def __init__(self, bench: Bench, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows = Rows(self)
        self.setModel(self._rows)
        self.setItemDelegate(RowPainter(bench, self))
        self.setAccessibleName(name)
        self.setUniformItemSizes(True)
        self.setMouseTracking(True)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.clicked.connect(self._pick)

    def show_rows(self, rows: Sequence[Row], *, current: int = 0) -> None:
        """Show other rows and stand on one of them, or on none below 0."""
        self._rows.show(rows)
        if rows and current >= 0:
            index = self._rows.index(min(current, len(rows) - 1), 0)
            self.setCurrentIndex(index)
            self.scrollTo(index, QAbstractItemView.ScrollHint.PositionAtCenter)

    @property
    def rows(self) -> int:
        """How many rows are shown. [1]"""
        return self._rows.rowCount()

    @property
    def current(self) -> Row | None:
        """The row that is stood on; none for no row."""
        index = self.currentIndex()
        return self._rows.row(index) if index.isValid() else None

    def step(self, by: int) -> None:
        """Move the choice up or down."""
        if self.rows:
            number = max(0, min(self.rows - 1, self.currentIndex().row() + by))
            self.setCurrentIndex(self._rows.index(number, 0))

    def pick_current(self) -> None:
        """Pick the row that is stood on."""
        self._pick(self.currentIndex())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.pick_current()
            return
        super().keyPressEvent(event)

    def _pick(self, index: Index) -> None:
        if not index.isValid():
            return
        row = self._rows.row(index)
        if row.refused:
            self.refused.emit(row.refused)
        else:
            self.picked.emit(row)
