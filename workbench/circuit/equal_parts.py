"""Weighted ladders whose legs are made of parts of one value only, in series and in parallel.

A leg of 2, 1 or 1/2 parts in parallel is exact whatever the value, so a bag of one value makes an even
staircase.
"""

from dataclasses import replace
from itertools import pairwise
from string import ascii_lowercase

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load, Network, NodeId, PartId, Resistor
from workbench.circuit.sizing import FULL_SCALE_VOLTS, pin_ohms, rest_siemens
from workbench.errors import NetworkError
from workbench.units import format_quantity

__all__ = ["equal_parts", "middle_leg"]

_MOST = 16
"""Parts of one leg at most: what 8 bits take around a value that suits. [1]"""


def equal_parts(
    bits: int,
    ohms: float,
    middle: int,
    *,
    shunt_ohms: float | None = None,
    series_ohms: float | None = None,
    node_farads: float = 0.0,
) -> Network:
    """Return a weighted ladder made of parts of one value only.

    Leg ``middle``, counted from the most significant bit, is one part; each leg before it has
    twice as many side by side, each leg after it twice as many one after the other.

    Parameters
    ----------
    bits : int
        Number of pins, ``1 <= bits <= 8``. [1]
    ohms : float
        The value of every part of the legs. [Ω]
    middle : int
        ``0 <= middle < bits``. [1]
    shunt_ohms, series_ohms, node_farads
        As for :func:`~workbench.circuit.ladders.weighted`.

    Raises
    ------
    NetworkError
        If the number of bits is out of range, or a leg would take more than 16 parts.
    """
    plain = weighted(
        bits, (ohms,) * bits, shunt_ohms=shunt_ohms, series_ohms=series_ohms, node_farads=node_farads
    )
    legs = [part for i, leg in enumerate(plain.resistors[:bits]) for part in _multiplied(leg, middle - i)]
    return replace(plain, resistors=(*legs, *plain.resistors[bits:]))


def middle_leg(
    bits: int, part_ohms: float, driver: Driver, load: Load, *, shunt_ohms: float | None = None
) -> int:
    """Return the leg that is one part, so that white comes nearest to 0.700 V; 0 is the first. [1]"""
    rest = rest_siemens(load, shunt_ohms)

    def error(middle: int) -> float:
        legs = sum(1.0 / (part_ohms * 2.0 ** (leg - middle) + pin_ohms(driver)) for leg in range(bits))
        return abs(driver.supply_volts * legs / (legs + rest) - FULL_SCALE_VOLTS)

    return min(range(bits), key=error)


def _multiplied(leg: Resistor, doublings: int) -> list[Resistor]:
    """Return a leg with as many parts side by side, or below 0 one after the other."""
    count = 1 << abs(doublings)
    if count == 1:
        return [leg]
    if count > _MOST:
        raise NetworkError(
            f"of {format_quantity(leg.ohms, 'Ω')} only, {leg.id} would take {count} parts: "
            "choose another value, or fewer bits"
        )
    names = [PartId(f"{leg.id}{letter}") for letter in ascii_lowercase[:count]]
    if doublings > 0:
        return [replace(leg, id=name) for name in names]
    inner = (NodeId(f"{leg.id}m{'' if i == 1 else i}") for i in range(1, count))
    nodes = (leg.a, *inner, leg.b)
    return [replace(leg, id=name, a=a, b=b) for name, (a, b) in zip(names, pairwise(nodes), strict=True)]
