"""The form in which a chip is entered, once."""

from dataclasses import replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.clock.kept import ChipText
from workbench.gui.timing.entry import Entry
from workbench.gui.timing.page import Refusal
from workbench.gui.widgets import Words
from workbench.units import parse_quantity

__all__ = ["EXAMPLE", "ChipForm"]

EXAMPLE = ChipText("10M", "20..100", "1..8", "200M..900M", "150M", "8")
"""A chip of our own making, with round numbers, to start from."""

_REASON = 240
"""Width of the reason under a field. [px at 14 px text]"""
_ROWS = (
    ("reference", "reference", "Reference clock"),
    ("multiply", "× multiply", "Multiply range"),
    ("oscillator", "oscillator", "Range of the oscillator"),
    ("divide", "÷ divide", "Ranges of the dividers"),
    ("max_system", "system up to", "Highest system clock"),
    ("fraction", "fraction bits", "Fractional bits of the pixel divider"),
    ("processor", "processor", "Processor clock"),
)


_WIDTH, _PROJECTED = 150, 112
"""Width of the fields. [px at 14 px text]"""


class ChipForm(QWidget):
    """Shows what was typed of the chip; a value that cannot be is refused in its field."""

    changed = Signal(object)
    """The :class:`ChipText` after an entry."""
    refused = Signal()
    """A value was refused; why stands under its field."""

    def __init__(self, bench: Bench, text: ChipText, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.text = text
        self.setAccessibleName("Chip")
        self.entries: dict[str, Entry] = {}
        self.refusal = Refusal(bench)
        self.grid = QGridLayout(self)
        self.grid.addWidget(Words(bench, "Your chip", caps=True, role="dim"), 0, 0)
        self.note = Words(bench, "kept for every project", size=0.86, role="dim")
        self.grid.addWidget(self.note, 0, 1, Qt.AlignmentFlag.AlignRight)
        for row, (field, words, name) in enumerate(_ROWS, 1):
            # Between two fields there is a row for what is said of the upper one.
            self._add_row(2 * row, field, words, name)
        self.grid.setRowStretch(2 * len(_ROWS) + 2, 1)
        self.grid.addWidget(self.refusal, 2 * len(_ROWS) + 1, 0, 1, 2)
        self.refusal.hide()
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def start_from(self, text: ChipText) -> None:
        """Put a whole chip in, to be changed from there."""
        self.text = text
        for field, entry in self.entries.items():
            entry.setModified(False)
            entry.show_value(getattr(text, field))
            entry.set_state("")
        self._refuse("", "")
        self.changed.emit(text)

    def _add_row(self, row: int, field: str, words: str, name: str) -> None:
        example = getattr(EXAMPLE, field)
        entry = Entry(
            self.bench,
            name,
            lambda text: self._take(field, text),
            placeholder=f"e.g. {example}" if example else "as system",
        )
        entry.show_value(getattr(self.text, field))
        entry.told.connect(lambda reason: self._refuse(field, reason))
        self.entries[field] = entry
        self.grid.addWidget(Words(self.bench, words), row, 0)
        self.grid.addWidget(entry, row, 1)

    def _refuse(self, field: str, reason: str) -> None:
        """Say under a field why its value is refused; nothing where all is well."""
        self.refusal.tell(reason)
        self.refusal.setVisible(bool(reason))
        if reason:
            under = 2 * list(self.entries).index(field) + 3
            self.grid.addWidget(self.refusal, under, 0, 1, 2)
            self.refused.emit()

    def _take(self, field: str, typed: str) -> None:
        """Keep a text if the chip can be read with it, or is not whole yet."""
        text = replace(self.text, **{field: typed.strip()})
        if field == "processor" and typed.strip():
            parse_quantity(typed, "Hz")
        if text.reference and text.multiply and text.max_system:
            text.chip()
        self.text = text
        self.entries[field].show_value(typed.strip())
        self.changed.emit(text)

    def _restyle(self) -> None:
        px = self.bench.px
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(px(12))
        self.grid.setVerticalSpacing(px(5))
        self.refusal.wrap(px(_REASON))
        # On a projector the plans need the width.
        self.note.setVisible(not self.bench.projecting)
        for entry in self.entries.values():
            entry.setFixedWidth(px(_PROJECTED if self.bench.projecting else _WIDTH))
            entry.setFixedHeight(px(28))
