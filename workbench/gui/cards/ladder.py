"""The card that makes a new ladder: shape, bits, series; what comes out is shown before it is taken."""

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QWidget

from workbench.checks.finding import Severity
from workbench.circuit.ladders import MOST_BITS, Topology
from workbench.circuit.series import Series
from workbench.circuit.wish import LadderWish, Shape
from workbench.errors import WorkbenchError
from workbench.gui.bench import Bench
from workbench.gui.widgets import Button, ButtonKind, Choice, Words
from workbench.gui.widgets.card import Card
from workbench.gui.widgets.icon_button import IconButton
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.project.edits.ladders import set_ladders
from workbench.project.edits.naming import set_series
from workbench.units import format_fixed, format_quantity

__all__ = ["LadderChooser"]

SHAPES = ((Topology.WEIGHTED, "weighted"), (Topology.R2R, "R-2R"))

FIGURES = ("white, loaded", "white, open", "worst step error", "source", "all pins at white")


class LadderChooser(Card):
    """Works out a ladder for what is chosen; nothing changes until it is taken."""

    taken = Signal(object)
    """The edit that puts the ladder in."""

    def __init__(self, bench: Bench, run: Callable[[Project], Result], parent: QWidget) -> None:
        super().__init__(bench, "Make a new ladder", parent)
        self._run = run
        self._shape = Topology.WEIGHTED
        self._counts = dict.fromkeys(Channel, 5)
        self._linked = True
        self._series = Series.E24
        self.column.addWidget(Words(bench, "A new ladder", size=1.1, weight=600))
        self.column.addLayout(self._shape_row())
        self._steppers = {channel: BitStepper(bench, channel) for channel in Channel}
        self.column.addLayout(self._bits_row())
        self.series = Choice(bench, "values from")
        self.series.set_options([series.name for series in Series])
        self.series.chosen.connect(self._choose_series)
        self.column.addWidget(self.series, 0, Qt.AlignmentFlag.AlignLeft)
        self._figures = {
            name: Words(bench, "", mono=True, weight=500, width_for="00.000 LSB") for name in FIGURES
        }
        self._values = Words(bench, "", mono=True, size=0.9)
        self._values.wrap(bench.px(400))
        self._said = Words(bench, "", size=0.9, role="dim")
        self._said.wrap(bench.px(400))
        self.column.addLayout(self._figure_grid())
        self.column.addWidget(self._values)
        self.column.addWidget(self._said)
        self.take = Button(bench, "Put it in", ButtonKind.REMEDY)
        self.take.clicked.connect(self._take)
        self.first = self.take
        foot = QHBoxLayout()
        foot.addWidget(Words(bench, "one step, can be undone", size=0.86, role="dim"))
        foot.addStretch(1)
        foot.addWidget(self.take)
        self.column.addLayout(foot)

    def start(self, result: Result) -> None:
        """Begin with the shape and bits that the project has."""
        project = result.project
        shape = result.channels.red.topology
        self._shape = shape if shape in dict(SHAPES) else Topology.WEIGHTED
        self._counts = {channel: result.channels[channel].network.bits for channel in Channel}
        self._linked = project.linked
        self._series = project.series
        self._show()

    def edit(self, project: Project) -> Project:
        """Return the project with the ladder that is chosen."""
        shape = Shape.of(self._shape)
        red, green, blue = (
            LadderWish(shape, self._counts[channel], series=self._series) for channel in Channel
        )
        return set_ladders(set_series(project, self._series), (red, green, blue))

    def _shape_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.addWidget(Words(self.bench, "shape", role="dim", width_for="bits"))
        self._shapes = {}
        for shape, words in SHAPES:
            button = Button(self.bench, words, ButtonKind.SEGMENT)
            button.setAutoExclusive(True)
            button.clicked.connect(lambda _checked=False, shape=shape: self._choose_shape(shape))
            self._shapes[shape] = button
            row.addWidget(button)
        row.addStretch(1)
        return row

    def _bits_row(self) -> QHBoxLayout:
        row = QHBoxLayout()
        row.setSpacing(self.bench.px(18))
        row.addWidget(Words(self.bench, "bits", role="dim"))
        for stepper in self._steppers.values():
            stepper.stepped.connect(self._step)
            row.addWidget(stepper)
        row.addStretch(1)
        return row

    def _figure_grid(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(self.bench.px(18))
        grid.setVerticalSpacing(self.bench.px(3))
        for row, (name, words) in enumerate(self._figures.items()):
            grid.addWidget(Words(self.bench, name, role="dim"), row, 0)
            words.setAlignment(Qt.AlignmentFlag.AlignRight)
            grid.addWidget(words, row, 1)
        grid.setColumnStretch(2, 1)
        return grid

    def _choose_shape(self, shape: Topology) -> None:
        self._shape = shape
        self._show()

    def _choose_series(self, number: int) -> None:
        self._series = list(Series)[number]
        self._show()

    def _step(self, channel: Channel, by: int) -> None:
        moved = tuple(Channel) if self._linked else (channel,)
        for each in moved:
            self._counts[each] = min(MOST_BITS, max(1, self._counts[each] + by))
        self._show()

    def _show(self) -> None:
        for shape, button in self._shapes.items():
            button.setChecked(shape is self._shape)
        for channel, stepper in self._steppers.items():
            stepper.show_bits(self._counts[channel])
        self.series.set_value(self._series.name)
        try:
            result = self._run(self.edit(self.bench.session.project))
        except WorkbenchError as reason:
            self._show_refusal(str(reason))
            return
        self.take.setEnabled(True)
        self._show_figures(result)

    def _show_refusal(self, sentence: str) -> None:
        for words in self._figures.values():
            words.say("–")
        self._values.say("")
        self._said.say(sentence)
        self.take.setEnabled(False)

    def _show_figures(self, result: Result) -> None:
        red = result.channels.red
        shown = (
            format_fixed(float(red.levels.volts_by_code[-1]), "V"),
            format_fixed(float(red.levels.open_by_code[-1]), "V"),
            format_fixed(red.linearity.max_dnl_lsb, "LSB", decimals=2),
            format_quantity(red.levels.source_ohms, "Ω", 3),
            format_fixed(result.pins.total_amps, "A", prefix="m", decimals=1),
        )
        for words, text in zip(self._figures.values(), shown, strict=True):
            words.say(text)
        self._values.say("  ".join(format_quantity(part.ohms, "Ω") for part in red.network.resistors))
        heavy = [finding for finding in result.findings if finding.severity is not Severity.INFO]
        self._said.say(heavy[0].headline if heavy else "No failures and no warnings with these values.")

    def _take(self) -> None:
        self.close()
        self.taken.emit(self.edit)


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

    def show_bits(self, bits: int) -> None:
        """Show the number of bits."""
        self.count.say(str(bits))
        self.fewer.setEnabled(bits > 1)
        self.more.setEnabled(bits < MOST_BITS)
