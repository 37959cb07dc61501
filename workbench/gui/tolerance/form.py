"""What varies from board to board, and how many boards are drawn."""

from functools import partial
from itertools import pairwise

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.circuit.bands import Distribution
from workbench.circuit.tolerance.monte_carlo import MAX_BOARDS
from workbench.gui.bench import Bench
from workbench.gui.settings import BOARDS, SEED
from workbench.gui.timing.entry import Entry
from workbench.gui.tolerance.words import count_words, own_tolerance_words, read_count
from workbench.gui.widgets import Choice, Words
from workbench.project.document import Project
from workbench.project.edits.tolerances import Varied, band_of, set_distribution, set_half_width
from workbench.units import format_percent, parse_quantity

__all__ = ["ToleranceForm"]

_NAMES = {Varied.ON_RESISTANCE: "pins’ on-resistance"}
_MOST_SEED = 10**12
_SHAPES = tuple(Distribution)


class ToleranceForm(QWidget):
    """Shows a project's tolerances; each can be typed, its distribution chosen."""

    told = Signal(str)
    """Why a value was refused; empty when all is well."""
    asked = Signal()
    """Other boards are wanted: their number or their seed is another one."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Tolerances")
        self.entries = {varied: self._entry(varied) for varied in Varied}
        self.shapes = {varied: self._shape(varied) for varied in Varied}
        self.boards = Entry(bench, "Number of boards", self._set_boards)
        self.seed = Entry(bench, "Seed", self._set_seed)
        for entry in (*self.entries.values(), self.boards, self.seed):
            entry.told.connect(self.told)
        self._lay_out()
        bench.theme_changed.connect(self._restyle)
        self._restyle()
        self._show_counts()

    def show_project(self, project: Project) -> None:
        """Show a project's tolerances."""
        for varied in Varied:
            band = band_of(project.tolerances, varied)
            none = band.half_width is None or (band.half_width == 0.0 and varied is not Varied.RESISTORS)
            self.entries[varied].show_value("" if none else format_percent(band.half_width or 0.0, 4))
            self.shapes[varied].set_value(band.distribution.value)
        own = own_tolerance_words(project.channels[self.bench.view.channel])
        self.entries[Varied.RESISTORS].setPlaceholderText(own)
        pins = project.driver
        self.entries[Varied.ON_RESISTANCE].setEnabled(bool(pins.high_ohms or pins.low_ohms))
        self.entries[Varied.ON_RESISTANCE].setToolTip(
            "" if pins.high_ohms or pins.low_ohms else "The pins have no on-resistance that could vary."
        )

    def _entry(self, varied: Varied) -> Entry:
        name = f"Tolerance of the {varied.words}"
        return Entry(self.bench, name, partial(self._set_width, varied), placeholder="exact")

    def _shape(self, varied: Varied) -> Choice:
        choice = Choice(self.bench, f"Distribution of the {varied.words}")
        choice.set_caption_shown(shown=False)
        choice.set_options([shape.value for shape in _SHAPES])
        choice.chosen.connect(partial(self._set_shape, varied))
        return choice

    def _lay_out(self) -> None:
        bench = self.bench
        self.grid = QGridLayout(self)
        self.grid.addWidget(Words(bench, "What varies", caps=True, role="dim"), 0, 0, 1, 3)
        for row, varied in enumerate(Varied, 1):
            self.grid.addWidget(Words(bench, _NAMES.get(varied, varied.words)), row, 0)
            self.grid.addWidget(self.entries[varied], row, 1)
            self.grid.addWidget(self.shapes[varied], row, 2)
        for row, (name, entry) in enumerate((("boards", self.boards), ("seed", self.seed)), len(Varied) + 1):
            self.grid.addWidget(Words(bench, name, role="dim"), row, 0)
            self.grid.addWidget(entry, row, 1)
        self._order_by_rows()
        self.grid.setColumnStretch(0, 1)
        self.grid.setRowStretch(len(Varied) + 3, 1)

    def _order_by_rows(self) -> None:
        """Let Tab go as one reads: a tolerance, then its distribution."""
        pairs = [widget for varied in Varied for widget in (self.entries[varied], self.shapes[varied])]
        chain = [*pairs, self.boards, self.seed]
        for before, after in pairwise(chain):
            QWidget.setTabOrder(before, after)

    def _set_width(self, varied: Varied, text: str) -> None:
        half_width = parse_quantity(text.strip().lstrip("±"), "%", zero=True) if text.strip() else None
        shown = "own" if half_width is None else format_percent(half_width, 4)
        self.bench.session.apply(
            f"Tolerance of the {varied.words} {shown}",
            lambda project: set_half_width(project, varied, half_width),
            origin=self,
        )
        self.show_project(self.bench.session.project)

    def _set_shape(self, varied: Varied, number: int) -> None:
        shape = _SHAPES[number]
        self.bench.apply(
            f"Distribution of the {varied.words} {shape.value}",
            lambda project: set_distribution(project, varied, shape),
            origin=self,
        )

    def _set_boards(self, text: str) -> None:
        self.bench.settings.set(BOARDS, float(read_count(text, low=1, high=MAX_BOARDS)))
        self._show_counts()
        self.asked.emit()

    def _set_seed(self, text: str) -> None:
        self.bench.settings.set(SEED, float(read_count(text, low=0, high=_MOST_SEED)))
        self._show_counts()
        self.asked.emit()

    def _show_counts(self) -> None:
        for entry, setting in ((self.boards, BOARDS), (self.seed, SEED)):
            entry.setModified(False)
            entry.show_value(count_words(int(self.bench.settings.get(setting))))

    def _restyle(self) -> None:
        px = self.bench.px
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(px(6))
        self.grid.setVerticalSpacing(px(3))
        for entry in (*self.entries.values(), self.boards, self.seed):
            entry.setFixedSize(px(96), px(27))
            entry.setAlignment(Qt.AlignmentFlag.AlignRight)
