"""The fields in which the limits of the pins are entered: in mA, echoed, asked about where odd."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.errors import QuantityError
from workbench.gui.bench import Bench
from workbench.gui.settings import PIN_LIMIT, TOTAL_LIMIT
from workbench.gui.widgets import Field, Words
from workbench.project.edits.drive import set_limits
from workbench.project.plausible import implausible_limits
from workbench.units import format_quantity, parse_current

__all__ = ["LimitField", "LimitFields"]

WIDTH = 140
"""Width of a field. [design px]"""

Limits = tuple[float | None, float | None]
"""What one pin, and all pins together, may carry; none for not entered. [A]"""


class LimitField(QWidget):
    """One current: the field, and what its text is read as while it is typed."""

    def __init__(self, bench: Bench, name: str, amps: float | None) -> None:
        super().__init__()
        self.amps = amps
        """What is in force. [A]"""
        self.field = Field(bench, name, placeholder="not entered", mono=True)
        self.field.setFixedWidth(bench.px(WIDTH))
        self.echo = Words(bench, "", role="dim", mono=True, width_for="= 999.9 mA")
        self.setFocusProxy(self.field)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.field)
        row.addWidget(self.echo)
        self.field.textEdited.connect(self._say_echo)
        self.show_amps(amps)

    def read(self) -> float | None:
        """Return what the text means; raise QuantityError where it means nothing. [A]"""
        text = self.field.text().strip()
        if text == _text(self.amps):  # not typed, so not rounded either
            return self.amps
        return parse_current(text) if text else None

    def show_amps(self, amps: float | None) -> None:
        """Show a value in force as the program writes it."""
        self.amps = amps
        self.field.setText(_text(amps))
        self.field.set_state("")
        self.echo.say("")

    def _say_echo(self) -> None:
        try:
            amps = self.read()
        except QuantityError:
            amps = None
        self.echo.say("" if amps is None else f"= {_text(amps)}")


class LimitFields(QObject):
    """Keeps both limits; an odd one is asked about, and a second Enter keeps it."""

    told = Signal(str)
    """Why a text is refused, or what is asked; empty when both are in force."""

    def __init__(self, bench: Bench, parent: QObject) -> None:
        super().__init__(parent)
        driver = bench.session.project.driver
        self._bench = bench
        self._asked: Limits | None = None
        self._confirmed: Limits | None = None
        self.pin = LimitField(bench, "one pin may carry, in mA", driver.pin_limit_amps)
        self.total = LimitField(bench, "all pins together may carry, in mA", driver.total_limit_amps)
        for entry in (self.pin, self.total):
            entry.field.returnPressed.connect(self._on_enter)
            entry.field.editingFinished.connect(self._take)

    def _on_enter(self) -> None:
        """Take an Enter on an unchanged question for a yes."""
        read = self._read(lambda _reason: None)
        if read is not None and read == self._asked:
            self._confirmed = read

    def _take(self) -> None:
        read = self._read(self.told.emit)
        if read is None:
            return
        question = implausible_limits(*read)
        if question and read not in (self._confirmed, (self.pin.amps, self.total.amps)):
            self._asked = read
            for entry, amps in zip((self.pin, self.total), read, strict=True):
                entry.field.set_state("" if amps == entry.amps else "warns")
            self.told.emit(f"{question} Enter once more keeps it; 20 in these fields is 20 mA.")
            return
        self.told.emit("")
        if self._bench.apply("Enter the limits of the pins", lambda project: set_limits(project, *read)):
            self.pin.show_amps(read[0])
            self.total.show_amps(read[1])
            self._bench.settings.set(PIN_LIMIT, read[0])
            self._bench.settings.set(TOTAL_LIMIT, read[1])

    def _read(self, refuse: Callable[[str], object]) -> Limits | None:
        """Return both values, or none where a text means nothing."""
        amps = []
        for entry in (self.pin, self.total):
            try:
                amps.append(entry.read())
            except QuantityError as reason:
                entry.field.set_state("fails")
                refuse(str(reason))
                return None
        return amps[0], amps[1]


def _text(amps: float | None) -> str:
    return "" if amps is None else format_quantity(amps, "A")
