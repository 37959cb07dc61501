"""The project: everything the user decided, as one frozen value.

Nothing derived lives here (levels, samples, drawings, findings) and nothing of the window
(zoom, selection). Edits are functions in :mod:`workbench.project.edits` that return a new
project; undo is the old one.
"""

from dataclasses import dataclass, field
from enum import Enum

from workbench.circuit.bands import Tolerances
from workbench.circuit.network import Cable, Driver, Load, Network
from workbench.circuit.series import Series
from workbench.picture.scene import Picture
from workbench.timing.mode import Mode

__all__ = [
    "Channel",
    "Channels",
    "Direction",
    "MonitorRange",
    "Project",
    "Skews",
    "SyncLine",
    "SyncLines",
    "Wiring",
]


class Channel(Enum):
    """A colour line."""

    RED = "red"
    GREEN = "green"
    BLUE = "blue"


class Direction(Enum):
    """Along the line or down the frame; also tells the two sync lines apart."""

    HORIZONTAL = "h"
    VERTICAL = "v"


@dataclass(frozen=True, slots=True)
class Channels:
    """The networks of the three colour lines."""

    red: Network
    green: Network
    blue: Network

    def __getitem__(self, channel: Channel) -> Network:
        network: Network = getattr(self, channel.value)
        return network


@dataclass(frozen=True, slots=True)
class SyncLine:
    """One sync line: a pin, a series resistor, the monitor's input."""

    series_ohms: float = 100.0
    """Resistor between pin and connector, ``0 <= series_ohms``; 0 is a plain wire. [Ω]"""
    input_ohms: float | None = None
    """The monitor's input resistance to ground, the user's own entry; none draws nothing. [Ω]"""


@dataclass(frozen=True, slots=True)
class SyncLines:
    """The two sync lines."""

    h: SyncLine = field(default_factory=SyncLine)
    v: SyncLine = field(default_factory=SyncLine)

    def __getitem__(self, line: Direction) -> SyncLine:
        return self.h if line is Direction.HORIZONTAL else self.v


@dataclass(frozen=True, slots=True)
class Wiring:
    """Which of the controller's pins drives what, by name; colours most significant bit first."""

    red: tuple[str, ...]
    green: tuple[str, ...]
    blue: tuple[str, ...]
    h: str
    v: str

    def __getitem__(self, channel: Channel) -> tuple[str, ...]:
        names: tuple[str, ...] = getattr(self, channel.value)
        return names


@dataclass(frozen=True, slots=True)
class Skews:
    """How late each pin changes, in the order of the pins; those left out at the end are in time. [s]"""

    red: tuple[float, ...] = ()
    green: tuple[float, ...] = ()
    blue: tuple[float, ...] = ()

    def __getitem__(self, channel: Channel) -> tuple[float, ...]:
        skews_s: tuple[float, ...] = getattr(self, channel.value)
        return skews_s


@dataclass(frozen=True, slots=True)
class MonitorRange:
    """What the user's monitor takes, from its manual or its EDID. [Hz]"""

    h_min_hz: float
    h_max_hz: float
    v_min_hz: float
    v_max_hz: float
    max_pixel_clock_hz: float | None = None


@dataclass(frozen=True, slots=True)
class Project:
    """One board and what it shows."""

    name: str
    mode: Mode
    channels: Channels
    wiring: Wiring
    driver: Driver = field(default_factory=Driver)
    load: Load = field(default_factory=Load)
    cable: Cable | None = None
    sync: SyncLines = field(default_factory=SyncLines)
    linked: bool = False
    """Whether an edit of one channel's network is made to all three."""
    picture: Picture = field(default_factory=Picture)
    scanline: int = 1
    """The scanline shown, counted from 1 at the first line of the active picture. [1]"""
    series: Series = Series.E24
    monitor: MonitorRange | None = None
    tolerances: Tolerances = field(default_factory=Tolerances)
    """How boards made of this project differ from it and from each other."""
    skews: Skews = field(default_factory=Skews)
    """How late single pins of the colours change, against the sync lines and each other."""
    pixel_divider: float | None = None
    """System clocks a pixel where a fractional divider makes pixels uneven; none where all are alike. [1]"""
