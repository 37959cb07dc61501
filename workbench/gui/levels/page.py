"""The Levels page: four pictures and a table of one channel, the held code lit in all of them."""

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.circuit.solution import Levels
from workbench.gui.bench import Bench
from workbench.gui.levels.errors import ErrorBars
from workbench.gui.levels.eye import EyeStrip
from workbench.gui.levels.figures import CodeFigures, code_figures
from workbench.gui.levels.matching import Sentence, matching_words, source_words
from workbench.gui.levels.staircase import Staircase
from workbench.gui.levels.table_view import CodeTable
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.gui.widgets.said import Said
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project

__all__ = ["LevelsPage"]

DNL_WORDS = ("size of each step against one LSB", "steps against one LSB", "of steps")
INL_WORDS = ("distance of each level from the straight line", "from the straight line", "of levels")
"""What the two errors are, longest wording first."""
_EXPORT = "file.export-levels-csv"
_ROOM_FOR_EYE = 230
_ROOM_FOR_SENTENCES = 240
_ROOM_FOR_BARS, _ROOM_FOR_BARS_HIGH = 460, 190
"""Sizes from which a picture has room. [px at 14 px text]"""


class LevelsPage(QWidget):
    """Shows the drawn channel's levels; a click anywhere holds that code on the pins."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Levels")
        self._result: Result | None = None
        self._shown: tuple[Levels, Channel] | None = None
        self._edge = 0
        self.figures: CodeFigures | None = None
        self.staircase = Staircase(bench, "Staircase of levels", self.hold, self)
        self.dnl = ErrorBars(bench, "DNL", DNL_WORDS, "dnl_lsb", self.hold, self)
        self.inl = ErrorBars(bench, "INL", INL_WORDS, "inl_lsb", self.hold, self)
        self.eye = EyeStrip(bench, "Lightness of every code", self.hold, self)
        self.title = Words(bench, "Codes", caps=True, role="dim", parent=self)
        self.copy = Button(bench, "Copy as table", ButtonKind.QUIET, self)
        self.save = Button(bench, "Save as CSV …", ButtonKind.USUAL, self)
        self.save.setToolTip("Writes every code of every channel: volts, steps, errors, currents, lightness.")
        self.matching = Said(bench, size=0.9, parent=self)
        self.source = Said(bench, size=0.9, parent=self)
        self.table = CodeTable(bench, self.hold, self)
        self.copy.clicked.connect(self.table.copy)
        self.save.clicked.connect(lambda: self.bench.actions.action(_EXPORT).trigger())
        bench.view.changed.connect(self._take)
        bench.theme_changed.connect(self._arrange)

    def show_result(self, _project: Project, result: Result) -> None:
        """Show a result's levels."""
        self._result = result
        self._take()

    def hold(self, code: int | None) -> None:
        """Hold a code on the drawn channel's pins, on all three where they are linked."""
        linked = self.bench.session.project.linked
        self.bench.view.hold(tuple(Channel) if linked else (self.bench.view.channel,), code)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.bench.theme.color("panel"))
            painter.setPen(self.bench.theme.color("hairline"))
            painter.drawLine(self._edge, 0, self._edge, self.height())

    def _take(self) -> None:
        if self._result is None:
            return
        channel = self.bench.view.channel
        levels = self._result.channels[channel].levels
        if self._shown is None or self._shown[0] is not levels or self._shown[1] is not channel:
            self._shown = levels, channel
            bits = None if self.figures is None else self.figures.bits
            self.figures = code_figures(self._result.channels[channel])
            self._show(self.figures)
            if self.figures.bits != bits:
                self._arrange()
        self._say(matching_words(self._result), source_words(self._result, channel))
        held = self._lit(channel, self._result)
        held = held if held is not None and self.figures and held < self.figures.n_codes else None
        for view in (self.staircase, self.dnl, self.inl, self.eye):
            view.show_held(held)
        self.table.show_held(held)

    def _say(self, *sentences: Sentence) -> None:
        """Say how channels match and what the source is; make room where a sentence needs more."""
        before = self._heights()
        for said, sentence in zip((self.matching, self.source), sentences, strict=True):
            said.tell(*sentence)
        if self._heights() != before:
            self._arrange()

    def _heights(self) -> tuple[int, ...]:
        """Return how high the two sentences are. [px]"""
        least, room = self.bench.px(20), self.width() - self._edge - self.bench.px(32)
        return tuple(max(least, said.heightForWidth(room)) for said in (self.matching, self.source))

    def _lit(self, channel: Channel, result: Result) -> int | None:
        """Return the code that is held, or that of the pixel that is looked at."""
        view, line = self.bench.view, result.scanline
        held = view.held(channel)
        if held is not None or view.pixel is None or line is None or view.pixel >= line.codes.shape[1]:
            return held
        return int(line.codes[list(Channel).index(channel), view.pixel])

    def _show(self, figures: CodeFigures) -> None:
        step, level = figures.worst_step, figures.worst_level
        self.staircase.show_codes(figures, f"{figures.n_codes} codes, white {figures.volts[-1]:.3f} V")
        self.dnl.show_codes(figures, " ".join(("worst", *figures.worst_words(figures.dnl_lsb, step))))
        self.inl.show_codes(figures, " ".join(("worst", *figures.worst_words(figures.inl_lsb, level))))
        self.eye.show_codes(figures, figures.eye_words)
        self.table.show_codes(figures)

    def _arrange(self) -> None:
        px, width, height = self.bench.px, self.width(), self.height()
        pad, gap, top = px(20), px(40), px(12)
        table = min(self.table.wanted_width() + pad, width // 2)
        self._edge = width - table - pad
        left = self._edge - 2 * pad
        # With large text or a low page the staircase and the table stay; the others go first.
        self.eye.setVisible(height >= px(_ROOM_FOR_EYE))
        bars_too = left >= px(_ROOM_FOR_BARS) and height >= px(_ROOM_FOR_BARS_HIGH)
        self.dnl.setVisible(bars_too)
        self.inl.setVisible(bars_too)
        strip = self.eye.sizeHint().height() if height >= px(_ROOM_FOR_EYE) else 0
        plots = height - top - strip - px(18)
        stairs = round((left - gap) * 0.565) if bars_too else left
        self.staircase.setGeometry(pad, top, stairs, plots)
        bars = left - gap - stairs
        for row, view in enumerate((self.dnl, self.inl)):
            view.setGeometry(pad + stairs + gap, top + row * (plots // 2), bars, plots // 2)
        self.eye.setGeometry(pad, height - strip - px(8), left, strip)
        self._arrange_codes(self._edge + pad, top)
        self.update()

    def _arrange_codes(self, start: int, top: int) -> None:
        """Place the right side: head, the two sentences where there is room, the table."""
        px, width, height = self.bench.px, self.width(), self.height()
        right = width - px(8)
        for button in (self.save, self.copy):
            hint = button.sizeHint()
            button.setGeometry(right - hint.width(), top - px(4), hint.width(), px(26))
            right -= hint.width() + px(4)
        # Where there is room for one only, it is the one that no key stands for.
        self.copy.setVisible(self.copy.x() >= start + px(60))
        self.title.setGeometry(start, top, px(60), px(22))
        roomy = height >= px(_ROOM_FOR_SENTENCES)
        head = top + px(26)
        for said, lines in zip((self.matching, self.source), self._heights(), strict=True):
            said.setVisible(roomy)
            if roomy:
                said.setGeometry(start, head, width - start - px(12), lines)
                head += lines + px(2)
        room = height - head - px(4)
        self.table.setGeometry(start - px(8), head, width - start, self.table.whole_height(room))
