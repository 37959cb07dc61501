"""The Clock page: the chip, the plans, and the pixels and cycles of the one that is looked at."""

from fractions import Fraction

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.errors import TimingError
from workbench.gui.bench import Bench
from workbench.gui.clock.cycles import CycleTable
from workbench.gui.clock.form import EXAMPLE, ChipForm
from workbench.gui.clock.kept import ChipText, keep, kept
from workbench.gui.clock.plans import COLUMNS, in_use, plan_rows, plan_sentence
from workbench.gui.clock.strip import PixelStrip
from workbench.gui.jobs import Job
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.gui.widgets.empty_card import EmptyCard
from workbench.gui.widgets.figure_table import FigureTable
from workbench.gui.widgets.scrolled import scrolled
from workbench.pipeline.result import Result
from workbench.project.document import Project
from workbench.project.edits.timing import take_plan
from workbench.timing.clock.aim import aimed_mode
from workbench.timing.clock.chip import Chip
from workbench.timing.clock.plan import Plan, plan_clock, planned_mode
from workbench.units import format_quantity, parse_quantity

__all__ = ["ClockPage"]

_ROOM_FOR_PIXELS = 1000
"""Width from which pixels and cycles have room beside the plans. [px at 14 px text]"""

_ROOM_FOR_WORDS = 600
"""Width from which the longer words on what will be listed have room. [px at 14 px text]"""

EMPTY_TITLE = "No chip is entered yet."
EMPTY = (
    "Enter what yours can do, from its data sheet. The settings that come closest to the mode’s pixel "
    "clock are listed here then: how far off each is, and how even its pixels and lines are."
)
EMPTY_SHORT = "Settings closest to the mode’s pixel clock are listed here once it is."
"""The same where room is short."""
UNREADY = "The chip is not whole yet."


