"""The card that lists every display mode of the tables, and works others out by formula."""

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import QEvent, QObject, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from workbench.checks.timing import tube_caution
from workbench.gui.bench import Bench
from workbench.gui.cards.mode_caution import Caution
from workbench.gui.cards.mode_filters import (
    Filter,
    favourites,
    known_limits,
    monitor_modes,
    own_modes,
    toggle_favourite,
)
from workbench.gui.cards.mode_rows import HEADS, chooser_rows, place_to_stand, why_none
from workbench.gui.clock.kept import kept_chip
from workbench.gui.jobs import Job
from workbench.gui.widgets import Button, ButtonKind, CheckBox, Sign, draw_text
from workbench.gui.widgets.choice_list import ChoiceList, Row
from workbench.gui.widgets.search_card import SearchCard
from workbench.timing.clock.reach import within_reach
from workbench.timing.edid.ranges import outside
from workbench.timing.edid.values import Limits
from workbench.timing.figures import simulable
from workbench.timing.mode import Mode
from workbench.timing.standards import KNOWN

__all__ = ["ModeChooser"]

CAUTION = "A display that is given rates outside its range may be harmed: look at its manual first."
EMPTY = {
    Filter.FAVOURITES: "No mode is marked yet: stand on one and press Ctrl+D.",
    Filter.MONITOR: "Nothing is known of your monitor: open its EDID on the page Monitor, or enter its "
    "range on the page Timing.",
    Filter.CHIP: "Nothing is known of your chip: enter it on the page Clock, once for every project.",
}
NONE_FITS = "None of these fits what is typed; without the ticks “All” looks among every mode."
NONE_SUITS_BOTH = "No mode listed is both inside what your monitor takes and one your chip clocks."
NONE_SUITS = {
    Filter.MONITOR: "Your monitor takes none of these modes.",
    Filter.CHIP: "Your chip clocks none of these modes to 0.5 % with even pixels.",
}
_NARROW = 700
"""Width under which the caution has a line of its own, as on a projector. [px at 14 px text]"""
_TICKS = (Filter.MONITOR, Filter.CHIP)


