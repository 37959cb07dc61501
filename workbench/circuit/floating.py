"""One code with some pins let go: they drive nothing, and the rest divides what is left."""

from collections.abc import Collection
from dataclasses import dataclass, replace

from workbench.circuit.codes import pin_states
from workbench.circuit.network import Driver, Load, Network
from workbench.circuit.solution import Levels, solve_levels

__all__ = ["At", "levels_at"]


@dataclass(frozen=True, slots=True, eq=False)
class At:
    """Where the figures of one code stand."""

    levels: Levels
    """Of the network that is driven."""
    row: int
    """Row of the code in ``levels``. [1]"""
    pins: tuple[int, ...]
    """Which pins, counted from the most significant bit, the columns of ``levels`` are."""

    @property
    def volts(self) -> float:
        """Return the output with the monitor connected. [V]"""
        return float(self.levels.volts_by_code[self.row])


def levels_at(
    network: Network,
    levels: Levels,
    driver: Driver,
    load: Load,
    code: int,
    floating: Collection[int] = frozenset(),
) -> At:
    """Return where the figures of a code stand, with some pins let go.

    Parameters
    ----------
    network, levels, driver, load
        The channel as it was solved.
    code : int
        ``0 <= code < n_codes``; what it tells pins that are let go does not matter. [1]
    floating : collection of int
        Pins, counted from the most significant bit, that drive nothing. The network is solved once
        more without them.
    """
    kept = tuple(pin for pin in range(network.n_pins) if pin not in floating)
    if len(kept) < network.n_pins:
        told = pin_states(network)[code]
        # Without some of their pins, thermometer bits are just pins like the others.
        driven = replace(network, pins=tuple(network.pins[pin] for pin in kept), thermometer=0)
        levels = solve_levels(driven, driver, load)
        code = sum(int(told[pin]) << place for place, pin in enumerate(reversed(kept)))
    return At(levels, min(code, len(levels.volts_by_code) - 1), kept)
