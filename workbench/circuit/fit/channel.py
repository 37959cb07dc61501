"""A channel as a fit sees it: which values are open, and what a choice makes of it."""

from dataclasses import dataclass, replace
from typing import Protocol

import numpy as np
import numpy.typing as npt

from workbench.circuit.branches import Branch
from workbench.circuit.codes import pin_steps
from workbench.circuit.fit.drawer import Arrangement, Leg, Options, OwnedPart
from workbench.circuit.fit.rebuild import with_branches
from workbench.circuit.fit.search import best_sets
from workbench.circuit.fit.task import IntArray, Pool, Task
from workbench.circuit.graph import wiring
from workbench.circuit.ladders import Ladder, Topology, analyse
from workbench.circuit.network import Driver, Load, Network
from workbench.circuit.ports import FloatArray, reduce_to_ports
from workbench.circuit.sizing import FULL_SCALE_VOLTS
from workbench.circuit.tolerance.elimination import PinState, elimination
from workbench.errors import NetworkError
from workbench.progress import Progress

__all__ = ["Effort", "OpenChannel", "UsesArray", "kept_ohms", "open_channel"]

UsesArray = npt.NDArray[np.int16]


@dataclass(frozen=True, slots=True)
class Effort:
    """How hard to look for the sets of one channel."""

    keep: int
    """Sets wanted. [1]"""
    widest: float
    """Sets worse than the best by this factor are not wanted. [1]"""
    worst_volts: float
    """Sets with a larger error are not wanted. [V]"""
    budget: int
    """Partial sets to look at before giving up on the proof. [1]"""


class OpenChannel(Protocol):
    """A ladder whose values are open."""

    @property
    def needs(self) -> str:
        """Return in words how many parts it takes at least."""

    @property
    def takes_any_part(self) -> bool:
        """Return whether any parts will do if there are enough of them, be they alike or not."""

    def pool(self, effort: Effort, counts: IntArray, most_parts: int, progress: Progress) -> Pool | None:
        """Return the best sets of options of at most so many parts each, if there are ``counts``."""

    def errors(self, sets: IntArray) -> FloatArray:
        """Return the worst level error of each set, shape (n_sets,). [V]"""

    def uses(self, sets: IntArray) -> UsesArray:
        """Return how many each set takes of the counted parts, shape (n_sets, n_counted). [1]"""

    def legs(self, chosen: IntArray) -> tuple[Leg, ...]:
        """Return the legs of one set."""

    def network(self, chosen: IntArray) -> Network:
        """Return the channel with one set in it."""


def open_channel(network: Network, driver: Driver, load: Load, options: Options) -> OpenChannel:
    """Return a channel whose values are to be chosen.

    Raises
    ------
    NetworkError
        If the network is no ladder, or nothing but its legs is at the output.
    """
    ladder = _ladder_of(network)
    if ladder.topology is Topology.R2R:
        return _R2R(network, ladder, driver, load, options)
    return _Star(network, ladder, driver, load, options)


def kept_ohms(network: Network) -> tuple[float, ...]:
    """Return the resistors of a ladder that keep their values, such as its shunt. [Ω]

    Raises
    ------
    NetworkError
        If the network is no ladder.
    """
    ladder = _ladder_of(network)
    terminator = () if ladder.terminator is None else (ladder.terminator,)
    chosen = {part for branch in (*ladder.legs, *ladder.rungs, *terminator) for part in branch.parts}
    return tuple(part.ohms for part in network.resistors if part.id not in chosen)


def _ladder_of(network: Network) -> Ladder:
    ladder = analyse(network)
    if ladder.topology is Topology.CUSTOM:
        raise NetworkError(
            "Values are chosen for weighted, segmented and R-2R ladders, and this network is none of these: "
            "give each pin one leg, to a node that all share or along an R-2R chain, or make a new ladder."
        )
    return ladder


def _single(branch: Branch) -> Leg:
    return Leg(branch.ohms, Arrangement.SINGLE, (OwnedPart(branch.ohms),))


def _on_ohms(driver: Driver) -> float:
    return (driver.high_ohms + driver.low_ohms) / 2.0