class ModeChooser(SearchCard):
    """Lists the modes; picking one is the project's next mode."""

    customised = Signal(object)
    """A row whose counts the person wants to change; the card has closed."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(
            bench,
            "Find a display mode",
            self._found,
            parent,
            width=860,
            most_rows=12,
            placeholder="size, rate, clock or standard: 800 600, close to 25 MHz, 31.5 kHz, 0x04",
        )
        self._base = Filter.ALL
        self._empty = dict(EMPTY)
        self._reached: frozenset[Mode] | None = None
        self._job: Job | None = None
        self.filters: dict[Filter, Button | CheckBox] = {
            choice: CheckBox(bench, choice.value)
            if choice in _TICKS
            else Button(bench, choice.value, ButtonKind.SEGMENT)
            for choice in Filter
        }
        self.heads = Heads(bench, self.list)
        self.caution = Caution(bench)
        self.mark = Button(bench, "Mark as favourite", ButtonKind.QUIET)
        self.change = Button(bench, "Change its counts", ButtonKind.USUAL)
        self._add_filters()
        self._add_foot()
        self.list.selectionModel().currentChanged.connect(lambda now, _before: self._stand_on(now.row()))
        self.list.model().modelReset.connect(lambda: self._stand_on(-1))

    @property
    def current(self) -> Row | None:
        """The row that is stood on; none for no row."""
        return self.list.current

    def start(self) -> None:
        """List every mode, standing on the one in force or the nearest of its size."""
        self.choose(Filter.ALL)

    def choose(self, choice: Filter) -> None:
        """List all modes or the favourites; the ticks leave of them what monitor and chip can do."""
        self._base = choice
        self.filters[choice].setChecked(True)
        self.search(self.field.text())

    def place_to_stand(self, rows: Sequence[Row], text: str) -> int:
        narrowed = self._base is Filter.FAVOURITES or any(map(self._ticked, _TICKS))
        return place_to_stand(rows, text, self.bench.session.project.mode, narrowed=narrowed)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if _is_mark(event):
            self._toggle_mark()
            return
        super().keyPressEvent(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        # Where a desktop has Ctrl+D delete a letter, the field would take it.
        if watched is self.field and _is_mark(event):
            if event.type() == QEvent.Type.KeyPress:
                self._toggle_mark()
            return True
        return super().eventFilter(watched, event)

    def hideEvent(self, event: QHideEvent) -> None:
        if self._job is not None:
            self._job.cancel()
        super().hideEvent(event)

    def _add_filters(self) -> None:
        row = QHBoxLayout()
        row.setSpacing(self.bench.px(4))
        for choice, button in self.filters.items():
            if choice in _TICKS:
                row.addSpacing(self.bench.px(16))
                button.toggled.connect(lambda _ticked, choice=choice: self._tick(choice))
            else:
                button.setAutoExclusive(True)
                button.clicked.connect(lambda _checked=False, choice=choice: self.choose(choice))
            row.addWidget(button)
        row.addStretch(1)
        self.column.insertLayout(1, row)
        self.column.insertWidget(2, self.heads)

    def _tick(self, choice: Filter) -> None:
        """Leave of what is listed what the monitor takes, the chip clocks, or both."""
        if choice is Filter.CHIP:
            self._reached = None
            if self._ticked(choice):
                self._reach()
        self.search(self.field.text())

    def _ticked(self, choice: Filter) -> bool:
        return self.filters[choice].isChecked()

    def _add_foot(self) -> None:
        foot = QHBoxLayout()
        if self.maximumWidth() < self.bench.px(_NARROW):
            self.column.addWidget(self.caution)
            foot.addStretch(1)
        else:
            foot.addWidget(self.caution, 1)
        foot.addWidget(self.mark)
        foot.addWidget(self.change)
        self.mark.setToolTip("Ctrl+D")
        self.mark.clicked.connect(self._toggle_mark)
        self.change.clicked.connect(self._customise)
        self.column.addLayout(foot)
        order = (self.field, *self.filters.values(), self.list, self.mark, self.change)
        for before, after in pairwise(order):
            QWidget.setTabOrder(before, after)

    def _found(self, text: str) -> list[Row]:
        modes, settings = self._listed(), self.bench.settings
        rows = chooser_rows(text, modes, favourites(settings), self._limits())
        self.heads.setVisible(bool(rows))
        if not rows:
            self.say_when_empty(self._why_none(text, modes))
        return rows

    def _limits(self) -> Limits | None:
        return known_limits(self.bench.settings, self.bench.session.project.monitor)

    def _listed(self) -> tuple[Mode, ...]:
        """Return the modes that button and ticks let through."""
        settings = self.bench.settings
        modes = favourites(settings) if self._base is Filter.FAVOURITES else KNOWN
        if self._ticked(Filter.MONITOR):
            modes = monitor_modes(settings, self.bench.session.project.monitor, modes) or ()
        if self._ticked(Filter.CHIP):
            reached = self._reached or frozenset()
            modes = tuple(mode for mode in modes if mode in reached)
        return modes

    def _why_none(self, text: str, modes: Sequence[Mode]) -> str:
        """Say why the list is empty: what is not known yet, what nothing suits, or what is typed."""
        ticks = [choice for choice in _TICKS if self._ticked(choice)]
        if modes and (ticks or self._base is Filter.FAVOURITES):
            return NONE_FITS
        settings, monitor = self.bench.settings, self.bench.session.project.monitor
        if Filter.MONITOR in ticks and monitor_modes(settings, monitor) is None:
            return self._empty[Filter.MONITOR]
        if Filter.CHIP in ticks and not self._reached:
            return self._empty[Filter.CHIP]
        if self._base is Filter.FAVOURITES and not favourites(settings):
            return self._empty[Filter.FAVOURITES]
        if ticks:
            return NONE_SUITS_BOTH if len(ticks) == len(_TICKS) else NONE_SUITS[ticks[0]]
        return why_none(text)

    def _reach(self) -> None:
        """Work out which modes the chip can clock, unless that is being done."""
        chip = kept_chip(self.bench.settings)
        if chip is None or self._job is not None:
            return
        settings = self.bench.settings
        modes = (*KNOWN, *favourites(settings), *own_modes(settings))
        self._empty[Filter.CHIP] = "Trying the settings of your chip …"
        self._job = Job(self.bench, lambda progress: within_reach(modes, chip), self)
        self._job.done.connect(self._on_reached)
        self._job.failed.connect(self._on_refused)
        self._job.start()

    def _on_reached(self, modes: tuple[Mode, ...]) -> None:
        self._end_reaching(modes, "Your chip makes no clock of a known mode to 0.5 % with even pixels.")

    def _on_refused(self, reason: str) -> None:
        self._end_reaching((), reason)

    def _end_reaching(self, modes: tuple[Mode, ...], why_none: str) -> None:
        self._reached = frozenset(modes)
        self._empty[Filter.CHIP] = why_none
        self._job = None
        if self._ticked(Filter.CHIP):
            self.search(self.field.text())

    def _stand_on(self, _row: int) -> None:
        payload = self.current.payload if self.current else None
        mode = payload if isinstance(payload, Mode) else None
        self.mark.setEnabled(mode is not None)
        self.change.setEnabled(mode is not None and not mode.interlaced)
        if mode is not None:
            marked = mode in favourites(self.bench.settings)
            self.mark.setText("Take the mark off" if marked else "Mark as favourite")
            self.mark.updateGeometry()
        self._say_caution(mode)

    def _say_caution(self, mode: Mode | None) -> None:
        limits = self._limits()
        if mode is None:
            self.caution.tell(CAUTION, Sign.NOTE)
        elif limits is not None and (reasons := outside(mode, limits)):
            self.caution.tell(" ".join(reasons), Sign.FAILS)
        elif reason := simulable(mode):
            self.caution.tell(reason, Sign.NOTE)
        elif limits is not None:
            self.caution.tell("Inside what your monitor takes.", Sign.PASSES)
        elif words := tube_caution(mode):
            self.caution.tell(f"{words} Look at its manual first.", Sign.WARNS)
        else:
            self.caution.tell(CAUTION, Sign.NOTE)

    def _toggle_mark(self) -> None:
        row = self.current
        if row is None or not isinstance(row.payload, Mode):
            return
        at = self.list.currentIndex().row()
        toggle_favourite(self.bench.settings, row.payload)
        self.search(self.field.text(), current=at)

    def _customise(self) -> None:
        row = self.current
        if row is not None and not row.refused:
            self.close()
            self.customised.emit(row)


class Heads(QWidget):
    """What the figures of a ChoiceList are, over them."""

    def __init__(self, bench: Bench, of: ChoiceList) -> None:
        super().__init__()
        self._bench, self._of = bench, of
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(self._bench.px(200), self._bench.px(16))

    def paintEvent(self, _event: QPaintEvent) -> None:
        px = self._bench.px
        box = QRectF(0, 0, self._of.viewport().width() - px(14), self.height())
        with QPainter(self) as painter:
            ink = self._bench.theme.color("dim")
            draw_text(painter, box, HEADS, self._bench.type.mono(0.9), ink, align=Qt.AlignmentFlag.AlignRight)


def _is_mark(event: QEvent) -> bool:
    """Tell whether an event is of the key that marks a favourite."""
    control = Qt.KeyboardModifier.ControlModifier
    return isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_D and bool(event.modifiers() & control)
