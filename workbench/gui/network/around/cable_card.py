"""The card about the far end: termination, monitors, the cable to them, and the sync lines."""

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from PySide6.QtWidgets import QWidget

from workbench.circuit.network import Cable
from workbench.errors import QuantityError
from workbench.gui.bench import Bench
from workbench.gui.network.around.coax import COAX, coax_of
from workbench.gui.network.around.effects import CABLE_FIGURES
from workbench.gui.network.around.form_card import FormCard, Segments
from workbench.gui.network.around.live_field import LiveField
from workbench.gui.widgets import Choice
from workbench.pipeline.result import Result
from workbench.project.document import Direction, Project
from workbench.project.edits.drive import set_cable, set_input_capacitance, set_load, set_monitors
from workbench.project.edits.sync import set_sync_input, set_sync_series
from workbench.project.plausible import implausible_cable
from workbench.units import format_quantity, parse_quantity

__all__ = ["CableCard"]

FIRST_METRES = 2.0
"""Length of a cable that is put in; our own choice, to be typed over. [m]"""
CAUTION = (
    "Cables by kind are typical values, from memory; the maker's data come first. An instrument with a 50 Ω "
    "input is a load of 50 Ω. Without a load, levels read as on an open connector."
)


class CableCard(FormCard):
    """Shows what hangs on the connector of a project, and takes other values."""

    def __init__(self, bench: Bench, window: QWidget) -> None:
        super().__init__(bench, "Monitor and cable", CABLE_FIGURES, window)
        self._fitted_last = bench.session.project.cable or Cable(FIRST_METRES)
        """What comes back when a length is typed again; it keeps its kind."""
        self.add_heading("Monitor")
        load = LiveField(bench, "load", _load, _put_load, placeholder="none")
        self.add_field("load of one", load, "Empty where none is fitted")
        self.monitors = Segments(bench, "monitors", ("1", "2", "3"))
        for count, button in enumerate(self.monitors.buttons, 1):
            button.clicked.connect(partial(self._set_monitors, count))
        self.add_row("monitors", self.monitors)
        farads = LiveField(bench, "input capacitance", _farads, _put_farads)
        self.add_field("input capacitance", farads, "Of one monitor")
        self.add_heading("Sync lines")
        for line in Direction:
            self._sync_fields(line)
        self.add_column()
        self.add_heading("Cable between J1 and monitor")
        self.fitted = Segments(bench, "cable", ("none", "fitted"))
        self.fitted.buttons[0].clicked.connect(lambda: self._set_cable("Take the cable off", None))
        self.fitted.buttons[1].clicked.connect(self._fit)
        self.add_row("cable", self.fitted)
        self.kind = Choice(bench, "kind of cable")
        self.kind.set_caption_shown(shown=False)
        self.kind.set_options([coax.name for coax in COAX])
        self.kind.chosen.connect(self._choose_kind)
        self.add_row("kind", self.kind, "Typical values, from memory: the maker's data come first")
        self._cable_fields()
        self.add_caution(CAUTION)
        self.finish()
        self.first = load
        self.show_result(bench.live.result)

    def show_result(self, result: Result) -> None:
        """Show another result, and the values in force."""
        super().show_result(result)
        project = result.project
        cable, coax = project.cable, coax_of(project.cable)
        self._fitted_last = cable or self._fitted_last
        self.monitors.choose(project.load.monitors - 1)
        self.fitted.choose(0 if cable is None else 1)
        self.kind.set_value(coax.name if coax else "your own values" if cable else "no cable")
        for caption in ("impedance", "wave speed", "loss, dB a metre", "loss given at"):
            self.fields[caption].setEnabled(cable is not None)

    def _cable_fields(self) -> None:
        bench = self.bench
        length = LiveField(
            bench, "cable length", _metres, self._put_metres, doubt=_length_doubt, placeholder="none"
        )
        self.add_field("length", length, "Empty or 0 where there is no cable")
        rows: tuple[tuple[str, str, Callable[[Cable], str], Callable[[Cable, str], Cable]], ...] = (
            ("impedance", "Characteristic impedance", _ohms, _put_ohms),
            ("wave speed", "As a part of the speed of light", _velocity, _put_velocity),
            ("loss, dB a metre", "Rising with the root of the frequency", _loss, _put_loss),
            ("loss given at", "The frequency of that loss", _loss_at, _put_loss_at),
        )
        for caption, note, read, put in rows:
            field = LiveField(bench, f"cable {caption}", partial(_of_cable, read), partial(_in_cable, put))
            self.add_field(caption, field, note)

    def _sync_fields(self, line: Direction) -> None:
        name = line.value.upper()
        series = LiveField(
            self.bench, f"{name} sync resistor", partial(_series, line), partial(_put_series, line)
        )
        self.add_field(f"{name}: series resistor", series, "0 is a plain wire")
        into = LiveField(
            self.bench,
            f"{name} sync input",
            partial(_input, line),
            partial(_put_input, line),
            placeholder="none",
        )
        self.add_field(
            f"{name}: monitor's input",
            into,
            "Its resistance to ground; empty where it draws nothing. High from 2.0 V, low to 0.8 V.",
        )

    def _set_monitors(self, count: int) -> None:
        words = "One monitor" if count == 1 else f"{count} monitors"
        self.bench.apply(words, lambda project: set_monitors(project, count))

    def _fit(self) -> None:
        if self.bench.session.project.cable is None:
            self._set_cable("Put a cable in", self._fitted_last)

    def _choose_kind(self, number: int) -> None:
        cable = self.bench.session.project.cable
        coax = COAX[number]
        self._set_cable(f"Cable {coax.name}", coax.at(cable.metres if cable else FIRST_METRES))

    def _put_metres(self, project: Project, text: str) -> Project:
        metres = parse_quantity(text, "m", zero=True) if text.strip() else 0.0
        return set_cable(
            project, replace(project.cable or self._fitted_last, metres=metres) if metres else None
        )

    def _set_cable(self, label: str, cable: Cable | None) -> None:
        self.bench.apply(label, lambda project: set_cable(project, cable))


