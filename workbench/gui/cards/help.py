"""F1: a short card about what has the focus, written where the widget is made (its "what's this")."""

from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.card import Card
from workbench.gui.widgets.words import Words

__all__ = ["HelpCard", "help_for"]

GENERAL = (
    "The bench",
    "Left: the network of resistors between the pins and the monitor. Right: the volts of one scanline. "
    "Change a value and both follow at once. Ctrl+K finds every command by name.",
)


def help_for(widget: QWidget | None) -> tuple[str, str]:
    """Return title and text of the nearest help, from a widget outwards."""
    while widget is not None:
        if widget.whatsThis():
            return widget.accessibleName() or widget.objectName(), widget.whatsThis()
        widget = widget.parentWidget()
    return GENERAL


class HelpCard(Card):
    """Explains one thing in a few sentences."""

    def __init__(self, bench: Bench, title: str, text: str, parent: QWidget) -> None:
        super().__init__(bench, title, parent)
        self.column.addWidget(Words(bench, title, weight=600))
        self.text = Words(bench, text, role="text")
        self.text.wrap(bench.px(380))
        self.column.addWidget(self.text)
        self.column.addWidget(Words(bench, "Esc closes this", size=0.86, role="dim"))
