"""A row for every code: bits, loaded and open volts, step, errors and lightness."""

from collections.abc import Callable

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from workbench.gui.levels.figures import CodeFigures, signed

__all__ = ["COLUMNS", "CodeModel", "Index", "cell", "table_text"]

COLUMNS = ("code", "bits", "loaded V", "open V", "step mV", "DNL", "INL", "L*", "eye")
"""Heads of the columns; the last one holds the grey itself and no text."""

_NONE = QModelIndex()
Index = QModelIndex | QPersistentModelIndex


class CodeModel(QAbstractTableModel):
    """Offers one CodeFigures as a table."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.figures: CodeFigures | None = None

    def show_codes(self, figures: CodeFigures) -> None:
        """Show other figures; only a change in their number is a change of the table's shape."""
        same = 0 < _rows(figures) == _rows(self.figures)
        if not same:
            self.beginResetModel()
        self.figures = figures
        if same:
            self.dataChanged.emit(self.index(0, 0), self.index(_rows(figures) - 1, len(COLUMNS) - 1))
        else:
            self.endResetModel()

    def rowCount(self, parent: Index = _NONE) -> int:
        return 0 if parent.isValid() else _rows(self.figures)

    def columnCount(self, parent: Index = _NONE) -> int:
        return 0 if parent.isValid() else len(COLUMNS)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole):
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return COLUMNS[section]
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole):
        if self.figures is None or not index.isValid():
            return None
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return cell(self.figures, index.row(), index.column())
        return None


def _rows(figures: CodeFigures | None) -> int:
    """Return the rows of the table; a network without levels has none."""
    return figures.n_codes if figures is not None and figures.sound else 0


def cell(figures: CodeFigures, code: int, column: int) -> str:
    """Return the text of one cell."""
    return _CELLS[column](figures, code)


def _step(figures: CodeFigures, code: int) -> str:
    return f"{1e3 * figures.step_volts[code]:.1f}".replace("-", "\u2212") if code else ""


_CELLS: tuple[Callable[[CodeFigures, int], str], ...] = (
    lambda _figures, code: str(code),
    lambda figures, code: figures.code_text(code),
    lambda figures, code: f"{figures.volts[code]:.4f}",
    lambda figures, code: f"{figures.open_volts[code]:.3f}",
    _step,
    lambda figures, code: signed(float(figures.dnl_lsb[code])) if code else "",
    lambda figures, code: signed(float(figures.inl_lsb[code])),
    lambda figures, code: f"{figures.lightness[code]:.0f}",
    lambda _figures, _code: "",
)


def table_text(figures: CodeFigures) -> str:
    """Return the table as text for other programs: tabs between columns, plain minus signs."""
    texts = range(len(COLUMNS) - 1)
    rows = [COLUMNS[:-1], *([cell(figures, code, c) for c in texts] for code in range(figures.n_codes))]
    return "\n".join("\t".join(row) for row in rows).replace("\u2212", "-") + "\n"
