"""The Tolerance page: what varies, the boards one would get, the resistor that matters, single boards."""

from collections.abc import Sequence

from PySide6.QtGui import QHideEvent, QPainter, QPaintEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.checks.limits import LINEARITY, WHITE, Limit
from workbench.circuit.linearity import linearity
from workbench.circuit.network import PartId
from workbench.circuit.tolerance.monte_carlo import Spread, Tolerance
from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.levels.figures import code_figures
from workbench.gui.timing.page import Refusal
from workbench.gui.tolerance.bag import Bag
from workbench.gui.tolerance.drawing_boards import drawn_boards
from workbench.gui.tolerance.form import ToleranceForm
from workbench.gui.tolerance.histogram import SpreadView
from workbench.gui.tolerance.part_table import PartTable, part_rows
from workbench.gui.tolerance.pictures import BandStaircase, Distance
from workbench.gui.tolerance.words import count_words, monotonic_words
from workbench.gui.view_state import CodeBand
from workbench.gui.widgets import Button, Sign, Words
from workbench.gui.widgets.figure_table import FigureRow
from workbench.gui.widgets.progress_bar import ProgressBar
from workbench.gui.widgets.said import Said
from workbench.pipeline.boards import BoardRun
from workbench.pipeline.result import ChannelResult, Result
from workbench.project.document import Channel, Project
from workbench.units import format_percent

__all__ = ["TolerancePage"]

_SIZE = Limit("LSB", LINEARITY.source, low=0.0, high=LINEARITY.high)
"""The same limit for the size of an error, whatever its sign."""
_WIDE = 1500
"""Width from which the columns are spaced generously. [px at 14 px text]"""
_ROOM_FOR_FORM, _ROOM_FOR_FORM_HIGH = 1000, 240
_ROOM_FOR_DISTANCE, _ROOM_FOR_ERRORS = 240, 200
"""Sizes from which these have room. [px at 14 px text]"""


