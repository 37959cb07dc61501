"""The Monitor page: what it sees, what it says of itself, and what can be written for another."""

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.monitor.edid_file import ask_for_edid, kept_edid
from workbench.gui.monitor.edid_panel import EdidPanel
from workbench.gui.monitor.seen import SeenPanel
from workbench.gui.monitor.write_panel import WritePanel
from workbench.gui.settings import EDID, Setting
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.gui.widgets.scrolled import scrolled
from workbench.pipeline.result import Result
from workbench.pipeline.screen import verdict_on
from workbench.project.document import Project

__all__ = ["MonitorPage"]

_PARTS = (("sees", "What it sees"), ("says", "What it says"), ("write", "Write one"))
_ROOM_FOR = {"sees": 480, "says": 620, "write": 320}
"""Widths in which a part can be read beside the others. [px at 14 px text]"""


class MonitorPage(QWidget):
    """Shows its parts beside each other; where not all have room, a row of names chooses one."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Monitor")
        self.seen = SeenPanel(bench)
        self.edid = EdidPanel(bench)
        self.write = WritePanel(bench)
        self._first = "sees"
        self.parts = {
            name: scrolled(panel)
            for (name, _), panel in zip(_PARTS, (self.seen, self.edid, self.write), strict=True)
        }
        self.choices = {name: Button(bench, words, ButtonKind.SEGMENT, self) for name, words in _PARTS}
        self.warning = Words(bench, weight=600, role="warns")
        self.warning.setWordWrap(True)
        self.warning.hide()
        self._head = QHBoxLayout()
        for name, button in self.choices.items():
            button.setAutoExclusive(True)
            button.clicked.connect(lambda _checked=False, name=name: self.choose(name))
            self._head.addWidget(button)
        self._head.addStretch(1)
        self._row = QHBoxLayout()
        for name, area in self.parts.items():
            self._row.addWidget(area, _ROOM_FOR[name])
        self._column = QVBoxLayout(self)
        self._column.addWidget(self.warning)
        self._column.addLayout(self._head)
        self._column.addLayout(self._row, 1)
        self.edid.open_asked.connect(lambda: ask_for_edid(bench))
        self.edid.forget_asked.connect(lambda: bench.settings.set(EDID, ""))
        bench.settings.changed.connect(self._on_setting)
        bench.theme_changed.connect(self._restyle)
        self.edid.show_edid(kept_edid(bench.settings))
        self._restyle()

    def show_result(self, _project: Project, result: Result) -> None:
        """Show what a monitor makes of the signal; what is written is for the design."""
        self._warn(result)
        self.seen.show_mode(result.project.mode)
        self.edid.show_project(result.project)
        self.write.show_project(self.bench.session.project)

    def _warn(self, result: Result) -> None:
        """Say that it is a broken board that is seen, and that there is nothing to see."""
        names = ", ".join(each.words for each in self.bench.faults.on)
        verdict = verdict_on(result, self.bench.monitor)
        said = [f"Seen with deliberate faults on, not as designed: {names}."] if names else []
        if not verdict.standing.has_picture:
            standing = verdict.standing.value
            said.append(f"{standing[:1].upper()}{standing[1:]}. {verdict.sentence}")
        self.warning.say(" ".join(said))
        self.warning.setVisible(bool(said))
        self._fit()

    def choose(self, name: str) -> None:
        """Bring a part into sight."""
        self._first = name
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.bench.theme.color("panel"))

    def _on_setting(self, setting: Setting) -> None:
        if setting is EDID:
            self.edid.show_edid(kept_edid(self.bench.settings))
            self.edid.show_project(self.bench.live.result.project)
            self.choose("says")

    def _fit(self) -> None:
        """Show all parts, or the chosen one alone: the lit name is what is seen."""
        together = self.width() >= self.bench.px(sum(_ROOM_FOR.values()) + 80)
        for name, area in self.parts.items():
            area.setVisible(together or name == self._first)
        for name, button in self.choices.items():
            button.setVisible(not together)
            button.setChecked(name == self._first)
        room = self._room(headed=not together)
        self.seen.fit(room, titled=together)
        self.edid.fit(room)

    def _room(self, *, headed: bool) -> int:
        """Return the height that is left for a part. [px]"""
        margins = self._column.contentsMargins()
        above = self._head.sizeHint().height() + self._column.spacing() if headed else 0
        if self.warning.isVisibleTo(self):
            above += self.warning.heightForWidth(self.width()) + self._column.spacing()
        return self.height() - margins.top() - margins.bottom() - above

    def _restyle(self) -> None:
        px = self.bench.px
        self._column.setContentsMargins(px(20), px(10), px(12), px(6))
        self._column.setSpacing(px(8))
        self._row.setSpacing(px(28))
        self._head.setSpacing(px(4))
        self._fit()
        self.update()
