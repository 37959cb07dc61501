"""What the drawer has to say of a text: a reason, a question, or the rows that were left out."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Button, ButtonKind, Sign, Words
from workbench.gui.widgets.card import Card
from workbench.gui.widgets.said import Said

__all__ = ["LeftOutCard", "Told"]

LINE = 460
"""Width of a sentence on the card. [design px]"""
FOOT = "The other rows are in the drawer. Mend these where they come from, and paste them. Esc closes this."


class Told(QWidget):
    """Says one thing, of many rows how many; it goes when it is hidden or out of date."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._rows: tuple[str, ...] = ()
        self.said = Said(bench, size=0.9)
        self.which = Button(bench, "Which …", ButtonKind.QUIET)
        self.hide_it = Button(bench, "Hide", ButtonKind.QUIET)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(bench.px(6))
        row.addWidget(self.said, 1)
        row.addWidget(self.which)
        row.addWidget(self.hide_it)
        self.which.clicked.connect(self._open)
        self.hide_it.clicked.connect(self.clear)
        self.clear()

    @property
    def text(self) -> str:
        """What is said now."""
        return self.said.text()

    def clear(self) -> None:
        """Say nothing."""
        self.tell(None, "")

    def tell(self, sign: Sign | None, sentence: str) -> None:
        """Say one sentence."""
        self._rows = ()
        self._show(sign, _sentence(sentence))

    def tell_left_out(self, rows: tuple[str, ...]) -> None:
        """Say which rows of a table were left out and why: one in full, more by their number."""
        if len(rows) < 2:
            self.tell(Sign.WARNS if rows else None, "".join(rows))
            return
        self._rows = tuple(map(_sentence, rows))
        self._show(Sign.WARNS, f"{len(rows)} rows are left out.")

    def _show(self, sign: Sign | None, sentence: str) -> None:
        self.said.tell(sign, sentence)
        self.which.setVisible(bool(self._rows))
        self.setVisible(bool(sentence))

    def _open(self) -> None:
        card = LeftOutCard(self._bench, self._rows, self.window())
        card.closed.connect(card.deleteLater)
        card.open_under(self.which)


class LeftOutCard(Card):
    """Lists the rows that were left out, each with its reason."""

    def __init__(self, bench: Bench, rows: tuple[str, ...], window: QWidget) -> None:
        super().__init__(bench, "Rows left out", window)
        self.column.addWidget(Words(bench, "Rows left out", weight=600))
        self.list = Words(bench, "\n".join(rows), size=0.95)
        foot = Words(bench, FOOT, size=0.86, role="dim")
        for words in (self.list, foot):
            words.wrap(bench.px(LINE))
            self.column.addWidget(words)


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}{'' if not text or text.endswith(('.', '?')) else '.'}"
