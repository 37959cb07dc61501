"""What is left for the processor: its cycles in every part of the picture."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.errors import TimingError
from workbench.gui.bench import Bench
from workbench.gui.widgets import Words
from workbench.picture.scene import Picture
from workbench.timing.clock.budget import cycle_budget, whole_line
from workbench.timing.mode import Mode
from workbench.timing.offsets import offset_words
from workbench.units import format_quantity

__all__ = ["CycleTable", "cycle_figures"]

_ROWS = ("pixel", "line", "active", "blanking", "V blanking", "frame")
_THIN = "\u202f"


def cycle_figures(mode: Mode, picture: Picture, cpu_hz: float) -> tuple[str, ...]:
    """Return the figures in the order of the rows; a pixel is one of the picture."""
    budget = cycle_budget(mode, cpu_hz)
    pixel = budget.per_pixel * picture.repeat_pixels * picture.repeat_lines
    parts = (budget.per_line, budget.active, budget.blanking, budget.v_blanking, budget.per_frame)
    return (f"{pixel:.2f}", *(f"{part:,.0f}".replace(",", _THIN) for part in parts))


class CycleTable(QWidget):
    """Shows the cycles of one processor clock in one mode."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Cycles")
        self.grid = QGridLayout(self)
        self.head = Words(bench, "Cycles", caps=True, role="dim")
        self.clock = Words(bench, size=0.9, role="dim")
        self.grid.addWidget(self.head, 0, 0)
        self.grid.addWidget(self.clock, 0, 1, 1, 3, Qt.AlignmentFlag.AlignRight)
        self.figures = [Words(bench, mono=True, width_for=f"00{_THIN}000{_THIN}000") for _ in _ROWS]
        for number, (name, figure) in enumerate(zip(_ROWS, self.figures, strict=True)):
            figure.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            row, column = 1 + number % 3, 2 * (number // 3)
            self.grid.addWidget(Words(bench, name, size=0.95), row, column)
            self.grid.addWidget(figure, row, column + 1)
        self.line = Words(bench, size=0.9, role="dim")
        self.line.setWordWrap(True)
        self.grid.addWidget(self.line, 4, 0, 1, 4)
        self.grid.setColumnStretch(1, 1)
        self.grid.setColumnStretch(3, 1)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_clock(self, mode: Mode, picture: Picture, cpu_hz: float | None) -> None:
        """Show the cycles at a processor's clock; nothing without one."""
        self.setVisible(cpu_hz is not None)
        if cpu_hz is None:
            return
        self.clock.say(f"at {format_quantity(cpu_hz, 'Hz', 6)}")
        for words, figure in zip(self.figures, cycle_figures(mode, picture, cpu_hz), strict=True):
            words.say(figure)
        self.line.say(_line_words(mode, cpu_hz))

    def _restyle(self) -> None:
        px = self.bench.px
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(px(12))
        self.grid.setVerticalSpacing(px(5))


def _line_words(mode: Mode, cpu_hz: float) -> str:
    """Say how near a whole number of cycles comes to a line."""
    try:
        nearest = whole_line(mode, cpu_hz)
    except TimingError as reason:
        return str(reason)
    if abs(nearest.error_ppm) < 0.5:
        return f"A line is {nearest.cycles} whole cycles: sync is steady from this clock."
    return (
        f"A line of {nearest.cycles} whole cycles is {offset_words(nearest.error_ppm)} off: steady sync from "
        "this clock alone."
    )
