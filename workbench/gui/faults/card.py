"""The list of deliberate faults: switched on and off, with what each one shows."""

from PySide6.QtCore import QEvent, QObject, QPoint
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.bringup.faults import Fault
from workbench.bringup.faults.edges import EDGE_FAULTS
from workbench.bringup.faults.levels import LEVEL_FAULTS
from workbench.bringup.faults.timing import TIMING_FAULTS
from workbench.bringup.faults.wiring import WIRING_FAULTS
from workbench.gui.bench import Bench
from workbench.gui.faults.switch import FaultSwitch
from workbench.gui.widgets import Button, CheckBox, Chip, Words
from workbench.gui.widgets.card import Card
from workbench.gui.widgets.scrolled import scrolled
from workbench.project.document import Channel

__all__ = ["GROUPS", "FaultsCard"]

GROUPS = (
    ("levels", LEVEL_FAULTS),
    ("wiring", WIRING_FAULTS),
    ("edges and cable", EDGE_FAULTS),
    ("timing and sync", TIMING_FAULTS),
)
"""The lists of faults, by the word over each."""

_DETAIL = 320
"""Width of what is told about a fault. [design px]"""
_GAP = 6
"""Between the card and what it stands under. [design px]"""
_LIST, _TOLD = 3, 2
"""How the list and what is told about a fault share the height. [1]"""
_FIELDS = (("monitor", "the monitor shows"), ("instrument", "an instrument shows"), ("check", "what decides"))


class FaultsCard(Card):
    """Shows every fault as a box to tick; the bench beside it breaks at once.

    It stands at the right edge, where it hides neither the network nor blanking nor the picture.
    """

    def __init__(self, bench: Bench, faults: FaultSwitch, window: QWidget) -> None:
        super().__init__(bench, "Deliberate faults", window)
        self._faults = faults
        self._told: Fault = GROUPS[0][1][0]
        self.boxes: dict[str, CheckBox] = {}
        self.chips = {channel: Chip(bench, channel) for channel in Channel}
        self.channel = bench.view.channel
        self.end = Button(bench, "End all faults")
        self._fill_head()
        boxes = self._boxes()
        self.list = scrolled(boxes)
        self.list.setMinimumWidth(boxes.sizeHint().width() + bench.px(16))
        self.column.addWidget(self.list, _LIST)
        self.details = scrolled(self._details())
        self.column.addWidget(self.details, _TOLD)
        faults.changed.connect(self._show)
        bench.live.result_changed.connect(self._tell)
        self._show()

    def open_between(self, top: int, foot: int) -> None:
        """Stand at the window's right edge between two heights of it. [px]"""
        gap = self.bench.px(_GAP)
        self.setFixedSize(self.sizeHint().width(), foot - top - 2 * gap)
        self.open_at(QPoint(self._window.width(), top + gap))

    def choose_channel(self, channel: Channel) -> None:
        """Put faults of one channel into another; those that are on move there."""
        self.channel = channel
        for each in self._faults.on:
            if each.fault.one_channel:
                self._faults.turn(each.fault, on=True, channel=channel)
        self._show()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Tell about the fault that is pointed at or has the focus."""
        if event.type() in (QEvent.Type.Enter, QEvent.Type.FocusIn) and isinstance(watched, CheckBox):
            if event.type() == QEvent.Type.FocusIn:
                self.list.ensureWidgetVisible(watched)
            fault = watched.property("fault")
            if isinstance(fault, str):
                self._told = next(f for _, group in GROUPS for f in group if f.id == fault)
                self._tell()
        return super().eventFilter(watched, event)

    def _fill_head(self) -> None:
        bench = self.bench
        head, where = QHBoxLayout(), QHBoxLayout()
        head.addWidget(Words(bench, "Deliberate faults", size=1.1, weight=600))
        head.addStretch(1)
        self.end.clicked.connect(self._faults.end_all)
        head.addWidget(self.end)
        self.column.addLayout(head)
        self.column.addWidget(Words(bench, "never saved; the design stays as it is", size=0.9, role="dim"))
        where.setSpacing(bench.px(4))
        where.addWidget(Words(bench, "in", size=0.9, role="dim"))
        for channel, chip in self.chips.items():
            chip.clicked.connect(lambda _checked=False, channel=channel: self.choose_channel(channel))
            where.addWidget(chip)
        where.addStretch(1)
        self.column.addLayout(where)

    def _boxes(self) -> QWidget:
        bench, content = self.bench, QWidget()
        column = QVBoxLayout(content)
        column.setContentsMargins(0, 0, bench.px(10), 0)
        column.setSpacing(bench.px(2))
        for name, group in GROUPS:
            column.addSpacing(bench.px(6) if self.boxes else 0)
            column.addWidget(Words(bench, name, caps=True, role="dim"))
            for fault in group:
                column.addWidget(self._box(fault))
        column.addStretch(1)
        return content

    def _box(self, fault: Fault) -> CheckBox:
        box = CheckBox(self.bench, fault.name)
        box.setProperty("fault", fault.id)
        box.setAccessibleDescription(fault.monitor)
        box.installEventFilter(self)
        box.toggled.connect(lambda on: self._faults.turn(fault, on=on, channel=self.channel))
        self.boxes[fault.id] = box
        return box

    def _details(self) -> QWidget:
        bench, content = self.bench, QWidget()
        column = QVBoxLayout(content)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(bench.px(4))
        self.name = Words(bench, size=1.05, weight=600)
        self.name.wrap(bench.px(_DETAIL))
        column.addWidget(self.name)
        self.said: dict[str, Words] = {}
        for field, caption in _FIELDS:
            column.addSpacing(bench.px(8))
            column.addWidget(Words(bench, caption, size=0.86, role="dim"))
            self.said[field] = Words(bench)
            self.said[field].wrap(bench.px(_DETAIL))
            column.addWidget(self.said[field])
        self.source = Words(bench, size=0.86, role="dim")
        self.source.wrap(bench.px(_DETAIL))
        self.refused = Words(bench, size=0.95, role="fails")
        self.refused.wrap(bench.px(_DETAIL))
        column.addSpacing(bench.px(10))
        column.addWidget(self.source)
        column.addWidget(self.refused)
        column.addStretch(1)
        return content

    def _show(self) -> None:
        for fault_id, box in self.boxes.items():
            on = any(each.fault.id == fault_id for each in self._faults.on)
            if on != box.isChecked():
                box.blockSignals(True)
                box.setChecked(on)
                box.blockSignals(False)
        self.chips[self.channel].setChecked(True)
        self.end.setEnabled(bool(self._faults.on))
        self._tell()

    def _tell(self, _result: object = None) -> None:
        fault = self._told
        where = f", in {self.channel.value}" if fault.one_channel else ""
        self.name.say(f"{fault.name}{where}")
        for field, words in self.said.items():
            words.say(getattr(fault, field))
        self.source.say(fault.source_words)
        self.refused.say(self._faults.refused.get(fault.id, ""))
