"""Preferred values of IEC 60063: the tables, and steps along them.

E3 to E24 are a table; E48 to E192 are powers of the N-th root of ten rounded to three
figures, with one exception [1]_ [2]_.

>>> nearest(512.0, Series.E24)
510.0
>>> step(510.0, Series.E24, 1)
560.0

References
----------
.. [1] IEC 60063, preferred number series for resistors and capacitors; value tables read at
   qsl.net/g4usp/Components/Component%20preferred%20values.htm (E6 to E96).
.. [2] The 9.20 of E192 where the formula gives 9.19: from memory, no page with the whole
   E192 list was read.
"""

import math
from bisect import bisect_right
from enum import Enum
from functools import cache

__all__ = ["Series", "coarser", "is_in", "nearest", "neighbours", "series_values", "step"]


class Series(Enum):
    """A series of preferred values, by its number of steps a decade."""

    E3 = 3
    E6 = 6
    E12 = 12
    E24 = 24
    E48 = 48
    E96 = 96
    E192 = 192


_E24 = (
    *(100, 110, 120, 130, 150, 160, 180, 200, 220, 240, 270, 300),
    *(330, 360, 390, 430, 470, 510, 560, 620, 680, 750, 820, 910),
)
_SAME = 1e-9
"""Two values closer than this part of themselves are one value. [1]"""


def series_values(series: Series) -> tuple[float, ...]:
    """Return one decade of the series, ``1 <= value < 10``. [1]"""
    return tuple(figure / 100 for figure in _figures(series))


def is_in(ohms: float, series: Series) -> bool:
    """Return whether a value, ``0 < ohms``, belongs to the series."""
    return math.isclose(_value(_index_below(ohms, series), series), ohms, rel_tol=_SAME)


def neighbours(ohms: float, series: Series) -> tuple[float, float]:
    """Return the next values of the series below and above ``ohms``, never ``ohms`` itself. [Ω]"""
    return step(ohms, series, -1), step(ohms, series, 1)


def nearest(ohms: float, series: Series) -> float:
    """Return the value of the series with the smallest error against ``ohms``; of two, the lower. [Ω]"""
    index = _index_below(ohms, series)
    low, high = _value(index, series), _value(index + 1, series)
    return low if ohms - low <= high - ohms else high


def step(ohms: float, series: Series, steps: int) -> float:
    """Return the value so many steps up (or, below 0, down) the series from any value.

    The first step of a value between two members goes to the member on that side.

    Parameters
    ----------
    ohms : float
        Where to start, ``0 < ohms``. [Ω]
    series : Series
        The series to step along.
    steps : int
        How far; 0 gives ``ohms`` back. [1]

    Returns
    -------
    float
        A member of the series, exact to the last bit of a decimal literal. [Ω]
    """
    if steps == 0:
        return ohms
    index = _index_below(ohms, series)
    if steps < 0 and not is_in(ohms, series):
        index += 1
    return _value(index + steps, series)


def coarser(series: Series) -> Series:
    """Return the series with half as many steps; E3 is its own."""
    return Series(max(series.value // 2, Series.E3.value))


@cache
def _figures(series: Series) -> tuple[int, ...]:
    """Return the three-figure numbers of one decade, 100 to 999."""
    if series.value <= Series.E24.value:
        return _E24[:: Series.E24.value // series.value]
    figures = [round(100 * 10 ** (i / series.value)) for i in range(series.value)]
    return tuple(920 if figure == 919 else figure for figure in figures)


def _value(index: int, series: Series) -> float:
    """Return member ``index``, counted from 1.0; one rounding, so it equals its decimal literal."""
    decade, place = divmod(index, series.value)
    figure, power = _figures(series)[place], decade - 2
    return float(f"{figure}e{power}")


def _index_below(ohms: float, series: Series) -> int:
    """Return the index of the largest member not above ``ohms``."""
    decade = math.floor(math.log10(ohms))
    figure = ohms / 10.0**decade * 100.0 * (1.0 + _SAME)
    index = decade * series.value + bisect_right(_figures(series), figure) - 1
    return index + 1 if _value(index + 1, series) <= ohms * (1.0 + _SAME) else index
