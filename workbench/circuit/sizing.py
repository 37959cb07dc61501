"""Values for a ladder: the ideal ones for a wanted full scale, and near ones from a series.

The pins count as ideal sources behind the mean of their two on-resistances, zeros driven, so
the ladder is one source behind one resistance and the values follow in closed form.
"""

from collections.abc import Callable, Sequence

import numpy as np
import numpy.typing as npt

from workbench.circuit.ladders import Topology, pin_nodes, r2r, weighted
from workbench.circuit.network import Driver, Load, Network
from workbench.circuit.series import Series, nearest, step
from workbench.errors import NetworkError
from workbench.units import format_quantity

__all__ = ["FULL_SCALE_VOLTS", "ideal_r2r", "ideal_weighted", "near_r2r", "near_weighted", "sized_ladder"]

FULL_SCALE_VOLTS = 0.7
"""White of an analog RGB line over black [V]: 0.700 V, DAC table of a graphics-controller data sheet measured
to the VESA procedure, beike2008.cn/845ge_datasheet_16453103_149.html."""
_USUAL_SIEMENS = 1.0 / 75.0
_MOVES = (-2, -1, 1, 2)

Floats = npt.NDArray[np.float64]


def ideal_weighted(
    bits: int,
    driver: Driver,
    load: Load,
    *,
    shunt_ohms: float | None = None,
    series_ohms: float = 0.0,
    full_scale_volts: float = FULL_SCALE_VOLTS,
) -> tuple[float, ...]:
    """Return the legs of a weighted ladder with even steps, most significant bit first. [Ω]

    Parameters
    ----------
    bits : int
        Number of legs, at least 1. [1]
    driver, load : Driver, Load
        The pins and the monitor; a load without termination counts as 75 Ω.
    shunt_ohms, series_ohms : float
        From the shared node to ground, and from there to the connector. [Ω]
    full_scale_volts : float
        Level of the highest code at the monitor. [V]

    Raises
    ------
    NetworkError
        If supply or pins are too weak for the full scale.

    Notes
    -----
    With the legs' conductances adding up to G, the shared node sits at ``V G / (G + Y)``, where
    Y is everything else from it to ground; solved for G, which bit k shares as ``2^k``.
    """
    bus_volts, others = _at_the_bus(load, shunt_ohms, series_ohms, full_scale_volts)
    if bus_volts >= driver.supply_volts:
        raise _too_weak(driver)
    total = others * bus_volts / (driver.supply_volts - bus_volts)
    whole = (1 << bits) - 1
    legs = tuple(whole / (total * (1 << place)) - _pin_ohms(driver) for place in reversed(range(bits)))
    if min(legs) <= 0.0:
        raise _too_weak(driver)
    return legs


def ideal_r2r(
    bits: int,
    driver: Driver,
    load: Load,
    *,
    shunt_ohms: float | None = None,
    series_ohms: float = 0.0,
    full_scale_volts: float = FULL_SCALE_VOLTS,
) -> tuple[float, float]:
    """Return the rungs' R and the legs' 2R (less the pins' resistance) of an R-2R ladder. [Ω]

    The ladder is a source of ``V (1 - 2^-n)`` behind R. Parameters and errors are those of
    :func:`ideal_weighted`.
    """
    bus_volts, others = _at_the_bus(load, shunt_ohms, series_ohms, full_scale_volts)
    open_volts = driver.supply_volts * (1.0 - 0.5**bits)
    r_ohms = (open_volts / bus_volts - 1.0) / others
    leg_ohms = 2.0 * r_ohms - _pin_ohms(driver)
    if r_ohms <= 0.0 or leg_ohms <= 0.0:
        raise _too_weak(driver)
    return r_ohms, leg_ohms


def near_weighted(
    ideal: Sequence[float], series: Series, driver: Driver, load: Load, *, shunt_ohms: float | None = None
) -> tuple[float, ...]:
    """Return legs from a series whose worst level error is small, from the ideal ones. [Ω]

    Each leg starts at the nearest value; then one leg at a time moves along the series as long
    as the worst error over all codes falls. This is a good start, not a proved best.
    """
    others = _others(load, shunt_ohms)

    def weights(ohms: Sequence[float]) -> Floats:
        legs = 1.0 / (np.asarray(ohms) + _pin_ohms(driver))
        return np.asarray(driver.supply_volts * legs / (legs.sum() + others))

    return _descend([nearest(ohms, series) for ohms in ideal], series, weights, weights(ideal))


