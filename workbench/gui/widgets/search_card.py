"""A card with a field and a list: type a few letters, pick with Enter."""

from collections.abc import Callable, Sequence
from math import ceil

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.card import EDGE, Card
from workbench.gui.widgets.choice_list import ChoiceList, Row
from workbench.gui.widgets.field import Field
from workbench.gui.widgets.words import Words

__all__ = ["SearchCard"]

ROW = 30
"""Height of a row. [design px]"""
STEPS = {
    Qt.Key.Key_Down: 1,
    Qt.Key.Key_Up: -1,
    Qt.Key.Key_PageDown: 9,
    Qt.Key.Key_PageUp: -9,
}


class SearchCard(Card):
    """Shows the rows that ``rows_for`` finds for what is typed."""

    picked = Signal(object)
    """The row that was picked; the card has closed."""

    def __init__(
        self,
        bench: Bench,
        name: str,
        rows_for: Callable[[str], Sequence[Row]],
        parent: QWidget,
        *,
        width: int = 640,
        most_rows: int = 13,
        placeholder: str = "",
        hint: str = "",
    ) -> None:
        super().__init__(bench, name, parent)
        self._most_rows = most_rows
        self.setFixedWidth(min(bench.px(width), parent.width() - 2 * bench.px(EDGE)))
        self._rows_for = rows_for
        self.field = Field(bench, name, placeholder=placeholder)
        self.first = self.field
        self.list = ChoiceList(bench, f"{name}: what was found")
        self.column.addWidget(self.field)
        self.column.addWidget(self.list)
        self.empty = Words(bench, "Nothing here has that name.", role="dim")
        self.empty.wrap(bench.px(420))
        self.column.addWidget(self.empty)
        if hint:
            self.column.addWidget(Words(bench, hint, size=0.86, role="dim"))
        self.field.textChanged.connect(self._search)
        self.field.installEventFilter(self)
        self.list.picked.connect(self._take)
        self.list.refused.connect(lambda reason: bench.notice(reason, warning=True))

    def search(self, text: str = "", *, current: int | None = None) -> None:
        """Start with a text; ``current`` is the row to stand on, if another than usual."""
        self.field.setText(text)
        self._search(text, current=current)

    def fit(self, width: int, height: int) -> None:
        """Show fewer rows at once where the window is low."""
        excess = self._size_for().y() - height
        if excess > 0:
            self._most_rows = max(3, self._most_rows - ceil(excess / self.bench.px(ROW)))
            self._size_list(self.list.model().rowCount())
        super().fit(width, height)

    def say_when_empty(self, text: str) -> None:
        """Say something of its own when nothing is found."""
        self.empty.say(text)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self.field and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            key = Qt.Key(event.key())
            if key in STEPS:
                self.list.step(STEPS[key])
                return True
            if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                self.list.pick_current()
                return True
        return super().eventFilter(watched, event)

    def place_to_stand(self, _rows: Sequence[Row], _text: str) -> int:
        """Return the row to stand on first; below 0 for none. [1]"""
        return 0

    def _search(self, text: str, *, current: int | None = None) -> None:
        rows = self._rows_for(text)
        self.list.show_rows(rows, current=self.place_to_stand(rows, text) if current is None else current)
        self._size_list(len(rows))
        self.list.setVisible(bool(rows))
        self.empty.setVisible(not rows)
        self.adjustSize()

    def _size_list(self, rows: int) -> None:
        self.list.setFixedHeight(self.bench.px(ROW) * min(rows, self._most_rows))

    def _take(self, row: Row) -> None:
        self.close()
        self.picked.emit(row)
