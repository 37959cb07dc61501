"""The ideal values of a ladder for a wanted full scale.

The pins count as ideal sources behind the mean of their two on-resistances, zeros driven, so
the ladder is one source behind one resistance and the values follow in closed form.
"""

from collections.abc import Sequence

from workbench.circuit.codes import pin_steps
from workbench.circuit.network import Driver, Load
from workbench.errors import NetworkError
from workbench.units import format_quantity

__all__ = [
    "FULL_SCALE_VOLTS",
    "ideal_legs",
    "ideal_r2r",
    "ideal_weighted",
    "matching_shunt",
    "pin_ohms",
    "rest_siemens",
]

FULL_SCALE_VOLTS = 0.7
"""White of an analog RGB line over black [V]: 0.700 V, DAC table of a graphics-controller data sheet measured
to the VESA procedure, beike2008.cn/845ge_datasheet_16453103_149.html."""
_USUAL_SIEMENS = 1.0 / 75.0


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

    ``bits`` is at least 1; parameters and errors are those of :func:`ideal_legs`.
    """
    return ideal_legs(
        pin_steps(bits),
        driver,
        load,
        shunt_ohms=shunt_ohms,
        series_ohms=series_ohms,
        full_scale_volts=full_scale_volts,
    )


def ideal_legs(
    steps: Sequence[int],
    driver: Driver,
    load: Load,
    *,
    shunt_ohms: float | None = None,
    series_ohms: float = 0.0,
    full_scale_volts: float = FULL_SCALE_VOLTS,
) -> tuple[float, ...]:
    """Return legs that meet at one node and give even steps. [Ω]

    Parameters
    ----------
    steps : sequence of int, shape (n_legs,)
        How many steps of the staircase each leg stands for, as of
        :func:`~workbench.circuit.codes.pin_steps`. [1]
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
    Y is everything else from it to ground; solved for G, which the legs share by their steps.
    """
    bus_volts, others = _at_the_bus(load, shunt_ohms, series_ohms, full_scale_volts)
    if bus_volts >= driver.supply_volts:
        raise _too_weak(driver)
    total = others * bus_volts / (driver.supply_volts - bus_volts)
    legs = tuple(sum(steps) / (total * step) - pin_ohms(driver) for step in steps)
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
    :func:`ideal_legs`.
    """
    bus_volts, others = _at_the_bus(load, shunt_ohms, series_ohms, full_scale_volts)
    open_volts = driver.supply_volts * (1.0 - 0.5**bits)
    r_ohms = (open_volts / bus_volts - 1.0) / others
    leg_ohms = 2.0 * r_ohms - pin_ohms(driver)
    if r_ohms <= 0.0 or leg_ohms <= 0.0:
        raise _too_weak(driver)
    return r_ohms, leg_ohms


def matching_shunt(open_volts: float, load: Load, *, full_scale_volts: float = FULL_SCALE_VOLTS) -> float:
    """Return the shunt that makes a ladder a source of 75 Ω. [Ω]

    Parameters
    ----------
    open_volts : float
        White of the ladder alone with nothing connected: of legs that meet at one node the supply. [V]
    load : Load
        The monitor; without termination it counts as 75 Ω.
    full_scale_volts : float
        Level of the highest code at the monitor. [V]

    Raises
    ------
    NetworkError
        If the ladder alone must already have less than 75 Ω to reach the full scale.

    Notes
    -----
    Own arithmetic. With the ladder's conductance G, the source's ``Y = 1 / 75 Ω`` and the load's, white
    is ``V G / (Y + load)``; what G lacks of Y is the shunt. At 3.3 V and 75 Ω the legs together are
    176.8 Ω and the shunt is 130.3 Ω.
    """
    ladder = full_scale_volts * (_USUAL_SIEMENS + _siemens(load)) / max(open_volts, 1e-9)
    if ladder >= _USUAL_SIEMENS:
        raise NetworkError(
            f"a ladder of {format_quantity(open_volts, 'V')} at most cannot be matched to 75 Ω: "
            "take a higher supply or a lighter load"
        )
    return 1.0 / (_USUAL_SIEMENS - ladder)


def rest_siemens(load: Load, shunt_ohms: float | None) -> float:
    """Return all that conducts from the legs' node to ground beside them. [S]"""
    return _siemens(load) + (0.0 if shunt_ohms is None else 1.0 / shunt_ohms)


def pin_ohms(driver: Driver) -> float:
    """Return the on-resistance that a pin counts with, the mean of high and low. [Ω]"""
    return (driver.high_ohms + driver.low_ohms) / 2.0


def _at_the_bus(
    load: Load, shunt_ohms: float | None, series_ohms: float, full_scale_volts: float
) -> tuple[float, float]:
    """Return the shared node's voltage at full scale and what lies from it to ground. [V] [S]"""
    load_ohms = 1.0 / _siemens(load)
    bus_volts = full_scale_volts * (load_ohms + series_ohms) / load_ohms
    return bus_volts, 1.0 / (load_ohms + series_ohms) + (0.0 if shunt_ohms is None else 1.0 / shunt_ohms)


def _siemens(load: Load) -> float:
    return load.siemens or _USUAL_SIEMENS


def _too_weak(driver: Driver) -> NetworkError:
    return NetworkError(
        f"no resistors bring white to the wanted level from {format_quantity(driver.supply_volts, 'V')}"
        f" and pins of {format_quantity(pin_ohms(driver), 'Ω')}: take a higher supply,"
        " stronger pins or a lighter load"
    )
