"""What boards one would get: chance and the worst case."""

import math
from dataclasses import dataclass, fields

import numpy as np
from numpy.random import SFC64, Generator

from workbench.circuit.bands import Distribution, Tolerances
from workbench.circuit.linearity import ROUNDING_LSB
from workbench.circuit.network import Driver, Load, Network
from workbench.circuit.ports import FloatArray
from workbench.circuit.solution import solve_levels
from workbench.circuit.tolerance.boards import Boards, Design
from workbench.circuit.tolerance.elimination import BoardArray
from workbench.circuit.tolerance.sensitivity import Sensitivity, sensitivities
from workbench.circuit.tolerance.worst_case import worst_case
from workbench.errors import NetworkError
from workbench.progress import SILENT, Progress

__all__ = ["MAX_BOARDS", "Histogram", "Spread", "Tolerance", "find_tolerance"]

MAX_BOARDS = 10_000_000
"""Boards of one run; their figures are kept until it ends. [1]"""


@dataclass(frozen=True, slots=True)
class Histogram:
    """How many boards lie where: bins of equal width, or one value that all boards have."""

    low: float
    """Start of the first bin, in the figure's own unit."""
    high: float
    """End of the last bin; ``low`` where all boards are alike."""
    counts: tuple[int, ...]
    """Boards in each bin. [1]"""


@dataclass(frozen=True, slots=True)
class Spread:
    """How a figure varies from board to board, in the figure's own unit."""

    mean: float
    std: float
    p01: float
    """Level that 1 % of the boards stay under."""
    p50: float
    p99: float
    worst_low: float
    """The least that values in their bands can make of it; of an INL or DNL, the least seen."""
    worst_high: float
    """The most that values in their bands can make of it."""
    histogram: Histogram


@dataclass(frozen=True, slots=True, eq=False)
class Tolerance:
    """The boards of one channel."""

    boards: int
    seed: int
    full_scale_volts: Spread
    max_inl_lsb: Spread
    """Of each board's largest INL, whatever its sign."""
    max_dnl_lsb: Spread
    """Of each board's largest DNL, whatever its sign."""
    monotonic_yield: float
    """Share of the boards whose staircase never falls. [1]"""
    sensitivity: tuple[Sensitivity, ...]
    """The resistor that matters most first."""
    low_by_code: FloatArray
    """Level of each code that 1 % of the boards stay under, shape (n_codes,). [V]"""
    high_by_code: FloatArray
    """Level of each code that 1 % of the boards exceed, shape (n_codes,). [V]"""
    volts_by_board: FloatArray
    """Levels of the first boards drawn, shape (n_shown, n_codes). [V]"""
    factors_by_board: FloatArray
    """Their values over the nominal ones, shape (n_shown, n_resistors + 3): resistors, then supply, load
    and on-resistance. [1]"""


_OWN = Tolerances()
_CHUNK = 16384
"""Boards worked on at a time: their values fit into the processor's cache. [1]"""
_LEAST_CHUNK = 1024
"""Nor fewer than this: calls would take longer than the work in them. [1]"""
_BAND_BOARDS = 4096
_SHOWN = 64
_BINS = 48
_LEAST_FACTOR = 1e-3
"""A normal value in the far tail is not let through to 0. [1]"""


