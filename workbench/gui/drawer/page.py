"""The Parts page: the drawer at the left, the best values that can be made of it at the right."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.circuit.fit.drawer import Drawer
from workbench.circuit.fit.fit import Aim, Candidate, best_at
from workbench.circuit.series import Series
from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.drawer.candidates import (
    AIM_WORDS,
    COLUMNS,
    candidate_rows,
    legs_words,
    proof_words,
    taken,
)
from workbench.gui.drawer.drawer_side import DrawerSide
from workbench.gui.drawer.finding_values import Search
from workbench.gui.widgets import Button, ButtonKind, Choice, Sign, Words
from workbench.gui.widgets.empty_card import EmptyCard
from workbench.gui.widgets.figure_table import FigureTable
from workbench.gui.widgets.progress_bar import ProgressBar
from workbench.gui.widgets.said import Said
from workbench.pipeline.fits import fit_plan
from workbench.pipeline.result import Result
from workbench.project.document import Project
from workbench.project.edits.fits import take_fit

__all__ = ["PartsPage"]

CHOOSE = "Put values into your drawer, or choose a series above, as if you owned all of it."
_DRAWER = "my drawer"
_PARTS = ("one part", "up to two parts", "up to three parts")
_SOURCES = (_DRAWER, *(series.name for series in Series))
_AIMS = tuple(AIM_WORDS)
_ROOM_FOR_DRAWER = 1000
"""Width under which only one side has room: the values. [px at 14 px text]"""


class PartsPage(QWidget):
    """Shows the drawer, and candidates for the values; one of them can be taken."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Parts")
        self.setWhatsThis(
            "Left, the resistors you own, kept for every project. Right, the best values that can be made of "
            "them or of a series, each with what it costs: match is how far the channels' whites differ. "
            "Enter takes the lit row; one step, can be undone."
        )
        self._result: Result | None = None
        self.drawer = DrawerSide(bench)
        self.search = Search(bench)
        self.source = self._choice("From", _SOURCES, self._start_source())
        self.legs = self._choice("Each leg", _PARTS, _PARTS[0])
        self.aim = self._choice("Best at", tuple(AIM_WORDS.values()), AIM_WORDS[Aim.LEVEL])
        self.proof = Said(bench)
        self.bar = ProgressBar(bench, "Values tried")
        self.stop = Button(bench, "Stop")
        self.table = FigureTable(bench, "Candidates", COLUMNS)
        self.empty = EmptyCard(bench, "There is nothing to choose from.", CHOOSE)
        self.chosen_legs = Words(bench, size=0.95, mono=True)
        self.take = Button(bench, "Take these values", ButtonKind.REMEDY)
        self._lay_out()
        self.source.chosen.connect(lambda number: self._choose(self.source, _SOURCES[number]))
        self.legs.chosen.connect(lambda number: self._choose(self.legs, _PARTS[number]))
        self.aim.chosen.connect(lambda number: self._choose(self.aim, AIM_WORDS[_AIMS[number]]))
        self.drawer.own.changed.connect(self._on_drawer)
        self.search.changed.connect(self._show)
        self.search.progress.connect(self._show_progress)
        self.stop.clicked.connect(self.search.stop)
        self.table.pointed.connect(lambda _payload: self._show_chosen())
        self.table.picked.connect(self._take)
        self.take.clicked.connect(lambda: self._take(self.table.current))
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def action_specs(self) -> tuple[ActionSpec, ...]:
        """Return the page's own commands."""
        side = self.drawer
        return (
            ActionSpec(
                "parts.read",
                "Read a drawer from a CSV file",
                side.ask_and_read,
                "Parts",
                tip="Columns value, count, tolerance, measured; nonsense rows are told of and left out.",
            ),
            ActionSpec(
                "parts.write",
                "Save the drawer as a CSV file",
                side.ask_and_write,
                "Parts",
                tip="Writes the drawer as a table that others can read.",
                enabled=lambda: bool(side.own.drawer.parts),
            ),
            ActionSpec(
                "parts.take",
                "Take the values that are lit",
                lambda: self._take(self.table.current),
                "Parts",
                tip="Puts the lit candidate's resistors into the project; one step that can be undone.",
                enabled=self._can_take,
            ),
        )

    def show_result(self, project: Project, result: Result) -> None:
        """Show a project's parts, and look for values for its ladders."""
        self._result = result
        self.drawer.show_project(project)
        self._look()
        self._show()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.bench.theme.color("panel"))

    @property
    def parts(self) -> Drawer:
        """What values are chosen from."""
        if self.source.value == _DRAWER:
            return self.drawer.own.drawer
        return Drawer.of_series(Series[self.source.value])

    @property
    def wanted_aim(self) -> Aim:
        """What the candidates are ordered by."""
        return next(aim for aim, words in AIM_WORDS.items() if words == self.aim.value)

    def _start_source(self) -> str:
        return _DRAWER if self.drawer.own.drawer.parts else self.bench.session.project.series.name

    def _choice(self, caption: str, options: tuple[str, ...], value: str) -> Choice:
        choice = Choice(self.bench, caption, value)
        choice.set_options(options)
        return choice

    def _choose(self, choice: Choice, value: str) -> None:
        choice.set_value(value)
        self._look()
        self._show()

    def _on_drawer(self) -> None:
        if self.source.value == _DRAWER and self.isVisible():
            self._look()
            self._show()

    def _look(self) -> None:
        drawer = self.parts
        if not drawer.parts:
            self.search.look(None)
            return
        most = _PARTS.index(self.legs.value) + 1
        self.search.look(fit_plan(self.bench.session.project, drawer, most))

    def _show(self) -> None:
        if self._result is None:
            return
        run = self.search.run
        current = self.table.current
        rows = [] if run is None else candidate_rows(self._result, run.fit.candidates, self.wanted_aim)
        held = (n for n, row in enumerate(rows) if row.payload is not None and row.payload is current)
        first = next((n for n, row in enumerate(rows) if row.payload is not None), -1)
        self.table.show_rows(rows, current=next(held, first))
        self.table.setVisible(bool(rows))
        nothing = not self.parts.parts
        self.empty.setVisible(nothing)
        self._show_state()
        self._show_chosen()

    def _show_state(self) -> None:
        run, busy = self.search.run, self.search.busy
        self.stop.setVisible(busy)
        self.bar.setVisible(busy)
        if self.search.problem:
            self.proof.tell(Sign.WARNS, self.search.problem)
        elif run is None:
            self.proof.tell(None, "looking for values …" if busy else "")
        else:
            sign, sentence = proof_words(run)
            if self.search.stopped and not run.whole:
                sentence += " Stopped before more parts a leg were tried."
            elif busy:
                sentence += " Trying more parts a leg …"
            self.proof.tell(sign, sentence)

    def _show_progress(self, done: int, total: int) -> None:
        self.bar.show_part(done / total if total else 0.0)

    def _show_chosen(self) -> None:
        candidate = self.table.current
        shown = candidate if isinstance(candidate, Candidate) else None
        held = shown is not None and self._result is not None and taken(self._result, shown)
        self.chosen_legs.say("" if shown is None else legs_words(shown))
        self.take.setVisible(bool(self.table.rows))
        self.take.setEnabled(self._can_take())
        self.take.setText("The board has these" if held else "Take these values")
        self.take.updateGeometry()

    def _can_take(self) -> bool:
        """Return whether the lit candidate can be put into the project as it is now."""
        candidate = self.table.current
        if not isinstance(candidate, Candidate) or self._result is None or self.search.plan is None:
            return False
        plan = self.search.plan
        present = fit_plan(self.bench.session.project, plan.drawer, plan.most_parts)
        return present == plan and not taken(self._result, candidate)

    def _take(self, candidate: object) -> None:
        plan = self.search.plan
        if not isinstance(candidate, Candidate) or plan is None or not self._can_take():
            return
        where = "the drawer" if self.source.value == _DRAWER else self.source.value
        aims = best_at(self.search.run.fit.candidates)[id(candidate)] if self.search.run else ()
        label = f"Values from {where}: {AIM_WORDS[aims[0]] if aims else self.aim.value}"
        if self.bench.apply(label, lambda project: take_fit(project, candidate.networks), origin=self):
            # The ladders are the same, their values were open: what was found holds on.
            self.search.holds_for(fit_plan(self.bench.session.project, plan.drawer, plan.most_parts))

    def _lay_out(self) -> None:
        right = QVBoxLayout()
        self._head, self._foot = QHBoxLayout(), QHBoxLayout()
        self._head.addWidget(Words(self.bench, "Values", caps=True, role="dim"))
        for choice in (self.source, self.legs, self.aim):
            self._head.addWidget(choice)
        self._head.addStretch(1)
        self._head.addWidget(self.bar)
        self._head.addWidget(self.stop)
        self._foot.addWidget(self.chosen_legs, 1)
        self._foot.addWidget(self.take, 0, Qt.AlignmentFlag.AlignBottom)
        right.addLayout(self._head)
        right.addWidget(self.proof)
        right.addWidget(self.empty)
        right.addWidget(self.table, 1)
        right.addStretch(0)
        right.addLayout(self._foot)
        self.chosen_legs.setWordWrap(True)
        self._values = QWidget()
        self._values.setLayout(right)
        right.setContentsMargins(0, 0, 0, 0)
        self._right = right
        self._columns = QHBoxLayout(self)
        self._columns.addWidget(self.drawer)
        self._columns.addWidget(self._values, 1)

    def _restyle(self) -> None:
        px = self.bench.px
        self._columns.setContentsMargins(px(20), px(8), px(20), px(8))
        self._right.setSpacing(px(6))
        self._head.setSpacing(px(10))
        self._foot.setSpacing(px(16))
        self._fit()
        self.update()

    def _fit(self) -> None:
        px, width = self.bench.px, self.width()
        roomy = width >= px(_ROOM_FOR_DRAWER)
        self.drawer.setVisible(roomy)
        self.drawer.setFixedWidth(min(self.drawer.table.wanted_width(), round(width * 0.34)))
        self._columns.setSpacing(px(36 if width >= px(1500) else 24))
        for choice in (self.source, self.legs, self.aim):
            choice.set_caption_shown(shown=width >= px(1240))
