"""What a monitor sees of the project's mode: the row it takes it for, and what follows."""

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

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
_ROOM_BESIDE = 350
"""Width beside the table from which what follows from a row stands there. [px at 14 px text]"""


class SeenPanel(QWidget):
    """Shows the sightings of one mode; the lit row decides what the strips show."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("What the monitor sees")
        self._mode: Mode | None = None
        self._sightings: tuple[Sighting, ...] = ()
        self._room, self._titled = 0, True
        self.headline = Words(bench, weight=500)
        self.table = FigureTable(bench, "Rows of a monitor's table", COLUMNS)
        self.width_strip = ScreenStrip(bench, "Width of the screen")
        self.black_strip = BlackStrip(bench, "Where black is taken")
        self.said = Words(bench, size=0.9, role="dim")
        self.headline.setWordWrap(True)
        self.said.setWordWrap(True)
        self._title = Words(bench, "What the monitor sees", caps=True, role="dim")
        self._body = QBoxLayout(QBoxLayout.Direction.TopToBottom, self)
        self._upper, self._lower = QVBoxLayout(), QVBoxLayout()
        for half, widgets in (
            (self._upper, (self._title, self.headline, self.table)),
            (self._lower, (self.width_strip, self.black_strip, self.said)),
        ):
            for widget in widgets:
                half.addWidget(widget)
            half.addStretch(1)
            self._body.addLayout(half)
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
        self.fit(self._room, titled=self._titled)

    def fit(self, room: int, *, titled: bool = True) -> None:
        """Show as many rows as leave room for what follows from any it is likely taken for.

        Where there is the width for it, that stands beside the table and not below it.

        Parameters
        ----------
        room : int
            The height there is. [px]
        titled : bool
            Whether the part says what it is; where it is alone a row of names over it does.
        """
        px, directions = self.bench.px, QBoxLayout.Direction
        self._room, self._titled = room, titled
        table = self.table.wanted_width()
        beside = self.width() >= table + px(_ROOM_BESIDE)
        self.table.setMinimumWidth(table if beside else 0)
        self._title.setVisible(titled)
        self._body.setDirection(directions.LeftToRight if beside else directions.TopToBottom)
        for half in range(2):
            self._body.setStretch(half, 1 if beside else half)
        self._body.setSpacing(px(28 if beside else _GAP))
        width = table if beside else self.width() - px(_GAP)
        free = room - self._above(width) - (0 if beside else self._below(width))
        rows = max(_FEW_ROWS, min(_ROWS, free // px(_ROW)))
        self.table.setFixedHeight(px(rows * _ROW + _HEAD))
        self._body.activate()

    def _above(self, width: int) -> int:
        """Return the height of what stands over the table's rows. [px]"""
        title = self._title.height() + self.bench.px(_GAP) if self._titled else 0
        return title + self.headline.heightForWidth(width) + self.bench.px(_HEAD + 2 * _GAP)

    def _below(self, width: int) -> int:
        """Return the height of what follows from a row. [px]"""
        likely = look_alikes(self._sightings) if self._sightings else ()
        said = max((self._height(place_sentences(seen), width) for seen in likely), default=0)
        strips = self.width_strip.sizeHint().height() + self.black_strip.sizeHint().height()
        return strips + said + self.bench.px(3 * _GAP)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.fit(self._room, titled=self._titled)

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
        self._body.setContentsMargins(0, 0, px(8), 0)
        for half in (self._upper, self._lower):
            half.setSpacing(px(_GAP))
