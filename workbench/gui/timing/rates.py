"""The pixel clock in a field, and the rates that follow from it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.timing.entry import Entry
from workbench.gui.widgets import Words
from workbench.project.edits.timing import set_pixel_clock
from workbench.timing.mode import Mode
from workbench.units import format_fixed, format_quantity, parse_quantity

__all__ = ["Rates"]


class Rates(QWidget):
    """Shows a mode's clock and rates; another clock makes the mode one's own."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Rates")
        self.clock = Entry(bench, "Pixel clock", self._set_clock)
        self.figures = [(Words(bench, mono=True, weight=500), Words(bench, mono=True)) for _ in range(3)]
        self.source = Words(bench, size=0.86, role="dim")
        self.grid = QGridLayout(self)
        self.grid.addWidget(Words(bench, "Rates", caps=True, role="dim"), 0, 0)
        self.grid.addWidget(self.source, 0, 1, 1, 2, Qt.AlignmentFlag.AlignRight)
        for row, name in enumerate(("pixel", "line", "frame"), 1):
            rate, length = self.figures[row - 1]
            self.grid.addWidget(Words(bench, name), row, 0)
            self.grid.addWidget(self.clock if row == 1 else rate, row, 1)
            self.grid.addWidget(length, row, 2)
            for words in (rate, length):
                words.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.grid.setColumnStretch(0, 1)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_mode(self, mode: Mode) -> None:
        """Show a mode's rates."""
        self.clock.show_value(format_quantity(mode.pixel_clock_hz, "Hz", 10))
        self.source.say(f"{mode.name} · {mode.source}")
        rates = (mode.pixel_clock_hz, mode.line_rate_hz, mode.frame_rate_hz)
        lengths = (
            format_fixed(mode.pixel_s, "s", prefix="n", decimals=2),
            format_fixed(mode.line_s, "s", prefix="µ"),
            format_fixed(mode.frame_s, "s", prefix="m"),
        )
        for (rate, length), hz, text in zip(self.figures, rates, lengths, strict=True):
            rate.say(format_quantity(hz, "Hz", 6))
            length.say(text)

    def _set_clock(self, text: str) -> None:
        hz = round(parse_quantity(text, "Hz"))
        shown = format_quantity(hz, "Hz", 10)
        self.bench.session.apply(
            f"Pixel clock {shown}", lambda project: set_pixel_clock(project, hz), origin=self
        )

    def _restyle(self) -> None:
        px = self.bench.px
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(px(16))
        self.clock.setFixedWidth(px(136))
        self.clock.setFixedHeight(px(28))
