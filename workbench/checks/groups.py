"""Channels that are alike, so that one sentence speaks for all of them."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from workbench.checks.measures import ChannelFigures, Measures
from workbench.circuit.graph import ProblemKind
from workbench.circuit.network import Network, NodeId, PartId, Resistor
from workbench.circuit.solution import Levels
from workbench.project.document import Channel, Project
from workbench.units import format_fixed, format_quantity

__all__ = [
    "Group",
    "groups",
    "is_sound",
    "join_words",
    "ohms_text",
    "small_volts",
    "solved_groups",
    "source_text",
]

_LEVEL_LESS = {ProblemKind.FLOATING_OUTPUT, ProblemKind.UNDRIVEN_OUTPUT}
"""Problems that are not fatal to the whole network but leave its output at nothing."""


@dataclass(frozen=True, slots=True)
class Group:
    """Channels with one and the same network, and what was computed of it."""

    channels: tuple[Channel, ...]
    network: Network
    figures: ChannelFigures

    @property
    def subject(self) -> str:
        """Return the channels in words: ``red, green and blue``."""
        return join_words(channel.value for channel in self.channels)

    @property
    def of_subject(self) -> str:
        """Return " of red" where the group is not all there is, else nothing."""
        return "" if len(self.channels) == len(Channel) else f" of {self.subject}"

    @property
    def white_volts(self) -> float:
        """Return the loaded level of the highest code. [V]"""
        return float(self.figures.levels.volts_by_code[-1])

    def resistor(self, part: PartId) -> Resistor:
        """Return a resistor by its id."""
        return next(r for r in self.network.resistors if r.id == part)

    def parts_at(self, node: NodeId) -> tuple[PartId, ...]:
        """Return the resistors that touch a node."""
        return tuple(r.id for r in self.network.resistors if node in (r.a, r.b))


def groups(project: Project, measures: Measures) -> tuple[Group, ...]:
    """Return the channels grouped by equal networks, in the order red, green, blue."""
    found: dict[Network, list[Channel]] = {}
    for channel in Channel:
        found.setdefault(project.channels[channel], []).append(channel)
    return tuple(
        Group(tuple(channels), network, measures.channels[channels[0]]) for network, channels in found.items()
    )


def solved_groups(project: Project, measures: Measures) -> tuple[Group, ...]:
    """Return the groups whose levels mean something: pins there, output reached, nothing shorted."""
    return tuple(g for g in groups(project, measures) if is_sound(g.figures.levels))


def is_sound(levels: Levels) -> bool:
    """Return whether nothing is wrong that leaves the output without levels."""
    return not any(problem.kind.fatal or problem.kind in _LEVEL_LESS for problem in levels.problems)


def join_words(words: Iterable[str]) -> str:
    """Return words as a list in a sentence: ``a, b and c``."""
    listed = list(words)
    if len(listed) < 2:
        return "".join(listed)
    return f"{', '.join(listed[:-1])} and {listed[-1]}"


def ohms_text(ohms: float) -> str:
    """Return a resistance as a person writes it. [Ω]"""
    return format_quantity(ohms, "Ω")


def small_volts(volts: float) -> str:
    """Return a step in millivolts; in a smaller unit where it would seem to be none. [V]"""
    shown = format_fixed(volts, "V", prefix="m", decimals=1)
    return shown if volts == 0.0 or shown.strip("0. mV") else format_quantity(volts, "V", 2)


def source_text(levels: Levels) -> str:
    """Return what the output is like from the cable, at white and at black where these differ. [Ω]"""
    white, black = levels.source_ohms, float(levels.source_ohms_by_code[0])
    if math.isclose(white, black, rel_tol=1e-9):
        return ohms_text(white)
    at_black = f"{ohms_text(black)} at black" if math.isfinite(black) else "at black nothing holds it"
    return f"{ohms_text(white)} at white, {at_black}"
