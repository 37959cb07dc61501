"""The card about the pins: supply, on-resistance, zeros, rise time, and what they may carry."""

from functools import partial

from PySide6.QtWidgets import QWidget

from workbench.circuit.codes import pin_label
from workbench.circuit.network import Zeros
from workbench.gui.bench import Bench
from workbench.gui.network.around.effects import DRIVE_FIGURES
from workbench.gui.network.around.form_card import FormCard, Segments
from workbench.gui.network.around.live_field import LiveField
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.project.edits.drive import (
    set_limits,
    set_on_resistance,
    set_rise,
    set_skew,
    set_supply,
    set_zeros,
)
from workbench.project.plausible import implausible_limits
from workbench.units import format_quantity, parse_current, parse_quantity

__all__ = ["DriveCard"]

CAUTION = (
    "An absolute maximum is a damage limit, not a design target: enter the operating figures of your chip, "
    "at your supply. Backporch knows no chip; the maker's data come first."
)


class DriveCard(FormCard):
    """Shows what drives the pins of a project, and takes other values."""

    def __init__(self, bench: Bench, window: QWidget) -> None:
        super().__init__(bench, "Pins and supply", DRIVE_FIGURES, window)
        self.add_heading("A pin that drives")
        self.add_field("supply", LiveField(bench, "supply", _supply, _put_supply))
        high = LiveField(bench, "on-resistance high", _high, _put_high)
        low = LiveField(bench, "on-resistance low", _low, _put_low)
        self.add_field("on-resistance, driving 1", high, "0 Ω is an ideal pin")
        self.add_field("on-resistance, driving 0", low)
        self.zeros = Segments(bench, "a 0", ("drives to ground", "lets go"))
        for button, zeros in zip(self.zeros.buttons, Zeros, strict=True):
            button.clicked.connect(partial(self._set_zeros, zeros))
        self.add_row("a 0", self.zeros)
        rise = LiveField(bench, "rise time", _rise, _put_rise)
        self.add_field("rise time", rise, "Of the ramp, 0 to 100 %")
        self.add_heading("What it may carry")
        pin = LiveField(
            bench, "limit of one pin", _pin_limit, _put_pin_limit, doubt=_pin_doubt, placeholder="not entered"
        )
        every = LiveField(
            bench, "limit of all pins", _total, _put_total, doubt=_total_doubt, placeholder="not entered"
        )
        self.add_field("one pin, mA", pin, "Your own entry, from the maker's data")
        self.add_field("all pins together, mA", every, "Your own entry, from the maker's data")
        self.add_column()
        self._add_skews()
        self.add_caution(CAUTION)
        self.finish()
        self.first = self.fields["supply"]
        self.show_result(bench.live.result)

    def show_result(self, result: Result) -> None:
        """Show another result, and the values in force."""
        super().show_result(result)
        self.zeros.choose(tuple(Zeros).index(result.project.driver.zeros))

    def _add_skews(self) -> None:
        """Add a field for how late each pin of the drawn channel changes."""
        project, channel = self.bench.session.project, self.bench.view.channel
        self.add_heading(f"How late each pin of {channel.value} changes")
        for pin, name in enumerate(project.wiring[channel]):
            field = LiveField(
                self.bench,
                f"skew of {name}",
                partial(_skew, channel, pin),
                partial(_put_skew, channel, pin),
                placeholder="in time",
            )
            carried = " ".join(map(str, pin_label(project.channels[channel], pin)))
            self.add_field(f"{name}, {carried}", field, "Later than the earliest pin; empty is in time")

    def _set_zeros(self, zeros: Zeros) -> None:
        words = "drives to ground" if zeros is Zeros.DRIVEN else "lets go"
        self.bench.apply(f"A 0 {words}", lambda project: set_zeros(project, zeros))


def _supply(project: Project) -> str:
    return format_quantity(project.driver.supply_volts, "V")


def _put_supply(project: Project, text: str) -> Project:
    return set_supply(project, parse_quantity(text, "V"))


def _high(project: Project) -> str:
    return format_quantity(project.driver.high_ohms, "Ω")


def _put_high(project: Project, text: str) -> Project:
    return set_on_resistance(project, parse_quantity(text, "Ω", zero=True), project.driver.low_ohms)


def _low(project: Project) -> str:
    return format_quantity(project.driver.low_ohms, "Ω")


def _put_low(project: Project, text: str) -> Project:
    return set_on_resistance(project, project.driver.high_ohms, parse_quantity(text, "Ω", zero=True))


def _rise(project: Project) -> str:
    return format_quantity(project.driver.rise_s, "s")


def _put_rise(project: Project, text: str) -> Project:
    return set_rise(project, parse_quantity(text, "s", zero=True))


def _skew(channel: Channel, pin: int, project: Project) -> str:
    skews_s = project.skews[channel]
    late_s = skews_s[pin] if pin < len(skews_s) else 0.0
    return format_quantity(late_s, "s") if late_s else ""


def _put_skew(channel: Channel, pin: int, project: Project, text: str) -> Project:
    late_s = parse_quantity(text, "s", zero=True) if text.strip() else 0.0
    return set_skew(project, channel, pin, late_s)


def _amps(amps: float | None) -> str:
    return "" if amps is None else format_quantity(amps, "A")


def _pin_limit(project: Project) -> str:
    return _amps(project.driver.pin_limit_amps)


def _put_pin_limit(project: Project, text: str) -> Project:
    return set_limits(project, _limit(text), project.driver.total_limit_amps)


def _total(project: Project) -> str:
    return _amps(project.driver.total_limit_amps)


def _put_total(project: Project, text: str) -> Project:
    return set_limits(project, project.driver.pin_limit_amps, _limit(text))


def _pin_doubt(project: Project) -> str | None:
    return implausible_limits(project.driver.pin_limit_amps, None)


def _total_doubt(project: Project) -> str | None:
    return implausible_limits(None, project.driver.total_limit_amps)


def _limit(text: str) -> float | None:
    return parse_current(text) if text.strip() else None
