"""Typing and stepping: from keys on a part to edits of the session."""

from PySide6.QtCore import QObject, QRect, Signal
from PySide6.QtWidgets import QWidget

from workbench.circuit.network import PartId
from workbench.drawing import LOAD, Drawing
from workbench.drawing.elements import BlockKind, Symbol
from workbench.drawing.geometry import Rect
from workbench.gui.bench import Bench
from workbench.gui.network.card_place import card_place
from workbench.gui.network.echo_card import EchoCard
from workbench.gui.network.field import ValueField
from workbench.gui.network.inks import Inks
from workbench.gui.network.two_parts import Pair
from workbench.gui.network.values import Pace, Reading, Value, find_value, stepped
from workbench.project.document import Channel

__all__ = ["Entry"]

LEAST_WIDTH = 114.0
"""Least width of a field, so that a long value can be read, however small the drawing is. [design px]"""
LEAST_HEIGHT = 28.0
"""Least height of a field. [design px]"""


class Entry(QObject):
    """Puts a field into the box of a part, a card beside it, and what is kept into the session."""

    closed = Signal()
    """The field is gone, kept or not."""
    moved_on = Signal(int)
    """Kept with Tab (1) or Shift+Tab (-1): the next part is wanted."""

    def __init__(self, bench: Bench, canvas: QWidget, inks: Inks) -> None:
        super().__init__(canvas)
        self._bench, self._canvas = bench, canvas
        self._drawing: Drawing | None = None
        self._burst: Value | None = None
        self._typed: Value | None = None
        self._fresh: object = None
        self.field = ValueField(bench, canvas)
        self.card = EchoCard(bench, inks, canvas)
        self.field.kept.connect(self._keep)
        self.field.left.connect(self._close)
        self.field.read.connect(self._tell)
        self.field.moved_on.connect(self.moved_on)
        self.card.asked.connect(lambda: self.field.keep(asked=True))
        self.card.other_asked.connect(lambda: self.field.keep(asked=True, other=True))

    @property
    def _channel(self) -> Channel:
        return self._bench.view.channel

    # Typing

    def open(self, part: PartId, text: str | None = None, *, fresh: bool = False) -> None:
        """Open the field of a part, with what was typed already.

        What is typed for a ``fresh`` part belongs to the step that put it in; leaving takes both back.
        """
        self._bench.live.refresh()
        self._fresh = self._bench.session.merging if fresh else None
        value = find_value(self._bench.session.project, self._channel, part)
        if value is not None:
            self._typed = value
            self._place_field(part)
            self.field.open(value, text)

    def place(self, drawing: Drawing) -> None:
        """Follow the drawing: an open field stays in its box."""
        self._drawing = drawing
        if self.field.value is not None:
            self._place_field(self.field.value.part)

    def _keep(self, new: float | Pair | None) -> None:
        value, before = self._typed, self._resistors()
        if value is not None and self._fresh is not None:
            label = f"Add {value.name} {value.text(new)}"
            self._bench.apply(label, lambda project: value.change(project, new), merge=self._fresh)
            self._bench.session.release()
        elif value is not None:
            self._bench.apply(value.label(new), lambda project: value.change(project, new))
        self._fresh = None
        if isinstance(new, Pair):
            self._bench.live.refresh()
            self._bench.view.choose(next((each for each in self._resistors() if each not in before), None))
        self._close()

    def _resistors(self) -> list[PartId]:
        return [resistor.id for resistor in self._bench.session.project.channels[self._channel].resistors]

    def _close(self) -> None:
        if self._fresh is not None and self._bench.session.merging == self._fresh:
            self._bench.view.choose(None)
            self._bench.session.drop()
        self._fresh = None
        self.card.hide()
        self.closed.emit()

    def _tell(self, reading: Reading) -> None:
        value = self.field.value
        if value is not None:
            self.card.tell(value, reading, self._channel)
            self._place_card(value.part)
            self.card.show()
            self.card.raise_()

    def _symbol(self, part: PartId) -> Symbol | None:
        return self._drawing.symbol(part) if self._drawing is not None else None

    def _place_field(self, part: PartId) -> None:
        symbol, drawing = self._symbol(part), self._drawing
        if symbol is None or drawing is None:
            return
        # The name stands right of a low box and left of an upright one; it stays in sight.
        unit, box = drawing.unit, symbol.field
        named_above = symbol.name.at.y < symbol.body.top
        left, right = (11.0, 11.0) if named_above else (0.0, 4.0) if symbol.vertical else (18.0, 4.0)
        width = max(box.width + (left + right) * unit, self._bench.px(LEAST_WIDTH))
        start = min(box.left - left * unit, self._canvas.width() - width - 4 * unit)
        monitor = drawing.block(BlockKind.MONITOR)
        if part == LOAD and monitor is not None:
            start, width = monitor.left + 4 * unit, monitor.width - 8 * unit
        height = max(box.height + 4 * unit, self._bench.px(LEAST_HEIGHT))
        top = box.centre.y - height / 2
        self.field.setGeometry(round(start), round(top), round(width), round(height))
        self._place_card(part)

    def _place_card(self, part: PartId) -> None:
        """Put the card where it covers least; beside the field it has a beak, elsewhere the part's name."""
        symbol, drawing = self._symbol(part), self._drawing
        if symbol is None or drawing is None:
            return
        seen = self._canvas.visibleRegion().boundingRect()
        if seen.isEmpty():
            seen = self._canvas.rect()
        size, field = self.card.sizeHint(), self.field.geometry()
        place = card_place(drawing, part, _as_rect(field), (size.width(), size.height()), _as_rect(seen))
        self.card.setGeometry(QRect(round(place.left), round(place.top), size.width(), size.height()))
        middle = symbol.field.centre.y
        beside = place.left >= field.right() and place.top <= middle <= place.bottom
        self.card.point_at(middle - place.top if beside else None)

    # Stepping

    def step(self, steps: int, pace: Pace) -> None:
        """Step the chosen part's value, live; a burst of steps is one step of the history."""
        project, part = self._bench.session.project, self._bench.view.chosen
        value = find_value(project, self._channel, part) if part is not None else None
        if value is None or not value.value:
            return
        if self._burst is None or self._burst.part != value.part:
            self._burst = value
        new = stepped(value.value, project.series, steps, pace)
        self._bench.apply(
            self._burst.label(new),
            lambda project: value.put(project, new),
            merge=("step", self._channel, value.part),
            origin=self,
        )

    def end_burst(self) -> None:
        """Let the next step be one of its own."""
        if self._burst is not None:
            self._burst = None
            self._bench.session.release()


def _as_rect(box: QRect) -> Rect:
    """Return a rectangle of Qt's as one of the drawing's."""
    return Rect(box.x(), box.y(), box.width(), box.height())
