"""The type faces of a drawing, and how wide a text is in one of them.

The window measures with its own fonts; a file that is written without a window uses
:func:`estimate`.
"""

from collections.abc import Callable
from dataclasses import dataclass

__all__ = ["CAPTION", "CURRENT", "LOADED", "NAME", "OPEN", "PIN", "SMALL_VALUE", "STATE", "VALUE", "VOLTS"]
__all__ += ["Face", "Measure", "estimate"]


@dataclass(frozen=True, slots=True)
class Face:
    """A type face by its use."""

    mono: bool
    size: float
    """Height in parts of the base text height. [1]"""
    weight: int
    """400 regular, 500 medium, 600 semibold. [1]"""


Measure = Callable[[str, Face], float]
"""Returns the width of a text in a face. [px]"""

VALUE = Face(mono=True, size=1.06, weight=500)
SMALL_VALUE = Face(mono=True, size=0.88, weight=500)
CURRENT = Face(mono=True, size=0.90, weight=500)
VOLTS = Face(mono=True, size=0.88, weight=400)
LOADED = Face(mono=True, size=1.22, weight=600)
OPEN = Face(mono=True, size=1.10, weight=400)
STATE = Face(mono=True, size=1.06, weight=600)
PIN = Face(mono=False, size=1.0, weight=500)
NAME = Face(mono=False, size=0.94, weight=400)
CAPTION = Face(mono=False, size=0.86, weight=400)

_MONO_ADVANCE = 0.6
_SANS_ADVANCE = 0.55


def estimate(base_px: float) -> Measure:
    """Return a measure that needs no fonts.

    Notes
    -----
    The monospace face advances 0.6 of its height; the sans face is taken at 0.55, a little wide
    for mixed text, so nothing measured with it is cut.
    """

    def measure(text: str, face: Face) -> float:
        advance = _MONO_ADVANCE if face.mono else _SANS_ADVANCE
        return len(text) * advance * face.size * base_px

    return measure
