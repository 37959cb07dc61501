"""The card that lists every display mode of the tables, and works others out by formula."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.checks.timing import tube_caution
from workbench.errors import TimingError
from workbench.gui.bench import Bench
from workbench.gui.cards.mode_caution import Caution
from workbench.gui.cards.mode_filters import Filter, favourites, limits_of, monitor_modes, toggle_favourite
from workbench.gui.clock.kept import kept_chip
from workbench.gui.jobs import Job
from workbench.gui.mode_title import mode_title
from workbench.gui.widgets import Button, ButtonKind, Sign
from workbench.gui.widgets.choice_list import Row
from workbench.gui.widgets.search_card import SearchCard
from workbench.timing.clock.reach import within_reach
from workbench.timing.edid.ranges import outside
from workbench.timing.figures import simulable
from workbench.timing.mode import Mode
from workbench.timing.search import find_mode, search
from workbench.timing.standards import KNOWN
from workbench.timing.worked_out import worked_out

__all__ = ["ModeChooser", "chooser_rows", "mode_rows", "why_none"]

CAUTION = "A display that is given rates outside its range may be harmed: look at its manual first."
EMPTY = {
    Filter.FAVOURITES: "No mode is marked yet: stand on one and press Ctrl+D.",
    Filter.MONITOR: "Nothing is known of your monitor: open its EDID on the page Monitor, or enter its "
    "range on the page Timing.",
    Filter.CHIP: "Nothing is known of your chip: enter it on the page Clock, once for every project.",
}
NONE_FITS = "None of these fits what is typed; “All” looks among every mode."


def mode_rows(text: str) -> list[Row]:
    """Return the modes of the tables that fit a search line, the one it names outright first.

    A size and rate that no table holds is worked out by the formulas.
    """
    found = _in_tables(text, KNOWN)
    return [_row(mode) for mode in found or _worked_out(text)]


def chooser_rows(text: str, modes: Sequence[Mode] = KNOWN, marked: Iterable[Mode] = ()) -> list[Row]:
    """Return the rows of the chooser: what fits among some modes, then what the formulas make of it."""
    kept = set(marked)
    whole = modes is KNOWN
    found = [*_in_tables(text, modes), *(_worked_out(text) if whole else ())]
    return [_row(mode, marked=mode in kept) for mode in found]


def _in_tables(text: str, modes: Sequence[Mode]) -> list[Mode]:
    found, named = list(search(text, modes)), _named(text)
    if named is None or named not in modes:
        return found
    return [named, *(mode for mode in found if mode != named)]


def _named(text: str) -> Mode | None:
    """Return the mode of the tables that a text names outright."""
    try:
        return find_mode(text)
    except TimingError:
        return None


def _worked_out(text: str) -> tuple[Mode, ...]:
    """Return what the formulas make of a text; nothing if they can make nothing of it."""
    try:
        return worked_out(text)
    except TimingError:
        return ()


def why_none(text: str) -> str:
    """Return why no table has what is typed and no formula makes it; empty where one does."""
    try:
        worked_out(text)
    except TimingError as reason:
        return str(reason)
    return ""


def _row(mode: Mode, *, marked: bool = False) -> Row:
    refused = "" if simulable(mode) is None else "interlaced: half-line fields are not simulated"
    figures = f"{mode.pixel_clock_hz / 1e6:7.3f} MHz  {mode.line_rate_hz / 1e3:7.3f} kHz"
    detail = f"favourite · {mode.source}" if marked else mode.source
    return Row(mode_title(mode), detail, figures, mode, refused)


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
            width=700,
            most_rows=12,
            placeholder="size, rate, clock or standard: 800 600, close to 25 MHz, 31.5 kHz, 0x04",
        )
        self._filter = Filter.ALL
        self._empty = dict(EMPTY)
        self._reached: tuple[Mode, ...] | None = None
        self._job: Job | None = None
        self.filters = {choice: Button(bench, choice.value, ButtonKind.SEGMENT) for choice in Filter}
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

    def start(self, current: Mode) -> None:
        """List every mode, standing on the one that holds."""
        self.choose(Filter.ALL)
        rows = self._found("")
        at = next((n for n, row in enumerate(rows) if row.payload == current), 0)
        self.search(current=at)

    def choose(self, choice: Filter) -> None:
        """List other modes."""
        self._filter = choice
        for other, button in self.filters.items():
            button.setChecked(other is choice)
        if choice is Filter.CHIP and self._reached is None:
            self._reach()
        self.search(self.field.text())

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
            button.setAutoExclusive(True)
            button.clicked.connect(lambda _checked=False, choice=choice: self.choose(choice))
            row.addWidget(button)
        row.addStretch(1)
        self.column.insertLayout(1, row)

    def _add_foot(self) -> None:
        foot = QHBoxLayout()
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
        modes = self._listed()
        rows = chooser_rows(text, modes, favourites(self.bench.settings))
        if not rows:
            self.say_when_empty(self._why_none(text, modes))
        return rows

    def _listed(self) -> tuple[Mode, ...]:
        """Return the modes that the filter lets through."""
        settings = self.bench.settings
        if self._filter is Filter.FAVOURITES:
            return favourites(settings)
        if self._filter is Filter.MONITOR:
            return monitor_modes(settings, self.bench.session.project.monitor) or ()
        if self._filter is Filter.CHIP:
            return self._reached or ()
        return KNOWN

    def _why_none(self, text: str, modes: Sequence[Mode]) -> str:
        if self._filter is Filter.ALL:
            return why_none(text)
        return NONE_FITS if modes else self._empty[self._filter]

    def _reach(self) -> None:
        """Work out which modes the chip can clock, unless that is being done."""
        chip = kept_chip(self.bench.settings)
        if chip is None or self._job is not None:
            return
        self._empty[Filter.CHIP] = "Trying the settings of your chip …"
        self._job = Job(self.bench, lambda progress: within_reach(KNOWN, chip), self)
        self._job.done.connect(self._on_reached)
        self._job.failed.connect(self._on_refused)
        self._job.start()

    def _on_reached(self, modes: tuple[Mode, ...]) -> None:
        self._end_reaching(modes, "Your chip makes no clock of a known mode to 0.5 % with even pixels.")

    def _on_refused(self, reason: str) -> None:
        self._end_reaching((), reason)

    def _end_reaching(self, modes: tuple[Mode, ...], why_none: str) -> None:
        self._reached = modes
        self._empty[Filter.CHIP] = why_none
        if self._filter is Filter.CHIP:
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
        monitor = self.bench.session.project.monitor
        if mode is None:
            self.caution.tell(CAUTION, Sign.NOTE)
        elif monitor is not None:
            reasons = outside(mode, limits_of(monitor))
            self.caution.tell(
                " ".join(reasons) or "Inside what your monitor takes.",
                Sign.FAILS if reasons else Sign.PASSES,
            )
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


def _is_mark(event: QEvent) -> bool:
    """Tell whether an event is of the key that marks a favourite."""
    control = Qt.KeyboardModifier.ControlModifier
    return isinstance(event, QKeyEvent) and event.key() == Qt.Key.Key_D and bool(event.modifiers() & control)
