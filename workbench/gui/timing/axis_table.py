"""The counts of a line or of a frame, each in a field, with its time and its share."""

from dataclasses import replace

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QWidget

from workbench.errors import EditError
from workbench.gui.bench import Bench
from workbench.gui.timing.entry import Entry
from workbench.gui.timing.lesson import POLARITY, TOTAL, region_words
from workbench.gui.timing.tints import region_tint
from workbench.gui.widgets import Button, ButtonKind, CheckBox, Words
from workbench.gui.widgets.control import outlined
from workbench.gui.widgets.tip import tip_text
from workbench.project.document import Direction, Project
from workbench.project.edits.timing import set_axis, set_polarity
from workbench.timing.counts import read_lines, read_pixels
from workbench.timing.edges import move_edge
from workbench.timing.mode import Axis, Mode, Polarity, Region
from workbench.units import format_fixed

__all__ = ["AxisTable"]

_FIELDS = {
    Region.FRONT_PORCH: "front_porch",
    Region.SYNC: "sync",
    Region.BACK_PORCH: "back_porch",
    Region.ACTIVE: "active",
}
_TITLES = {Direction.HORIZONTAL: "Line", Direction.VERTICAL: "Frame"}
_COUNTED = {Direction.HORIZONTAL: "px", Direction.VERTICAL: "lines"}
_TIME_UNIT = {Direction.HORIZONTAL: "µ", Direction.VERTICAL: "m"}
_WORDS = {Polarity.NEGATIVE: "negative", Polarity.POSITIVE: "positive"}


