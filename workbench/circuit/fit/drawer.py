"""The resistors a person owns, and what one leg can be made of with them."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import Enum
from itertools import groupby
from math import isclose

import numpy as np
import numpy.typing as npt

from workbench.circuit.ports import FloatArray
from workbench.circuit.series import Series, series_values
from workbench.errors import NetworkError
from workbench.units import format_quantity

__all__ = [
    "MOST_PARTS",
    "Arrangement",
    "Drawer",
    "Leg",
    "Options",
    "OwnedPart",
    "leg_options",
    "listed_words",
]

MOST_PARTS = 3
"""Parts of one leg at most. [1]"""
_MOST_OPTIONS = 5_000_000
"""Legs that are compared at most. [1]"""
_LEAST_OHMS, _MOST_OHMS = 10.0, 1e6
"""Where a series is taken from; beyond, a leg of a video ladder does nothing or too much. [Ω]"""
_ALIKE = 1e-6
"""Relative difference up to which a value in a project is that of a part; it may have been typed. [1]"""
_SEVERAL = 3
"""Legs alike in a row from which they are counted, not listed. [1]"""
_SAME = 1e-9
"""Relative difference below which two resistances are one. [1]"""


@dataclass(frozen=True, slots=True)
class OwnedPart:
    """Resistors of one value."""

    ohms: float
    """What they are: measured if they were, nominal else, ``0 < ohms``. [Ω]"""
    count: int | None = None
    """How many there are, ``1 <= count``; none is as many as wanted. [1]"""
    tolerance: float = 0.01
    """Half width of the maker's band. [1]"""
    nominal_ohms: float | None = None
    """What is printed on them, where they were measured. [Ω]"""

    def is_of(self, ohms: float) -> bool:
        """Return whether these are resistors of that value, as measured or as printed on them. [Ω]"""
        return any(
            value is not None and isclose(value, ohms, rel_tol=_ALIKE)
            for value in (self.ohms, self.nominal_ohms)
        )


@dataclass(frozen=True, slots=True)
class Drawer:
    """Everything there is to choose from."""

    parts: tuple[OwnedPart, ...]

    @classmethod
    def of_series(cls, series: Series) -> "Drawer":
        """Return as many as wanted of every value of a series from 10 Ω to 1 MΩ."""
        decades = (10.0**power for power in range(1, 6))
        values = (round(value * decade, 6) for decade in decades for value in series_values(series))
        return cls(tuple(OwnedPart(value) for value in (*values, _MOST_OHMS)))

    def count_of(self, ohms: float) -> int | None:
        """Return how many parts of a resistance there are, 0 for none; none is as many as wanted. [1]

        A measured part is found by what is printed on it, too.
        """
        found = [part for part in self.parts if part.is_of(ohms)]
        if any(part.count is None for part in found):
            return None
        return sum(part.count or 0 for part in found)

    def without(self, values: Iterable[float]) -> "Drawer":
        """Return what is left when resistors of some values are taken out, as far as there are any. [Ω]"""
        left = list(self.parts)
        for ohms in values:
            place = next((i for i, part in enumerate(left) if part.is_of(ohms)), None)
            if place is not None and (count := left[place].count) is not None:
                left[place : place + 1] = [replace(left[place], count=count - 1)] if count > 1 else []
        return Drawer(tuple(left))


class Arrangement(Enum):
    """How the parts of a leg stand together."""

    SINGLE = "a"
    SERIES = "a + b"
    PARALLEL = "a || b"
    SERIES_OF_THREE = "a + b + c"
    PARALLEL_OF_THREE = "a || b || c"
    SERIES_WITH_PAIR = "a + (b || c)"
    PARALLEL_WITH_PAIR = "a || (b + c)"


_ARRANGEMENTS = tuple(Arrangement)


@dataclass(frozen=True, slots=True)
class Leg:
    """One leg made of parts of a drawer."""

    ohms: float
    """All its parts together. [Ω]"""
    arrangement: Arrangement
    parts: tuple[OwnedPart, ...]
    """In the order of the arrangement's letters."""

    @property
    def words(self) -> str:
        """Return how the leg is made, as ``1 kΩ || 4.7 kΩ``."""
        letters = dict(zip("abc", (format_quantity(part.ohms, "Ω") for part in self.parts), strict=False))
        return "".join(letters.get(mark, mark) for mark in self.arrangement.value)


def listed_words(legs: Iterable[Leg]) -> list[str]:
    """Return how legs are made, three and more alike in a row as one: ``3 × 1.1 kΩ``, ``2.2 kΩ``."""
    words: list[str] = []
    for (each, kind), run in groupby(legs, lambda leg: (leg.words, leg.arrangement)):
        count = len(list(run))
        together = each if kind is Arrangement.SINGLE else f"({each})"
        words += [f"{count} × {together}"] if count >= _SEVERAL else [each] * count
    return words


