"""A ladder as one wishes for it: its shape and bits, and where its values come from."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum
from functools import lru_cache
from math import isclose

from workbench.circuit.codes import pin_steps
from workbench.circuit.equal_parts import equal_parts, middle_leg
from workbench.circuit.ladders import Topology, analyse, pin_nodes, r2r, segmented, weighted
from workbench.circuit.near import near_r2r, near_segmented, near_weighted
from workbench.circuit.network import Driver, Load, Network
from workbench.circuit.series import Series, nearest
from workbench.circuit.sizing import ideal_legs, ideal_r2r, ideal_weighted, matching_shunt
from workbench.errors import NetworkError
from workbench.units import parse_list

__all__ = ["LadderWish", "Shape", "ValueLists", "make_ladder", "read_values", "wish_like", "wishes_for"]

ValueLists = tuple[tuple[float, ...], ...]
"""One list of values for all channels, or three: red, green, blue. [Ω]"""

_MATCHED_OHMS = 75.0
_NEAR = 0.05
"""A shunt from a series makes the source 75 Ω as nearly as this. [1]"""


class Shape(Enum):
    """The ladders there are templates for."""

    WEIGHTED = "weighted"
    R2R = "r2r"
    SEGMENTED = "segmented"
    EQUAL = "equal"
    """A weighted ladder whose legs are made of one value only, in series and in parallel."""


@dataclass(frozen=True, slots=True)
class LadderWish:
    """What the ladder of one channel is to be like."""

    shape: Shape = Shape.WEIGHTED
    bits: int = 5
    """``1 <= bits <= 8``. [1]"""
    thermometer: int = 2
    """Bits that a segmented ladder shows by equal legs, ``2 <= thermometer <= 3``. [1]"""
    values: tuple[float, ...] | None = None
    """Weighted: one a bit, most significant first; R-2R: R, or R and 2R; segmented: one of the equal
    legs, then the others; of equal parts: the part. None to have them sized for 0.700 V. [Ω]"""
    series: Series | None = None
    """Series that sized values are taken from; none for the ideal ones."""
    matched: bool = False
    """Whether a sized shunt makes the source 75 Ω."""
    shunt_ohms: float | None = None
    """A given shunt, where it is not ``matched``. [Ω]"""
    node_farads: float = 0.0
    """Capacitance of the shared node to ground; 0 for none. [F]"""


def wish_like(network: Network, source_ohms: float) -> LadderWish:
    """Return the wish that a network comes nearest to, but for its values; weighted where it is no ladder.

    Parameters
    ----------
    network : Network
        A channel.
    source_ohms : float
        What the line sees of it. [Ω]
    """
    ladder = analyse(network)
    value = {part.ohms for part in network.resistors if any(part.id in leg.parts for leg in ladder.legs)}
    one_value = len(value) == 1 and any(len(leg.parts) > 1 for leg in ladder.legs)
    shape = Shape.WEIGHTED if ladder.topology is Topology.CUSTOM else Shape(ladder.topology.value)
    shape = Shape.EQUAL if one_value and shape is Shape.WEIGHTED else shape
    matched = ladder.shunt is not None and isclose(source_ohms, _MATCHED_OHMS, rel_tol=_NEAR)
    wish = LadderWish(shape, network.bits, matched=matched)
    return replace(wish, thermometer=network.thermometer) if network.thermometer else wish


def read_values(text: str) -> ValueLists:
    """Read one list of values for all channels, or three with a slash between. [Ω]

    Raises
    ------
    QuantityError
        If a value cannot be read.
    NetworkError
        If there are not one or three lists.
    """
    lists = tuple(parse_list(part, "Ω") for part in text.split("/"))
    if len(lists) not in (1, 3):
        raise NetworkError(
            "give one list for all channels, or three with a slash between: 500,1k/500,1k/430,820"
        )
    return lists


def wishes_for(
    wish: LadderWish, bits: tuple[int, int, int], lists: ValueLists | None
) -> tuple[LadderWish, LadderWish, LadderWish]:
    """Return a wish with the bits and the values of red, green and blue.

    One list of values is for all three: a channel with fewer bits takes the first of them.

    Raises
    ------
    NetworkError
        If one list has not as many values as the widest channel takes.
    """
    red, green, blue = (
        replace(wish, bits=each, values=values)
        for each, values in zip(bits, _values(wish, bits, lists), strict=True)
    )
    return red, green, blue


def _values(
    wish: LadderWish, bits: tuple[int, int, int], lists: ValueLists | None
) -> Sequence[tuple[float, ...] | None]:
    if lists is None:
        return (None,) * len(bits)
    if len(lists) > 1:
        return lists
    if wish.shape in (Shape.R2R, Shape.EQUAL):
        return lists * len(bits)
    counts = [1 + max(each - wish.thermometer, 0) if wish.shape is Shape.SEGMENTED else each for each in bits]
    if len(lists[0]) != max(counts):
        raise NetworkError(
            f"there are {len(lists[0])} values for {max(bits)} bits: give {max(counts)}, "
            "or three lists with a slash between"
        )
    return tuple(lists[0][:count] for count in counts)


@lru_cache(maxsize=64)
def make_ladder(wish: LadderWish, driver: Driver, load: Load) -> Network:
    """Return the ladder that is wished for.

    Sized values bring white to 0.700 V: exactly, or near it where they are taken from a series.

    Raises
    ------
    NetworkError
        If supply and pins cannot reach 0.700 V, the number of bits is out of range, or the values do
        not match the bits.
    """
    pin_nodes(wish.bits, wish.thermometer if wish.shape is Shape.SEGMENTED else 0)
    if wish.matched:
        wish = replace(wish, shunt_ohms=_shunt(wish, driver, load), matched=False)
    values = _sized(wish, driver, load) if wish.values is None else wish.values
    return _built(wish, values, driver, load)


def _built(wish: LadderWish, values: tuple[float, ...], driver: Driver, load: Load) -> Network:
    bits, shunt_ohms, farads = wish.bits, wish.shunt_ohms, wish.node_farads
    match wish.shape:
        case Shape.WEIGHTED:
            return weighted(bits, values, shunt_ohms=shunt_ohms, node_farads=farads)
        case Shape.SEGMENTED:
            return segmented(bits, wish.thermometer, values, shunt_ohms=shunt_ohms, node_farads=farads)
        case Shape.R2R if 1 <= len(values) <= 2:
            return r2r(bits, *values, shunt_ohms=shunt_ohms, node_farads=farads)
        case Shape.R2R:
            raise NetworkError(f"an R-2R ladder takes R, or R and 2R, not {len(values)} values")
        case Shape.EQUAL if len(values) == 1:
            middle = middle_leg(bits, values[0], driver, load, shunt_ohms=shunt_ohms)
            return equal_parts(bits, values[0], middle, shunt_ohms=shunt_ohms, node_farads=farads)
        case Shape.EQUAL:
            raise NetworkError(f"a ladder of equal parts takes one value, not {len(values)}")


def _sized(wish: LadderWish, driver: Driver, load: Load) -> tuple[float, ...]:
    bits, series, shunt_ohms = wish.bits, wish.series, wish.shunt_ohms
    match wish.shape:
        case Shape.R2R:
            pair = ideal_r2r(bits, driver, load, shunt_ohms=shunt_ohms)
            return (
                pair if series is None else near_r2r(bits, pair, series, driver, load, shunt_ohms=shunt_ohms)
            )
        case Shape.SEGMENTED:
            steps = pin_steps(bits, wish.thermometer)
            legs = ideal_legs(steps, driver, load, shunt_ohms=shunt_ohms)
            legs = legs[:1] + legs[(1 << wish.thermometer) - 1 :]
            if series is None:
                return legs
            return near_segmented(bits, wish.thermometer, legs, series, driver, load, shunt_ohms=shunt_ohms)
        case Shape.EQUAL:
            # One leg in the middle is one part, so that the fewest parts are needed.
            middle = ideal_weighted(bits, driver, load, shunt_ohms=shunt_ohms)[(bits - 1) // 2]
            return (middle if series is None else nearest(middle, series),)
        case Shape.WEIGHTED:
            legs = ideal_weighted(bits, driver, load, shunt_ohms=shunt_ohms)
            if series is None:
                return legs
            return near_weighted(legs, series, driver, load, shunt_ohms=shunt_ohms)


def _shunt(wish: LadderWish, driver: Driver, load: Load) -> float:
    lost = 0.5**wish.bits if wish.shape is Shape.R2R else 0.0
    ideal = matching_shunt(driver.supply_volts * (1.0 - lost), load)
    return ideal if wish.series is None else nearest(ideal, wish.series)
