"""The card that makes new ladders; start in ``card.py``."""

from workbench.gui.cards.ladder.card import LadderChooser

__all__ = ["LadderChooser"]
