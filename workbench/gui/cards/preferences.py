"""The card of preferences: each takes effect at once and is remembered."""

from collections.abc import Callable, Sequence
from enum import Enum

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.circuit.series import Series
from workbench.gui.bench import Bench
from workbench.gui.cards.limit_fields import LimitFields
from workbench.gui.settings import (
    BASE_POINTS,
    DASHED,
    SERIES,
    SYMBOLS,
    THEME,
    Setting,
    Symbols,
)
from workbench.gui.theme import ThemeName
from workbench.gui.widgets import CheckBox, Choice, Words
from workbench.gui.widgets.card import Card
from workbench.project.edits.naming import set_series

__all__ = ["PreferencesCard"]

SIZES = (9.0, 10.5, 12.0, 14.0, 16.0, 18.0)
"""Sizes of ordinary text that are offered. [pt]"""

LIMIT_CAUTION = (
    "Take both from the data sheet of your chip, at your supply voltage, and stay under its absolute "
    "maximum ratings. Backporch knows no chip; what you enter here is checked, nothing else."
)


class PreferencesCard(Card):
    """Shows the choices that are in force."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(bench, "Preferences", parent)
        self.column.addWidget(Words(bench, "Preferences", size=1.1, weight=600))
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(bench.px(20))
        self._grid.setVerticalSpacing(bench.px(8))
        self.column.addLayout(self._grid)
        self.theme = self._choice("theme", THEME, (ThemeName.DUSK, ThemeName.PAPER))
        self.text_size = self._choice("text size", BASE_POINTS, SIZES, lambda size: f"{size:g} pt")
        self.symbols = self._choice("resistors drawn as", SYMBOLS, tuple(Symbols))
        self.dashed = CheckBox(bench, "each trace has a dash of its own", checked=bench.settings.get(DASHED))
        self.dashed.toggled.connect(lambda on: bench.settings.set(DASHED, on))
        self._row("traces", self.dashed)
        self._rule("This project, and new ones")
        self.series = self._choice("values stepped along", SERIES, tuple(Series), _name)
        self.series.set_value(bench.session.project.series.name)
        self.series.chosen.connect(self._set_series)
        self.limits = LimitFields(bench, self)
        self._row("one pin may carry, mA", self.limits.pin)
        self._row("all pins together, mA", self.limits.total)
        self.said = Words(bench, LIMIT_CAUTION, size=0.9, role="dim")
        self.said.wrap(bench.px(430))
        self.column.addWidget(self.said)
        self.limits.told.connect(self._say)

    def _say(self, reason: str) -> None:
        """Say why a limit is not in force; else what to mind."""
        self.said.set_role("text" if reason else "dim")
        self.said.say(reason or LIMIT_CAUTION)

    def _row(self, caption: str, widget: QWidget) -> None:
        row = self._grid.rowCount()
        words = Words(self.bench, caption, role="dim")
        words.setBuddy(widget)
        self._grid.addWidget(words, row, 0)
        self._grid.addWidget(widget, row, 1, Qt.AlignmentFlag.AlignLeft)

    def _rule(self, title: str) -> None:
        words = Words(self.bench, title, weight=600)
        words.setContentsMargins(0, self.bench.px(8), 0, 0)
        self._grid.addWidget(words, self._grid.rowCount(), 0, 1, 2)

    def _choice(
        self,
        caption: str,
        setting: Setting,
        options: Sequence[object],
        words: Callable[[object], str] | None = None,
    ) -> Choice:
        """Add a choice whose options are values of a setting."""
        said = words or _value
        choice = Choice(self.bench, caption, said(self.bench.settings.get(setting)))
        choice.set_caption_shown(shown=False)
        choice.set_options([said(option) for option in options])
        choice.chosen.connect(lambda number: self.bench.settings.set(setting, options[number]))
        choice.chosen.connect(lambda number: choice.set_value(said(options[number])))
        self._row(caption, choice)
        return choice

    def _set_series(self, number: int) -> None:
        series = tuple(Series)[number]
        self.bench.apply(f"Step along {series.name}", lambda project: set_series(project, series))


def _name(option: object) -> str:
    assert isinstance(option, Enum)
    return option.name


def _value(option: object) -> str:
    assert isinstance(option, Enum)
    return str(option.value)