@dataclass(frozen=True, slots=True, eq=False)
class Options:
    """Every leg that can be made of a drawer, by rising resistance."""

    drawer: Drawer
    ohms: FloatArray
    """Shape (n_options,). [Ω]"""
    parts: npt.NDArray[np.int32]
    """Indices into the drawer, -1 where there is none, shape (n_options, 3). [1]"""
    arrangements: npt.NDArray[np.int8]
    """Indices of :class:`Arrangement`, shape (n_options,). [1]"""

    @property
    def n_parts(self) -> npt.NDArray[np.intp]:
        """Return how many parts each option takes, shape (n_options,). [1]"""
        return np.asarray((self.parts >= 0).sum(axis=1))

    def leg(self, index: int) -> Leg:
        """Return one option."""
        parts = tuple(self.drawer.parts[i] for i in self.parts[index] if i >= 0)
        return Leg(float(self.ohms[index]), _ARRANGEMENTS[self.arrangements[index]], parts)

    def counted(self) -> tuple[npt.NDArray[np.intp], npt.NDArray[np.int16]]:
        """Return the parts of which there are so many only, and how many each option takes of them.

        Returns
        -------
        counts : int array, shape (n_counted,)
            How many there are. [1]
        uses : int array, shape (n_options, n_counted)
            How many each option takes. [1]
        """
        limited = [i for i, part in enumerate(self.drawer.parts) if part.count is not None]
        counts = np.array([self.drawer.parts[i].count for i in limited], np.intp)
        uses = (self.parts[:, :, None] == np.array(limited, np.int32)).sum(axis=1, dtype=np.int16)
        return counts, uses


def leg_options(drawer: Drawer, most_parts: int) -> Options:
    """Return every leg of at most so many parts.

    Parameters
    ----------
    drawer : Drawer
        What there is.
    most_parts : int
        ``1 <= most_parts <= 3``. [1]

    Raises
    ------
    NetworkError
        If the drawer is empty, ``most_parts`` is out of range, or there are more than
        5 million legs.

    Notes
    -----
    Of legs alike that take parts without a count only, the one with the fewest parts is kept.
    """
    if not drawer.parts:
        raise NetworkError("The drawer is empty: put at least one resistor in.")
    if not 1 <= most_parts <= MOST_PARTS:
        raise NetworkError(f"A leg takes 1 to {MOST_PARTS} parts, not {most_parts}.")
    _check_size(len(drawer.parts), most_parts)
    values = np.array([part.ohms for part in drawer.parts])
    blocks = list(_blocks(values, most_parts))
    ohms = np.concatenate([block[0] for block in blocks])
    parts = np.concatenate([block[1] for block in blocks])
    kinds = np.repeat(np.arange(len(blocks), dtype=np.int8), [len(block[0]) for block in blocks])
    kept = _makeable(drawer, parts)
    order = np.flatnonzero(kept)[np.argsort(ohms[kept], kind="stable")]
    options = Options(drawer, ohms[order], parts[order], kinds[order])
    return options if any(part.count is not None for part in drawer.parts) else _distinct(options)


def _check_size(n: int, most_parts: int) -> None:
    """Refuse what would take minutes and gigabytes: all arrangements are held at once."""
    pairs, triples = n * (n + 1), n * (n + 1) * (n + 2) // 3 + n * n * (n + 1)
    if n + (most_parts > 1) * pairs + (most_parts > 2) * triples > _MOST_OPTIONS:
        fewer = "two parts" if n + pairs <= _MOST_OPTIONS else "one part"
        raise NetworkError(
            f"{n:,} values make too many legs of up to {most_parts} parts to compare: "
            f"choose {fewer} a leg, or fewer values (E24 instead of a finer series)."
        )


Block = tuple[FloatArray, npt.NDArray[np.int32]]


def _blocks(values: FloatArray, most_parts: int) -> Iterable[Block]:
    """Yield resistances and part indices, in the order of :class:`Arrangement`."""
    n = len(values)
    yield _block(values, np.arange(n))
    if most_parts >= 2:
        i, j = np.triu_indices(n)
        yield _block(values[i] + values[j], i, j)
        yield _block(_parallel(values[i], values[j]), i, j)
    if most_parts >= 3:
        a, b, c = (axis.ravel() for axis in np.meshgrid(*[np.arange(n)] * 3, indexing="ij"))
        rising = (a <= b) & (b <= c)
        i, j, k = a[rising], b[rising], c[rising]
        yield _block(values[i] + values[j] + values[k], i, j, k)
        yield _block(_parallel(values[i], _parallel(values[j], values[k])), i, j, k)
        pair = b <= c
        i, j, k = a[pair], b[pair], c[pair]
        yield _block(values[i] + _parallel(values[j], values[k]), i, j, k)
        yield _block(_parallel(values[i], values[j] + values[k]), i, j, k)


def _block(ohms: FloatArray, *columns: npt.NDArray[np.intp]) -> Block:
    parts = np.full((len(ohms), MOST_PARTS), -1, np.int32)
    for place, column in enumerate(columns):
        parts[:, place] = column
    return ohms, parts


def _parallel(a: FloatArray, b: FloatArray) -> FloatArray:
    return np.asarray(a * b / (a + b))


def _makeable(drawer: Drawer, parts: npt.NDArray[np.int32]) -> npt.NDArray[np.bool_]:
    """Return which options do not take more of a part than there are."""
    counts = np.array([part.count or len(parts) + 1 for part in drawer.parts] + [MOST_PARTS + 1])
    taken = (parts[:, :, None] == parts[:, None, :]).sum(axis=2)
    return np.asarray(((taken <= counts[parts]) | (parts < 0)).all(axis=1))


def _distinct(options: Options) -> Options:
    order = np.lexsort((options.n_parts, np.round(np.log(options.ohms) / _SAME)))
    ohms = options.ohms[order]
    first = np.concatenate(([True], np.diff(ohms) > _SAME * ohms[1:]))
    kept = order[first]
    return Options(options.drawer, options.ohms[kept], options.parts[kept], options.arrangements[kept])
