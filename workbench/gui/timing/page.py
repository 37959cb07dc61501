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
from workbench.gui.widgets import Button, ButtonKind, Sign, Words, draw_sign
from workbench.pipeline.result import Result
from workbench.project.document import Direction, Project

__all__ = ["TimingPage"]

_ROOM_FOR_RULER, _ROOM_FOR_GAPS, _ROOM_FOR_MONITOR, _ROOM_FOR_TABLES = 1700, 1440, 1000, 780
"""Widths from which these have room. [px at 14 px text]

Without the ruler a button brings the frame into the scanline panel, whose ruler moves the same edges.
"""
_LOW = 350
"""Lower pages set their rows closer. [px at 14 px text]"""
_LEAST_FRAME = 240
"""Height in which the frame and its ruler can be read, where the page is scrolled. [px at 14 px text]"""


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
        self.edges = Button(bench, "Move its edges", ButtonKind.QUIET)
        self.edges.setToolTip(
            "Shows the frame in the scanline panel: the ruler under it has knobs at the frame's edges. A "
            "wider window has room for a ruler here."
        )
        self.edges.clicked.connect(lambda: bench.actions.action("scanline.frame").trigger())
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
        """Tables, frame, then rates and monitor in a row; on narrow pages below each other."""
        content = QWidget()
        self._rows = QVBoxLayout(content)
        self._row = QHBoxLayout()
        self._rows.addLayout(self._row)
        self._rows.addStretch(1)
        self._beside = QHBoxLayout()
        self._beside.addWidget(self.line)
        self._beside.addWidget(self.frame_table)
        tables, right = QVBoxLayout(), QVBoxLayout()
        tables.setSpacing(0)
        tables.addLayout(self._beside)
        tables.addWidget(self.refusal)
        tables.addWidget(self.sent)
        tables.addStretch(1)
        right.addWidget(self.rates)
        right.addWidget(self.monitor, 1)
        self._right = right
        self._row.addLayout(tables)
        self._row.addWidget(self.frame_ruler, 0, Qt.AlignmentFlag.AlignTop)
        self._frame = QVBoxLayout()
        self._frame.setSpacing(0)
        self._frame.addWidget(self.frame_view)
        self._frame.addWidget(self.edges, 0, Qt.AlignmentFlag.AlignLeft)
        self._frame.addStretch(1)
        self._row.addLayout(self._frame, 1)
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
        narrow, low = width < px(_ROOM_FOR_MONITOR), self.height() < px(_LOW)
        direction = QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight
        self._row.setDirection(direction)
        stacked = width < px(_ROOM_FOR_TABLES)
        self._beside.setDirection(
            QBoxLayout.Direction.TopToBottom if stacked else QBoxLayout.Direction.LeftToRight
        )
        top = px(10 if low else 14)
        self._rows.setContentsMargins(px(20), top, px(20), px(6))
        gaps = width >= px(_ROOM_FOR_GAPS)
        self._row.setSpacing(px(36 if gaps else 26))
        self._beside.setSpacing(px(44 if gaps else 26))
        self._right.setSpacing(px(8 if low else 18))
        ruled = width >= px(_ROOM_FOR_RULER)
        self.frame_ruler.setVisible(ruled)
        self.edges.setVisible(not ruled and not self.bench.projecting)
        button = 0 if self.edges.isHidden() else self.edges.sizeHint().height()
        height = px(_LEAST_FRAME) if narrow else max(px(_LEAST_FRAME), self.height() - top - px(16))
        self.frame_ruler.setFixedHeight(height)
        self.frame_view.setFixedHeight(height - button)
        for table in (self.line, self.frame_table, self.rates, self.monitor):
            table.grid.setVerticalSpacing(px(3 if low else 8))

    def _restyle(self) -> None:
        self._fit()
        self.update()


class Refusal(Words):
    """Why a typed value was not taken; empty room while all is well, so that nothing moves."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, role="fails", size=0.9)
        self._own_bench = bench
        bench.theme_changed.connect(self._indent)
        self._indent()

    def _indent(self) -> None:
        self.setContentsMargins(self._own_bench.px(24), 0, 0, 0)
        self.setMinimumHeight(self._own_bench.px(20))

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