def _wanted_volts(network: Network) -> FloatArray:
    steps = np.array(pin_steps(network.bits, network.thermometer))
    return np.asarray(steps * (FULL_SCALE_VOLTS / (network.n_codes - 1)))


class _Star:
    """A weighted or segmented ladder: a set is one option a leg, most significant first."""

    def __init__(
        self, network: Network, ladder: Ladder, driver: Driver, load: Load, options: Options
    ) -> None:
        self._network, self._ladder, self._options = network, ladder, options
        counts, uses = options.counted()
        gain, rest_siemens = _beyond_the_bus(network, ladder, load)
        self._task = Task(
            _wanted_volts(network),
            gain * driver.supply_volts,
            rest_siemens,
            1.0 / (options.ohms + _on_ohms(driver)),
            counts,
            uses,
            network.n_thermometer_pins,
        )

    @property
    def needs(self) -> str:
        return f"{self._network.n_pins} legs take at least one part each"

    @property
    def takes_any_part(self) -> bool:
        return True

    def pool(self, effort: Effort, counts: IntArray, most_parts: int, progress: Progress) -> Pool | None:
        chosen = np.flatnonzero(self._options.n_parts <= most_parts)
        task = replace(
            self._task, siemens=self._task.siemens[chosen], uses=self._task.uses[chosen], counts=counts
        )
        found = best_sets(
            task,
            keep=effort.keep,
            widest=effort.widest,
            budget=effort.budget,
            progress=progress,
            worst_volts=effort.worst_volts,
        )
        return None if found is None else Pool(chosen[found.sets], found.errors, found.complete_volts)

    def errors(self, sets: IntArray) -> FloatArray:
        return self._task.errors(sets)

    def uses(self, sets: IntArray) -> UsesArray:
        return np.asarray(self._task.uses[sets].sum(axis=1, dtype=np.int16))

    def legs(self, chosen: IntArray) -> tuple[Leg, ...]:
        ordered = self._task.in_order(chosen)
        return tuple(self._options.leg(int(index)) for index in ordered)

    def network(self, chosen: IntArray) -> Network:
        return with_branches(self._network, dict(zip(self._ladder.legs, self.legs(chosen), strict=True)))


def _beyond_the_bus(network: Network, ladder: Ladder, load: Load) -> tuple[float, float]:
    """Return output volts for each volt at the bus, and what conducts from there to ground. [1] [S]"""
    legs = {part for leg in ladder.legs for part in leg.parts}
    others = tuple(part for part in network.resistors if part.id not in legs)
    rest = Network((ladder.bus,), others, output=network.output)
    siemens = 1.0 / np.array([part.ohms for part in others])
    structure = wiring(rest)
    ports = reduce_to_ports(structure, siemens, 1, (structure.output,)).loaded(load.siemens)
    conducts = float(ports.admittance[0, 0])
    if conducts <= 0.0:
        raise NetworkError(
            "Without a termination or a shunt white is at the supply whatever the legs are: fit a load first."
        )
    return float(ports.transfer[structure.output, 0]), conducts


