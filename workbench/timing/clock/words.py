"""A clock plan in words, for a terminal and for a table."""

from workbench.timing.clock.chip import Chip
from workbench.timing.clock.plan import Jitter, Plan
from workbench.timing.offsets import offset_words
from workbench.timing.seen_as import LOCK_PPM, LOCK_SOURCE
from workbench.units import format_quantity

__all__ = ["error_words", "is_hopeless", "jitter_words", "lock_words", "settings_words"]

_TOLERANT_PPM = 10_000.0
"""Up to here many monitors are said to lock, by the same sources. Our own. [ppm]"""
_HOPELESS_PPM = 20_000
"""From here on no monitor takes the clock for the mode's. Our own. [ppm]"""


def settings_words(chip: Chip, plan: Plan) -> str:
    """Return a plan's settings as an equation.

    >>> from fractions import Fraction
    >>> from workbench.timing.clock.chip import Span
    >>> chip = Chip(12_000_000, Span(16, 320), (Span(1, 7), Span(1, 7)), 133_000_000)
    >>> settings_words(chip, Plan(126, (6, 2), Fraction(126_000_000), Fraction(5), 25_175_000, Jitter.NONE))
    '12 MHz × 126 / 6 / 2 = 126 MHz, / 5'
    """
    divide = "".join(f" / {divider}" for divider in plan.dividers if divider > 1)
    whole, rest = divmod(plan.divider, 1)
    steps = int(rest * (1 << chip.fraction_bits))
    divider = f"({whole} + {steps}/{1 << chip.fraction_bits})" if steps else f"{whole}"
    reference = format_quantity(chip.reference_hz, "Hz", 7)
    system = format_quantity(float(plan.system_hz), "Hz", 7)
    return f"{reference} × {plan.multiply}{divide} = {system}, / {divider}"


def is_hopeless(plan: Plan) -> bool:
    """Return whether a plan is too far off to stand for the mode at all."""
    return abs(plan.error_ppm) >= _HOPELESS_PPM


def error_words(plan: Plan) -> str:
    """Return how far the clock is off, with its sign: ``+993.05 ppm``; in percent where it is far."""
    return offset_words(plan.error_ppm, decimals=2)


def jitter_words(plan: Plan) -> str:
    """Return what the clock does to the picture, in a few words."""
    if plan.jitter is Jitter.NONE:
        return "even pixels, steady lines"
    uneven = format_quantity(plan.uneven_s, "s", 3)
    part = f"{100 * plan.uneven_s * float(plan.pixel_hz):.0f} % of a pixel"
    if plan.jitter is Jitter.PIXEL:
        return f"pixels uneven by {uneven} ({part}), steady lines"
    return f"pixels uneven and lines jitter by {uneven} ({part})"


def lock_words(plan: Plan) -> str:
    """Return a caution where a plan is outside ±0.5 %; empty inside."""
    if abs(plan.error_ppm) <= LOCK_PPM:
        return ""
    if is_hopeless(plan):
        return "So far off that a monitor takes it for another mode, if for any."
    if abs(plan.error_ppm) <= _TOLERANT_PPM:
        return f"Outside ±0.5 %; up to ±1 % many monitors still lock ({LOCK_SOURCE})."
    return "Past ±1 %: few monitors lock, and none has to."