class TolerancePage(QWidget):
    """Shows the boards of the drawn channel; any of the first can be looked at one by one."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Tolerance")
        self.setWhatsThis(
            "The boards one would get if values stray as entered at the left: the band that holds 98 of 100 "
            "of them, how white, DNL and INL spread, dashed the worst there can be, and which resistor "
            "matters most. Alt+Right picks one board after the other from the bag."
        )
        self._result: Result | None = None
        self._shown: tuple[ChannelResult, Channel] | None = None
        self._published: BoardRun | None = None
        self.boards = drawn_boards(bench)
        self.form = ToleranceForm(bench)
        self.refusal = Refusal(bench)
        self.state = Words(bench, size=0.9, role="dim")
        self.bar = ProgressBar(bench, "Boards drawn")
        self.stop = Button(bench, "Stop")
        self.staircase = BandStaircase(bench, self.hold)
        self.distance = Distance(bench, self.hold)
        self.verdict = Said(bench, size=1.0)
        self.spreads = (
            SpreadView(bench, "White", WHITE, decimals=3, both=True),
            SpreadView(bench, "DNL", _SIZE, decimals=2, both=False),
            SpreadView(bench, "INL", _SIZE, decimals=2, both=False),
        )
        self.bag = Bag(bench)
        self.table = PartTable(bench)
        self._lay_out()
        self.form.told.connect(self.refusal.tell)
        self.form.asked.connect(self._draw)
        self.stop.clicked.connect(self.boards.stop)
        self.boards.changed.connect(self._show_boards)
        self.boards.progress.connect(self._show_progress)
        self.bag.picked.connect(lambda _board: self._show_boards())
        self.table.pointed.connect(self._choose)
        bench.view.changed.connect(self._take)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def action_specs(self) -> tuple[ActionSpec, ...]:
        """Return the page's own commands."""
        return (
            ActionSpec(
                "tolerance.next",
                "Pick the next board from the bag",
                lambda: self.bag.flick(1),
                "Tolerance",
                shortcut="Alt+Right",
                tip="Shows the values, the staircase and the findings of one board after the other.",
                scope=self,
            ),
            ActionSpec(
                "tolerance.before",
                "Pick the board before",
                lambda: self.bag.flick(-1),
                "Tolerance",
                shortcut="Alt+Left",
                tip="Goes back to the board that was looked at before.",
                scope=self,
            ),
        )

    def show_result(self, project: Project, result: Result) -> None:
        """Show a project's tolerances and draw its boards."""
        self._result = result
        self.form.show_project(project)
        self._take()
        self._draw()

    def hold(self, code: int | None) -> None:
        """Hold a code on the drawn channel's pins, on all three where they are linked."""
        linked = self.bench.session.project.linked
        self.bench.view.hold(tuple(Channel) if linked else (self.bench.view.channel,), code)

    @property
    def drawn(self) -> Tolerance | None:
        """The boards of the drawn channel; none while there are none."""
        run = self.boards.run
        return None if run is None else run.tolerances.get(self.bench.view.channel)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._publish()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._published = None
        self.bench.view.show_bands({})

    def _publish(self) -> None:
        """Let the bands be drawn in the scanline too, as long as the page is open."""
        run = self.boards.run
        if run is not None and self.isVisible() and run is not self._published:
            self._published = run
            bands = {c: CodeBand(t.low_by_code, t.high_by_code) for c, t in run.tolerances.items()}
            self.bench.view.show_bands(bands)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.bench.theme.color("panel"))

    def _draw(self) -> None:
        self.boards.draw(self.bench.session.project)
        self._show_state()

    def _take(self) -> None:
        """Follow the drawn channel, the held code and the chosen part."""
        if self._result is None:
            return
        channel = self.bench.view.channel
        solved = self._result.channels[channel]
        if self._shown is None or self._shown[0] is not solved or self._shown[1] is not channel:
            self._shown = solved, channel
            figures = code_figures(solved)
            words = f"{figures.n_codes} codes of {channel.value}"
            self.staircase.show_codes(figures, words)
            self.distance.show_codes(figures, words)
            self.form.show_project(self._result.project)
            self._show_boards()
        held = self.bench.view.held(channel)
        held = held if held is not None and held < len(solved.levels.volts_by_code) else None
        self.staircase.show_held(held)
        self.distance.show_held(held)
        self._light_chosen()

    def _show_boards(self) -> None:
        self._publish()
        found = self.drawn
        self.bag.show_boards(found)
        board = self.bag.board
        self.staircase.show_boards(found, board)
        self.distance.show_boards(found, board)
        self._show_spreads(found, board)
        self._show_verdict(found)
        self._show_parts(found, board)
        self._show_state()

    def _show_spreads(self, found: Tolerance | None, board: int | None) -> None:
        spreads: tuple[Spread | None, ...] = (None,) * 3
        marks: tuple[float | None, ...] = (None,) * 3
        if found is not None:
            spreads = found.full_scale_volts, found.max_dnl_lsb, found.max_inl_lsb
            if board is not None:
                volts = found.volts_by_board[board]
                line = linearity(volts)
                marks = float(volts[-1]), line.max_dnl_lsb, line.max_inl_lsb
        for view, spread, mark in zip(self.spreads, spreads, marks, strict=True):
            view.show_spread(spread, mark)

    def _show_verdict(self, found: Tolerance | None) -> None:
        if found is not None:
            self.verdict.tell(*monotonic_words(found))
            return
        run = self.boards.run
        reason = "" if run is None else run.problems.get(self.bench.view.channel, "")
        self.verdict.tell(Sign.WARNS if reason else None, reason)

    def _show_parts(self, found: Tolerance | None, board: int | None) -> None:
        run, channel = self.boards.run, self.bench.view.channel
        if found is None or run is None:
            self.table.show_rows(())
            return
        network = run.plan.networks[tuple(Channel).index(channel)]
        rows = part_rows(network, run.plan.driver, run.plan.load, found, board)
        self.table.show_rows(rows, current=self._chosen_row(rows))

    def _chosen_row(self, rows: Sequence[FigureRow]) -> int:
        chosen = self.bench.view.chosen
        payloads = [row.payload for row in rows]
        return next((n for n, p in enumerate(payloads) if isinstance(p, tuple) and p[0] == chosen), -1)

    def _light_chosen(self) -> None:
        row = self._chosen_row(self.table.rows)
        if row != self.table.delegate.current and row >= 0:
            self.table.setCurrentIndex(self.table.figures.index(row, 0))

    def _choose(self, payload: object) -> None:
        if isinstance(payload, tuple):
            self.bench.view.choose(PartId(payload[0]))

    def _show_state(self) -> None:
        run = self.boards.run
        if self.boards.busy:
            return
        self.stop.hide()
        self.bar.hide()
        if run is None:
            self.state.say("")
        elif run.whole:
            self.state.say(f"{count_words(run.boards)} boards of each channel")
        else:
            self.state.say(f"stopped; these are {count_words(run.boards)} boards")

    def _show_progress(self, done: int, total: int) -> None:
        if not self.boards.busy or done >= total:
            return
        self.bar.show_part(done / total)
        self.bar.show()
        self.stop.show()
        found = self.drawn
        so_far = "" if found is None else f"; {format_percent(found.monotonic_yield, 1)} monotonic so far"
        self.state.say(f"trying {self.form.boards.text()} boards{so_far}")

    def _lay_out(self) -> None:
        left, pictures, spreads, right = (QVBoxLayout() for _ in range(4))
        self._work = QHBoxLayout()
        self._work.addWidget(self.bar, 1)
        self._work.addWidget(self.stop)
        left.addWidget(self.form)
        left.addWidget(self.refusal)
        left.addStretch(1)
        left.addWidget(self.state)
        left.addLayout(self._work)
        pictures.addWidget(self.staircase, 6)
        pictures.addWidget(self.distance, 4)
        spreads.addWidget(self.verdict)
        for view in self.spreads:
            spreads.addWidget(view, 1)
        right.addWidget(self.bag)
        right.addWidget(self.table, 1)
        for words in (self.refusal, self.state):
            words.setWordWrap(True)
        self._sides = tuple(QWidget() for _ in range(4))
        self._inside = (left, pictures, spreads, right)
        self._columns = QHBoxLayout(self)
        for side, column in zip(self._sides, self._inside, strict=True):
            side.setLayout(column)
            column.setContentsMargins(0, 0, 0, 0)
            self._columns.addWidget(side)
        self._columns.setStretch(1, 5)
        self._columns.setStretch(2, 4)
        self._columns.setStretch(3, 5)

    def _restyle(self) -> None:
        px = self.bench.px
        self._columns.setContentsMargins(px(20), px(12), px(20), px(8))
        self._work.setSpacing(px(10))
        for column in self._inside:
            column.setSpacing(px(4))
        self._show_state()
        self._fit()
        self.update()

    def _fit(self) -> None:
        """Keep the form as wide as it is; with large text the pictures stay, and form and bag go."""
        px, width, height = self.bench.px, self.width(), self.height()
        wide = width >= px(_WIDE)
        roomy = width >= px(_ROOM_FOR_FORM) and height >= px(_ROOM_FOR_FORM_HIGH)
        self._columns.setSpacing(px(36 if wide else 18))
        self._sides[0].setVisible(roomy)
        self._sides[3].setVisible(roomy)
        self._sides[0].setFixedWidth(self.form.sizeHint().width() + px(4))
        self._sides[3].setMinimumWidth(self.table.least_width())
        self.distance.setVisible(height >= px(_ROOM_FOR_DISTANCE))
        for view in self.spreads[1:]:
            view.setVisible(height >= px(_ROOM_FOR_ERRORS))
