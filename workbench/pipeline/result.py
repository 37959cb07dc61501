"""What follows from a project: one frozen result that every view, report and export reads."""

from dataclasses import dataclass

from workbench.checks.finding import Finding
from workbench.circuit.ladders import Topology
from workbench.circuit.linearity import Linearity
from workbench.circuit.network import Network
from workbench.circuit.response import Glitch, PixelPulse, Step
from workbench.circuit.solution import Levels
from workbench.picture.source import PictureCodes
from workbench.project.document import Channel, Project
from workbench.waveform.scanline import Scanline
from workbench.waveform.slips import NO_SLIPS, Slips

__all__ = ["ChannelResult", "ChannelResults", "PinTotals", "Result"]


@dataclass(frozen=True, slots=True, eq=False)
class ChannelResult:
    """Everything electrical about one colour line."""

    network: Network
    topology: Topology
    levels: Levels
    linearity: Linearity
    step: Step
    pulse: PixelPulse
    glitch: Glitch | None
    """The largest spike at a step of the staircase; none where all pins change in time."""


@dataclass(frozen=True, slots=True, eq=False)
class ChannelResults:
    """The three colour lines; linked channels share one and the same value."""

    red: ChannelResult
    green: ChannelResult
    blue: ChannelResult

    def __getitem__(self, channel: Channel) -> ChannelResult:
        found: ChannelResult = getattr(self, channel.value)
        return found


@dataclass(frozen=True, slots=True)
class PinTotals:
    """Currents of the controller's colour pins, worst over all codes."""

    total_amps: float
    """What all colour pins source together, each channel at its worst code. [A]"""
    worst_pin_amps: float
    """The largest current of any one pin, sourced or sunk. [A]"""
    worst_pin: str
    """Name of that pin; empty where there is none."""


@dataclass(frozen=True, slots=True, eq=False)
class Result:
    """A project and all that was computed from it."""

    project: Project
    channels: ChannelResults
    pins: PinTotals
    picture: PictureCodes
    """What the pins show in the active part of the frame."""
    scanline: Scanline | None
    """The line shown; none where the mode cannot be simulated (interlaced)."""
    findings: tuple[Finding, ...]
    picture_problem: str | None = None
    """Why the test card stands in for the project's image; none if it does not."""
    slips: Slips = NO_SLIPS
    """What the board does beside the design, in the scanline and the picture."""
