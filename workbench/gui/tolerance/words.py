"""Sentences on boards: how many are monotonic, how far they spread, what one of them is like."""

import numpy as np

from workbench.checks.groups import small_volts
from workbench.checks.limits import LINEARITY, WHITE
from workbench.circuit.linearity import Linearity, linearity
from workbench.circuit.network import Network
from workbench.circuit.ports import FloatArray
from workbench.circuit.tolerance.monte_carlo import Spread, Tolerance
from workbench.errors import QuantityError
from workbench.gui.widgets import Sign
from workbench.units import format_fixed, format_percent

__all__ = [
    "board_words",
    "count_words",
    "monotonic_words",
    "own_tolerance_words",
    "read_count",
    "spread_words",
    "worst_words",
]

Sentence = tuple[Sign, str]
_MOST_DIGITS = 12
_WORTH_A_WARNING = 0.999
"""Share of monotonic boards from which the others are worth a warning only (our own). [1]"""


def count_words(count: int) -> str:
    """Return a count with thin gaps: ``100 000``."""
    return f"{count:,}".replace(",", "\u202f")


def read_count(text: str, *, low: int, high: int) -> int:
    """Read a whole number such as ``100 000``, ``100k`` or ``1M``.

    Raises
    ------
    QuantityError
        If it is none, or out of its range.
    """
    tidy = "".join(text.split()).replace("\u202f", "")
    scale = {"k": 1000, "K": 1000, "M": 1_000_000}.get(tidy[-1:], 1)
    digits = tidy[:-1] if scale > 1 else tidy
    if not (digits.isascii() and digits.isdigit() and len(digits) <= _MOST_DIGITS):
        raise QuantityError(f"“{text[:20]}” is no whole number: type one like 100 000 or 100k")
    count = int(digits) * scale
    if not low <= count <= high:
        raise QuantityError(
            f"this is a number from {count_words(low)} to {count_words(high)}, not {text[:20]}"
        )
    return count


def own_tolerance_words(network: Network) -> str:
    """Return what tolerances the resistors have of their own: ``1 %`` or ``1 … 5 %``."""
    own = sorted({resistor.tolerance for resistor in network.resistors})
    if not own:
        return "own"
    if len(own) == 1:
        return f"own, {format_percent(own[0], 3)}"
    return f"{format_percent(own[0], 3).removesuffix(' %')} … {format_percent(own[-1], 3)}"


def monotonic_words(found: Tolerance) -> Sentence:
    """Say how many boards go up at every step."""
    count, share = count_words(found.boards), found.monotonic_yield
    if share == 0.0:
        return Sign.FAILS, f"No board is monotonic: all {count} step back somewhere."
    if share < 1.0:
        fallen = count_words(max(1, round((1.0 - share) * found.boards)))
        sentence = f"{_share(share)} of the boards are monotonic; {fallen} of {count} step back somewhere."
        return (Sign.WARNS if share >= _WORTH_A_WARNING else Sign.FAILS), sentence
    if found.max_dnl_lsb.worst_high < 1.0:
        return Sign.PASSES, "Every board within the tolerances is monotonic."
    worst = found.max_dnl_lsb.worst_high
    return (
        Sign.PASSES,
        f"All {count} boards are monotonic; the worst there can be has a DNL of {worst:.2f} LSB.",
    )


def _share(share: float) -> str:
    """Return a share that is below one, never rounded up to all."""
    return format_percent(np.floor(share * 1e5) / 1e5, 3 if share > 0.999 else 1)


def spread_words(spread: Spread, unit: str, decimals: int) -> str:
    """Say where 98 of 100 boards lie."""
    low, high = _fixed(spread.p01, decimals), format_fixed(spread.p99, unit, decimals=decimals)
    if low == high.removesuffix(f" {unit}"):
        return f"{high} on every board" if spread.std == 0.0 else f"{high} in 98 of 100"
    return f"{low} … {high} in 98 of 100"


def worst_words(spread: Spread, unit: str, decimals: int, *, both: bool) -> str:
    """Say what values at the edges of their bands can make at worst."""
    high = format_fixed(spread.worst_high, unit, decimals=decimals)
    return f"{_fixed(spread.worst_low, decimals)} … {high} at worst" if both else f"{high} at worst"


def _fixed(value: float, decimals: int) -> str:
    return format_fixed(value, "", decimals=decimals)


def board_words(volts: FloatArray) -> tuple[Sentence, ...]:
    """Say what one board is like: its white, its steps, its errors.

    Parameters
    ----------
    volts : float array, shape (n_codes,)
        Its loaded levels. [V]
    """
    line = linearity(volts)
    return _white_words(float(volts[-1])), _steps_words(line)


def _white_words(white: float) -> Sentence:
    low, high = WHITE.low or 0.0, WHITE.high or 0.0
    shown = f"White is {format_fixed(white, 'V')}, "
    if WHITE.holds(white):
        return Sign.PASSES, shown + f"inside {low:.3f} … {format_fixed(high, 'V')}."
    return Sign.FAILS, shown + (f"below {format_fixed(low, 'V')}." if white < low else f"above {high:.3f} V.")


def _steps_words(line: Linearity) -> Sentence:
    steps, dnl = line.steps_volts, line.dnl_lsb
    if not len(steps):
        return Sign.NOTE, "There are no steps."
    if not line.monotonic:
        place = int(np.argmin(steps))
        fall = small_volts(-float(steps[place]))
        return Sign.FAILS, f"Step {place} to {place + 1} falls by {fall}: a dark notch in every ramp."
    place = int(np.argmax(np.abs(dnl).round(9)))
    size = f"{1.0 + float(dnl[place]):.2f} LSB"
    sign = Sign.PASSES if LINEARITY.holds(float(dnl[place])) else Sign.FAILS
    verb = "goes up" if steps.min() > 0.0 else "goes up or repeats a level"
    return sign, f"Every step {verb}; the most uneven, {place} to {place + 1}, is {size}."
