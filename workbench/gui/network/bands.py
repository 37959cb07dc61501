"""The colour code on a resistor: which bands a value has [1]_.

References
----------
.. [1] IEC 60062, colour code: digits, and the tolerances brown 1 %, red 2 %, gold 5 %, silver
   10 %; read at tnlab.org. Green 0.5 %, blue 0.25 %, violet 0.1 %: from memory.
"""

import math

__all__ = ["bands"]

DIGITS = ("black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white")
MULTIPLIERS = dict(enumerate(DIGITS)) | {-1: "gold", -2: "silver"}
TOLERANCES = {
    0.01: "brown",
    0.02: "red",
    0.05: "gold",
    0.10: "silver",
    0.005: "green",
    0.0025: "blue",
    0.001: "violet",
}


def bands(ohms: float, tolerance: float) -> tuple[str, ...]:
    """Return the bands of a resistor from its first digit on; none if it cannot be marked so.

    Two digits are used where they say the value, three otherwise.

    >>> bands(4700.0, 0.05)
    ('yellow', 'violet', 'red', 'gold')
    >>> bands(499.0, 0.01)
    ('yellow', 'white', 'white', 'black', 'brown')
    >>> bands(267.857, 0.01)
    ()
    """
    last = next((name for part, name in TOLERANCES.items() if math.isclose(part, tolerance)), None)
    if last is None or not 0 < ohms < 1e12:
        return ()
    for digits in (2, 3):
        power = math.floor(math.log10(ohms) + 1e-9) - digits + 1
        figure = round(ohms / 10.0**power)
        if math.isclose(figure * 10.0**power, ohms, rel_tol=1e-9) and power in MULTIPLIERS:
            return (*(DIGITS[int(digit)] for digit in str(figure)), MULTIPLIERS[power], last)
    return ()
