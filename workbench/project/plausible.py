"""Values worth a question: nothing wrong with them, but probably a slip."""

from workbench.units import format_quantity

__all__ = [
    "LONG_CABLE_METRES",
    "implausible",
    "implausible_cable",
    "implausible_limits",
    "implausible_measured",
]

_FACTOR = 8.0
"""A change by this or more is asked about: a digit short is about a factor of 10. Our own bound. [1]"""
_PIN_AMPS = (0.1e-3, 1.0)
_ALL_AMPS = (1e-3, 5.0)
"""Where the current limits of logic pins lie; from experience, no source. [A]"""
_OFF = 0.2
"""How far a resistor may be from what is printed on it: ± 20 % is the widest band they are sold in (common
practice, no source). [1]"""
LONG_CABLE_METRES = 50.0
"""A longer cable for analog pictures is seldom seen without an amplifier; from experience, no source. [m]"""
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
    if ratio < _FACTOR and (low <= new <= high or not low <= old <= high):
        return None
    return f"{format_quantity(new, unit)} where {format_quantity(old, unit)} stood: is that meant?"


def implausible_limits(pin_amps: float | None, total_amps: float | None) -> str | None:
    """Return a question to ask about the limits of one pin and of all, or none where they are plain. [A]

    >>> implausible_limits(20.0, None)
    '20 A for one pin: logic pins carry milliamperes. Is that meant?'
    >>> implausible_limits(0.02, 0.1) is None
    True
    """
    limits = (("one pin", pin_amps, _PIN_AMPS), ("all pins together", total_amps, _ALL_AMPS))
    for noun, amps, (low, high) in limits:
        if amps is not None and not low <= amps <= high:
            return f"{format_quantity(amps, 'A')} for {noun}: logic pins carry milliamperes. Is that meant?"
    return None


def implausible_measured(nominal_ohms: float | None, measured_ohms: float) -> str | None:
    """Return a question to ask about a measured resistor, or none where it is plain. [Ω]

    >>> implausible_measured(2200.0, 9999.0)
    '9.999 kΩ measured where 2.2 kΩ is printed: is that meant?'
    >>> implausible_measured(2200.0, 2190.0) is None
    True
    """
    if nominal_ohms is None or abs(measured_ohms / nominal_ohms - 1.0) <= _OFF:
        return None
    measured, printed = (format_quantity(ohms, "Ω") for ohms in (measured_ohms, nominal_ohms))
    return f"{measured} measured where {printed} is printed: is that meant?"


def implausible_cable(metres: float | None) -> str | None:
    """Return a question to ask about the length of a cable, or none where it is plain. [m]

    >>> implausible_cable(1000.0)
    '1 km of cable: analog pictures seldom come over more than 50 m. Is that meant?'
    >>> implausible_cable(10.0) is None
    True
    """
    if metres is None or metres <= LONG_CABLE_METRES:
        return None
    length, usual = (format_quantity(each, "m") for each in (metres, LONG_CABLE_METRES))
    return f"{length} of cable: analog pictures seldom come over more than {usual}. Is that meant?"
