"""What a base block holds, as values."""

from dataclasses import dataclass
from enum import Enum

from workbench.timing.formulas.gtf import GtfCurve
from workbench.timing.mode import Mode

__all__ = ["AnalogInput", "Edid", "Extension", "Limits", "Product", "SyncLevels"]


class SyncLevels(Enum):
    """White above and sync below blanking, as the two bits of byte 20 code them. [V]"""

    V0700_0300 = (0.700, 0.300)
    V0714_0286 = (0.714, 0.286)
    V1000_0400 = (1.000, 0.400)
    V0700_0000 = (0.700, 0.000)


@dataclass(frozen=True, slots=True)
class AnalogInput:
    """The analog input definition of byte 20."""

    levels: SyncLevels = SyncLevels.V0700_0000
    setup_expected: bool = False
    """Whether black stands above blanking."""
    separate_sync: bool = True
    composite_sync: bool = False
    sync_on_green: bool = False
    serration: bool = False
    """Whether V sync must be serrated when it shares a line with H sync or green."""

    @property
    def white_volts(self) -> float:
        """Return white above blanking. [V]"""
        return self.levels.value[0]

    @property
    def sync_volts(self) -> float:
        """Return how far sync on a colour line goes below blanking; 0 where there is none. [V]"""
        return self.levels.value[1]


@dataclass(frozen=True, slots=True)
class Product:
    """Who made the monitor, and when."""

    maker: str
    """Three letters."""
    code: int = 0
    serial: int = 0
    week: int = 0
    """Week of making, ``1 <= week <= 54``; 0 if not said, 255 if the year is a model year. [1]"""
    year: int = 1990
    name: str = ""
    serial_text: str = ""
    text: str = ""


@dataclass(frozen=True, slots=True)
class Limits:
    """The range limits descriptor; a pair of rates is none where the block's is impossible. [Hz]"""

    v_min_hz: float | None
    v_max_hz: float | None
    h_min_hz: float | None
    h_max_hz: float | None
    max_pixel_clock_hz: float | None = None
    """As byte 9 has it, in steps of 10 MHz; none where the monitor does not say."""
    finer_pixel_clock_hz: float | None = None
    """The same less the finer steps that a monitor with CVT limits subtracts from it. [Hz]"""
    gtf_curve: GtfCurve | None = None
    """The secondary GTF curve; none where the default one holds throughout."""
    gtf_start_hz: float = 0.0
    """Line rate from which the secondary curve holds. [Hz]"""

    @property
    def fields(self) -> tuple[float, float] | None:
        """Return the lowest and highest field rate; none where they are not known. [Hz]"""
        return _pair(self.v_min_hz, self.v_max_hz)

    @property
    def lines(self) -> tuple[float, float] | None:
        """Return the lowest and highest line rate; none where they are not known. [Hz]"""
        return _pair(self.h_min_hz, self.h_max_hz)

    @property
    def is_whole(self) -> bool:
        """Whether both rates are limited, so that a mode can be said to be inside."""
        return self.fields is not None and self.lines is not None


def _pair(low: float | None, high: float | None) -> tuple[float, float] | None:
    return None if low is None or high is None else (low, high)


@dataclass(frozen=True, slots=True)
class Extension:
    """A block after the base block: counted and named, not read."""

    tag: int
    kind: str
    checksum_ok: bool


@dataclass(frozen=True, slots=True)
class Edid:
    """A base block read."""

    version: str
    product: Product
    analog: AnalogInput | None
    """None for a digital input."""
    size_cm: tuple[int, int] | None
    """Picture, width and height; none for a projector or where it is not said. [cm]"""
    gamma: float | None
    detailed: tuple[Mode, ...]
    """Modes with every count given; the first is the one the monitor likes best."""
    standard: tuple[Mode, ...]
    """Modes named by size and rate: a table row, or what CVT or GTF make of them."""
    established: tuple[Mode, ...]
    """Modes ticked in a fixed list."""
    limits: Limits | None
    extensions: tuple[Extension, ...]
    checksum_ok: bool
    damages: tuple[str, ...]
    """What is wrong with the block, a sentence each."""

    @property
    def modes(self) -> tuple[Mode, ...]:
        """Return every mode once, the preferred one first, then as listed."""
        seen: dict[tuple[str, int, int], Mode] = {}
        for mode in (*self.detailed, *self.established, *self.standard):
            seen.setdefault((mode.name, mode.h.total, mode.v.total), mode)
        return tuple(seen.values())
