"""The resistors by how much they matter, and what each of them is on the board looked at."""

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QStyleOptionViewItem, QWidget

from workbench.circuit.network import Driver, Load, Network
from workbench.circuit.tolerance.monte_carlo import Tolerance
from workbench.gui.bench import Bench
from workbench.gui.widgets.figure_table import Column, FigureDelegate, FigureRow, FigureTable, Index
from workbench.units import format_quantity

__all__ = ["PartTable", "part_rows"]

_MOVED, _BAR = 1, 2
COLUMNS = (
    Column("part", "supply", right=False),
    Column("1 % more", "−00.000 mV"),
    Column("moves white", "moves white", mono=False, right=False, takes_rest=True),
    Column("value", "000.0 kΩ"),
    Column("off", "−00.00 %"),
)


def part_rows(
    network: Network, driver: Driver, load: Load, found: Tolerance, board: int | None
) -> list[FigureRow]:
    """Return a row for each resistor, the strongest first, then supply, load and on-resistance."""
    factors = None if board is None else found.factors_by_board[board]
    places = {resistor.id: n for n, resistor in enumerate(network.resistors)}
    strongest = max((abs(each.volts_per_percent) for each in found.sensitivity), default=0.0) or 1.0
    rows = []
    for each in found.sensitivity:
        place = places[each.part]
        moved = f"{1e3 * each.volts_per_percent:+.3f} mV".replace("-", "\u2212")
        share = abs(each.volts_per_percent) / strongest
        cells = _value_cells(
            network.resistors[place].ohms, "Ω", None if factors is None else float(factors[place])
        )
        rows.append(FigureRow((str(each.part), moved, "", *cells), (each.part, share)))
    return rows + _other_rows(driver, load, None if factors is None else [float(f) for f in factors[-3:]])


def _other_rows(driver: Driver, load: Load, factors: list[float] | None) -> list[FigureRow]:
    values = [
        ("supply", driver.supply_volts, "V"),
        ("load", None if load.ohms is None else load.ohms / load.monitors, "Ω"),
        ("pins", driver.high_ohms or None, "Ω"),
    ]
    return [
        FigureRow((name, "", "", *_value_cells(value, unit, factors[n] if factors else None)), dim=True)
        for n, (name, value, unit) in enumerate(values)
        if value is not None
    ]


def _value_cells(value: float, unit: str, factor: float | None) -> tuple[str, str]:
    """Return a value of a board and how far it is off; of no board, the design's."""
    if factor is None:
        return format_quantity(value, unit), ""
    off = f"{100.0 * (factor - 1.0):+.2f}".replace("-", "\u2212")
    return format_quantity(value * factor, unit), f"{off} %" if off.strip("+\u22120.") else "0.00 %"


class BarDelegate(FigureDelegate):
    """Paints a bar for each resistor, longer where it matters more; without a column under its figure."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        super().paint(painter, option, index)
        payload, table = self._model.rows[index.row()].payload, self.parent()
        if not isinstance(payload, tuple) or not isinstance(table, PartTable):
            return
        narrow = table.isColumnHidden(_BAR)
        if index.column() != (_MOVED if narrow else _BAR):
            return
        px, theme = self._bench.px, self._bench.theme
        box = QRectF(option.rect).adjusted(px(10), 0, -px(10), 0)
        height = px(2) if narrow else px(9)
        top = box.bottom() - px(3) if narrow else round(box.center().y() - height / 2)
        bar = QRectF(box.left(), top, box.width() * payload[1], height)
        lit = index.row() == self.current
        painter.fillRect(bar, theme.color("accent") if lit else theme.color("dim", 0.85))


class PartTable(FigureTable):
    """Rows of :func:`part_rows`; the lit row is the part that is chosen on the bench."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(bench, "Resistors by how much they matter", COLUMNS, parent)
        self.delegate = BarDelegate(bench, self.figures, self)
        self.setItemDelegate(self.delegate)

    def least_width(self) -> int:
        """Return the width in which every column but that of the bars fits. [px]"""
        widths = self.delegate.widths()
        return sum(widths) - widths[_BAR] + self._bench.px(12)
