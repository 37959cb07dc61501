"""The best values for the channels of a board, from a series or from a drawer."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import TypeVar

import numpy as np

from workbench.circuit.fit.board import Board
from workbench.circuit.fit.channel import OpenChannel, UsesArray, kept_ohms, open_channel
from workbench.circuit.fit.drawer import MOST_PARTS, Drawer, Leg, leg_options
from workbench.circuit.fit.task import IntArray
from workbench.circuit.linearity import linearity
from workbench.circuit.network import Driver, Load, Network, Zeros
from workbench.circuit.sizing import FULL_SCALE_VOLTS
from workbench.circuit.solution import Levels, solve_levels
from workbench.errors import NetworkError
from workbench.progress import SILENT, Progress

__all__ = ["Aim", "Candidate", "Fit", "best_at", "best_first", "find_fit"]


class Aim(Enum):
    """What a choice of values is picked for."""

    LEVEL = "level error"
    """Smallest worst distance, over all codes, from the even staircase 0 ... 0.700 V."""
    DNL = "even steps"
    MATCHING = "channels alike"
    SOURCE = "source resistance near 75 Ω"
    CURRENT = "little current"
    PARTS = "few parts"


@dataclass(frozen=True, slots=True)
class Candidate:
    """Values for every channel, and what they make of the board."""

    aim: Aim
    legs: tuple[tuple[Leg, ...], ...]
    """Of each channel, most significant first; of an R-2R ladder R and 2R."""
    networks: tuple[Network, ...]
    """The channels with these values in them."""
    worst_error_volts: float
    """Largest distance of any level of any channel from the even staircase. [V]"""
    full_scale_volts: float
    """White of the channel whose white is farthest off. [V]"""
    mismatch: float
    """Difference of the channels' white levels over their mean. [1]"""
    max_inl_lsb: float
    max_dnl_lsb: float
    monotonic: bool
    """Whether no step of any channel goes down."""
    source_ohms: float
    """Of the channel farthest from 75 Ω. [Ω]"""
    worst_total_current_amps: float
    """What the pins of all channels draw together at worst. [A]"""
    n_parts: int
    """Resistors of all channels. [1]"""


@dataclass(frozen=True, slots=True)
class Fit:
    """The result of a choice of values."""

    proved_best: bool
    """Whether no other choice has a smaller level error than the best candidate here."""
    gap_volts: float
    """By how much another choice could be better at most; 0 if proved. [V]"""
    candidates: tuple[Candidate, ...]
    """Best first."""


Found = TypeVar("Found")

_USUAL_OHMS = 75.0
_ROUNDING_VOLTS = 1e-12
_NEAR = 3.0
"""Level errors up to this factor above the smallest are near it. [1]"""
_SMALL_LSB = 0.25
"""Level errors up to this part of an even step are small in any case. [LSB]"""


def find_fit(
    networks: Sequence[Network],
    driver: Driver,
    load: Load,
    drawer: Drawer,
    *,
    most_parts: int = 1,
    aim: Aim = Aim.LEVEL,
    names: Sequence[str] = (),
    progress: Progress = SILENT,
) -> Fit:
    """Choose the values of the channels' legs.

    Parameters
    ----------
    networks : sequence of Network
        The channels; shunts and series resistors keep their values. The legs of a segmented ladder are
        chosen one by one, and the order in which its thermometer legs rise with them.
    driver, load : Driver, Load
        Pins and monitor.
    drawer : Drawer
        What there is to choose from, for all channels together. Those that keep their values come first.
    most_parts : int
        Parts of one leg at most, ``1 <= most_parts <= 3``. [1]
    aim : Aim
        What the first candidate is to be best at. Proved is only the smallest level error; for other
        aims the first is the best of the sets whose level error is near the smallest.
    names : sequence of str, optional
        What the channels are called where one of them cannot be fitted.
    progress : Progress
        Is told how far the search has come.

    Raises
    ------
    NetworkError
        If a channel is no ladder or has no load, or the drawer does not suffice.
    Cancelled
        If ``progress`` says so.

    Notes
    -----
    Where high and low on-resistance differ, or zeros float, the search takes their mean for all pins,
    driven. The figures of its candidates are exact, but nothing is proved then.
    """
    kept = _of_each(networks, names, kept_ohms)
    left = drawer.without(ohms for network in networks for ohms in kept[network])
    if drawer.parts:
        besides = "" if left == drawer else " besides those that keep their values"
        most_parts = min(most_parts, 1 + _spare(left, networks, besides))
    options = leg_options(left, most_parts)
    opened = _of_each(networks, names, lambda network: open_channel(network, driver, load, options))
    channels = [opened[network] for network in networks]
    counts, _ = options.counted()
    board = Board(channels, counts, progress)
    best = board.best(1)
    for parts in range(2, most_parts + 1):
        best = board.best(parts, best)
    sets = {Aim.LEVEL: best.sets} | _alternatives(board, most_parts, driver, load)
    candidates = [_candidate(aim, channels, chosen, driver, load) for aim, chosen in sets.items()]
    ranked = best_first({each.networks: each for each in reversed(candidates)}.values(), aim)
    if driver.zeros is Zeros.DRIVEN and driver.high_ohms == driver.low_ohms:
        reached = min(candidate.worst_error_volts for candidate in ranked)
        gap = max(0.0, min(reached, best.worst_error_volts) - best.bound_volts)
        return Fit(gap <= _ROUNDING_VOLTS, gap, ranked)
    return Fit(False, min(candidate.worst_error_volts for candidate in ranked), ranked)


