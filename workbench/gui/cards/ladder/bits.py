"""Stepping the bits of a channel."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.circuit.ladders import MOST_BITS
from workbench.gui.bench import Bench
from workbench.gui.widgets import Words
from workbench.gui.widgets.icon_button import IconButton
from workbench.project.document import Channel

__all__ = ["BitStepper"]


class BitStepper(QWidget):
    """One channel's number of bits between a minus and a plus."""

    stepped = Signal(object, int)

    def __init__(self, bench: Bench, channel: Channel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._channel = channel
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(bench.px(2))
        row.addWidget(Words(bench, channel.value, role=channel.value, weight=500))
        self.fewer = IconButton(bench, "minus", f"One {channel.value} bit less")
        self.count = Words(bench, "0", mono=True, weight=600, width_for="8")
        self.more = IconButton(bench, "plus", f"One {channel.value} bit more")
        for button, by in ((self.fewer, -1), (self.more, 1)):
            button.clicked.connect(lambda _checked=False, by=by: self.stepped.emit(self._channel, by))
        for widget in (self.fewer, self.count, self.more):
            row.addWidget(widget)

    def show_bits(self, bits: int, least: int) -> None:
        """Show the number of bits, of which there are at least so many."""
        self.count.say(str(bits))
        self.fewer.setEnabled(bits > least)
        self.more.setEnabled(bits < MOST_BITS)
