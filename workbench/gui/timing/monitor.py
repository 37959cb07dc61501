"""What the user's monitor takes, entered from its manual, with the caution that goes with it."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.monitor.edid_file import kept_edid
from workbench.gui.settings import EDID, Setting
from workbench.gui.timing.entry import Entry
from workbench.gui.widgets import Button, ButtonKind, Sign, Words, draw_sign
from workbench.project.document import MonitorRange, Project
from workbench.project.edits.drive import set_monitor
from workbench.project.edits.monitor import holds_limits
from workbench.units import format_quantity, parse_quantity

__all__ = ["MonitorEntry"]

_CAUTION = (
    "A fixed-frequency tube can be damaged by a wrong line rate. Enter what its manual allows before "
    "you connect it; never leave it whistling or dark."
)
_FIELDS = ("h_min_hz", "h_max_hz", "v_min_hz", "v_max_hz", "max_pixel_clock_hz")
_USUAL = MonitorRange(30e3, 70e3, 50.0, 75.0)
"""What stands in for the fields not typed yet (our own, a multi-rate monitor). [Hz]"""


class MonitorEntry(QWidget):
    """Shows and takes a project's monitor range."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Monitor")
        self.entries = {
            "h_min_hz": self._entry("Least line rate", "h_min_hz", "30k"),
            "h_max_hz": self._entry("Greatest line rate", "h_max_hz", "70k"),
            "v_min_hz": self._entry("Least field rate", "v_min_hz", "50"),
            "v_max_hz": self._entry("Greatest field rate", "v_max_hz", "75"),
            "max_pixel_clock_hz": self._entry("Greatest pixel clock", "max_pixel_clock_hz", "any"),
        }
        self.forget = Button(bench, "Forget", ButtonKind.QUIET)
        self.forget.clicked.connect(self._forget)
        self.state = Words(bench, size=0.9, role="dim", elided=True)
        self.caution = Caution(bench, _CAUTION)
        self._lay_out()
        bench.settings.changed.connect(self._on_setting)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_project(self, project: Project) -> None:
        """Show what is entered of the monitor."""
        monitor = project.monitor
        for name, entry in self.entries.items():
            hz = None if monitor is None else getattr(monitor, name)
            entry.show_value("" if hz is None else format_quantity(hz, "Hz", 6))
        self.forget.setVisible(monitor is not None)
        self.state.say(self._state(project))

    def _state(self, project: Project) -> str:
        """Say whether a range is held, and whether it is that of the EDID that is open."""
        if project.monitor is None:
            return "not entered"
        edid = kept_edid(self.bench.settings)
        limits = edid.limits if edid else None
        if edid is None or limits is None or not limits.is_whole or not holds_limits(project, limits):
            return "as entered in this project"
        return f"the limits in the EDID of {edid.product.name or edid.product.maker}"

    def _on_setting(self, setting: Setting) -> None:
        if setting is EDID:
            self.state.say(self._state(self.bench.session.project))

    def _entry(self, name: str, field: str, placeholder: str) -> Entry:
        return Entry(self.bench, name, lambda text: self._set(field, text), placeholder=placeholder)

    def _lay_out(self) -> None:
        bench = self.bench
        self.grid = QGridLayout(self)
        self.grid.addWidget(Words(bench, "Monitor", caps=True, role="dim"), 0, 0)
        self.grid.addWidget(self.state, 0, 1, 1, 2)
        self.grid.addWidget(self.forget, 0, 3, Qt.AlignmentFlag.AlignRight)
        rows = (("line rate", "h_min_hz", "h_max_hz"), ("field rate", "v_min_hz", "v_max_hz"))
        for row, (name, low, high) in enumerate(rows, 1):
            self.grid.addWidget(Words(bench, name), row, 0)
            self.grid.addWidget(self.entries[low], row, 1)
            self.grid.addWidget(Words(bench, "…", role="dim"), row, 2)
            self.grid.addWidget(self.entries[high], row, 3)
        self.grid.addWidget(Words(bench, "clock up to"), 3, 0)
        self.grid.addWidget(self.entries["max_pixel_clock_hz"], 3, 3)
        self.grid.addWidget(self.caution, 4, 0, 1, 4)
        self.grid.setColumnStretch(0, 1)
        self.grid.setRowStretch(5, 1)

    def _set(self, field: str, text: str) -> None:
        typed = text.strip()
        hz = None if field == "max_pixel_clock_hz" and not typed else parse_quantity(typed, "Hz")
        self.bench.session.apply(
            "Monitor's range", lambda project: _with_rate(project, field, hz), origin=self
        )

    def _forget(self) -> None:
        self.bench.apply(
            "Forget the monitor's range", lambda project: set_monitor(project, None), origin=self
        )

    def _restyle(self) -> None:
        px = self.bench.px
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(px(8))
        for entry in self.entries.values():
            entry.setFixedWidth(px(104))
            entry.setFixedHeight(px(28))


class Caution(Words):
    """A sentence behind the warning sign, on as many lines as it needs."""

    def __init__(self, bench: Bench, text: str) -> None:
        super().__init__(bench, text, size=0.86, role="dim")
        self._own_bench = bench
        self.setWordWrap(True)
        self.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        bench.theme_changed.connect(self._indent)
        self._indent()

    def _indent(self) -> None:
        self.setContentsMargins(self._own_bench.px(26), self._own_bench.px(8), 0, 0)

    def minimumSizeHint(self) -> QSize:
        return QSize(self._own_bench.px(160), self._own_bench.px(60))

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        px = self._own_bench.px
        with QPainter(self) as painter:
            draw_sign(painter, QRectF(0, px(9), px(15), px(15)), Sign.WARNS, self._own_bench.theme)


def _with_rate(project: Project, field: str, hz: float | None) -> Project:
    """Return the project with one end of the monitor's range changed, the others as they are."""
    known = project.monitor or _USUAL
    values = {name: getattr(known, name) for name in _FIELDS} | {field: hz}
    return set_monitor(project, MonitorRange(**values))
