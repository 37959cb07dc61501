"""The ranges in which a project's values lie.

They are our own bounds, wide enough for any board and narrow enough that the engine stays
exact: outside them a value is a slip of the pen. Edits and the project file hold to the same.
"""

from dataclasses import dataclass

from workbench.errors import EditError
from workbench.units import format_percent, format_quantity

__all__ = [
    "AMPS",
    "CABLE_LOSS",
    "CABLE_METRES",
    "CABLE_OHMS",
    "FARADS",
    "INPUT_FARADS",
    "LONGEST_NAME",
    "MONITORS",
    "MOST_PARTS",
    "OHMS",
    "PIN_OHMS",
    "PIXEL_DIVIDER",
    "RATE_HZ",
    "RISE_S",
    "SERIES_OHMS",
    "SKEW_S",
    "SUPPLY_VOLTS",
    "TOLERANCE",
    "UNIT",
    "VELOCITY",
    "WATTS",
    "Range",
    "check_name",
]

MOST_PARTS = 200
"""Resistors and capacitors of a channel; eight bits of three parts each are 24. [1]"""
LONGEST_NAME = 100
"""Characters of a project's, a part's or a pin's name. [1]"""


@dataclass(frozen=True, slots=True)
class Range:
    """Values from ``low`` to ``high``, both included, in ``unit``."""

    noun: str
    low: float
    high: float
    unit: str
    zero: bool = False
    """Whether 0 is a value too, below ``low``."""

    def __contains__(self, value: float) -> bool:
        return self.low <= value <= self.high or (self.zero and value == 0.0)

    def check(self, value: float, subject: str) -> float:
        """Return the value, or raise an `EditError` that names the subject and the range."""
        if value in self:
            return float(value)
        raise EditError(f"{subject} {self.refusal(value)}")

    def refusal(self, value: float) -> str:
        """Say why not, as ``cannot be 0 Ω: a resistance lies between 1 mΩ and 1 GΩ``."""
        bounds = f"{self._shown(self.low)} and {self._shown(self.high)}"
        verb = "is 0 or lies" if self.zero else "lies"
        return f"cannot be {self._shown(value)}: {self.noun} {verb} between {bounds}"

    def _shown(self, value: float) -> str:
        if self.unit == "%":
            return format_percent(value)
        return format_quantity(value, self.unit) if self.unit else f"{value:g}"


OHMS = Range("a resistance", 1e-3, 1e9, "Ω")
FARADS = Range("a capacitance", 1e-18, 1e-3, "F")
TOLERANCE = Range("a tolerance", 0.0, 0.5, "%")
WATTS = Range("a power rating", 1e-3, 1e3, "W")
SUPPLY_VOLTS = Range("a supply", 0.1, 50.0, "V")
PIN_OHMS = Range("a pin's on-resistance", 1e-6, 1e6, "Ω", zero=True)
RISE_S = Range("a rise time", 1e-15, 1e-3, "s", zero=True)
PIXEL_DIVIDER = Range("a pixel divider", 1.0, 1e5, "")
"""System clocks a pixel: 10 GHz to 100 kHz. [1]"""
SKEW_S = Range("a skew", 1e-15, 1e-6, "s", zero=True)
AMPS = Range("a current limit", 1e-6, 10.0, "A")
INPUT_FARADS = Range("an input capacitance", 1e-18, 1e-6, "F", zero=True)
MONITORS = Range("the number of monitors", 1, 8, "")
SERIES_OHMS = Range("a sync line's series resistor", 1e-6, 1e6, "Ω", zero=True)
CABLE_METRES = Range("a cable's length", 0.01, 1000.0, "m")
CABLE_OHMS = Range("a cable's impedance", 1.0, 1000.0, "Ω")
VELOCITY = Range("a cable's wave speed, as a part of the speed of light,", 0.1, 1.0, "")
CABLE_LOSS = Range("a cable's loss", 1e-6, 100.0, "dB/m", zero=True)
UNIT = Range("a part of full scale", 0.0, 1.0, "")
RATE_HZ = Range("a monitor's rate", 0.1, 1e10, "Hz")


def check_name(name: str, subject: str) -> str:
    """Return the name, or raise an `EditError`: one line, not empty, at most 100 characters."""
    if not name.strip():
        raise EditError(f"{subject} is empty: type a name")
    if len(name) > LONGEST_NAME:
        raise EditError(f"{subject} is longer than {LONGEST_NAME} characters: type a shorter one")
    if not name.isprintable():
        raise EditError(f"{subject} holds a line break or a control character: type plain text")
    return name