def _load(project: Project) -> str:
    return "" if project.load.ohms is None else format_quantity(project.load.ohms, "Ω")


def _put_load(project: Project, text: str) -> Project:
    return set_load(project, parse_quantity(text, "Ω") if text.strip() else None)


def _farads(project: Project) -> str:
    return format_quantity(project.load.farads, "F")


def _put_farads(project: Project, text: str) -> Project:
    return set_input_capacitance(project, parse_quantity(text, "F", zero=True))


def _metres(project: Project) -> str:
    return "" if project.cable is None else format_quantity(project.cable.metres, "m")


def _length_doubt(project: Project) -> str | None:
    return implausible_cable(project.cable.metres if project.cable else None)


def _of_cable(read: Callable[[Cable], str], project: Project) -> str:
    return "" if project.cable is None else read(project.cable)


def _in_cable(put: Callable[[Cable, str], Cable], project: Project, text: str) -> Project:
    return project if project.cable is None else set_cable(project, put(project.cable, text))


def _ohms(cable: Cable) -> str:
    return format_quantity(cable.ohms, "Ω")


def _put_ohms(cable: Cable, text: str) -> Cable:
    return replace(cable, ohms=parse_quantity(text, "Ω"))


def _velocity(cable: Cable) -> str:
    return f"{cable.velocity:g}"


def _put_velocity(cable: Cable, text: str) -> Cable:
    return replace(cable, velocity=_plain(text))


def _loss(cable: Cable) -> str:
    return f"{cable.loss_db_per_m:g}"


def _put_loss(cable: Cable, text: str) -> Cable:
    return replace(cable, loss_db_per_m=_plain(text))


def _loss_at(cable: Cable) -> str:
    return format_quantity(cable.loss_at_hz, "Hz")


def _put_loss_at(cable: Cable, text: str) -> Cable:
    return replace(cable, loss_at_hz=parse_quantity(text, "Hz"))


def _plain(text: str) -> float:
    """Return a number without a unit; a comma is a decimal comma."""
    try:
        return float(text.strip().replace(",", "."))
    except ValueError:
        raise QuantityError(f"“{text.strip()[:20]}” is no number: write one like 0.66") from None


def _series(line: Direction, project: Project) -> str:
    return format_quantity(project.sync[line].series_ohms, "Ω")


def _put_series(line: Direction, project: Project, text: str) -> Project:
    return set_sync_series(project, line, parse_quantity(text, "Ω", zero=True))


def _input(line: Direction, project: Project) -> str:
    ohms = project.sync[line].input_ohms
    return "" if ohms is None else format_quantity(ohms, "Ω")


def _put_input(line: Direction, project: Project, text: str) -> Project:
    return set_sync_input(project, line, parse_quantity(text, "Ω") if text.strip() else None)
