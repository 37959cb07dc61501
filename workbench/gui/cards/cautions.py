"""About the program, and what to mind when the bench becomes a real one."""

from PySide6.QtWidgets import QWidget

from workbench import __version__
from workbench.gui.bench import Bench
from workbench.gui.widgets import Words
from workbench.gui.widgets.card import Card

__all__ = ["CAUTIONS", "CautionsCard"]

CAUTIONS = (
    (
        "Tubes",
        "Picture tubes hold a dangerous voltage for long after they are switched off. Leave the case closed.",
    ),
    (
        "Scan rates",
        "A display that is given rates outside its range may be harmed, old tubes most of all. "
        "Look at its manual before you choose a mode.",
    ),
    (
        "Pins",
        "A pin, and all pins together, carry only what the chip's data sheet says. "
        "Enter those limits in the preferences; without them nothing can be checked.",
    ),
    (
        "Supply on the connector",
        "Some connectors carry 5 V. Never join it to a 3.3 V supply, and feed no board from two sides.",
    ),
    (
        "Flashing pictures",
        "Stripes, checkerboards and toggles can flicker. Warn people who are sensitive before you show them.",
    ),
)


class CautionsCard(Card):
    """Shows the version and the cautions, each in a sentence or two."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(bench, "About Backporch, and cautions", parent)
        self.column.addWidget(Words(bench, f"Backporch {__version__}", size=1.1, weight=600))
        self._add("Analog RGB video from logic pins and resistors: as volts, as time, as a picture.", "dim")
        for title, text in CAUTIONS:
            self.column.addWidget(Words(bench, title, weight=600))
            self._add(text, "text")
        self._add(
            "The maker's data and the rules of your place come first, before anything shown here.", "dim"
        )

    def _add(self, text: str, role: str) -> None:
        words = Words(self.bench, text, role=role)
        words.wrap(self.bench.px(460))
        self.column.addWidget(words)
