"""The row of small buttons under the drawing: what can be done now, to the ladder or the chosen part."""

from collections.abc import Callable

from PySide6.QtGui import QAction, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Button, ButtonKind, Words

__all__ = ["LADDER_TOOLS", "PART_TOOLS", "ToolRow"]

BIT_TOOLS = {"network.add-bit": "add bit", "network.remove-bit": "remove bit"}
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
HEIGHT = 38


class ToolButton(Button):
    """A quiet button that triggers an action of the command table under a short name."""

    def __init__(self, bench: Bench, action: QAction, short: str) -> None:
        super().__init__(bench, short, ButtonKind.QUIET)
        self._action = action
        self.clicked.connect(action.trigger)
        action.changed.connect(self._take)
        self._take()

    def _take(self) -> None:
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

    def _take(self) -> None:
        super()._take()
        part = self._fitted(self._action.objectName())
        words = f"● remove {part}" if part else f"○ add {self._noun}"
        if words != self.text():
            self.setText(words)
            self.updateGeometry()


class ToolRow(QWidget):
    """Offers the ladder's edits, or those of the chosen part, and the table."""

    def __init__(self, bench: Bench, fitted: Callable[[str], str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.setMinimumWidth(1)
        self._row = QHBoxLayout(self)
        action = bench.actions.action
        self._caption = Words(bench, "ladder", role="dim", width_for="split C10")
        self._row.addWidget(self._caption)
        self.ladder = [ToolButton(bench, action(name), short) for name, short in BIT_TOOLS.items()]
        self.ladder += [FittedButton(bench, action(name), n, fitted) for name, n in FITTED_TOOLS.items()]
        self.part = [ToolButton(bench, action(name), short) for name, short in PART_TOOLS.items()]
        for button in (*self.ladder, *self.part):
            self._row.addWidget(button)
        self._row.addStretch(1)
        self.table = ToolButton(bench, action("network.table"), "as table")
        self._row.addWidget(self.table)
        bench.theme_changed.connect(self._restyle)
        self._restyle()
        self.show_part(None)

    def show_part(self, part: str | None) -> None:
        """Offer what can be done to a part, or to the ladder if none is chosen."""
        self._caption.say("ladder" if part is None else part)
        for button in self.ladder:
            button.setVisible(part is None)
        for button in self.part:
            button.setVisible(part is not None)

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        with QPainter(self) as painter:
            painter.setPen(theme.color("hairline"))
            painter.drawLine(px(20), 0, self.width() - px(20), 0)

    def _restyle(self) -> None:
        px = self._bench.px
        self.setFixedHeight(px(HEIGHT))
        self._row.setContentsMargins(px(20), px(2), px(12), px(2))
        self._row.setSpacing(px(2))
