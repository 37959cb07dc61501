"""How the monitor that looks is set: tube or panel, its total, phase, adjustment and clamp."""

from dataclasses import replace

from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.errors import TimingError
from workbench.gui.bench import Bench
from workbench.gui.picture.labelled import LabelledChoice, needed_height
from workbench.gui.picture.screen import Screen as Looking
from workbench.gui.widgets import CheckBox, Field, Words
from workbench.timing.mode import Mode
from workbench.timing.sampling import BLACK_DELAY, BLACK_LENGTH
from workbench.waveform.monitor import Monitor, Screen

__all__ = ["LEAVES_OUT", "MonitorPanel", "with_total"]

LEAVES_OUT = (
    "A model, not a measurement: it leaves out noise, clock jitter, the droop of a line between two clamps, "
    "sharpening, scaling to other dots, and a tube's geometry and phosphor."
)
_PHASES = tuple(step / 8 for step in range(8))
_CLAMPS = {
    f"{BLACK_DELAY} … {BLACK_DELAY + BLACK_LENGTH} px after sync": (BLACK_DELAY, BLACK_LENGTH),
    "0 … 10 px after sync": (0, 10),
    "30 … 50 px after sync": (30, 20),
    "on the sync pulse": (-60, 20),
}
"""Where black is taken: the published one first; the others are our own, to try."""


class MonitorPanel(QWidget):
    """Shows and takes the settings of the monitor that looks at the picture."""

    def __init__(self, bench: Bench, looking: Looking) -> None:
        super().__init__()
        self._bench, self._looking = bench, looking
        self.setAccessibleName("Monitor that looks")
        self.kind = LabelledChoice(bench, "screen", [screen.value for screen in Screen])
        self.auto = CheckBox(bench, "adjusts itself")
        self.auto.setToolTip(
            "It looks for bright edges and for the phase with the sharpest pixels in what is sent just now. "
            "Dark edges deceive it: let it do that on a test card with a border, as with a real one."
        )
        self.phase = LabelledChoice(bench, "phase", [_phase(value) for value in _PHASES])
        self.clamp = LabelledChoice(bench, "black", list(_CLAMPS))
        self.total_caption = Words(bench, "assumed total", size=0.86, role="dim")
        self.total = Field(bench, "Assumed line total", placeholder="total as its table says", mono=True)
        self.found = Words(bench, size=0.86, role="dim")
        self.found.setWordWrap(True)
        self.model = Words(bench, LEAVES_OUT, size=0.86, role="dim")
        self.model.setWordWrap(True)
        self._choices = (self.kind, self.phase, self.clamp)
        self.kind.choice.chosen.connect(lambda n: self._set(screen=list(Screen)[n]))
        self.phase.choice.chosen.connect(lambda n: self._set(phase=_PHASES[n]))
        self.clamp.choice.chosen.connect(self._take_clamp)
        self.auto.toggled.connect(lambda on: self._set(auto_adjust=on))
        self.total.editingFinished.connect(self._take_total)
        self._lay_out()

    def show_monitor(self) -> None:
        """Show how the monitor is set, and what it found."""
        monitor = self._bench.monitor
        panel = monitor.screen is Screen.PANEL
        self.kind.choice.set_value(monitor.screen.value)
        self.phase.choice.set_value(_phase(monitor.phase))
        clamp = monitor.clamp_start, monitor.clamp_pixels
        named = [name for name, value in _CLAMPS.items() if value == clamp]
        self.clamp.choice.set_value(named[0] if named else "as set")
        self.auto.blockSignals(True)
        self.auto.setChecked(monitor.auto_adjust)
        self.auto.blockSignals(False)
        self.phase.choice.setEnabled(panel and not monitor.auto_adjust)
        for widget in (self.phase, self.total):
            widget.setVisible(panel)
        self.total_caption.setVisible(panel and not self.kind.low)
        assumed = self._looking.monitor.assumed
        if not self.total.hasFocus():
            self.total.setText("" if assumed is None else str(assumed.h.total))
        self.found.say(self._found())

    def fit_into(self, width: int, height: int) -> None:
        """Be as roomy as a column allows: without captions, then without the note, where it is short."""
        said = self.found.text()
        # As if something were found: what comes later must not move what is there.
        self.found.setText(said or LEAVES_OUT[:120])
        for low, model in ((False, True), (True, True), (True, False)):
            self._set_low(low=low, model=model)
            if needed_height(self._column, width) <= height:
                break
        self.found.setText(said)

    def _set_low(self, *, low: bool, model: bool) -> None:
        for panel in self._choices:
            panel.set_low(low=low)
        self.total_caption.setVisible(not low and self._bench.monitor.screen is Screen.PANEL)
        self.model.setVisible(model)
        self._column.setSpacing(self._bench.px(4 if low else 8))

    def _found(self) -> str:
        shot = self._looking.shot
        if shot is None or shot.look.seen is None:
            return ""
        found = shot.look.seen.adjustment
        if self._bench.monitor.screen is Screen.TUBE:
            return (
                f"a tube counts no pixels: its beam sweeps, the picture begins {found.left} px and "
                f"{found.top} lines after the syncs, and each place shows what arrives while the spot passes"
            )
        return (
            f"it counts {found.total} px a line; the picture begins {found.left} px and {found.top} lines "
            f"after the syncs; it looks {found.phase:.2f} into a pixel"
        )

    def _lay_out(self) -> None:
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        for widget in (
            self.kind,
            self.auto,
            self.phase,
            self.total_caption,
            self.total,
            self.clamp,
            self.found,
            self.model,
        ):
            self._column.addWidget(widget)
        self._column.addStretch(1)

    def _set(self, **settings) -> None:
        self._looking.set_monitor(replace(self._looking.monitor, **settings))

    def _take_clamp(self, number: int) -> None:
        start, pixels = list(_CLAMPS.values())[number]
        self._set(clamp_start=start, clamp_pixels=pixels)

    def _take_total(self) -> None:
        """Take the line total the monitor believes in; none where the field is empty."""
        text = self.total.text().strip()
        self.total.set_state("")
        try:
            shot = self._looking.shot
            mode = shot.result.project.mode if shot else self._bench.session.project.mode
            row = shot.look.verdict.row if shot else None
            self._looking.set_monitor(with_total(self._looking.monitor, row or mode, text))
        except TimingError as reason:
            self.total.set_state("fails")
            self._bench.notice(str(reason), warning=True)


def with_total(monitor: Monitor, row: Mode, text: str) -> Monitor:
    """Return a monitor that believes in a line total, or in its table where no total is given.

    Raises
    ------
    TimingError
        If no line of that total has room for the picture.
    """
    if not text:
        return replace(monitor, assumed=None)
    h = row.h
    least = h.active + h.sync + h.back_porch
    most = 2 * h.total
    if not text.isdecimal() or not least <= int(text) <= most:
        raise TimingError(f"An assumed total is a whole number of pixels from {least} to {most}, not {text}.")
    return replace(monitor, assumed=replace(row, h=replace(h, front_porch=int(text) - least)))


def _phase(value: float) -> str:
    return f"{value:.3f}".rstrip("0").rstrip(".") + " of a pixel"