def find_tolerance(
    network: Network,
    driver: Driver,
    load: Load,
    tolerances: Tolerances = _OWN,
    *,
    boards: int = 100_000,
    seed: int = 1,
    progress: Progress = SILENT,
) -> Tolerance:
    """Draw boards at random and look for the worst one.

    Parameters
    ----------
    network, driver, load
        The channel with its nominal values.
    tolerances : Tolerances
        What varies, how far and how.
    boards : int
        Boards to draw, ``1 <= boards <= 10 000 000``. [1]
    seed : int
        The same seed draws the same boards, ``0 <= seed``. [1]
    progress : Progress
        Is told the boards done.

    Raises
    ------
    NetworkError
        If a tolerance or a count is out of its range, or if the network has no levels.
    Cancelled
        If ``progress`` says so.

    Notes
    -----
    Normal values may lie outside their band; the worst case (:mod:`.worst_case`) keeps to it.
    """
    design, widths = Design(network, driver, load), _half_widths(network, tolerances)
    _check(design, widths, boards, seed)
    chunk = _CHUNK if design.linear else max(_CHUNK // network.n_codes, _LEAST_CHUNK)
    draw = _Draw(tolerances, widths, seed, min(chunk, boards))
    figures, shown, factors = _draw_boards(design, draw, boards, progress)
    low, high = np.percentile(shown, (1.0, 99.0), axis=1)
    least, most, inl, dnl = worst_case(design, widths)
    lsb_volts, lsb = (most / (network.n_codes - 1), 1.0) if _bounded(tolerances) else (None, None)
    return Tolerance(
        boards=boards,
        seed=seed,
        full_scale_volts=_spread(figures.full_scale_volts, least, most, lsb_volts),
        max_inl_lsb=_spread(figures.max_inl_lsb, None, inl, lsb),
        max_dnl_lsb=_spread(figures.max_dnl_lsb, None, dnl, lsb),
        monotonic_yield=float(np.count_nonzero(figures.monotonic)) / boards,
        sensitivity=sensitivities(network, driver, load),
        low_by_code=low,
        high_by_code=high,
        volts_by_board=np.ascontiguousarray(shown[:, :_SHOWN].T),
        factors_by_board=np.ascontiguousarray(factors[:, :_SHOWN].T, dtype=np.float64),
    )


def _half_widths(network: Network, tolerances: Tolerances) -> FloatArray:
    """Return the band of each factor, in the order of :class:`Design`. [1]"""
    band = tolerances.resistors.half_width
    own = [resistor.tolerance if band is None else band for resistor in network.resistors]
    others = (tolerances.supply, tolerances.load, tolerances.on_resistance)
    return np.array([*own, *(other.half_width or 0.0 for other in others)])


def _check(design: Design, widths: FloatArray, boards: int, seed: int) -> None:
    if not ((widths >= 0.0) & (widths < 1.0)).all():
        raise NetworkError("A tolerance must be from 0 % to below 100 %.")
    if not 1 <= boards <= MAX_BOARDS:
        raise NetworkError(f"The number of boards must be from 1 to {MAX_BOARDS:,}, not {boards:,}.")
    if seed < 0:
        raise NetworkError(f"The seed must be 0 or more, not {seed}.")
    levels = solve_levels(design.network, design.driver, design.load)
    if not levels.weights_volts.sum() > 0.0:
        reason = levels.problems[0].sentence if levels.problems else "The supply is 0 V."
        raise NetworkError(f"This channel shows nothing that could vary. {reason}")


class _Draw:
    """Draws the factors of one chunk of boards after the other, each into the place of the last."""

    def __init__(self, tolerances: Tolerances, widths: FloatArray, seed: int, chunk: int) -> None:
        others = (tolerances.supply, tolerances.load, tolerances.on_resistance)
        bands = [tolerances.resistors] * (len(widths) - len(others)) + list(others)
        self._rows = [(float(width), band.distribution) for width, band in zip(widths, bands, strict=True)]
        self._bits = SFC64(seed)
        self._random = Generator(self._bits)
        self._factors = np.ones((len(widths), chunk), np.float32)
        self.chunk = chunk

    def __call__(self, n_boards: int) -> BoardArray:
        factors = self._factors[:, :n_boards]
        for row, (width, distribution) in zip(factors, self._rows, strict=True):
            if width == 0.0:
                continue
            if distribution is Distribution.UNIFORM:
                # Twice as fast as Generator.random: whole numbers of 32 bits, both signs.
                row[:] = self._bits.random_raw(n_boards // 2 + 1).view(np.int32)[:n_boards]
                row *= width / 2.0**31
                row += 1.0
            else:
                self._random.standard_normal(out=row, dtype=np.float32)
                row *= width / 3.0
                row += 1.0
                np.maximum(row, _LEAST_FACTOR, out=row)
        return factors


def _draw_boards(
    design: Design, draw: _Draw, boards: int, progress: Progress
) -> tuple[Boards, BoardArray, BoardArray]:
    """Return the figures of all boards, and levels and factors of the first, shape (..., n_first)."""
    drawn = draw(draw.chunk)
    first = drawn[:, :_BAND_BOARDS].copy()
    parts = [design.figures(drawn)]
    while (done := sum(len(part.monotonic) for part in parts)) < boards:
        progress.step(done, boards)
        parts.append(design.figures(draw(min(draw.chunk, boards - done))))
    progress.step(boards, boards)
    columns = (np.concatenate([getattr(part, name.name) for part in parts]) for name in fields(Boards))
    return Boards(*columns), design.levels(first), first


def _bounded(tolerances: Tolerances) -> bool:
    """Return whether no board lies outside its bands."""
    bands = (tolerances.resistors, tolerances.supply, tolerances.load, tolerances.on_resistance)
    return all(band.half_width == 0.0 or band.distribution is Distribution.UNIFORM for band in bands)


def _spread(values: BoardArray, least: float | None, most: float, lsb: float | None) -> Spread:
    """Return the spread of a figure.

    Parameters
    ----------
    values : float array, shape (n_boards,)
        The figure of each board, in single precision.
    least, most : float
        Its extremes at the edges of the bands; of a figure without a least one, the least seen is taken.
    lsb : float, optional
        One LSB in the figure's unit, where no board lies outside its bands: one that still lies beyond
        the extremes does so by rounding, or shows that the worst was missed. None where boards may.
    """
    ordered = np.sort(values)  # faster than np.percentile, which selects one rank after the other
    seen = float(ordered[0]), float(ordered[-1])
    least = min(seen[0] if least is None else least, most)
    mean = float(values.mean(dtype=np.float64))
    std = math.sqrt(np.square(values - values.dtype.type(mean)).mean())
    figures = [mean, *(float(ordered[round(share * (len(values) - 1))]) for share in (0.01, 0.5, 0.99))]
    if lsb is not None:
        least = seen[0] if seen[0] < least - ROUNDING_LSB * lsb else least
        most = seen[1] if seen[1] > most + ROUNDING_LSB * lsb else most
        figures = [min(max(figure, least), most) for figure in figures]
    mean, p01, p50, p99 = figures
    return Spread(mean, std, p01, p50, p99, least, most, _histogram(ordered))


def _histogram(ordered: BoardArray) -> Histogram:
    low, high = float(ordered[0]), float(ordered[-1])
    if not low < high:
        return Histogram(low, low, (len(ordered),))
    places = np.searchsorted(ordered, np.linspace(low, high, _BINS + 1)[1:-1])
    return Histogram(low, high, tuple(np.diff(places, prepend=0, append=len(ordered)).tolist()))