class _R2R:
    """An R-2R ladder: a set is an option for all rungs and one for all legs and the terminator."""

    def __init__(
        self, network: Network, ladder: Ladder, driver: Driver, load: Load, options: Options
    ) -> None:
        self._network, self._ladder, self._driver, self._load = network, ladder, driver, load
        self._options = options
        _, self._uses = options.counted()
        terminator = () if ladder.terminator is None else (ladder.terminator,)
        self._rungs, self._legs = ladder.rungs, (*ladder.legs, *terminator)
        single = {branch: _single(branch) for branch in (*self._rungs, *self._legs)}
        self._plain = with_branches(network, single)

    @property
    def needs(self) -> str:
        bits, rungs, legs = self._network.bits, len(self._rungs), len(self._legs)
        return f"an R-2R ladder of {bits} bits takes {rungs} alike and {legs} alike"

    @property
    def takes_any_part(self) -> bool:
        return False

    def pool(self, effort: Effort, counts: IntArray, most_parts: int, progress: Progress) -> Pool | None:
        chosen = np.flatnonzero(self._options.n_parts <= most_parts)
        first, second, complete = self._pairs(chosen, counts, effort.budget // _COST_OF_A_PAIR)
        sets = np.column_stack((first, second))
        sets = sets[self._makeable(sets, counts)]
        if not len(sets):
            return None
        errors = np.empty(len(sets))
        for start in range(0, len(sets), _CHUNK):
            progress.step(start, len(sets))
            errors[start : start + _CHUNK] = self.errors(sets[start : start + _CHUNK])
        order = np.argsort(errors, kind="stable")
        least = max(float(errors[order[0]]), _ROUNDING_VOLTS)
        limit = min(max(effort.worst_volts, least), effort.widest * least)
        wanted = order[errors[order] <= limit]
        kept = wanted[: effort.keep]
        limit = limit if len(kept) == len(wanted) else errors[kept[-1]]
        return Pool(sets[kept], errors[kept], float(limit) if complete else 0.0)

    def _pairs(self, chosen: IntArray, counts: IntArray, budget: int) -> tuple[IntArray, IntArray, bool]:
        """Return pairs to try: all, or if these are too many those nearest to R and 2R."""
        rungs, legs = (
            chosen[(self._uses[chosen] * len(alike) <= counts).all(axis=1)]
            for alike in (self._rungs, self._legs)
        )
        rungs = rungs if self._rungs else rungs[:1]
        if len(rungs) * len(legs) <= budget:
            first, second = np.meshgrid(rungs, legs, indexing="ij")
            return first.ravel(), second.ravel(), True
        bits, load_ohms = self._network.bits, 1.0 / max(self._load.siemens, 1e-9)
        r_ohms = load_ohms * (self._driver.supply_volts * (1.0 - 0.5**bits) / FULL_SCALE_VOLTS - 1.0)
        side = int(budget**0.5)
        near = [
            options[np.argsort(np.abs(np.log(self._options.ohms[options] / ohms)))[:side]]
            for options, ohms in ((rungs, r_ohms), (legs, 2.0 * r_ohms))
        ]
        first, second = np.meshgrid(*near, indexing="ij")
        return first.ravel(), second.ravel(), False

    def _makeable(self, sets: IntArray, counts: IntArray) -> npt.NDArray[np.bool_]:
        return np.asarray((self.uses(sets) <= counts).all(axis=1))

    def _errors(self, first: IntArray, second: IntArray) -> FloatArray:
        """Return the worst distance over all codes of pairs of options. [V]"""
        place = {part.id: row for row, part in enumerate(self._plain.resistors)}
        ohms = np.repeat([[part.ohms] for part in self._plain.resistors], len(first), axis=1)
        for branches, option in ((self._rungs, first), (self._legs, second)):
            for branch in branches:
                ohms[place[branch.parts[0]]] = self._options.ohms[option]
        on_ohms = _on_ohms(self._driver)
        state = PinState.RESISTIVE if on_ohms else PinState.IDEAL
        bits = self._network.bits
        plan = elimination(self._plain, (state,) * bits)
        weights = plan.weights(1.0 / ohms, [1.0 / on_ohms if on_ohms else 0.0] * bits, self._load.siemens)
        off = weights * self._driver.supply_volts - _wanted_volts(self._network)[:, None]
        return np.asarray(np.maximum(off.clip(min=0.0).sum(axis=0), -off.clip(max=0.0).sum(axis=0)))

    def errors(self, sets: IntArray) -> FloatArray:
        return self._errors(sets[:, 0], sets[:, 1])

    def uses(self, sets: IntArray) -> UsesArray:
        times = np.array([[len(self._rungs)], [len(self._legs)]], np.int16)
        return np.asarray((self._uses[sets] * times).sum(axis=1, dtype=np.int16))

    def legs(self, chosen: IntArray) -> tuple[Leg, ...]:
        return tuple(self._options.leg(int(index)) for index in chosen)

    def network(self, chosen: IntArray) -> Network:
        rung, leg = self.legs(chosen)
        return with_branches(self._network, dict.fromkeys(self._rungs, rung) | dict.fromkeys(self._legs, leg))


_ROUNDING_VOLTS = 1e-12
_CHUNK = 8192
"""Pairs worked on at a time. [1]"""
_COST_OF_A_PAIR = 20
"""Partial sets of a weighted ladder that take as long as one pair. [1]"""
