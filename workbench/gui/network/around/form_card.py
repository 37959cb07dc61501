"""A card of entries in two columns of rows: caption and field; figures below say what follows."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.network.around.effects import Effects, Figure
from workbench.gui.network.around.live_field import LiveField
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.gui.widgets.card import Card
from workbench.pipeline.result import Result

__all__ = ["FormCard", "Segments"]

FOOT = "in force as it is typed, undo takes it back · Esc closes"
SENTENCE = 540
"""Width of the sentences on a card. [design px]"""


class FormCard(Card):
    """Holds live fields and keeps them in step with the session until it is closed."""

    def __init__(self, bench: Bench, title: str, figures: tuple[Figure, ...], window: QWidget) -> None:
        super().__init__(bench, title, window)
        self.column.setSpacing(bench.px(8))
        self.column.addWidget(Words(bench, title, size=1.1, weight=600))
        self._columns = QHBoxLayout()
        self._columns.setSpacing(bench.px(30))
        self.column.addLayout(self._columns)
        self._grid = self.add_column()
        self.fields: dict[str, LiveField] = {}
        """The fields, by their captions."""
        self.effects = Effects(bench, figures)
        self.said = Words(bench, "", size=0.9, role="fails")
        self.said.wrap(bench.px(SENTENCE))
        self.foot = Words(bench, FOOT, size=0.86, role="dim", elided=True)
        bench.live.result_changed.connect(self.show_result)

    def show_result(self, result: Result) -> None:
        """Show another result, and the values in force."""
        for field in self.fields.values():
            field.show_project(result.project)
        self.effects.show_result(result)

    def add_column(self) -> QGridLayout:
        """Begin another column: what is added next goes there."""
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(self.bench.px(14))
        self._grid.setVerticalSpacing(self.bench.px(5))
        self._columns.addLayout(self._grid)
        self._columns.setAlignment(self._grid, Qt.AlignmentFlag.AlignTop)
        return self._grid

    def add_heading(self, text: str) -> None:
        """Add a line that names the rows below it."""
        words = Words(self.bench, text, weight=600)
        words.setContentsMargins(0, self.bench.px(6), 0, 0)
        self._grid.addWidget(words, self._grid.rowCount(), 0, 1, 2)

    def add_field(self, caption: str, field: LiveField, note: str = "") -> None:
        """Add a row with a field."""
        self.fields[caption] = field
        field.told.connect(self._tell)
        name = field.accessibleName()
        field.echoed.connect(lambda value: self.foot.say(f"{name}: {value} · {FOOT}" if value else FOOT))
        self.add_row(caption, field, note)

    def add_row(self, caption: str, widget: QWidget, note: str = "") -> None:
        """Add a row with any control; the note is its tip."""
        row = self._grid.rowCount()
        words = Words(self.bench, caption, role="dim")
        words.setBuddy(widget)
        self._grid.addWidget(words, row, 0)
        self._grid.addWidget(widget, row, 1, Qt.AlignmentFlag.AlignLeft)
        for each in (words, widget):
            each.setToolTip(note)

    def add_caution(self, text: str) -> None:
        """Add a sentence of what to mind."""
        words = Words(self.bench, text, size=0.9, role="dim")
        words.wrap(self.bench.px(SENTENCE))
        self.column.addWidget(words)

    def finish(self) -> None:
        """Add what stands under all rows: the refusal, the figures, how to leave."""
        self.column.addWidget(self.said)
        self.said.hide()
        self.column.addWidget(Words(self.bench, "What follows", size=0.86, weight=600, role="dim"))
        self.column.addWidget(self.effects)
        self.column.addWidget(self.foot)

    def _tell(self, sentence: str, role: str) -> None:
        self.said.set_role(role or "fails")
        self.said.say(f"{sentence[:1].upper()}{sentence[1:]}")
        self.said.setVisible(bool(sentence))
        self.adjustSize()
        self.stay_inside()


class Segments(QWidget):
    """A row of buttons of which one is chosen."""

    def __init__(
        self, bench: Bench, name: str, words: tuple[str, ...], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(bench.px(2))
        self.buttons = tuple(Button(bench, word, ButtonKind.SEGMENT) for word in words)
        for button in self.buttons:
            button.setAutoExclusive(True)
            button.setAccessibleName(f"{name}: {button.text()}")
            row.addWidget(button)

    def choose(self, number: int) -> None:
        """Show which one is chosen."""
        for place, button in enumerate(self.buttons):
            button.setChecked(place == number)
