"""The card that tells a finding whole, for when the strip has room for one line only."""

from collections.abc import Callable

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QWidget

from workbench.checks import Finding
from workbench.gui.bench import Bench
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.gui.widgets.card import Card

__all__ = ["WhyCard"]

_WIDTH = 520
"""Width of a line of text, where the window has it. [px at 14 px text]"""
_AROUND = 64
"""What the card's margins and the window's edges take of the width. [px at 14 px text]"""


class WhyCard(Card):
    """Shows one Finding: the sentence, why it matters, what to do, by whose word, and the remedy."""

    def __init__(
        self, bench: Bench, finding: Finding, source: str, mend: Callable[[], None], window: QWidget
    ) -> None:
        super().__init__(bench, "Why", window)
        self._mend = mend
        self.headline = self._words(finding.headline, weight=600)
        self.why = self._words(finding.why)
        self.advice = self._words(finding.remedy_text, role="text") if finding.remedy_text else None
        self.source = self._words(source, size=0.86, role="dim")
        self.remedy: Button | None = None
        if finding.remedy is not None:
            self.remedy = Button(bench, finding.remedy.label, ButtonKind.REMEDY)
            self.remedy.clicked.connect(self._take)
            self.column.addWidget(self.remedy, 0, Qt.AlignmentFlag.AlignLeft)
            self.first = self.remedy
        self.setAccessibleDescription(f"{finding.headline} {finding.why} {finding.remedy_text}".strip())
        self.closed.connect(self.deleteLater)

    def open_over(self, widget: QWidget) -> None:
        """Show the card over a widget at the foot of the window."""
        corner = widget.mapTo(self._window, QPoint(0, 0))
        self.open_at(corner - QPoint(0, self._size_for().y() + self.bench.px(6)))

    def _words(self, text: str, *, size: float = 1.0, weight: int = 400, role: str = "text") -> Words:
        words = Words(self.bench, text, size=size, weight=weight, role=role)
        words.wrap(min(self.bench.px(_WIDTH), self._window.width() - self.bench.px(_AROUND)))
        self.column.addWidget(words)
        return words

    def _take(self) -> None:
        self.close()
        self._mend()
