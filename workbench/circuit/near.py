"""Values for a ladder from a series of preferred values, near the ideal ones.

What a set of values is judged by: first that no step falls, that white is about right and that steps
are even, then the worst error of any level.
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import product

import numpy as np
import numpy.typing as npt

from workbench.circuit.codes import pin_steps
from workbench.circuit.fit.drawer import Drawer, leg_options
from workbench.circuit.fit.search import best_sets
from workbench.circuit.fit.task import Task
from workbench.circuit.linearity import EVEN_LSB
from workbench.circuit.network import Driver, Load
from workbench.circuit.series import Series, nearest, step
from workbench.circuit.sizing import FULL_SCALE_VOLTS, pin_ohms, rest_siemens
from workbench.progress import SILENT

__all__ = ["near_r2r", "near_segmented", "near_weighted"]

Floats = npt.NDArray[np.float64]
Ohms = tuple[float, ...]

_WHITE_OFF = 0.05
"""White may be off by this part before steps that fall are put up with: 0.665 V is the least there is,
see :mod:`workbench.checks.limits`. [1]"""
_SETS = 64
"""Sets of least error among which one without a falling step is looked for. [1]"""
_BUDGET = 20_000
"""Partial sets that search may look at: some milliseconds. [1]"""
_MOVES = (-2, -1, 1, 2)
_FIRST = range(-4, 3)
"""Steps along the series from the first leg's ideal value at which doubling legs are started."""
_PAIRS = range(-7, 8)
_ROUNDING = 1e-9


def near_weighted(
    ideal: Sequence[float], series: Series, driver: Driver, load: Load, *, shunt_ohms: float | None = None
) -> Ohms:
    """Return legs from a series for a weighted ladder, most significant bit first. [Ω]

    Parameters
    ----------
    ideal : sequence of float, shape (bits,)
        What :func:`~workbench.circuit.sizing.ideal_weighted` gives. [Ω]
    series : Series
        What to choose from.
    driver, load : Driver, Load
        The pins and the monitor.
    shunt_ohms : float, optional
        From the shared node to ground. [Ω]

    Notes
    -----
    Among the sets of least worst-case error (:func:`workbench.circuit.fit.search.best_sets`) it is the
    first with no step that falls. Where none of them has that, legs that at least double from one bit
    to the next never fall; they are moved towards even steps as far as none falls.
    """
    judge = _star_judge(pin_steps(len(ideal)), 0, driver, load, shunt_ohms)
    sets = _least_error(len(ideal), series, driver, load, shunt_ohms)
    best = min(sets, key=judge, default=None)
    if best is None or judge(best)[0]:
        chains = (_descend(chain, series, judge) for chain in _doubling(ideal, series, pin_ohms(driver)))
        best = min([*sets, *chains], key=judge)
    return best


def near_segmented(
    bits: int,
    thermometer: int,
    ideal: Sequence[float],
    series: Series,
    driver: Driver,
    load: Load,
    *,
    shunt_ohms: float | None = None,
) -> Ohms:
    """Return values from a series for a segmented ladder: an equal leg's first, then the others. [Ω]

    ``ideal`` has the same order; the other parameters are those of :func:`near_weighted`. From the
    nearest values, and from ones that at least double, one at a time moves along the series as long as
    that is for the better: a good choice, not a proved best.
    """
    several = (1 << thermometer) - 1
    legs = _star_judge(pin_steps(bits, thermometer), several, driver, load, shunt_ohms)

    def judge(ohms: Ohms) -> tuple[int, float]:
        return legs((*ohms[:1] * several, *ohms[1:]))

    starts = [tuple(nearest(ohms, series) for ohms in ideal), *_doubling(ideal, series, pin_ohms(driver))]
    return min((_descend(one, series, judge) for one in starts), key=judge)


def near_r2r(
    bits: int,
    ideal: tuple[float, float],
    series: Series,
    driver: Driver,
    load: Load,
    *,
    shunt_ohms: float | None = None,
) -> tuple[float, float]:
    """Return R and 2R from a series, the best of all pairs around the ideal ones. [Ω]"""
    rest, aim = rest_siemens(load, shunt_ohms), _even_volts(pin_steps(bits))

    def judge(pair: tuple[float, float]) -> tuple[int, float]:
        return _verdict(_r2r_weights(bits, *pair, driver, rest), aim, 0)

    r_ohms, leg_ohms = (nearest(ohms, series) for ohms in ideal)
    pairs = ((step(r_ohms, series, i), step(leg_ohms, series, j)) for i, j in product(_PAIRS, _PAIRS))
    return min(pairs, key=judge)


