"""What the entries of a card have changed since it was opened."""

from collections.abc import Callable
from math import isclose

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.network.shown import sync_volts
from workbench.gui.widgets import draw_text
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.units import format_fixed, format_quantity

__all__ = ["CABLE_FIGURES", "DRIVE_FIGURES", "Effects", "Figure"]

Figure = tuple[str, Callable[[Result, Channel], str]]
_ALIKE = 1e-3
"""Relative difference up to which a load ends a cable; what it sends back is below a thousandth. [1]"""
LINE = 22
"""Height of a line. [design px]"""


def _white(result: Result, channel: Channel) -> str:
    return format_fixed(float(result.channels[channel].levels.volts_by_code[-1]), "V")


def _open(result: Result, channel: Channel) -> str:
    return format_fixed(float(result.channels[channel].levels.open_by_code[-1]), "V")


def _edge(result: Result, channel: Channel) -> str:
    return format_quantity(result.channels[channel].step.rise_s, "s", 2)


def _ghost(result: Result, channel: Channel) -> str:
    step = result.channels[channel].step
    if step.first_ghost_ratio is None or step.first_ghost_s is None:
        return f"none{_why_no_ghost(result.project)}"
    percent = f"{100 * step.first_ghost_ratio:.2f} %".replace("-", "−")
    return f"{percent} after {format_quantity(step.first_ghost_s, 's', 3)}"


def _why_no_ghost(project: Project) -> str:
    """Return which end keeps an edge from coming once more."""
    cable, load = project.cable, project.load
    if cable is None:
        return ": no cable"
    ended = isclose(load.siemens * cable.ohms, 1.0, rel_tol=_ALIKE)
    return ": the load takes all of it" if ended else ": the ladder takes what comes back"


def _worst_pin(result: Result, _channel: Channel) -> str:
    return format_fixed(result.pins.worst_pin_amps, "A", prefix="m", decimals=2)


def _all_pins(result: Result, _channel: Channel) -> str:
    return format_fixed(result.pins.total_amps, "A", prefix="m", decimals=1)


def _sync(result: Result, _channel: Channel) -> str:
    volts = max(sync_volts(result.project, result, None))
    return format_fixed(volts, "V", decimals=2)


DRIVE_FIGURES: tuple[Figure, ...] = (
    ("white, loaded", _white),
    ("white, open", _open),
    ("worst pin", _worst_pin),
    ("all pins", _all_pins),
    ("edge, 10–90 %", _edge),
)
CABLE_FIGURES: tuple[Figure, ...] = (
    ("white, loaded", _white),
    ("edge, 10–90 %", _edge),
    ("first ghost", _ghost),
    ("sync, high at rest", _sync),
)


class Effects(QWidget):
    """Draws figures of a Result beside those of when the card was opened."""

    def __init__(self, bench: Bench, figures: tuple[Figure, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._figures = bench, figures
        self._before = self._texts(bench.live.result)
        self._now = self._before
        self.setFixedHeight(bench.px(LINE) * len(figures))
        self._name()

    def show_result(self, result: Result) -> None:
        """Show the figures of another result."""
        now = self._texts(result)
        if now != self._now:
            self._now = now
            self._name()
            self.update()

    @property
    def words(self) -> str:
        """Everything that is shown, as one text."""
        rows = zip(self._figures, self._before, self._now, strict=True)
        return "; ".join(
            f"{name} {now}" if now == before else f"{name} {before} to {now}"
            for (name, _), before, now in rows
        )

    def sizeHint(self) -> QSize:
        return QSize(self._bench.px(340), self.height())

    def _texts(self, result: Result) -> tuple[str, ...]:
        return tuple(read(result, self._bench.view.channel) for _, read in self._figures)

    def _name(self) -> None:
        self.setAccessibleName(f"What follows: {self.words}")

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, line = self._bench.theme, self._bench.type, self._bench.px(LINE)
        right = Qt.AlignmentFlag.AlignRight
        with QPainter(self) as painter:
            rows = zip(self._figures, self._before, self._now, strict=True)
            for row, ((name, _), before, now) in enumerate(rows):
                box = QRectF(0, row * line, self.width(), line)
                draw_text(painter, box, name, type_.sans(0.94), theme.color("dim"))
                moved = now != before
                face = type_.mono(0.95, 600 if moved else 400)
                used = draw_text(painter, box, now, face, theme.color("text"), align=right)
                if moved:
                    rest = box.adjusted(0, 0, -used - self._bench.px(8), 0)
                    dim = theme.color("dim")
                    draw_text(painter, rest, f"{before}  →", type_.mono(0.95), dim, align=right)
