"""Published limits of the analog signal, each with where it was read.

The VESA video signal standard itself was not read; its figures reach us through the data
sheets and specifications named here. What nobody read again is marked as from memory.
"""

from dataclasses import dataclass

from workbench.circuit.sizing import FULL_SCALE_VOLTS
from workbench.project.plausible import LONG_CABLE_METRES

__all__ = [
    "BLACK",
    "BLACK_SAMPLING",
    "CABLE_LENGTH",
    "CHANNEL_MISMATCH",
    "GHOST",
    "GLITCH",
    "LINEARITY",
    "MONOTONIC",
    "RISE",
    "SYNC_HIGH",
    "TERMINATION",
    "WHITE",
    "WHITE_VOLTS",
    "Limit",
]


@dataclass(frozen=True, slots=True)
class Limit:
    """A permitted range and its source."""

    unit: str
    source: str
    low: float | None = None
    """Least permitted value, in ``unit``; none where only the other side is limited."""
    high: float | None = None
    """Greatest permitted value, in ``unit``."""
    from_memory: bool = False

    def holds(self, value: float) -> bool:
        """Return whether a value lies inside, ends included."""
        return (self.low is None or self.low <= value) and (self.high is None or value <= self.high)


_CONTROLLER_SHEET = (
    "graphics-controller data sheet, DAC DC table, measured to the VESA test procedure of "
    "1 December 2000, double 75 Ω termination"
)
_MONITOR_SHEET = "12.1-inch LCD monitor engineering specification, section 4.2"

WHITE_VOLTS = FULL_SCALE_VOLTS
"""Nominal peak white into 75 Ω (the same data sheet). [V]"""

WHITE = Limit("V", _CONTROLLER_SHEET, low=0.665, high=0.770)
"""Peak white into the monitor: 0.700 V, 5 % less to 10 % more."""

CHANNEL_MISMATCH = Limit("%", _CONTROLLER_SHEET, high=6.0)
"""Difference of the three whites, in percent of full scale."""

LINEARITY = Limit("LSB", _CONTROLLER_SHEET + " (given there for 8 bits)", low=-1.0, high=1.0)
"""Integral and differential non-linearity."""

MONOTONIC = Limit("V", _CONTROLLER_SHEET, low=0.0)
"""Least step upward; the sheet asks for monotonic levels."""

BLACK = Limit("V", _MONITOR_SHEET, low=0.0, high=0.010)
"""What a monitor takes for black."""

TERMINATION = Limit("Ω", _MONITOR_SHEET, low=67.5, high=82.5)
"""A monitor's input resistance: 75 Ω, 10 % either way."""

SYNC_HIGH = Limit("V", "display-controller installation guide, sync definition page (TTL levels)", low=2.0)
"""What a monitor's sync input takes for high."""

BLACK_SAMPLING = Limit(
    "px",
    "receiver that counts 9 px after the end of H sync, then samples 20 px; both counts are "
    "registers, other receivers differ",
    low=29.0,
)
"""Pixels of back porch until one published receiver has sampled black (0.357 … 1.152 µs at 25.175 MHz)."""

RISE = Limit(
    "pixel",
    "widely printed footnote to the DAC AC table of graphics controllers: 10-90 % in at most "
    "half of the shortest pixel (from memory)",
    high=0.5,
    from_memory=True,
)
"""Rise time, 10 to 90 %, in parts of a pixel."""

GLITCH = Limit("LSB", "our own: half a step, taken over a whole pixel", high=0.5)
"""Area of a spike as a change of the mean of one pixel, in steps of the staircase."""

GHOST = Limit("%", "our own: a twentieth of the edge", high=5.0)
"""The first ghost, in percent of its edge."""

CABLE_LENGTH = Limit("m", "from experience, no source", high=LONG_CABLE_METRES, from_memory=True)
"""Length of a cable without an amplifier."""
