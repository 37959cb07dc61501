"""The findings strip: counts, the finding on show, why, by whose word, and one click to mend it."""

from dataclasses import replace

from PySide6.QtCore import QEvent, QRect, Qt
from PySide6.QtGui import QEnterEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.checks import Finding, Severity
from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.findings.counts import CountButton
from workbench.gui.findings.sentence import Sentence
from workbench.gui.findings.steps import StepButton
from workbench.gui.findings.why import WhyCard
from workbench.gui.findings.words import finding_sign, remedy_label, same_key, source_line, whole_words
from workbench.gui.widgets import Button, ButtonKind, Words, draw_sign
from workbench.pipeline.result import Result
from workbench.project.document import Project

__all__ = ["FindingsStrip"]

_NARROW = 1100
"""Under this width the folded strip drops its name. [px at 14 px text]"""
_TIGHT = 900
"""Under this width it shows one count only. [px at 14 px text]"""


class FindingsStrip(QWidget):
    """Shows the findings of a result one at a time; open it explains, folded it is one line."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Findings")
        self._project: Project | None = None
        self._findings: tuple[Finding, ...] = ()
        self._place = 0
        self._folded = False
        self._lines: list[int] = []
        self._said: tuple[object, ...] = ()
        self._sign_box = QRect()
        self.title = Words(bench, "Findings", caps=True, role="dim", parent=self)
        self.counts = {severity: CountButton(bench, severity, self) for severity in Severity}
        self.headline = Sentence(bench, size=1.1, weight=600, parent=self)
        self.why = Words(bench, parent=self)
        self.source = Words(bench, size=0.86, role="dim", elided=True, parent=self)
        self.ask = Button(bench, "Why?", ButtonKind.QUIET, self)
        self.remedy = Button(bench, "", ButtonKind.REMEDY, self)
        self.hint = Words(bench, "one step, can be undone", size=0.86, role="dim", parent=self)
        self.back = StepButton(bench, "Finding before", forward=False, parent=self)
        self.position = Words(bench, size=0.86, role="dim", mono=True, parent=self)
        self.next = StepButton(bench, "Next finding", forward=True, parent=self)
        self.why.setWordWrap(True)
        self.why.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self.hint.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.position.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.remedy.clicked.connect(self.mend)
        self.back.clicked.connect(lambda: self.step(-1))
        self.next.clicked.connect(lambda: self.step(1))
        self.headline.clicked.connect(self._on_headline)
        self.ask.clicked.connect(self.explain)
        for severity, count in self.counts.items():
            count.clicked.connect(lambda _checked=False, s=severity: self.go_to(s))
        bench.theme_changed.connect(self._arrange)

    @property
    def finding(self) -> Finding | None:
        """The finding on show; none where nothing was found."""
        return self._findings[self._place] if self._findings else None

    def show_result(self, project: Project, result: Result) -> None:
        """Show a result's findings, staying at the one on show where it is still found."""
        shown, before = self.finding, {(same_key(f), f.severity) for f in self._findings}
        self._project, self._findings = project, result.findings
        places = {same_key(finding): place for place, finding in reversed([*enumerate(self._findings)])}
        self._place = places.get(same_key(shown), 0) if shown else 0
        fresh = next((f for f in self._findings if (same_key(f), f.severity) not in before), None)
        if shown and fresh and fresh.severity is not Severity.INFO:
            # This edit brought it up: it is what the person wants to know of, unless what is shown is graver.
            graver = shown.severity.rank < fresh.severity.rank
            self._place = self._place if graver else self._findings.index(fresh)
        self._say()

    def set_folded(self, *, folded: bool) -> None:
        """Take one line, or explain the finding."""
        if folded != self._folded:
            self._folded = folded
            self._arrange()

    def step(self, steps: int) -> None:
        """Show the next finding, or one before."""
        if self._findings:
            self._place = (self._place + steps) % len(self._findings)
            self._say()

    def go_to(self, severity: Severity) -> None:
        """Show the next finding of a severity."""
        places = [i for i, finding in enumerate(self._findings) if finding.severity is severity]
        if places:
            self._place = next((i for i in places if i > self._place), places[0])
            self._say()

    def mend(self) -> None:
        """Apply the remedy of the finding on show: one step that can be undone."""
        finding = self.finding
        if finding is not None and finding.remedy is not None:
            self.bench.apply(finding.remedy.label, finding.remedy.edit, origin=self)

    def choose_part(self) -> None:
        """Choose the part the finding on show is about, in the channel it is about."""
        if (finding := self.finding) is None or not finding.parts:
            return
        if finding.channels and self.bench.view.channel not in finding.channels:
            self.bench.view.choose_channel(finding.channels[0])
        self.bench.view.choose(finding.parts[0])

    def explain(self) -> None:
        """Tell the finding on show whole, on a card over the strip."""
        if self.finding is not None and self._project is not None:
            source = source_line(self.finding, self._project)
            card = WhyCard(self.bench, self.finding, source, self.mend, self.window())
            card.open_over(self.headline)

    def _on_headline(self) -> None:
        self.choose_part()
        if self._folded:
            self.explain()

    def action_specs(self) -> tuple[ActionSpec, ...]:
        """Return what the strip offers to menus, finder and keys."""
        return (
            ActionSpec("findings.next", "Next finding", lambda: self.step(1), "Findings", shortcut="F8"),
            ActionSpec(
                "findings.before", "Finding before", lambda: self.step(-1), "Findings", shortcut="Shift+F8"
            ),
            ActionSpec(
                "findings.why",
                "Why this finding",
                self.explain,
                "Findings",
                shortcut="Alt+F8",
                also="explain reason source",
                enabled=lambda: bool(self._findings),
            ),
            ActionSpec(
                "findings.mend",
                "Mend the finding on show",
                self.mend,
                "Findings",
                shortcut="Ctrl+F8",
                also="fix remedy repair",
                enabled=lambda: bool(remedy_label(self.finding)),
            ),
        )

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        finding = self.finding
        if finding is not None and finding.parts and self.bench.view.channel in finding.channels:
            self.bench.view.point(finding.parts[0])

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.bench.view.point(None)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self.bench.theme
        with QPainter(self) as painter:
            painter.setPen(theme.color("hairline"))
            for x in self._lines:
                painter.drawLine(x, 0, x, self.height())
            if self.finding is not None:
                draw_sign(painter, self._sign_box.toRectF(), finding_sign(self.finding), theme)

    def _say(self) -> None:
        """Put the finding on show into words, if they are other words than before."""
        finding, project = self.finding, self._project
        source = source_line(finding, project) if finding and project else ""
        bare = finding and replace(finding, remedy=None)
        said = (self._place, source, bare, self._counts(), remedy_label(finding))
        if said == self._said:
            return
        self._said = said
        for severity, button in self.counts.items():
            current = finding is not None and finding.severity is severity
            button.show_count(self._counts()[severity], current=current)
        self.headline.say(
            finding.headline if finding else "Nothing to say.",
            tip=whole_words(finding, source) if finding else "",
        )
        if finding is not None:
            self.why.say(finding.why)
            self.source.say(source)
            self.remedy.setText(remedy_label(finding))
            self.remedy.setToolTip(finding.remedy_text)
            self.setAccessibleDescription(f"{finding.headline} {finding.why}")
        self.position.say(f"{self._place + 1} of {len(self._findings)}")
        self._arrange()

    def _counts(self) -> dict[Severity, int]:
        return {severity: sum(f.severity is severity for f in self._findings) for severity in Severity}

    def _arrange(self) -> None:
        if self._folded:
            self._arrange_folded()
        else:
            self._arrange_open()
        finding = self.finding
        self.headline.setEnabled(finding is not None and (self._folded or bool(finding.parts)))
        self.update()

    def _arrange_open(self) -> None:
        px, width = self.bench.px, self.width()
        self._show(self.title, self.why, self.source, self.position, *self.counts.values())
        self._show(self.ask, shown=False)
        self.headline.set_size(1.1, 600)
        self._put(self.title, px(20), px(25))
        for row, button in enumerate(self.counts.values()):
            self._put(button, px(20), px(53 + 22 * row))
        left = px(176)
        self._lines = [left]
        self._sign_box = QRect(left + px(22), px(16), px(18), px(18))
        text, right = left + px(54), width - px(20)
        end = self._arrange_remedy(right, px(34))
        self._put(self.hint, right - self.hint.sizeHint().width(), px(66))
        self._put(self.headline, text, px(25), end - text - px(20))
        self.why.setGeometry(text, px(40), end - text - px(20), px(44))
        self._put(self.source, text, px(101), right - text - px(140))
        x = right - self.next.sizeHint().width() + px(6)
        self._put(self.next, x, px(101))
        self._put(self.position, x - px(56), px(101), px(56))
        self._put(self.back, x - px(56) - self.back.sizeHint().width(), px(101))

    def _arrange_folded(self) -> None:
        px, width, middle = self.bench.px, self.width(), self.height() // 2
        narrow = width < px(_NARROW)
        self._show(self.title, self.why, self.source, self.position, self.hint, shown=False)
        self.headline.set_size(1.0, 500, lines=2 if self.bench.projecting else 1)
        x = px(14 if narrow else 20)
        if not narrow:
            self.title.show()
            self._put(self.title, x, middle)
            x += self.title.sizeHint().width() + px(20)
        current = self.finding.severity if self.finding else None
        for severity, button in self.counts.items():
            # Where the sentence needs the room, only the count of what is on show is left.
            button.setVisible(width >= px(_TIGHT) or severity is current)
            if button.isVisibleTo(self):
                self._put(button, x, middle)
                x += button.sizeHint().width() + px(8 if narrow else 14)
        self._lines = [x]
        self._sign_box = QRect(x + px(14), middle - px(8), px(16), px(16))
        text, right = x + px(40), width - px(10)
        right -= self.next.sizeHint().width()
        self._put(self.next, right, middle)
        right -= self.back.sizeHint().width()
        self._put(self.back, right, middle)
        end = self._arrange_remedy(right - px(8), middle)
        asking = end - self.ask.sizeHint().width() - px(4)
        # Where the sentence needs the room, a click on it asks as well.
        asks = self.finding is not None and self.headline.least_width <= asking - text - px(12)
        self._show(self.ask, shown=asks and not self.bench.projecting)
        if self.ask.isVisibleTo(self):
            end = asking
            self._put(self.ask, end, middle)
        self._put(self.headline, text, middle, end - text - px(12))

    def _arrange_remedy(self, right: int, middle: int) -> int:
        """Put the remedy at the right edge; return where it begins."""
        mends = self.finding is not None and self.finding.remedy is not None
        # On a projector the sentence has the room; the remedy is a key and a command.
        mends = mends and not self.bench.projecting
        self._show(self.remedy, shown=mends)
        self._show(self.hint, shown=mends and not self._folded)
        self._show(self.back, self.next, shown=len(self._findings) > 1)
        self._show(self.position, shown=len(self._findings) > 1 and not self._folded)
        if not mends:
            return right
        width = self.remedy.sizeHint().width()
        self._put(self.remedy, right - width, middle)
        return right - width

    @staticmethod
    def _put(widget: QWidget, x: int, middle: int, width: int | None = None) -> None:
        """Place a widget with its middle on a line."""
        size = widget.sizeHint()
        widget.setGeometry(
            x, middle - size.height() // 2, max(0, size.width() if width is None else width), size.height()
        )

    @staticmethod
    def _show(*widgets: QWidget, shown: bool = True) -> None:
        for widget in widgets:
            widget.setVisible(shown)
