"""What a fault is, and what it is put into."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace

from workbench.circuit.network import Resistor
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import unlink
from workbench.waveform.monitor import Monitor
from workbench.waveform.slips import NO_SLIPS, Slips

__all__ = ["NOT_NAMED", "Fault", "Setup", "first_leg", "in_project", "in_slips", "of_channel", "switched_on"]


@dataclass(frozen=True, slots=True)
class Setup:
    """A board on the table: the design, what the board does beside it, and the monitor."""

    project: Project
    slips: Slips = NO_SLIPS
    monitor: Monitor = field(default_factory=Monitor)


NOT_NAMED = "a published source that our notes do not name"
"""Source of what was read but not noted with its place."""

Change = Callable[[Setup, Channel], Setup]


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that goes wrong."""

    id: str
    name: str
    monitor: str
    """What the monitor shows."""
    instrument: str
    """What a meter or a scope shows."""
    check: str
    """The check that tells it from its like."""
    mend: str
    put: Change
    """Return the setup with the fault in it."""
    one_channel: bool = False
    """Whether it sits in one colour channel, to be chosen; otherwise the channel is ignored."""
    source: str = ""
    """Where it was read how it shows; empty where that is experience of the trade, without a source."""

    @property
    def source_words(self) -> str:
        """Return a sentence on where it was read how it shows."""
        if not self.source:
            return "How it shows is experience of the trade, no source."
        return f"How it shows, by {self.source}."


def switched_on(setup: Setup, faults: Iterable[tuple[Fault, Channel]]) -> Setup:
    """Return a setup with faults in it, one after the other.

    Raises
    ------
    EditError
        If one is not possible on this board; the sentence says why.
    """
    for fault, channel in faults:
        try:
            setup = fault.put(setup, channel)
        except EditError as error:
            raise EditError(f"{fault.name} cannot be tried here: {error}") from error
    return setup


def in_project(change: Callable[[Project], Project]) -> Change:
    """Return the change of a setup whose project is changed."""
    return lambda setup, channel: replace(setup, project=change(setup.project))


def of_channel(change: Callable[[Project, Channel], Project]) -> Change:
    """Return the change of a setup in which one channel of the project is changed, and no other."""
    return lambda setup, channel: replace(setup, project=change(unlink(setup.project), channel))


def in_slips(change: Callable[[Setup, Channel], Slips]) -> Change:
    """Return the change of a setup whose board slips."""
    return lambda setup, channel: replace(setup, slips=change(setup, channel))


def first_leg(project: Project, channel: Channel) -> Resistor:
    """Return the resistor at the pin of the most significant bit.

    Raises
    ------
    EditError
        If no resistor is there.
    """
    network = project.channels[channel]
    for resistor in network.resistors:
        if network.pins and network.pins[0] in (resistor.a, resistor.b):
            return resistor
    raise EditError(f"{channel.value} has no resistor at its highest pin")
