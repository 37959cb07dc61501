"""Try every setting of a chip, many at a time."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import prod

import numpy as np
import numpy.typing as npt

from workbench.errors import TimingError
from workbench.progress import Progress
from workbench.timing.clock.chip import Chip, Span
from workbench.units import format_quantity

__all__ = ["MOST_SETTINGS", "Grid", "closest_settings", "divide_by", "nearest_dividers", "system_clocks"]

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]

MOST_SETTINGS = 20_000_000
"""Most settings tried; more take too long to wait for. Our own bound. [1]"""
_CHUNK = 1 << 15
"""Settings tried in one go: few enough to stay in the processor's cache. [1]"""
_ALIKE = 32
"""Settings kept of each go for each one wanted, as many of them make the same clock. [1]"""


@dataclass(frozen=True, slots=True)
class Grid:
    """The pixel dividers of one kind: multiples of ``1 / steps``, but for those of ``1 / coarser``."""

    steps: int
    coarser: int
    """Steps of the next better kind, whose dividers are not this kind's; 0 for the best kind."""


def divide_by(total: int, spans: tuple[Span, ...]) -> tuple[int, ...] | None:
    """Return dividers of the given ranges that make a product, large ones first; none if there are none.

    >>> divide_by(12, (Span(1, 7), Span(1, 7)))
    (6, 2)
    """
    if not spans:
        return () if total == 1 else None
    for divider in range(min(spans[0].high, total), spans[0].low - 1, -1):
        if total % divider == 0 and (rest := divide_by(total // divider, spans[1:])) is not None:
            return divider, *rest
    return None


def closest_settings(
    chip: Chip, pixel_clock_hz: int, grids: tuple[Grid, ...], *, most: int, progress: Progress
) -> tuple[Ints, ...]:
    """Return the settings closest to a pixel clock, for each kind of divider.

    Parameters
    ----------
    most : int
        Settings kept of each kind. [1]

    Returns
    -------
    settings : tuple of int array, shape (n_kept, 3)
        Multiply, product of the dividers, and pixel divider in steps of its grid; in no order,
        each system clock once.

    Raises
    ------
    TimingError
        If no setting is allowed, or there are more than `MOST_SETTINGS`.
    """
    multiplies, products = _ranges(chip)
    total = len(multiplies) * len(products)
    kept: list[list[_Candidates]] = [[] for _ in grids]
    for done, multiply, divide in _chunks(multiplies, products):
        progress.step(done, total)
        system_hz = chip.reference_hz * multiply / divide
        allowed = np.flatnonzero(system_hz <= chip.max_system_hz)
        ratio = system_hz[allowed] / pixel_clock_hz
        for grid, keep in zip(grids, kept, strict=True):
            count, error = nearest_dividers(ratio, grid)
            best = _smallest(error, most * _ALIKE)
            chosen = allowed[best]
            settings = np.stack((multiply[chosen], divide[chosen], count[best]), axis=1)
            keep.append(_Candidates(settings, system_hz[chosen], error[best]).distinct())
    progress.step(total, total)
    return tuple(_Candidates.joined(keep).distinct().closest(most) for keep in kept)


@dataclass(frozen=True, eq=False)
class _Candidates:
    """Settings of one kind of divider, the system clock each makes, and its pixel clock's error."""

    settings: Ints
    system_hz: Floats
    error: Floats

    @staticmethod
    def joined(parts: list["_Candidates"]) -> "_Candidates":
        return _Candidates(
            np.concatenate([part.settings for part in parts]),
            np.concatenate([part.system_hz for part in parts]),
            np.concatenate([part.error for part in parts]),
        )

    def distinct(self) -> "_Candidates":
        """Keep each system clock once, from the fastest oscillator: it decides the divider too."""
        fastest_first = np.argsort(-self.settings[:, 0], kind="stable")
        _, first = np.unique(self.system_hz[fastest_first], return_index=True)
        kept = fastest_first[first]
        return _Candidates(self.settings[kept], self.system_hz[kept], self.error[kept])

    def closest(self, most: int) -> Ints:
        return self.settings[_smallest(self.error, most)]


def system_clocks(chip: Chip) -> Floats:
    """Return every system clock a chip can make, once, in rising order. [Hz]

    Raises
    ------
    TimingError
        As `closest_settings`.
    """
    multiplies, products = _ranges(chip)
    clocks_hz = [chip.reference_hz * m / d for _, m, d in _chunks(multiplies, products)]
    allowed = [np.unique(hz[hz <= chip.max_system_hz]) for hz in clocks_hz]
    return np.unique(np.concatenate(allowed))


def _ranges(chip: Chip) -> tuple[Ints, Ints]:
    """Return the multipliers and the products of the dividers, if they are not too many to try."""
    multiplies = _multiplies(chip)
    combinations = len(multiplies) * prod(span.count for span in chip.dividers)
    if combinations > MOST_SETTINGS:
        raise TimingError(
            f"These ranges give {combinations} settings, more than the {MOST_SETTINGS} tried here; narrow "
            "the multiply or the divide range."
        )
    return multiplies, _products(chip.dividers)


def _multiplies(chip: Chip) -> Ints:
    """Return the multipliers that keep the oscillator inside its range."""
    low, high = chip.multiply.low, chip.multiply.high
    if (span := chip.oscillator_hz) is not None:
        low = max(low, -(-span.low // chip.reference_hz))
        high = min(high, span.high // chip.reference_hz)
    if high < low:
        raise TimingError(
            f"No multiplier of {chip.multiply.low}..{chip.multiply.high} brings the reference of "
            f"{format_quantity(chip.reference_hz, 'Hz', 6)} into the oscillator's range; check both against "
            "the data sheet."
        )
    return np.arange(low, high + 1, dtype=np.int64)


def _products(spans: tuple[Span, ...]) -> Ints:
    products = np.ones(1, dtype=np.int64)
    for span in spans:
        products = np.unique(np.outer(products, np.arange(span.low, span.high + 1)))
    return products


def _chunks(multiplies: Ints, products: Ints) -> Iterator[tuple[int, Ints, Ints]]:
    """Yield how many settings went before, and the multiply and product of some more."""
    total = len(multiplies) * len(products)
    for start in range(0, total, _CHUNK):
        row, column = np.divmod(np.arange(start, min(start + _CHUNK, total)), len(products))
        yield start, multiplies[row], products[column]


def nearest_dividers(ratio: Floats, grid: Grid) -> tuple[Ints, Floats]:
    """Return the divider nearest to each ratio, in steps, and the size of the pixel clock's error.

    Of the two dividers around a ratio the one with the smaller error is taken; none is below 1.
    """
    wanted = ratio * grid.steps
    below = np.maximum(np.floor(wanted), grid.steps)
    above = np.maximum(below + 1, grid.steps)
    error_below, error_above = np.abs(wanted / below - 1), np.abs(wanted / above - 1)
    count = np.where(error_below <= error_above, below, above).astype(np.int64)
    error = np.minimum(error_below, error_above)
    if grid.coarser:
        error[count % (grid.steps // grid.coarser) == 0] = np.inf
    return count, error


def _smallest(error: Floats, most: int) -> npt.NDArray[np.intp]:
    if len(error) <= most:
        return np.flatnonzero(np.isfinite(error))
    best = np.argpartition(error, most)[:most]
    return best[np.isfinite(error[best])]
