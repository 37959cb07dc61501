"""What a monitor sees of the project's mode: the row it takes it for, and what follows."""

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.monitor.sentences import COLUMNS, headline, place_sentences, seen_rows
from workbench.gui.monitor.strips import BlackStrip, ScreenStrip
from workbench.gui.widgets import Words
from workbench.gui.widgets.figure_table import FigureTable
from workbench.timing.mode import Mode
from workbench.timing.seen_as import Sighting, look_alikes, seen_as

__all__ = ["SeenPanel"]

_ROWS, _FEW_ROWS = 5, 2
"""Rows of the table in sight: all, and where the rest needs the room. [1]"""
_ROW, _HEAD, _GAP = 25, 30, 8
"""Height of a row and of the table's head, and the gap between parts. [px at 14 px text]"""


class SeenPanel(QWidget):
    """Shows the sightings of one mode; the lit row decides what the strips show."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("What the monitor sees")
        self._mode: Mode | None = None
        self._sightings: tuple[Sighting, ...] = ()
        self._room = 0
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
        self._sightings = seen_as(mode)
        self.headline.say(headline(self._sightings))
        self.table.show_rows(seen_rows(self._sightings), current=0)
        self._point(self._sightings[0])
        self.fit(self._room)

    def fit(self, room: int) -> None:
        """Show as many rows as leave room for what follows from any it is likely taken for. [px]"""
        self._room = room
        px, width = self.bench.px, self.width() - self.bench.px(_GAP)
        likely = look_alikes(self._sightings) if self._sightings else ()
        said = max((self._height(place_sentences(seen), width) for seen in likely), default=0)
        parts = (
            self._title.height(),
            self.headline.heightForWidth(width),
            px(_HEAD),
            self.width_strip.sizeHint().height(),
            self.black_strip.sizeHint().height(),
            said,
        )
        free = room - sum(parts) - px(_GAP) * len(parts)
        rows = max(_FEW_ROWS, min(_ROWS, free // px(_ROW)))
        self.table.setFixedHeight(px(rows * _ROW + _HEAD))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.fit(self._room)

    def _height(self, sentences: tuple[str, ...], width: int) -> int:
        """Return how high sentences are, a paragraph each, in lines of a width. [px]"""
        box, wrap = QRect(0, 0, max(1, width), 10_000), int(Qt.TextFlag.TextWordWrap)
        metrics = self.said.fontMetrics()
        return sum(metrics.boundingRect(box, wrap, words).height() for words in sentences)

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
        self._column.setSpacing(px(_GAP))
