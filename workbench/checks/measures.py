"""What the rules look at: the figures of a solved project, as far as checks need them."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from workbench.circuit.linearity import Linearity
from workbench.circuit.response import Glitch, Step
from workbench.circuit.solution import Levels
from workbench.project.document import Channel

__all__ = ["ChannelFigures", "ChannelsFigures", "Measures", "PinFigures", "owns_nothing"]


class ChannelFigures(Protocol):
    """One channel, solved."""

    @property
    def levels(self) -> Levels:
        """Volts and currents for every code."""

    @property
    def linearity(self) -> Linearity:
        """The same levels against the straight line."""

    @property
    def step(self) -> Step:
        """The edge from black to white at the monitor."""

    @property
    def glitch(self) -> Glitch | None:
        """The largest spike at a step of the staircase; none where all pins change in time."""


class ChannelsFigures(Protocol):
    """The three channels, solved."""

    def __getitem__(self, channel: Channel) -> ChannelFigures:
        """Return one of them."""


class PinFigures(Protocol):
    """What the controller's pins carry."""

    @property
    def total_amps(self) -> float:
        """Greatest current out of all pins together, over all codes. [A]"""

    @property
    def worst_pin_amps(self) -> float:
        """Greatest current of one pin, either way, over all codes. [A]"""

    @property
    def worst_pin(self) -> str:
        """The name of that pin."""


def owns_nothing(_ohms: float) -> bool:
    """Return that a person owns no resistor of a value, as where no drawer is at hand. [Ω]"""
    return False


@dataclass(frozen=True, slots=True, eq=False)
class Measures:
    """The figures of one project; the pipeline makes them, the rules read them."""

    channels: ChannelsFigures
    pins: PinFigures
    owns: Callable[[float], bool] = owns_nothing
    """Whether a resistor of a value lies in the person's drawer, which is no part of the project. [Ω]"""
