"""The headline of a finding: as much of it as has room and still is a sentence, told whole in its tip."""

import re
from collections.abc import Callable

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Control, draw_text

__all__ = ["Sentence", "fitting_lines", "shortened"]


def shortened(text: str) -> list[str]:
    """Return a sentence and its shorter forms: without what explains it after a colon or a comma.

    >>> shortened("Three values are not made in E24: R1 500 Ω, R4 4 kΩ.")
    ['Three values are not made in E24: R1 500 Ω, R4 4 kΩ.', 'Three values are not made in E24.']
    """
    forms = [text]
    for mark in (": ", "; ", ", "):
        head, found, _ = forms[-1].partition(mark)
        if found:
            forms.append(f"{head}.")
    return forms


def fitting_lines(text: str, width: float, lines: int, measure: Callable[[str], float]) -> list[str]:
    """Return the longest form of a sentence that has room, in lines; the shortest one if none has.

    Parameters
    ----------
    width : float
        Room of a line. [px]
    lines : int
        How many lines there are at most.
    measure : callable
        Returns how wide a text is. [px]
    """
    broken = [_broken(form, width, measure) for form in shortened(text)]
    found = next((made for made in broken if len(made) <= lines), None)
    if found is not None and all(measure(line) <= width for line in found):
        return found
    shortest = broken[-1]
    return [*shortest[: lines - 1], " ".join(shortest[lines - 1 :])]


def _broken(text: str, width: float, measure: Callable[[str], float]) -> list[str]:
    made = [""]
    # No line ends in a number: its unit, or the value of its part, stands beside it.
    for word in re.split(r"(?<!\d) ", text):
        longer = f"{made[-1]} {word}".strip()
        if made[-1] and measure(longer) > width:
            made.append(word)
        else:
            made[-1] = longer
    return made


class Sentence(Control):
    """The headline of a finding; its tip tells the finding whole."""

    def __init__(self, bench: Bench, *, size: float, weight: int, parent: QWidget | None = None) -> None:
        super().__init__(bench, "", parent)
        self._size, self._weight, self._lines = size, weight, 1

    def say(self, text: str, *, tip: str = "") -> None:
        """Show another sentence."""
        if text != self.text():
            self.setText(text)
        self.setToolTip(tip or text)
        self.update()

    def set_size(self, size: float, weight: int, *, lines: int = 1) -> None:
        """Take another size and weight, and room for so many lines."""
        self._size, self._weight, self._lines = size, weight, lines
        self.update()

    def shown_lines(self) -> list[str]:
        """Return what is said in the room there is."""
        return fitting_lines(self.text(), self.width(), self._lines, self._metrics.horizontalAdvance)

    @property
    def least_width(self) -> float:
        """Width of the shortest form of what is said. [px]"""
        return min(self._metrics.horizontalAdvance(form) for form in shortened(self.text()))

    @property
    def _metrics(self) -> QFontMetricsF:
        return QFontMetricsF(self.bench.type.sans(self._size, self._weight))

    def sizeHint(self) -> QSize:
        metrics = self._metrics
        width = round(metrics.horizontalAdvance(self.text())) + 2
        return QSize(width, round(metrics.height() * (1.2 if self._lines == 1 else 1.05 * self._lines)))

    def paintEvent(self, _event: QPaintEvent) -> None:
        font = QFont(self.bench.type.sans(self._size, self._weight))
        ink = self.bench.theme.color("text")
        lines = self.shown_lines()
        height = self.height() / len(lines)
        with QPainter(self) as painter:
            if self.pointed:
                font.setUnderline(True)
            for row, line in enumerate(lines):
                box = QRectF(0, row * height, self.width(), height)
                draw_text(painter, box, line, font, ink, elide=True)