class AxisTable(QWidget):
    """Shows one axis of a mode; a count that is changed makes the mode one's own."""

    def __init__(self, bench: Bench, direction: Direction, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench, self.direction = bench, direction
        title, unit = _TITLES[direction], _COUNTED[direction]
        self.setAccessibleName(title)
        self.entries: dict[Region, Entry] = {}
        self.names: dict[Region | None, Words] = {}
        """The names of the regions; under none that of the total."""
        self.times: dict[Region | None, Words] = {}
        self.shares: dict[Region, Words] = {}
        self.total = Words(bench, mono=True, weight=500, width_for="8192")
        self.keep = CheckBox(bench, "keep")
        self.keep.setAccessibleName(f"{title}, keep the total")
        self.keep.setToolTip("The region behind gives way, and the total stays")
        self.polarities: dict[Polarity, Button] = {}
        self.grid = QGridLayout(self)
        self.grid.addWidget(Words(bench, title, caps=True, role="dim"), 0, 0, 1, 2)
        for column, head in ((2, unit), (3, f"{_TIME_UNIT[direction]}s"), (4, "share")):
            words = Words(bench, head, size=0.86, role="dim")
            self.grid.addWidget(words, 0, column, Qt.AlignmentFlag.AlignRight)
        for row, region in enumerate(_FIELDS, 1):
            self._add_row(row, region)
        self._add_total(len(_FIELDS) + 1)
        self._add_polarity(len(_FIELDS) + 2)
        self.grid.setColumnStretch(1, 1)
        self.grid.setRowStretch(len(_FIELDS) + 3, 1)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_mode(self, mode: Mode) -> None:
        """Show a mode's counts."""
        axis, unit_s = self._axis(mode), self._unit_s(mode)
        for region, field in _FIELDS.items():
            count = getattr(axis, field)
            self.entries[region].show_value(str(count))
            self.times[region].say(self._time(count * unit_s))
            self.shares[region].say(f"{100.0 * count / axis.total:.1f} %")
            self._teach(region, axis)
        self.total.say(str(axis.total))
        self.times[None].say(self._time(axis.total * unit_s))
        for polarity, button in self.polarities.items():
            button.setChecked(polarity is axis.polarity)

    def _teach(self, region: Region, axis: Axis) -> None:
        """Say over a region's name, and by F1 in its field, what it is for."""
        words = region_words(self.direction, region, axis)
        self.names[region].setToolTip(tip_text(*words))
        self.entries[region].setWhatsThis(" ".join(words))

    def _add_row(self, row: int, region: Region) -> None:
        bench = self.bench
        name = f"{_TITLES[self.direction]}, {region.value}"
        entry = Entry(
            bench,
            name,
            lambda text: self._set_count(region, self._read(text)),
            step=lambda steps: self._set_count(region, self._count(region) + steps),
        )
        self.entries[region] = entry
        self.times[region] = Words(bench, mono=True, width_for="00.000")
        self.shares[region] = Words(bench, mono=True, role="dim", width_for="00.0 %")
        self.grid.addWidget(Swatch(bench, region, self.direction), row, 0)
        self.names[region] = Words(bench, region.value)
        self.grid.addWidget(self.names[region], row, 1)
        self.grid.addWidget(entry, row, 2)
        for column, words in ((3, self.times[region]), (4, self.shares[region])):
            words.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            self.grid.addWidget(words, row, column)

    def _add_total(self, row: int) -> None:
        self.times[None] = Words(self.bench, mono=True, weight=500, width_for="00.000")
        self.names[None] = Words(self.bench, "total", weight=500)
        self.names[None].setToolTip(tip_text(TOTAL[self.direction]))
        self.keep.setWhatsThis(f"{self.keep.toolTip()}. {TOTAL[self.direction]}")
        self.grid.addWidget(self.names[None], row, 1)
        for column, words in ((2, self.total), (3, self.times[None])):
            words.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            words.setContentsMargins(0, 0, self.bench.px(9) if column == 2 else 0, 0)
            self.grid.addWidget(words, row, column)
        self.grid.addWidget(self.keep, row, 4, Qt.AlignmentFlag.AlignRight)

    def _add_polarity(self, row: int) -> None:
        self.pulse = Words(self.bench, "sync pulse")
        self.pulse.setToolTip(tip_text(POLARITY))
        self.grid.addWidget(self.pulse, row, 1)
        holder = QWidget()
        line = QHBoxLayout(holder)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(0)
        line.addStretch(1)
        for polarity in (Polarity.NEGATIVE, Polarity.POSITIVE):
            button = Button(self.bench, _WORDS[polarity], ButtonKind.SEGMENT)
            button.setAutoExclusive(True)
            button.setToolTip(tip_text(POLARITY))
            button.setWhatsThis(POLARITY)
            button.setAccessibleName(f"{_TITLES[self.direction]}, {_WORDS[polarity]} sync pulse")
            button.clicked.connect(lambda _checked=False, p=polarity: self._set_polarity(p))
            self.polarities[polarity] = button
            line.addWidget(button)
        self.grid.addWidget(holder, row, 2, 1, 3)

    def _set_count(self, region: Region, count: int) -> None:
        was = self._count(region)
        unit, keep = _COUNTED[self.direction], self.keep.isChecked()
        self.bench.session.apply(
            f"{_TITLES[self.direction]}, {region.value} {was} → {count} {unit}",
            lambda project: _counted(project, self.direction, region, count, keep_total=keep),
            merge=f"count {self.direction.value} {region.value}",
            origin=self,
        )

    def _set_polarity(self, polarity: Polarity) -> None:
        self.bench.apply(
            f"{_TITLES[self.direction]}, {_WORDS[polarity]} sync pulse",
            lambda project: set_polarity(project, self.direction, polarity),
            origin=self,
        )

    def _count(self, region: Region) -> int:
        count: int = getattr(self._axis(self.bench.session.project.mode), _FIELDS[region])
        return count

    def _read(self, text: str) -> int:
        """Take a count, or a time in s, ms, µs or ns."""
        read = read_pixels if self.direction is Direction.HORIZONTAL else read_lines
        return read(self.bench.session.project.mode, text)

    def _axis(self, mode: Mode) -> Axis:
        return mode.h if self.direction is Direction.HORIZONTAL else mode.v

    def _unit_s(self, mode: Mode) -> float:
        return mode.pixel_s if self.direction is Direction.HORIZONTAL else mode.line_s

    def _time(self, seconds: float) -> str:
        return format_fixed(seconds, "s", prefix=_TIME_UNIT[self.direction]).split()[0]

    def _restyle(self) -> None:
        px = self.bench.px
        self.grid.setHorizontalSpacing(px(16))
        self.grid.setContentsMargins(0, 0, 0, 0)
        for entry in self.entries.values():
            entry.setFixedWidth(px(76))
            entry.setFixedHeight(px(28))


class Swatch(QWidget):
    """A small square in the tint of a region, as the frame beside and the plot above have it."""

    def __init__(self, bench: Bench, region: Region, direction: Direction) -> None:
        super().__init__()
        self._bench, self._region, self._direction = bench, region, direction
        bench.theme_changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        return QSize(self._bench.px(14), self._bench.px(14))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, side = self._bench.theme, self._bench.px(14)
        box = QRectF(0, (self.height() - side) / 2, side, side)
        with QPainter(self) as painter:
            fill = region_tint(theme, self._region, self._direction)
            outlined(painter, box, self._bench.px(2), fill, QPen(theme.color("outline"), 1.0))


def _counted(
    project: Project, direction: Direction, region: Region, count: int, *, keep_total: bool
) -> Project:
    """Return the project with one count of an axis changed; the region behind gives way, or nothing does."""
    axis = project.mode.h if direction is Direction.HORIZONTAL else project.mode.v
    field = _FIELDS[region]
    if not keep_total:
        changed: Axis = replace(axis, **{field: count})  # type: ignore[arg-type]
        return set_axis(project, direction, changed)
    bare = replace(axis, border=0)
    moved = move_edge(bare, region, count - getattr(axis, field), keep_total=True)
    if getattr(moved, field) != count:
        most = getattr(move_edge(bare, region, axis.total, keep_total=True), field)
        raise EditError(f"With the total kept, the {region.value} has at most {most}, not {count}.")
    return set_axis(project, direction, replace(moved, border=axis.border))
