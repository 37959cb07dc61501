"""A choice under its caption, or with the caption inside it where the page is low."""

from collections.abc import Sequence

from PySide6.QtWidgets import QBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import Choice, Words

__all__ = ["LabelledChoice", "needed_height"]


class LabelledChoice(QWidget):
    """A :class:`Choice` as wide as its column; ``choice.chosen`` tells what was taken."""

    def __init__(self, bench: Bench, caption: str, options: Sequence[str] = ()) -> None:
        super().__init__()
        self._bench = bench
        self.caption = Words(bench, caption, size=0.86, role="dim")
        self.choice = Choice(bench, caption)
        self.choice.set_options(options)
        self.choice.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self._column = column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(bench.px(3))
        column.addWidget(self.caption)
        column.addWidget(self.choice)
        self.set_low(low=False)

    @property
    def low(self) -> bool:
        """Whether the caption stands inside the field."""
        return self.caption.isHidden()

    def set_low(self, *, low: bool) -> None:
        """Put the caption inside the field, to save height."""
        self.caption.setVisible(not low)
        self.choice.set_caption_shown(shown=low)
        # At once, so that who measures a column of these need not wait.
        self._column.activate()


def needed_height(column: QBoxLayout, width: int) -> int:
    """Return the height of a column in some width. [px]"""
    column.invalidate()
    if column.hasHeightForWidth():
        return column.totalHeightForWidth(width)
    return column.totalSizeHint().height()
