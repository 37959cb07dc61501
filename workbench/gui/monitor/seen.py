"""What a monitor sees of the project's mode: the row it takes it for, and what follows."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.monitor.sentences import COLUMNS, headline, place_sentences, seen_rows
from workbench.gui.monitor.strips import BlackStrip, ScreenStrip
from workbench.gui.widgets import Words
from workbench.gui.widgets.figure_table import FigureTable
from workbench.timing.mode import Mode
from workbench.timing.seen_as import Sighting, seen_as

__all__ = ["SeenPanel"]

_ROWS, _FEW_ROWS = 5, 2
"""Rows of the table in sight. [1]"""
_ROOM_FOR_ROWS = 350
"""Height from which all rows and both strips have room. [px at 14 px text]"""


class SeenPanel(QWidget):
    """Shows the sightings of one mode; the lit row decides what the strips show."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("What the monitor sees")
        self._mode: Mode | None = None
        self.headline = Words(bench, weight=500)
        self.table = FigureTable(bench, "Rows of a monitor's table", COLUMNS)
        self.width_strip = ScreenStrip(bench, "Width of the screen")
        self.black_strip = BlackStrip(bench, "Where black is taken")
        self.said = Words(bench, size=0.9, role="dim")
        self.headline.setWordWrap(True)
        self.said.setWordWrap(True)
        self._column = QVBoxLayout(self)
        self._title = Words(bench, "What the monitor sees", caps=True, role="dim")
        self._column.addWidget(self._title)
        self._column.addWidget(self.headline)
        self._column.addWidget(self.table)
        self._column.addWidget(self.width_strip)
        self._column.addWidget(self.black_strip)
        self._column.addWidget(self.said)
        self._column.addStretch(1)
        self.table.pointed.connect(self._point)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_mode(self, mode: Mode) -> None:
        """Show what a mode is taken for."""
        if mode is self._mode:
            return
        self._mode = mode
        sightings = seen_as(mode)
        self.headline.say(headline(sightings))
        self.table.show_rows(seen_rows(sightings), current=0)
        self._point(sightings[0])

    def fit(self, height: int) -> None:
        """Show as many rows as leave room for what follows from them. [px]"""
        px = self.bench.px
        rows = _ROWS if height >= px(_ROOM_FOR_ROWS) else _FEW_ROWS
        self.table.setFixedHeight(px(rows * 25 + 30))

    def _point(self, seen: object) -> None:
        if isinstance(seen, Sighting):
            self.width_strip.show_sighting(seen)
            self.black_strip.show_sighting(seen)
            self.said.say("\n".join(place_sentences(seen)))

    def _restyle(self) -> None:
        px = self.bench.px
        # As high as the buttons in the head beside it, so that the heads share a line.
        self._title.setFixedHeight(px(30))
        self._column.setContentsMargins(0, 0, px(8), 0)
        self._column.setSpacing(px(8))