def _star_judge(
    steps: Sequence[int], several: int, driver: Driver, load: Load, shunt_ohms: float | None
) -> Callable[[Sequence[float]], tuple[int, float]]:
    """Return what says how good legs are that meet at one node: the lower, the better."""
    rest, aim = rest_siemens(load, shunt_ohms), _even_volts(steps)

    def judge(ohms: Sequence[float]) -> tuple[int, float]:
        legs = 1.0 / (np.asarray(ohms) + pin_ohms(driver))
        return _verdict(driver.supply_volts * legs / (legs.sum() + rest), aim, several)

    return judge


def _even_volts(steps: Sequence[int]) -> Floats:
    return np.asarray(steps) * (FULL_SCALE_VOLTS / sum(steps))


def _verdict(weights: Floats, aim: Floats, several: int) -> tuple[int, float]:
    """Return how bad steps and white are, from 0 for good to 3, and the worst error of any level. [V]

    The level of a code is off by the sum of its pins' errors; at worst all that are too high come
    together, or all that are too low. A step is where a pin takes over from all below it.
    """
    tail = weights[several:]
    below = np.append(np.cumsum(tail[::-1])[::-1], 0.0)
    lsb = weights.sum() / aim.sum() * aim[-1]
    steps = np.append(tail - below[1:], weights[:several] - below[0]) / lsb
    uneven = np.abs(steps - 1.0).max() - _ROUNDING
    off = weights - aim
    far = abs(off.sum()) > _WHITE_OFF * aim.sum()
    falls = (steps < -_ROUNDING).any()
    bad = 3 if far or falls else sum(uneven > most for most in (EVEN_LSB, 1.0))
    return bad, float(max(off.clip(min=0.0).sum(), -off.clip(max=0.0).sum()))


def _least_error(
    bits: int, series: Series, driver: Driver, load: Load, shunt_ohms: float | None
) -> list[Ohms]:
    options = leg_options(Drawer.of_series(series), 1)
    counts, uses = options.counted()
    task = Task(
        _even_volts(pin_steps(bits)),
        driver.supply_volts,
        rest_siemens(load, shunt_ohms),
        1.0 / (options.ohms + pin_ohms(driver)),
        counts,
        uses,
    )
    pool = best_sets(task, keep=_SETS, widest=3.0, budget=_BUDGET, progress=SILENT)
    return [] if pool is None else [tuple(options.ohms[chosen].tolist()) for chosen in pool.sets]


def _doubling(ideal: Sequence[float], series: Series, on_ohms: float) -> Iterator[Ohms]:
    """Yield legs of which each has at least twice the resistance of the one before, pin included."""
    for by in _FIRST:
        legs = [step(nearest(ideal[0], series), series, by)]
        while len(legs) < len(ideal):
            least = 2.0 * (legs[-1] + on_ohms) - on_ohms
            near = nearest(least, series)
            legs.append(near if near >= least * (1.0 - _ROUNDING) else step(near, series, 1))
        yield tuple(legs)


def _descend(start: Ohms, series: Series, judge: Callable[[Ohms], tuple[int, float]]) -> Ohms:
    """Move one value at a time along the series while the verdict gets better."""
    best, least = start, judge(start)
    improved = True
    while improved:
        improved = False
        for place in range(len(best)):
            for move in _MOVES:
                trial = (*best[:place], step(best[place], series, move), *best[place + 1 :])
                verdict = judge(trial)
                if verdict < (least[0], least[1] * (1.0 - _ROUNDING)):
                    best, least, improved = trial, verdict, True
    return best


def _r2r_weights(bits: int, r_ohms: float, leg_ohms: float, driver: Driver, out_siemens: float) -> Floats:
    """Return what each bit of an R-2R ladder adds, most significant first. [V]

    From the terminator on, the ladder below a node is one source behind one resistance.
    """
    leg = 1.0 / (leg_ohms + pin_ohms(driver))
    siemens, amps_per_volt = 1.0 / leg_ohms, np.zeros(bits)
    for place in reversed(range(bits)):
        siemens += leg
        amps_per_volt[place] = leg
        if place:
            volts, ohms = amps_per_volt / siemens, 1.0 / siemens + r_ohms
            siemens, amps_per_volt = 1.0 / ohms, volts / ohms
    return np.asarray(driver.supply_volts * amps_per_volt / (siemens + out_siemens))
