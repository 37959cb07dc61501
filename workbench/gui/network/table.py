"""The table twin of the drawing: the same parts in the same order, values editable."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView, QWidget

from workbench.circuit.network import PartId, Resistor
from workbench.drawing import H_SERIES, LOAD, V_SERIES
from workbench.errors import EditError, QuantityError
from workbench.gui.bench import Bench
from workbench.gui.network.values import Standing, find_value, read_text
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import parts_of
from workbench.project.edits.parts import set_rating, set_tolerance
from workbench.units import format_percent, format_quantity, parse_quantity

__all__ = ["PartsModel", "PartsTable", "as_text"]

HEADINGS = ("part", "value", "tolerance", "rating", "from", "to")
VALUE, TOLERANCE, RATING = 1, 2, 3
Index = QModelIndex | QPersistentModelIndex


@dataclass(frozen=True, slots=True)
class Row:
    """One part as it stands in the table."""

    part: PartId
    texts: tuple[str, str, str, str, str, str]
    resistor: bool
    """Whether it has a tolerance and a rating."""


def table_rows(project: Project, channel: Channel) -> tuple[Row, ...]:
    """Return the parts of a channel and of the board around it."""
    network, rows = project.channels[channel], []
    for part in parts_of(network):
        resistor = isinstance(part, Resistor)
        tolerance = f"± {format_percent(part.tolerance)}" if isinstance(part, Resistor) else ""
        rating = format_quantity(part.rating_watts, "W") if isinstance(part, Resistor) else ""
        rows.append(
            Row(
                part.id,
                (part.id, _text(project, channel, part.id), tolerance, rating, part.a, part.b),
                resistor,
            )
        )
    wiring = project.wiring
    around = (
        (H_SERIES, wiring.h, "J1 contact 13"),
        (V_SERIES, wiring.v, "J1 contact 14"),
        (LOAD, "J1", "ground"),
    )
    for name, a, b in around:
        rows.append(Row(name, (name, _text(project, channel, name), "", "", a, b), False))
    return tuple(rows)


def as_text(project: Project, channel: Channel) -> str:
    """Return the table with a tab between columns, one part a line."""
    lines = [HEADINGS, *(row.texts for row in table_rows(project, channel))]
    return "\n".join("\t".join(line) for line in lines) + "\n"


def _text(project: Project, channel: Channel, part: PartId) -> str:
    value = find_value(project, channel, part)
    return value.text(value.value) if value is not None else ""


class PartsModel(QAbstractTableModel):
    """Shows the parts of the drawn channel; edits go to the session."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._rows: tuple[Row, ...] = ()

    def show_project(self, project: Project, channel: Channel) -> None:
        """Show the parts of a channel; a table of the same parts keeps what is selected."""
        rows = table_rows(project, channel)
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
        """Return the part of a row."""
        return self._rows[row].part if 0 <= row < len(self._rows) else None

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
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return self._rows[index.row()].texts[index.column()]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(index.column())
        if role == Qt.ItemDataRole.FontRole:
            type_ = self._bench.type
            return type_.sans(1.0, 500) if index.column() == 0 else type_.mono(0.95)
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        flags = super().flags(index)
        row = self._rows[index.row()] if index.isValid() else None
        if row is None:
            return flags
        editable = index.column() == VALUE or (row.resistor and index.column() in (TOLERANCE, RATING))
        return flags | Qt.ItemFlag.ItemIsEditable if editable else flags

    def setData(self, index: Index, typed: object, role: int = Qt.ItemDataRole.EditRole) -> bool:
        if role != Qt.ItemDataRole.EditRole or not index.isValid():
            return False
        part, text = self._rows[index.row()].part, str(typed)
        edits: dict[int, Callable[[PartId, str], bool]] = {
            VALUE: self._set_value,
            TOLERANCE: self._set_tolerance,
            RATING: self._set_rating,
        }
        try:
            return edits[index.column()](part, text)
        except (QuantityError, EditError) as reason:
            self._bench.notice(str(reason), warning=True)
            return False

    def _set_value(self, part: PartId, text: str) -> bool:
        project = self._bench.session.project
        value = find_value(project, self._bench.view.channel, part)
        if value is None:
            return False
        reading = read_text(text, value, project)
        if reading.standing is Standing.REFUSED:
            raise QuantityError(reading.sentence)
        kept = self._bench.apply(value.label(reading.value), lambda p: value.put(p, reading.value))
        if reading.sentence:
            self._bench.notice(f"{reading.sentence} Undo takes it back.", warning=True)
        return kept

    def _set_tolerance(self, part: PartId, text: str) -> bool:
        tolerance = parse_quantity(text.replace("±", ""), "%", zero=True)
        channel = self._bench.view.channel
        label = f"{part} ± {format_percent(tolerance)}"
        return self._bench.apply(label, lambda p: set_tolerance(p, channel, part, tolerance))

    def _set_rating(self, part: PartId, text: str) -> bool:
        watts = parse_quantity(text, "W")
        channel = self._bench.view.channel
        label = f"{part} {format_quantity(watts, 'W')}"
        return self._bench.apply(label, lambda p: set_rating(p, channel, part, watts))


def _alignment(column: int) -> Qt.AlignmentFlag:
    across = (
        Qt.AlignmentFlag.AlignRight if column in (VALUE, TOLERANCE, RATING) else Qt.AlignmentFlag.AlignLeft
    )
    return across | Qt.AlignmentFlag.AlignVCenter


class PartsTable(QTableView):
    """Shows a :class:`PartsModel`; the chosen part is its current row."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.parts = PartsModel(bench, self)
        self.setModel(self.parts)
        self.setAccessibleName("Parts of the network")
        self.setWhatsThis("The parts of the drawing as a table. Values, tolerances and ratings can be typed.")
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

    def _on_row(self, row: QModelIndex) -> None:
        if self.isVisible():
            self._bench.view.choose(self.parts.part(row.row()))

    def _on_view(self) -> None:
        row = self.parts.row_of(self._bench.view.chosen)
        if row >= 0 and (row != self.currentIndex().row() or not self.selectionModel().hasSelection()):
            self.setCurrentIndex(self.parts.index(row, VALUE))
            self.selectRow(row)

    def _restyle(self) -> None:
        self.verticalHeader().setDefaultSectionSize(self._bench.px(30))
        ground = self.palette()
        for role in (QPalette.ColorRole.Base, QPalette.ColorRole.Button, QPalette.ColorRole.Window):
            ground.setColor(role, self._bench.theme.color("panel"))
        self.horizontalHeader().setPalette(ground)
        self.horizontalHeader().setFont(self._bench.type.sans(0.86))
        self.horizontalHeader().setFixedHeight(self._bench.px(32))