class ClockPage(QWidget):
    """Shows the plans for a project's pixel clock; one of them can be taken."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Clock")
        self._wanted: tuple[Chip, int, int] | None = None
        self._job: Job | None = None
        self._plans: tuple[Plan, ...] = ()
        self._aims: dict[int, int] = {}
        """Clocks taken from a plan, and what each plan aimed at. [Hz]"""
        self._project = bench.session.project
        self.form = ChipForm(bench, kept(bench.settings))
        self.title = Words(bench, "Plans", caps=True, role="dim")
        self.state = Words(bench, size=0.9, role="dim")
        self.stop = Button(bench, "Stop", ButtonKind.USUAL)
        self.table = FigureTable(bench, "Clock plans", COLUMNS)
        self.empty = EmptyCard(bench, EMPTY_TITLE, EMPTY)
        self.example = Button(bench, "Start from the example", ButtonKind.REMEDY)
        self.example.setToolTip("Puts the example into the fields, to be changed to what your chip can do.")
        self.said = Words(bench, size=0.9)
        self.take = Button(bench, "Use this clock", ButtonKind.REMEDY)
        self.strip = PixelStrip(bench)
        self.cycles = CycleTable(bench)
        self._lay_out()
        self.form.changed.connect(self._on_chip)
        self.example.clicked.connect(lambda: self.form.start_from(EXAMPLE))
        self.form.refused.connect(self._show_refusal)
        self.table.pointed.connect(self._point)
        self.table.picked.connect(self._take)
        self.take.clicked.connect(lambda: self._take(self.table.current))
        self.stop.clicked.connect(self._stop)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_result(self, project: Project, _result: Result) -> None:
        """Plan for a project's pixel clock, if it or the line is another one."""
        self._project = project
        self._search()
        self._show_rows()
        self._show_plan(self.table.current)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.bench.theme.color("panel"))

    def _lay_out(self) -> None:
        middle, self._below = QVBoxLayout(), QWidget()
        head, foot = QHBoxLayout(), QHBoxLayout()
        for widget in (self.title, self.state, self.stop):
            head.addWidget(widget)
        head.addStretch(1)
        foot.addWidget(self.said, 1)
        foot.addWidget(self.take)
        middle.addLayout(head)
        middle.addWidget(self.empty)
        middle.addWidget(self.example, 0, Qt.AlignmentFlag.AlignLeft)
        middle.addWidget(self._below, 1)
        middle.addWidget(self.table, 1)
        middle.addLayout(foot)
        beside = QWidget()
        right = QVBoxLayout(beside)
        right.setContentsMargins(0, 0, 0, 0)
        right.addWidget(self.strip)
        right.addWidget(self.cycles)
        right.addStretch(1)
        self.said.setWordWrap(True)
        self._columns = QHBoxLayout(self)
        self._form_area, self._right_side = scrolled(self.form), scrolled(beside)
        self._columns.addWidget(self._form_area)
        self._columns.addLayout(middle, 1)
        self._columns.addWidget(self._right_side)
        self._middle, self._right, self._head = middle, right, head

    def _on_chip(self, text: ChipText) -> None:
        keep(self.bench.settings, text)
        self._search()
        self._show_plan(self.table.current)

    def _show_refusal(self) -> None:
        """Bring into sight what is said under a field."""
        self.form.grid.activate()
        self._form_area.ensureWidgetVisible(self.form.refusal)

    def _chip(self) -> Chip | None:
        try:
            return self.form.text.chip()
        except TimingError as reason:
            if self.form.text.is_empty:
                self._show_empty(EMPTY_TITLE, self._empty_words())
            else:
                self._show_empty(UNREADY, str(reason))
            return None

    def _search(self) -> None:
        """Look for plans, unless they are there or being looked for."""
        chip, mode = self._chip(), aimed_mode(self._project.mode, self._aims)
        wanted = None if chip is None else (chip, mode.pixel_clock_hz, mode.h.total)
        if wanted == self._wanted:
            return
        self._wanted, self._plans = wanted, ()
        if self._job is not None:
            self._job.cancel()
            self._job = None
        if chip is None:
            self.table.show_rows(())
            return
        self._job = Job(self.bench, lambda progress: plan_clock(mode, chip, progress=progress), self)
        self._job.done.connect(self._on_done)
        self._job.failed.connect(self._on_failed)
        self._job.progress.connect(self._on_progress)
        self._job.cancelled.connect(self._on_cancelled)
        self._job.start()

    def _stop(self) -> None:
        if self._job is not None:
            self._job.cancel()

    def _ended(self) -> bool:
        """Let the job that sent a signal go; return whether it is the one that is waited for."""
        job = self.sender()
        awaited = job is self._job
        if awaited:
            self._job = None
            self.stop.hide()
        if job is not None:
            job.deleteLater()
        return awaited

    def _on_done(self, plans: tuple[Plan, ...]) -> None:
        if self._ended() and self._wanted is not None:
            for widget in (self.empty, self.example, self._below):
                widget.hide()
            self.table.show()
            self._plans = plans
            self._show_rows()
            mode = aimed_mode(self._project.mode, self._aims)
            self.state.say(f"for {format_quantity(mode.pixel_clock_hz, 'Hz', 9)} of {mode.name}, best first")
            self._show_plan(self.table.current)

    def _show_rows(self) -> None:
        """List the plans; the light stays on its plan, or else goes to the one in use."""
        if self._wanted is None or not self._plans:
            return
        lit = self.table.current
        holding = (n for n, plan in enumerate(self._plans) if in_use(self._project, plan))
        current = self._plans.index(lit) if lit in self._plans else next(holding, 0)
        self.table.show_rows(plan_rows(self._project, self._wanted[0], self._plans), current=current)

    def _on_failed(self, reason: str) -> None:
        if self._ended():
            self._show_empty("There is no plan.", reason)

    def _on_cancelled(self) -> None:
        if self._ended():
            self.state.say("stopped; what is listed is from before")

    def _on_progress(self, done: int, total: int) -> None:
        if self.sender() is self._job and done < total:
            self.state.say(f"trying settings: {100 * done // total} %")
            self.stop.show()

    def _show_empty(self, title: str, words: str) -> None:
        """Say why nothing is listed; while no chip is entered, offer the example."""
        self.empty.say(title, words)
        self.empty.show()
        self._below.show()
        self.example.setVisible(self.form.text.is_empty)
        self.table.hide()
        self._plans = ()
        self.table.show_rows(())
        self.state.say("")
        self._show_plan(None)

    def _empty_words(self) -> str:
        return EMPTY if self.width() >= self.bench.px(_ROOM_FOR_WORDS) else EMPTY_SHORT

    def _point(self, plan: Plan | None) -> None:
        self._show_plan(plan)

    def _show_plan(self, plan: object) -> None:
        shown = plan if isinstance(plan, Plan) else None
        mode = self._project.mode
        self.strip.show_plan(mode, shown)
        self.strip.setVisible(shown is not None)
        self.said.setVisible(shown is not None)
        self.said.say(plan_sentence(self._wanted[0], shown) if shown and self._wanted else "")
        held = shown is not None and in_use(self._project, shown)
        self.take.setVisible(shown is not None)
        self.take.setEnabled(not held)
        self.take.setText("This clock is in use" if held else "Use this clock")
        self.take.updateGeometry()
        sent = planned_mode(mode, shown) if shown else mode
        self.cycles.show_clock(sent, self._project.picture, self._cpu_hz(shown))

    def _cpu_hz(self, plan: Plan | None) -> float | None:
        text = self.form.text.processor
        if text:
            return parse_quantity(text, "Hz")
        system_hz: Fraction | None = plan.system_hz if plan else None
        return None if system_hz is None else float(system_hz)

    def _take(self, plan: object) -> None:
        if isinstance(plan, Plan):
            self._aims[round(plan.pixel_hz)] = plan.wanted_hz
            label = f"Pixel clock {format_quantity(float(plan.pixel_hz), 'Hz', 9)} of a clock plan"
            self.bench.apply(label, lambda project: take_plan(project, plan), origin=self)

    def _restyle(self) -> None:
        px = self.bench.px
        self._columns.setContentsMargins(px(20), px(12), px(20), px(8))
        self._columns.setSpacing(px(36))
        self._middle.setSpacing(px(6))
        self._right.setSpacing(px(12))
        self._head.setSpacing(px(12))
        self.stop.setVisible(False)
        self._fit()
        self.update()

    def _fit(self) -> None:
        """Give pixels and cycles a fifth to a quarter of the width."""
        px, bar = self.bench.px, self.bench.px(14)
        if self.form.text.is_empty:
            self.empty.say(EMPTY_TITLE, self._empty_words())
        self._form_area.setFixedWidth(self.form.sizeHint().width() + bar)
        self._right_side.setVisible(self.width() >= px(_ROOM_FOR_PIXELS))
        self._right_side.setFixedWidth(max(px(310), min(px(460), self.width() // 4)) + bar)