def best_first(candidates: Iterable[Candidate], aim: Aim) -> tuple[Candidate, ...]:
    """Return candidates in the order in which they serve an aim."""
    return tuple(sorted(candidates, key=lambda candidate: _rank(aim, candidate)))


def best_at(candidates: Sequence[Candidate]) -> dict[int, tuple[Aim, ...]]:
    """Return what each candidate, by its ``id``, is the best at; each aim stands with one candidate.

    A candidate may be picked for one aim and be beaten at it by one that was picked for another.
    """
    first = {aim: id(best_first(candidates, aim)[0]) for aim in Aim} if candidates else {}
    return {id(each): tuple(aim for aim in Aim if first[aim] == id(each)) for each in candidates}


def _spare(drawer: Drawer, networks: Sequence[Network], besides: str) -> int:
    """Return how many parts there are besides one for each leg; no leg takes more of them than all."""
    if any(part.count is None for part in drawer.parts):
        return MOST_PARTS
    there, needed = sum(part.count or 0 for part in drawer.parts), sum(n.n_pins for n in networks)
    if there < needed:
        legs = "1 leg needs one" if needed == 1 else f"{needed} legs need one each"
        raise NetworkError(f"The drawer holds {there} resistors{besides}, but {legs} at least: add more.")
    return there - needed


def _of_each(
    networks: Sequence[Network], names: Sequence[str], find: Callable[[Network], Found]
) -> dict[Network, Found]:
    """Return what is found of each channel; a refusal names the channels it is about."""
    found: dict[Network, Found] = {}
    refused: dict[Network, NetworkError] = {}
    for network in dict.fromkeys(networks):
        try:
            found[network] = find(network)
        except NetworkError as error:
            refused[network] = error
    for reason in refused.values():
        called = [name for name, network in zip(names, networks, strict=False) if network in refused]
        raise NetworkError(f"{', '.join(called)}: {reason}") if found and called else reason
    return found


@dataclass(frozen=True, slots=True, eq=False)
class _Scored:
    chosen: IntArray
    uses: UsesArray
    figures: dict[Aim, float]
    white_volts: float
    level_is_near: bool
    """Whether the level error is near the smallest one, or small against a step."""

    def off(self, aim: Aim, white_volts: float) -> float:
        """Return how far the set is from the best there could be at an aim, in the aim's own unit."""
        return abs(self.white_volts - white_volts) if aim is Aim.MATCHING else self.figures[aim]


def _alternatives(
    board: Board, most_parts: int, driver: Driver, load: Load
) -> dict[Aim, tuple[IntArray, ...]]:
    """Return for each other aim the sets that are best at it and can be made together."""
    scored = {channel: _scored(board, channel, most_parts, driver, load) for channel in board.channels}
    found = {aim: _together(board, scored, aim) for aim in Aim if aim is not Aim.LEVEL}
    return {aim: sets for aim, sets in found.items() if sets is not None}


