"""The values that can be typed into a drawing, and what a typed text means."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from functools import partial

from workbench.circuit.network import PartId
from workbench.circuit.series import Series, coarser, is_in, neighbours, step
from workbench.drawing import H_SERIES, LOAD, V_SERIES
from workbench.errors import EditError, QuantityError
from workbench.gui.network.two_parts import Pair, put_pair, read_pair
from workbench.project.document import Channel, Direction, Project
from workbench.project.edits.drive import set_load
from workbench.project.edits.parts import set_farads, set_value
from workbench.project.edits.sync import set_sync_series
from workbench.project.plausible import implausible
from workbench.units import format_quantity, parse_quantity

__all__ = ["Pace", "Reading", "Standing", "Value", "find_value", "read_text", "stepped"]

NOTHING = ("none", "open", "–", "-")
"""What stands for no termination at all."""


class Pace(Enum):
    """How far one step goes."""

    SERIES = "series"
    COARSE = "coarse"
    """Along the series with half as many values."""
    FINE = "fine"
    """One part in a hundred."""


@dataclass(frozen=True, slots=True)
class Value:
    """One value of a project that stands in a drawing."""

    part: PartId
    name: str
    """As it is spoken of: ``R1``, ``H sync resistor``, ``load``."""
    unit: str
    value: float | None
    """Resistance or capacitance; none where nothing is fitted. [Ω] or [F]"""
    put: Callable[[Project, float | None], Project]
    """Edit that puts another value in its place."""
    zero: bool = False
    """Whether 0 is a value here."""
    optional: bool = False
    """Whether nothing can stand here."""
    put_pair: Callable[[Project, Pair], Project] | None = None
    """Edit that puts two resistors in its place; none where only one can stand."""

    def text(self, value: float | Pair | None) -> str:
        """Return a value as it is written in the drawing."""
        if value is None:
            return "none"
        if isinstance(value, Pair):
            return value.text
        return "wire" if value == 0 and self.zero else format_quantity(value, self.unit)

    def label(self, new: float | Pair | None) -> str:
        """Return the words by which undo names the change."""
        return f"{self.name} {self.text(self.value)} → {self.text(new)}"

    def change(self, project: Project, new: float | Pair | None) -> Project:
        """Return the project with another value here, or with two parts."""
        if isinstance(new, Pair):
            return self.put_pair(project, new) if self.put_pair is not None else project
        return self.put(project, new)


def find_value(project: Project, channel: Channel, part: PartId) -> Value | None:
    """Return the value of a part of the drawing; none if there is no such part."""
    if part == LOAD:
        return Value(LOAD, "load", "Ω", project.load.ohms, set_load, optional=True)
    for name, line in ((H_SERIES, Direction.HORIZONTAL), (V_SERIES, Direction.VERTICAL)):
        if part == name:
            words = f"{line.value.upper()} sync resistor"
            put = partial(_put_sync, line)
            return Value(part, words, "Ω", project.sync[line].series_ohms, put, zero=True)
    network = project.channels[channel]
    for resistor in network.resistors:
        if resistor.id == part:
            put, put_two = partial(_put_ohms, channel, part), partial(put_pair, channel, part)
            return Value(part, part, "Ω", resistor.ohms, put, put_pair=put_two)
    for capacitor in network.capacitors:
        if capacitor.id == part:
            return Value(part, part, "F", capacitor.farads, partial(_put_farads, channel, part))
    return None


def _put_sync(line: Direction, project: Project, value: float | None) -> Project:
    return set_sync_series(project, line, value or 0.0)


def _put_ohms(channel: Channel, part: PartId, project: Project, value: float | None) -> Project:
    return set_value(project, channel, part, value or 0.0)


def _put_farads(channel: Channel, part: PartId, project: Project, value: float | None) -> Project:
    return set_farads(project, channel, part, value or 0.0)


class Standing(Enum):
    """How a typed text stands."""

    READ = "read"
    REFUSED = "refused"
    ASKED = "asked about"


@dataclass(frozen=True, slots=True)
class Reading:
    """What a typed text means."""

    standing: Standing
    value: float | None
    """What would be kept; nothing means no part at all, or that the text was refused."""
    echo: str
    """The value as the program writes it; empty if refused."""
    sentence: str
    """Why it was refused, or what is asked; empty otherwise."""
    in_series: bool | None = None
    """Whether a resistance belongs to the project's series; none where that is no question."""
    below: float | None = None
    above: float | None = None
    """The neighbours in the series."""
    pair: Pair | None = None
    """The two resistors that were typed, where two may stand."""
    as_pair: bool = False
    """Whether Enter keeps them as two; else as one of their value together."""

    def kept(self, *, other: bool = False) -> float | Pair | None:
        """Return what is kept: what the text plainly means, or the ``other`` reading of a sum."""
        return self.pair if self.pair is not None and self.as_pair is not other else self.value

    def words(self, *, other: bool = False) -> str:
        """Return what would be kept, in a few words."""
        kept = self.kept(other=other)
        return kept.words if isinstance(kept, Pair) else f"one part of {self.echo}"


def read_text(text: str, value: Value, project: Project) -> Reading:
    """Return what a text typed for a value means, with the neighbours in the project's series."""
    tidy = text.strip()
    if value.optional and tidy.lower() in NOTHING:
        return Reading(Standing.READ, None, value.text(None), "")
    if value.zero and tidy.lower() == "wire":
        tidy = "0"
    try:
        number = parse_quantity(tidy, value.unit, zero=value.zero)
        value.put(project, number)
    except (QuantityError, EditError) as reason:
        return Reading(Standing.REFUSED, None, "", str(reason))
    question = implausible(value.value, number, value.unit) if value.value else None
    standing = Standing.ASKED if question else Standing.READ
    echo = value.text(number)
    if number == 0:
        return Reading(standing, number, echo, question or "")
    below, above = neighbours(number, project.series)
    inside = is_in(number, project.series) if value.unit == "Ω" else None
    pair = _pair(tidy, value, project)
    as_pair = pair is not None and pair.meant(number, project.series)
    return Reading(standing, number, echo, question or "", inside, below, above, pair, as_pair)


def _pair(text: str, value: Value, project: Project) -> Pair | None:
    """Return the two resistors that were typed, if both can be put in."""
    pair = read_pair(text) if value.put_pair is not None else None
    if pair is None or value.put_pair is None:
        return None
    try:
        value.put_pair(project, pair)
    except EditError:
        return None
    return pair


def stepped(value: float, series: Series, steps: int, pace: Pace) -> float:
    """Return the value so many steps up, or below 0 down, at a pace."""
    if pace is Pace.FINE:
        return float(f"{value * 1.01**steps:.4g}")
    return step(value, coarser(series) if pace is Pace.COARSE else series, steps)
