"""Values worth a question: nothing wrong with them, but probably a slip."""

from workbench.units import format_quantity

__all__ = ["implausible"]

_FACTOR = 100.0
"""A change by more than this is asked about; a slipped prefix is a factor of 1000. Our own bound. [1]"""
_USUAL = {"Ω": (1.0, 1e5), "F": (0.1e-12, 1e-9)}
"""Where values of such a network usually lie, by unit; from experience, no source."""


def implausible(old: float, new: float, unit: str = "Ω") -> str | None:
    """Return a question to ask before a value is taken, or none where it is plain.

    >>> implausible(500.0, 1e6)
    '1 MΩ where 500 Ω stood: is that meant?'
    >>> implausible(500.0, 510.0) is None
    True
    """
    ratio = max(old, new) / min(old, new) if min(old, new) > 0.0 else 1.0
    low, high = _USUAL.get(unit, (0.0, float("inf")))
    if ratio <= _FACTOR and (low <= new <= high or not low <= old <= high):
        return None
    return f"{format_quantity(new, unit)} where {format_quantity(old, unit)} stood: is that meant?"
