"""What the pins are told to show: test cards, and the code of every pixel.

Pure numpy; imports nothing of the house but errors and units. Start with :mod:`scene` for
what a picture is, then :mod:`cards` for how a test card becomes codes.
"""

from workbench.picture.cards import BAR_NAMES, Label, card_codes, card_labels, card_row
from workbench.picture.scene import Card, Picture

__all__ = ["BAR_NAMES", "Card", "Label", "Picture", "card_codes", "card_labels", "card_row"]
