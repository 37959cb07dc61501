"""Captions are said shorter where room is short, never cut."""

from PySide6.QtGui import QFont, QFontMetricsF

from workbench.gui.widgets.caption import that_fits


def test_the_longest_wording_that_fits_is_taken(qapp):
    font = QFont()
    wordings = ("from the design, up and down", "from the design", "design")
    widths = [QFontMetricsF(font).horizontalAdvance(words) for words in wordings]

    assert [that_fits(wordings, font, width) for width in widths] == list(wordings)
    assert that_fits(wordings, font, widths[1] - 1) == "design"
    assert that_fits(wordings, font, widths[2] - 1) == ""
