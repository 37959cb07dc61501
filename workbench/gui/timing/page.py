"""The Timing page: line and frame in counts and times, to scale, and what the monitor takes."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.timing.axis_table import AxisTable
from workbench.gui.timing.frame_ruler import FrameRuler
from workbench.gui.timing.frame_view import FrameView
from workbench.gui.timing.monitor import MonitorEntry
from workbench.gui.timing.rates import Rates
from workbench.gui.timing.sent import SentPicture
from workbench.gui.widgets import Sign, Words, draw_sign
from workbench.pipeline.result import Result
from workbench.project.document import Direction, Project

__all__ = ["TimingPage"]

_ROOM_FOR_FRAME, _ROOM_FOR_MONITOR = 1400, 1000
"""Widths from which these have room. [px at 14 px text]"""
_LEAST_FRAME = 280
"""Height in which the frame and its ruler can be read. [px at 14 px text]"""


class TimingPage(QWidget):
    """Shows a project's mode; every count, the clock and the monitor's range can be typed."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Timing")
        self.line = AxisTable(bench, Direction.HORIZONTAL)
        self.frame_table = AxisTable(bench, Direction.VERTICAL)
        self.frame_view = FrameView(bench)
        self.rates = Rates(bench)
        self.monitor = MonitorEntry(bench)
        self.sent = SentPicture(bench)
        self.frame_ruler = FrameRuler(bench)
        self.refusal = Refusal(bench)
        self._lay_out()
        entries = [*self.line.entries.values(), *self.frame_table.entries.values(), self.rates.clock]
        for entry in (*entries, *self.monitor.entries.values(), *self.sent.codes.values()):
            entry.told.connect(self.refusal.tell)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_result(self, project: Project, _result: Result) -> None:
        """Show a project's timing."""
        self.line.show_mode(project.mode)
        self.frame_table.show_mode(project.mode)
        self.rates.show_mode(project.mode)
        self.frame_view.show_project(project)
        self.frame_ruler.show_mode(project.mode)
        self.sent.show_project(project)
        self.monitor.show_project(project)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.bench.theme.color("panel"))

    def _lay_out(self) -> None:
        """Tables, frame, then rates and monitor; what has no room stands below and is scrolled to."""
        content = QWidget()
        self._rows = QVBoxLayout(content)
        self._row, self._below = QHBoxLayout(), QHBoxLayout()
        self._rows.addLayout(self._row)
        self._rows.addLayout(self._below)
        self._rows.addStretch(1)
        self._beside = QHBoxLayout()
        self._beside.addWidget(self.line)
        self._beside.addWidget(self.frame_table)
        tables, right = QVBoxLayout(), QVBoxLayout()
        tables.setSpacing(2)
        tables.addLayout(self._beside)
        tables.addWidget(self.refusal)
        tables.addWidget(self.sent)
        tables.addStretch(1)
        right.addWidget(self.rates)
        right.addWidget(self.monitor, 1)
        self._right = right
        self._row.addLayout(tables)
        self._row.addStretch(1)
        self._row.addLayout(right)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidget(content)
        area.viewport().setAutoFillBackground(False)
        content.setAutoFillBackground(False)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(area)

    def _fit(self) -> None:
        px, width = self.bench.px, self.width()
        beside = width >= px(_ROOM_FOR_FRAME)
        height = max(px(_LEAST_FRAME), self.height() - px(30)) if beside else px(_LEAST_FRAME)
        row, place = (self._row, 2) if beside else (self._below, 0)
        for number, (widget, stretch) in enumerate(((self.frame_ruler, 0), (self.frame_view, 1000))):
            widget.setFixedHeight(height)
            if row.indexOf(widget) < 0:
                (self._below if beside else self._row).removeWidget(widget)
                row.insertWidget(
                    place + number,
                    widget,
                    stretch,
                    Qt.AlignmentFlag.AlignTop if number == 0 else Qt.AlignmentFlag(0),
                )
        narrow = width < px(_ROOM_FOR_MONITOR)
        direction = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        self._row.setDirection(direction)

    def _restyle(self) -> None:
        px = self.bench.px
        self._rows.setContentsMargins(px(20), px(14), px(20), px(8))
        self._rows.setSpacing(px(18))
        self._row.setSpacing(px(36))
        self._below.setSpacing(px(36))
        self._beside.setSpacing(px(44))
        self._right.setSpacing(px(18))
        self._fit()
        self.update()


class Refusal(Words):
    """Why a typed value was not taken; empty room while all is well, so that nothing moves."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, role="fails", size=0.9)
        self._own_bench = bench
        self.setContentsMargins(bench.px(24), 0, 0, 0)
        self.setMinimumHeight(bench.px(20))

    def tell(self, reason: str) -> None:
        """Show a reason, or nothing."""
        self.say(reason)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self.text():
            side = self._own_bench.px(15)
            with QPainter(self) as painter:
                box = QRectF(0, (self.height() - side) / 2, side, side)
                draw_sign(painter, box, Sign.FAILS, self._own_bench.theme)