def _together(
    board: Board, scored: dict[OpenChannel, list[_Scored]], aim: Aim
) -> tuple[IntArray, ...] | None:
    """Return the best sets at an aim, each channel with what the ones before have left."""
    left, white = board.counts.copy(), FULL_SCALE_VOLTS
    sets: list[IntArray] = []
    for channel in board.channels:
        able = [row for row in scored[channel] if (row.uses <= left).all()]
        rows = able if aim is Aim.PARTS else [row for row in able if row.level_is_near]
        if not rows:
            return None
        best = min(rows, key=lambda row: (row.off(aim, white), row.figures[Aim.LEVEL]))
        if not sets:
            white = best.white_volts
        sets.append(best.chosen)
        left = left - best.uses
    return tuple(sets)


def _scored(board: Board, channel: OpenChannel, most_parts: int, driver: Driver, load: Load) -> list[_Scored]:
    """Return the best sets of a channel with what each is good at."""
    pools = (board.pool(channel, most) for most in range(1, most_parts + 1))
    sets = np.unique(np.concatenate([pool.sets for pool in pools if pool is not None]), axis=0)
    solved = [solve_levels(channel.network(chosen), driver, load) for chosen in sets]
    figures = [_figures(levels) for levels in solved]
    even_step = FULL_SCALE_VOLTS / (len(solved[0].volts_by_code) - 1)
    near = max(_NEAR * min(each[Aim.LEVEL] for each in figures), _SMALL_LSB * even_step)
    return [
        _Scored(chosen, uses, each, float(levels.volts_by_code[-1]), each[Aim.LEVEL] <= near)
        for chosen, uses, each, levels in zip(sets, channel.uses(sets), figures, solved, strict=True)
    ]


def _figures(levels: Levels) -> dict[Aim, float]:
    return {
        Aim.LEVEL: _worst_error(levels),
        Aim.DNL: linearity(levels.volts_by_code).max_dnl_lsb,
        Aim.SOURCE: abs(levels.source_ohms - _USUAL_OHMS),
        Aim.CURRENT: float(levels.supply_amps.max()),
        Aim.PARTS: float(levels.resistor_amps.shape[1]),
    }


def _candidate(
    aim: Aim, channels: Sequence[OpenChannel], sets: Sequence[IntArray], driver: Driver, load: Load
) -> Candidate:
    networks = tuple(channel.network(chosen) for channel, chosen in zip(channels, sets, strict=True))
    levels = [solve_levels(network, driver, load) for network in networks]
    lines = [linearity(each.volts_by_code) for each in levels]
    whites = [line.full_scale_volts for line in lines]
    return Candidate(
        aim=aim,
        legs=tuple(channel.legs(chosen) for channel, chosen in zip(channels, sets, strict=True)),
        networks=networks,
        worst_error_volts=max(_worst_error(each) for each in levels),
        full_scale_volts=max(whites, key=lambda volts: abs(volts - FULL_SCALE_VOLTS)),
        mismatch=(max(whites) - min(whites)) / (sum(whites) / len(whites)),
        max_inl_lsb=max(line.max_inl_lsb for line in lines),
        max_dnl_lsb=max(line.max_dnl_lsb for line in lines),
        monotonic=all(line.monotonic for line in lines),
        source_ohms=max((each.source_ohms for each in levels), key=lambda ohms: abs(ohms - _USUAL_OHMS)),
        worst_total_current_amps=sum(float(each.supply_amps.max()) for each in levels),
        n_parts=sum(len(network.resistors) for network in networks),
    )


def _worst_error(levels: Levels) -> float:
    even = np.linspace(0.0, FULL_SCALE_VOLTS, len(levels.volts_by_code))
    return float(np.abs(levels.volts_by_code - even).max())


def _rank(aim: Aim, candidate: Candidate) -> tuple[float, float]:
    first = {
        Aim.LEVEL: candidate.worst_error_volts,
        Aim.DNL: candidate.max_dnl_lsb,
        Aim.MATCHING: candidate.mismatch,
        Aim.SOURCE: abs(candidate.source_ohms - _USUAL_OHMS),
        Aim.CURRENT: candidate.worst_total_current_amps,
        Aim.PARTS: float(candidate.n_parts),
    }[aim]
    return first, candidate.worst_error_volts
