"""Opens the cards that float under the bar: finder, modes, ladder, preferences, keys, cautions, help.

Each is loaded when it is first asked for, so that the start does not wait for it.
"""

from collections.abc import Callable, Iterable, Sequence
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.card import Card
from workbench.gui.widgets.choice_list import Row
from workbench.gui.window.main_window import MainWindow
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.project.edits.timing import set_mode
from workbench.timing.mode import Mode
from workbench.units import format_quantity

if TYPE_CHECKING:
    from workbench.gui.cards.cautions import CautionsCard
    from workbench.gui.cards.finder import Find, Finder, Source
    from workbench.gui.cards.keys import KeysCard
    from workbench.gui.cards.ladder import LadderChooser
    from workbench.gui.cards.modes import ModeChooser
    from workbench.gui.cards.preferences import PreferencesCard

__all__ = ["Cards"]


class Cards(QObject):
    """Makes a card when it is asked for; one is open at a time."""

    def __init__(self, bench: Bench, window: MainWindow, run: Callable[[Project], Result]) -> None:
        super().__init__(window)
        self._bench = bench
        self._window = window
        self._run = run
        self.open_card: Card | None = None
        """The card that is open; none between two."""

    def find(self, text: str = "") -> "Finder":
        """Open the finder over its field."""
        from workbench.gui.cards.finder import Finder

        sources: Sequence[Source] = (self._commands, self._parts, self._modes)
        card = Finder(self._bench, sources, self._window)
        card.search(text)
        self._open(card, self._window.top.bench_row.finder, at_right=True)
        return card

    def choose_mode(self) -> "ModeChooser":
        """Open the list of modes."""
        from workbench.gui.cards.modes import ModeChooser

        card = ModeChooser(self._bench, self._window)
        card.picked.connect(self._take_mode)
        card.customised.connect(self._change_counts)
        card.start()
        self._open(card, self._window.top.bench_row.mode)
        return card

    def make_ladder(self) -> "LadderChooser":
        """Open the making of a ladder."""
        from workbench.gui.cards.ladder import LadderChooser

        card = LadderChooser(self._bench, self._run, self._window)
        card.taken.connect(lambda edit: self._bench.apply("Make a new ladder", edit))
        card.start(self._bench.live.result)
        self._open(card, self._window.top.bench_row.ladder)
        return card

    def preferences(self) -> "PreferencesCard":
        """Open the preferences."""
        from workbench.gui.cards.preferences import PreferencesCard

        card = PreferencesCard(self._bench, self._window)
        self._open(card, self._window.top.bench_row.name)
        return card

    def cautions(self) -> "CautionsCard":
        """Open what to mind."""
        from workbench.gui.cards.cautions import CautionsCard

        card = CautionsCard(self._bench, self._window)
        self._open(card, self._window.top.bench_row.name)
        return card

    def keys(self) -> "KeysCard":
        """Open the list of keys."""
        from workbench.gui.cards.keys import KeysCard

        card = KeysCard(self._bench, self._window)
        card.search()
        self._open(card, self._window.top.bench_row.name)
        return card

    def help(self) -> Card:
        """Explain the page that was opened just now, or else what has the focus."""
        from workbench.gui.cards.help import HelpCard, help_for

        pages = self._window.pages
        focused = pages.looked_at or QApplication.focusWidget()
        if focused is None or focused.window() is not self._window:
            focused = self._window
        card = HelpCard(self._bench, *help_for(focused), self._window)
        self._register(card)
        card.open_beside(focused)
        return card

    def _open(self, card: Card, under: QWidget, *, at_right: bool = False) -> None:
        self._register(card)
        card.open_under(under if under.isVisible() else self._window.top, at_right=at_right)

    def _register(self, card: Card) -> None:
        if self.open_card is not None:
            self.open_card.close()
        self.open_card = card
        card.closed.connect(self._forget)

    def _forget(self) -> None:
        card = self.sender()
        if card is self.open_card:
            self.open_card = None
        if card is not None:
            card.deleteLater()

    def _take_mode(self, row: Row) -> None:
        mode = row.payload
        assert isinstance(mode, Mode)
        self._bench.apply(f"Choose {row.title}", lambda project: set_mode(project, mode))

    def _change_counts(self, row: Row) -> None:
        """Take a mode and go to its counts."""
        self._take_mode(row)
        self._window.pages.open("timing")
        self._window.pages.stack.setFocus()

    def _commands(self, _text: str) -> "Iterable[Find]":
        from workbench.gui.cards.finder import Find

        actions = self._bench.actions
        for spec in actions.specs:
            action = actions.action(spec.id)
            if spec.in_finder:
                why_not = "" if action.isEnabled() else "not now"
                # A panel's key counts while it has the focus; another panel may use it for something else.
                where = f"{spec.group}: " if spec.scope is not None and actions.keys(spec.id) else ""
                keys = f"{where}{actions.keys(spec.id)}"
                yield Find(action.text(), spec.tip, keys, action.trigger, why_not, spec.also)

    def _parts(self, _text: str) -> "Iterable[Find]":
        from workbench.gui.cards.finder import Find

        project = self._bench.session.project
        channels = (self._bench.view.channel,) if project.linked else tuple(Channel)
        for channel in channels:
            for part in project.channels[channel].resistors:
                where = "red, green and blue" if project.linked else channel.value
                value = format_quantity(part.ohms, "Ω")
                yield Find(part.id, f"resistor of {where}", value, self._chooser(channel, part.id))

    def _chooser(self, channel: Channel, part: object) -> Callable[[], None]:
        def choose() -> None:
            self._bench.view.choose_channel(channel)
            self._bench.view.choose(part)  # type: ignore[arg-type]
            self._window.network.setFocus()

        return choose

    def _modes(self, text: str) -> "Iterable[Find]":
        from workbench.gui.cards.finder import Find
        from workbench.gui.cards.mode_rows import mode_rows

        if not any(letter.isdigit() for letter in text):
            return
        for row in mode_rows(text):
            yield Find(
                row.title,
                f"display mode, {row.detail}",
                row.figures,
                partial(self._take_mode, row),
                row.refused,
                also=text,
            )
