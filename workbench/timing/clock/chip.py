"""What the user's chip can do to make a clock, as its maker's data sheet says."""

import re
from dataclasses import dataclass

from workbench.errors import QuantityError, TimingError
from workbench.units import format_quantity, parse_quantity

__all__ = ["MOST_FRACTION_BITS", "Chip", "Span", "read_chip", "read_span"]

_HIGHEST_HZ = 10_000_000_000
_HIGHEST_COUNT = 1_000_000
MOST_FRACTION_BITS = 24
"""Most bits behind the point of a divider. Our own bound. [1]"""
_SPAN = re.compile(r"\s*(\d{1,9})\s*(?:(?:\.\.|…|-)\s*(\d{1,9})\s*)?")


@dataclass(frozen=True, slots=True)
class Span:
    """Whole numbers from a lowest to a highest, both taken."""

    low: int
    high: int

    def __post_init__(self) -> None:
        if self.high < self.low:
            raise TimingError(
                f"The range {self.low}..{self.high} runs backwards; write the lower number first."
            )

    @property
    def count(self) -> int:
        """Return how many numbers there are. [1]"""
        return self.high - self.low + 1


@dataclass(frozen=True, slots=True)
class Chip:
    """A clock generator: reference × multiply / dividers = system clock; system / divider = pixels."""

    reference_hz: int
    multiply: Span
    dividers: tuple[Span, ...]
    """Dividers one after another behind the oscillator; none leaves its clock as it is."""
    max_system_hz: int
    oscillator_hz: Span | None = None
    """Range of the oscillator, reference × multiply; none if it does not matter. [Hz]"""
    fraction_bits: int = 0
    """Bits behind the point of the pixel divider; 0 for whole numbers only. [1]"""

    def __post_init__(self) -> None:
        _check_hz("reference", self.reference_hz)
        _check_hz("highest system clock", self.max_system_hz)
        for name, span in (("multiply", self.multiply), *(("divide", span) for span in self.dividers)):
            if span.low < 1 or span.high > _HIGHEST_COUNT:
                raise TimingError(
                    f"The {name} range {span.low}..{span.high} is outside 1 … {_HIGHEST_COUNT}; "
                    "take it from the chip's data sheet."
                )
        if not 0 <= self.fraction_bits <= MOST_FRACTION_BITS:
            raise TimingError(
                f"A divider with {self.fraction_bits} fractional bits is outside 0 … {MOST_FRACTION_BITS}."
            )


def _check_hz(name: str, hz: int) -> None:
    if not 1 <= hz <= _HIGHEST_HZ:
        raise TimingError(
            f"The {name} of {format_quantity(hz, 'Hz')} is outside 1 Hz … 10 GHz; write it as in 10M."
        )


def read_span(text: str, what: str) -> Span:
    """Read a range of whole numbers.

    Raises
    ------
    TimingError
        If the text is no range.

    Examples
    --------
    >>> read_span("20..100", "multiply")
    Span(low=20, high=100)
    """
    found = _SPAN.fullmatch(text)
    if found is None:
        raise TimingError(
            f"The {what} range “{text[:40]}” cannot be read; write two whole numbers, as in 20..100."
        )
    return Span(int(found[1]), int(found[2] or found[1]))


def read_chip(
    *,
    reference: str,
    multiply: str,
    divide: str,
    max_system: str,
    vco: str | None = None,
    fraction_bits: int = 0,
) -> Chip:
    """Read a chip as the command line and a form write it.

    Parameters
    ----------
    reference, max_system : str
        Frequencies, as in ``10M``. [Hz]
    multiply : str
        Range, as in ``20..100``.
    divide : str
        Ranges of the dividers one after another, as in ``1..8x1..2``.
    vco : str, optional
        Range of the oscillator, as in ``200M..900M``. [Hz]

    Raises
    ------
    TimingError
        If a text cannot be read or a value is impossible.
    """
    oscillator = None
    if vco is not None:
        ends = re.split(r"\.\.|…", vco)
        if len(ends) != 2:
            raise TimingError(
                f"The oscillator's range “{vco[:40]}” cannot be read; write it as in 200M..900M."
            )
        low, high = (
            _hertz(end, f"oscillator's {which} clock")
            for end, which in zip(ends, ("lowest", "highest"), strict=True)
        )
        if high < low:
            raise TimingError(
                f"The oscillator's range {format_quantity(low, 'Hz')} … {format_quantity(high, 'Hz')} runs "
                "backwards; write the lower clock first."
            )
        oscillator = Span(low, high)
    return Chip(
        reference_hz=_hertz(reference, "reference"),
        multiply=read_span(multiply, "multiply"),
        dividers=tuple(read_span(part, "divide") for part in re.split("[x×*]", divide)),
        max_system_hz=_hertz(max_system, "highest system clock"),
        oscillator_hz=oscillator,
        fraction_bits=fraction_bits,
    )


def _hertz(text: str, what: str) -> int:
    try:
        hz = parse_quantity(text, "Hz")
    except QuantityError as error:
        raise TimingError(f"The {what} cannot be read. {error}") from None
    if hz > _HIGHEST_HZ:
        raise TimingError(f"The {what} of {format_quantity(hz, 'Hz')} is above 10 GHz.")
    return round(hz)
