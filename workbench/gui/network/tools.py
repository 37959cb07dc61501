"""The row of small buttons under the drawing: what can be done now, to the ladder or the chosen part."""

from collections.abc import Callable

from PySide6.QtGui import QAction, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Button, ButtonKind, Words

__all__ = ["LADDER_TOOLS", "PART_TOOLS", "ToolRow"]

BIT_TOOLS = {"network.add-bit": ("add bit", "+ bit"), "network.remove-bit": ("remove bit", "− bit")}
"""Words of a button, and shorter ones where room is short."""
FITTED_TOOLS = {
    "network.shunt": "shunt",
    "network.series": "output R",
    "network.capacitor": "capacitor",
}
"""Parts there is at most one of: added where there is none, removed where there is one."""
LADDER_TOOLS = (*BIT_TOOLS, *FITTED_TOOLS)
PART_TOOLS = {
    "network.split-series": "in series",
    "network.split-parallel": "in parallel",
    "network.merge": "merge",
    "network.remove-part": "remove",
}
TABLE_WORDS, DRAWING_WORDS = ("as table", "table"), ("as drawing", "drawing")
HEIGHT = 38
CAPTION = 120
"""Most room for the name of the chosen part. [design px]"""
FOLDS, NOUNS, SHORTEST = 4, 2, 3
"""Steps in which words are left out, and from which on only nouns and the shortest words stand. [1]"""


class ToolButton(Button):
    """A quiet button that triggers an action of the command table under a short name."""

    def __init__(self, bench: Bench, action: QAction, words: str, shorter: str = "") -> None:
        super().__init__(bench, words, ButtonKind.QUIET)
        self._action, self._choices = action, (words, shorter or words)
        self.clicked.connect(action.trigger)
        action.changed.connect(self.take)
        self.take()

    def say(self, words: str, shorter: str) -> None:
        """Offer the same under other words."""
        self._choices = words, shorter

    def words(self, fold: int) -> str:
        """Return what stands on it where ``fold`` steps were needed to find room."""
        return self._choices[fold >= SHORTEST]

    def shorten(self, fold: int) -> None:
        """Show the words for so many steps."""
        if (words := self.words(fold)) != self.text():
            self.setText(words)
            self.updateGeometry()

    def take(self) -> None:
        """Follow the action."""
        self.setEnabled(self._action.isEnabled())
        self.setAccessibleName(self._action.text())
        key = self._action.shortcut().toString()
        self.setToolTip(f"{self._action.text()}  {key}".strip())
        if self._action.isCheckable():
            self.setCheckable(True)
            self.setChecked(self._action.isChecked())


class FittedButton(ToolButton):
    """Adds a part, or removes the one there is; its words and a filled or hollow mark say which."""

    def __init__(self, bench: Bench, action: QAction, noun: str, fitted: Callable[[str], str]) -> None:
        self._noun, self._fitted = noun, fitted
        super().__init__(bench, action, noun)

    def words(self, fold: int) -> str:
        part = self._fitted(self._action.objectName())
        if fold >= NOUNS:
            return f"{'●' if part else '○'} {self._noun}"
        return f"● remove {part}" if part else f"○ add {self._noun}"


class ToolRow(QWidget):
    """Offers the ladder's edits, or those of the chosen part, and the table."""

    def __init__(self, bench: Bench, fitted: Callable[[str], str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._fitted = bench, fitted
        self._shown: tuple[str | None, ...] = ()
        self.setMinimumWidth(1)
        self._row = QHBoxLayout(self)
        action = bench.actions.action
        self._caption = Words(bench, "ladder", role="dim", elided=True)
        self._caption.setMaximumWidth(bench.px(CAPTION))
        self._row.addWidget(self._caption)
        self.ladder = [ToolButton(bench, action(name), *words) for name, words in BIT_TOOLS.items()]
        self.ladder += [FittedButton(bench, action(name), n, fitted) for name, n in FITTED_TOOLS.items()]
        self.part = [ToolButton(bench, action(name), words) for name, words in PART_TOOLS.items()]
        for button in (*self.ladder, *self.part):
            self._row.addWidget(button)
        self._row.addStretch(1)
        self.table = ToolButton(bench, action("network.table"), *TABLE_WORDS)
        self._row.addWidget(self.table)
        bench.theme_changed.connect(self._restyle)
        self._restyle()
        self.show_part(None)

    def show_part(self, part: str | None) -> None:
        """Offer what can be done to a part, or to the ladder if none is chosen."""
        shown = (part, *(self._fitted(name) for name in FITTED_TOOLS))
        if shown == self._shown:
            return
        self._shown = shown
        self._caption.say("ladder" if part is None else part)
        for button in self.ladder:
            button.setVisible(part is None)
        for button in self.part:
            button.setVisible(part is not None)
        self._refold()

    def _refold(self) -> None:
        """Leave out step by step what has no room: the caption, verbs that a mark says too, words."""
        px = self._bench.px
        for fold in range(FOLDS):
            side = px(20 if fold < SHORTEST else 6)
            self._row.setContentsMargins(side, px(2), min(side, px(12)), px(2))
            self._caption.setVisible(bool(self._shown and self._shown[0]) or fold < 1)
            for button in (*self.ladder, *self.part, self.table):
                button.shorten(fold)
            self._row.invalidate()
            if self._row.totalSizeHint().width() <= self.width():
                break

    def turn_table(self, *, shown: bool) -> None:
        """Offer the table, or the drawing while the table is shown."""
        self.table.say(*(DRAWING_WORDS if shown else TABLE_WORDS))
        self._refold()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._refold()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        with QPainter(self) as painter:
            painter.setPen(theme.color("hairline"))
            painter.drawLine(px(20), 0, self.width() - px(20), 0)

    def _restyle(self) -> None:
        px = self._bench.px
        self.setFixedHeight(px(HEIGHT))
        self._row.setSpacing(px(2))
        self._refold()