def near_r2r(
    bits: int,
    ideal: tuple[float, float],
    series: Series,
    driver: Driver,
    load: Load,
    *,
    shunt_ohms: float | None = None,
) -> tuple[float, float]:
    """Return R and 2R from a series, as :func:`near_weighted` does. [Ω]"""
    others = _others(load, shunt_ohms)

    def weights(ohms: Sequence[float]) -> Floats:
        return _r2r_weights(bits, ohms[0], ohms[1], driver, others)

    r_ohms, leg_ohms = _descend([nearest(ohms, series) for ohms in ideal], series, weights, weights(ideal))
    return r_ohms, leg_ohms


def sized_ladder(
    topology: Topology,
    bits: int,
    driver: Driver,
    load: Load,
    *,
    series: Series | None = None,
    shunt_ohms: float | None = None,
    node_farads: float = 0.0,
) -> Network:
    """Return a weighted or an R-2R ladder that brings white to 0.700 V.

    With a series, its values are near ones of it; without, the ideal ones. The other options
    are those of :func:`~workbench.circuit.ladders.weighted`.

    Raises
    ------
    NetworkError
        If supply and pins cannot reach 0.700 V, the number of bits is out of range, or there is
        no template of that shape.
    """
    pin_nodes(bits)
    if topology is Topology.R2R:
        pair = ideal_r2r(bits, driver, load, shunt_ohms=shunt_ohms)
        pair = pair if series is None else near_r2r(bits, pair, series, driver, load, shunt_ohms=shunt_ohms)
        return r2r(bits, *pair, shunt_ohms=shunt_ohms, node_farads=node_farads)
    if topology is Topology.WEIGHTED:
        legs = ideal_weighted(bits, driver, load, shunt_ohms=shunt_ohms)
        if series is not None:
            legs = near_weighted(legs, series, driver, load, shunt_ohms=shunt_ohms)
        return weighted(bits, legs, shunt_ohms=shunt_ohms, node_farads=node_farads)
    raise NetworkError(f"there is no template for a {topology.value} ladder: choose weighted or R-2R")


def _at_the_bus(
    load: Load, shunt_ohms: float | None, series_ohms: float, full_scale_volts: float
) -> tuple[float, float]:
    """Return the shared node's voltage at full scale and what lies from it to ground. [V] [S]"""
    load_ohms = 1.0 / _siemens(load)
    bus_volts = full_scale_volts * (load_ohms + series_ohms) / load_ohms
    return bus_volts, 1.0 / (load_ohms + series_ohms) + (0.0 if shunt_ohms is None else 1.0 / shunt_ohms)


def _others(load: Load, shunt_ohms: float | None) -> float:
    return _siemens(load) + (0.0 if shunt_ohms is None else 1.0 / shunt_ohms)


def _siemens(load: Load) -> float:
    return load.siemens or _USUAL_SIEMENS


def _pin_ohms(driver: Driver) -> float:
    return (driver.high_ohms + driver.low_ohms) / 2.0


def _too_weak(driver: Driver) -> NetworkError:
    return NetworkError(
        f"no resistors bring white to the wanted level from {format_quantity(driver.supply_volts, 'V')}"
        f" and pins of {format_quantity(_pin_ohms(driver), 'Ω')}: take a higher supply,"
        " stronger pins or a lighter load"
    )


def _r2r_weights(bits: int, r_ohms: float, leg_ohms: float, driver: Driver, out_siemens: float) -> Floats:
    """Return what each bit of an R-2R ladder adds, most significant first. [V]

    From the terminator on, the ladder below a node is one source behind one resistance.
    """
    leg = 1.0 / (leg_ohms + _pin_ohms(driver))
    siemens, amps_per_volt = 1.0 / leg_ohms, np.zeros(bits)
    for place in reversed(range(bits)):
        siemens += leg
        amps_per_volt[place] = leg
        if place:
            volts, ohms = amps_per_volt / siemens, 1.0 / siemens + r_ohms
            siemens, amps_per_volt = 1.0 / ohms, volts / ohms
    return np.asarray(driver.supply_volts * amps_per_volt / (siemens + out_siemens))


def _descend(
    start: Sequence[float], series: Series, weights: Callable[[Sequence[float]], Floats], aim: Floats
) -> tuple[float, ...]:
    """Move one value at a time along the series while the worst level error falls."""
    best, least = list(start), _worst(weights(start) - aim)
    improved = True
    while improved:
        improved = False
        for place in range(len(best)):
            for move in _MOVES:
                trial = [*best[:place], step(best[place], series, move), *best[place + 1 :]]
                error = _worst(weights(trial) - aim)
                if error < least * (1.0 - 1e-9):
                    best, least, improved = trial, error, True
    return tuple(best)


def _worst(errors: Floats) -> float:
    """Return the largest error of any sum of weights: all too high, or all too low, together."""
    return float(max(errors.clip(min=0.0).sum(), -errors.clip(max=0.0).sum()))
