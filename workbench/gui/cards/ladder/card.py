"""The card that makes new ladders: shape, bits, values; what comes out is shown before it is taken."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from PySide6.QtCore import QSignalBlocker, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLayout, QVBoxLayout, QWidget

from workbench.checks.finding import Severity
from workbench.circuit.ladders import MOST_BITS, MOST_THERMOMETER
from workbench.circuit.series import Series
from workbench.circuit.wish import LadderWish, Shape, read_values, wish_like, wishes_for
from workbench.errors import EditError, NetworkError, WorkbenchError
from workbench.gui.bench import Bench
from workbench.gui.cards.ladder.bits import BitStepper
from workbench.gui.cards.ladder.figures import LadderFigures, parts_text
from workbench.gui.cards.ladder.shapes import MATCHED, SHAPES, TwoLines
from workbench.gui.cards.ladder.steps import StepsSketch
from workbench.gui.widgets import Button, ButtonKind, Choice, Field, Sign, Words
from workbench.gui.widgets.card import Card
from workbench.gui.widgets.said import Said
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.project.edits.ladders import set_ladders
from workbench.project.edits.naming import set_series

__all__ = ["LadderChooser"]

TYPED = "typed"
THERMOMETERS = tuple(range(2, MOST_THERMOMETER + 1))
HINTS = {
    Shape.WEIGHTED: "one a bit, highest first: 500, 1k, 2k",
    Shape.R2R: "R, or R and 2R: 240, 470",
    Shape.SEGMENTED: "one equal leg, then the others: 1k, 2k",
    Shape.EQUAL: "the one value: 1k",
}
WIDTH = 400
PROJECTED_WIDTH = 300
"""Width of the column of figures, at the desk and on a projector. [design px]"""
ROOM_FOR_THREE = 600
"""Width of the window from which there is room for the figures of three channels. [design px]"""
ABOUT_WIDTH = 480
"""Width of what is said of the chosen shape on a projector. [design px]"""


_SIGNS = {Severity.FAIL: Sign.FAILS, Severity.WARN: Sign.WARNS}


class LadderChooser(Card):
    """Works out ladders for what is chosen; nothing changes until they are taken."""

    taken = Signal(object)
    """The edit that puts the ladders in."""

    def __init__(self, bench: Bench, run: Callable[[Project], Result], parent: QWidget) -> None:
        super().__init__(bench, "Make a new ladder", parent)
        self._run = run
        self._wish = LadderWish(series=Series.E24)
        self._counts = dict.fromkeys(Channel, 5)
        self._linked = True
        self.shapes = {shape: TwoLines(bench, SHAPES[shape], one_of=True) for shape in Shape}
        self.steppers = {channel: BitStepper(bench, channel) for channel in Channel}
        self.thermometer = Choice(bench, "equal legs for the top")
        self.source = Choice(bench, "values")
        self.values = Field(bench, "values of the legs", mono=True)
        self.matched = TwoLines(bench, MATCHED, one_of=False)
        self.steps = StepsSketch(bench)
        self.figures = LadderFigures(bench, narrow=parent.width() < bench.px(ROOM_FOR_THREE))
        self.about = self._line(role="dim")
        self.parts = self._line(mono=True)
        self.said = Said(bench, size=0.9)
        self.said.wrap(bench.px(self._column))
        self.take = Button(bench, "Put it in", ButtonKind.REMEDY)
        self.first = self.take
        self._connect()
        self.column.addWidget(Words(bench, "A new ladder", size=1.1, weight=600))
        sides = QHBoxLayout()
        sides.setSpacing(bench.px(16 if bench.projecting else 24))
        sides.addLayout(self._left())
        sides.addLayout(self._right())
        self.column.addLayout(sides)
        if bench.projecting:
            self.about.wrap(bench.px(ABOUT_WIDTH))
            self.column.addWidget(self.about)
        self.column.addLayout(self._foot())

    def start(self, result: Result) -> None:
        """Begin with the shape and bits that the project has."""
        project, red = result.project, result.channels.red
        self._wish = replace(wish_like(red.network, red.levels.source_ohms), series=project.series)
        self._counts = {channel: result.channels[channel].network.bits for channel in Channel}
        self._linked = project.linked
        self.source.set_value(self._series.name)
        self._show()

    def edit(self, project: Project) -> Project:
        """Return the project with the ladders that are chosen."""
        red, green, blue = (self._counts[channel] for channel in Channel)
        lists = None
        try:
            if self._typed:
                if not self.values.text().strip():
                    raise EditError(f"Type the values: {HINTS[self._wish.shape]}.")
                lists = read_values(self.values.text())
            wishes = wishes_for(self._wish, (red, green, blue), lists)
        except NetworkError as error:
            raise EditError(str(error)) from error
        return set_ladders(set_series(project, self._series), wishes)

    @property
    def _typed(self) -> bool:
        return self.source.value == TYPED

    @property
    def _series(self) -> Series:
        return self._wish.series or Series.E24

    def _connect(self) -> None:
        for shape, row in self.shapes.items():
            row.clicked.connect(lambda _checked=False, shape=shape: self._choose(shape=shape))
        for stepper in self.steppers.values():
            stepper.stepped.connect(self._step)
        self.thermometer.set_options([_equal_legs(bits) for bits in THERMOMETERS])
        self.thermometer.chosen.connect(lambda number: self._choose(thermometer=THERMOMETERS[number]))
        self.source.set_options([*(series.name for series in Series), TYPED])
        self.source.chosen.connect(self.choose_source)
        self.values.textEdited.connect(lambda _text: self._show())
        self.matched.toggled.connect(lambda on: self._choose(matched=on))
        self.take.clicked.connect(self._take)

    def _left(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(self.bench.px(8))
        for choice in (*self.shapes.values(), self.matched):
            column.addWidget(choice)
        column.addStretch(1)
        return column

    def _right(self) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(self.bench.px(10))
        bits = Words(self.bench, "bits", role="dim")
        if self.bench.projecting:
            column.addWidget(bits)
            column.addLayout(self._row(*self.steppers.values()))
        else:
            column.addLayout(self._row(bits, *self.steppers.values()))
        column.addLayout(self._row(self.thermometer))
        values = self._row(self.source, self.values)
        values.setStretchFactor(self.values, 1)
        column.addLayout(values)
        column.addSpacing(self.bench.px(6))
        if not self.bench.projecting:
            column.addWidget(self.steps)
        column.addWidget(self.figures)
        column.addWidget(self.parts)
        column.addWidget(self.said)
        column.addStretch(1)
        return column

    def _row(self, *widgets: QWidget) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(self.bench.px(6 if self.bench.projecting else 12))
        for widget in widgets:
            row.addWidget(widget)
        row.addStretch(0)
        return row

    def _foot(self) -> QLayout:
        words = Words(
            self.bench, "in place of all three ladders; one step, can be undone", size=0.86, role="dim"
        )
        foot = self._row(words)
        foot.setStretch(1, 1)
        foot.addWidget(self.take)
        return foot

    def _line(self, *, mono: bool = False, role: str = "text") -> Words:
        words = Words(self.bench, "", mono=mono, size=0.9, role=role)
        words.wrap(self.bench.px(self._column))
        words.setAlignment(Qt.AlignmentFlag.AlignTop)
        return words

    def _choose(self, **fields: Any) -> None:
        self._wish = replace(self._wish, **fields)
        self._show()

    def choose_source(self, number: int) -> None:
        """Take values from a series by its place in the list, or the typed ones, last in it."""
        if number < len(Series):
            series = list(Series)[number]
            self.source.set_value(series.name)
            self._choose(series=series)
            return
        self.source.set_value(TYPED)
        self._show()
        self.values.setFocus()

    def _step(self, channel: Channel, by: int) -> None:
        moved = tuple(Channel) if self._linked else (channel,)
        for each in moved:
            self._counts[each] = min(MOST_BITS, max(self._least, self._counts[each] + by))
        self._show()

    @property
    def _column(self) -> int:
        """How wide lines of words are. [design px]"""
        return PROJECTED_WIDTH if self.bench.projecting else WIDTH

    @property
    def _least(self) -> int:
        return self._wish.thermometer if self._wish.shape is Shape.SEGMENTED else 1

    def _show(self) -> None:
        for shape, row in self.shapes.items():
            row.setChecked(shape is self._wish.shape)
        with QSignalBlocker(self.matched):
            self.matched.setChecked(self._wish.matched)
        chosen = (self.shapes[self._wish.shape], *([self.matched] if self._wish.matched else ()))
        self.about.say(" ".join(row.about for row in chosen))
        for channel, stepper in self.steppers.items():
            stepper.show_bits(self._counts[channel], self._least)
        self.thermometer.set_value(_equal_legs(self._wish.thermometer))
        self.thermometer.setEnabled(self._wish.shape is Shape.SEGMENTED)
        self.values.setVisible(self._typed)
        self.values.setPlaceholderText(HINTS[self._wish.shape])
        try:
            result = self._run(self.edit(self.bench.session.project))
        except WorkbenchError as reason:
            self._show_refusal(str(reason))
            return
        self.take.setEnabled(True)
        self._show_result(result)

    def _show_refusal(self, sentence: str) -> None:
        self.steps.show_result(None)
        self.figures.show_nothing()
        self.parts.say("")
        self.said.tell(Sign.WARNS, f"{sentence[:1].upper()}{sentence[1:].rstrip('.')}.")
        self.take.setEnabled(False)

    def _show_result(self, result: Result) -> None:
        self.steps.show_result(result)
        self.figures.show_result(result)
        self.parts.say(parts_text(result))
        heavy = [finding for finding in result.findings if finding.severity is not Severity.INFO]
        if heavy:
            self.said.tell(_SIGNS[heavy[0].severity], heavy[0].headline)
        else:
            self.said.tell(Sign.PASSES, "No failures and no warnings with these values.")
        self._grow()

    def _grow(self) -> None:
        """Make room for what is shown; the card never shrinks, so that nothing jumps."""
        more = self.sizeHint().height() - self.height()
        if self.isVisible() and more > 0:
            self.resize(self.width(), self.height() + more)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Put the ladder in on Enter, wherever in the card the keys are; on a choice it opens the list."""
        focused = self.window().focusWidget()
        if event.key() not in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            super().keyPressEvent(event)
        elif isinstance(focused, Choice):
            focused.click()
        elif self.take.isEnabled():
            self._take()

    def _take(self) -> None:
        self.close()
        self.taken.emit(self.edit)


def _equal_legs(thermometer: int) -> str:
    """Return how a choice of equal legs is called: ``2 bits, 3 legs``."""
    return f"{thermometer} bits, {(1 << thermometer) - 1} legs"
