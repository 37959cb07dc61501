"""Values that would mend a network: fitted to a white level, evened out, taken from a series."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from workbench.checks.groups import is_sound
from workbench.circuit.branches import Branch
from workbench.circuit.codes import pin_steps
from workbench.circuit.ladders import Ladder, Topology, analyse
from workbench.circuit.linearity import Linearity, linearity
from workbench.circuit.network import GROUND, Driver, Load, Network, NodeId, PartId, Resistor
from workbench.circuit.sizing import ideal_legs, ideal_r2r
from workbench.circuit.solution import solve_levels
from workbench.errors import NetworkError
from workbench.project.document import Channel, Project
from workbench.project.edits import parts
from workbench.project.limits import OHMS

__all__ = [
    "Trial",
    "Values",
    "even_values",
    "legs_below",
    "nearer_the_line",
    "one_leg_values",
    "scaled_values",
    "set_values",
    "shunt_values",
    "try_values",
]

Values = Mapping[PartId, float]
"""New resistances of some parts. [Ω]"""


_ROUNDS = 12
_CLOSE_VOLTS = 1e-5
_WIRE_OHMS = 1e-6
"""What stands for a pin without resistance. [Ω]"""
_LINE_OHMS = 75.0
"""What a source should have to meet its cable. [Ω]"""
_LEAST_OHMS = 1.0
"""What is left of a leg where the pins alone have more than its share. [Ω]"""


@dataclass(frozen=True, slots=True, eq=False)
class Trial:
    """A network with other values, solved."""

    values: Values
    white_volts: float
    linearity: Linearity
    sound: bool
    """Whether its levels mean anything, and its values are ones a project takes."""

    @property
    def worst_lsb(self) -> float:
        """Return the largest non-linearity, integral or differential. [LSB]"""
        return max(self.linearity.max_inl_lsb, self.linearity.max_dnl_lsb)


def set_values(project: Project, channels: Iterable[Channel], values: Values) -> Project:
    """Return a project in which some channels have other resistances. [Ω]"""
    for channel in channels:
        project = parts.set_values(project, channel, values)
    return project


def try_values(project: Project, network: Network, values: Values) -> Trial:
    """Solve a network with other values under the project's driver and load."""
    volts, evenness, sound = _solved(_revalued(network, values), project.driver, project.load)
    possible = all(ohms in OHMS for ohms in values.values())
    return Trial(values, volts, evenness, sound and possible)


def scaled_values(project: Project, network: Network, volts: float) -> Values | None:
    """Return all values but the shunt's times one factor, so that white comes to ``volts``. [Ω]"""
    ohms = {r.id: r.ohms for r in network.resistors if not _shunts(r, network)}
    return _factored(project, network, lambda factor: {p: r * factor for p, r in ohms.items()}, volts)


def even_values(project: Project, network: Network, volts: float) -> Values | None:
    """Return values with even steps and white at ``volts``, the pins' resistance taken off. [Ω]

    Weighted ladders get legs that double, R-2R ladders one R and twice that; others none.
    """
    try:
        even = _even_branches(project, network, volts)
    except NetworkError:
        return None
    values: dict[PartId, float] = {}
    for branch, ohms in even:
        values |= _branch_values(network, branch, ohms)
    return values or None


def legs_below(network: Network, ladder: Ladder, pin: int) -> tuple[Branch, ...]:
    """Return the legs that together drive one step less than that of a pin; none where that is not plain."""
    if ladder.topology not in (Topology.WEIGHTED, Topology.SEGMENTED):
        return ()
    return ladder.legs[max(pin + 1, network.n_thermometer_pins) :]


def one_leg_values(project: Project, network: Network, pin: int) -> Values | None:
    """Return the value of the one leg that makes its step as large as the smallest bit. [Ω]

    ``pin`` counts from the first; its leg drives as much as all below it and one step.
    """
    ladder = analyse(network)
    below = legs_below(network, ladder, pin)
    if not below:
        return None
    leg = ladder.legs[pin]
    pin_ohms = project.driver.high_ohms
    siemens = [1.0 / (lower.ohms + pin_ohms) for lower in below]
    ohms = 1.0 / (sum(siemens) + siemens[-1]) - pin_ohms
    return _branch_values(network, leg, ohms) if ohms > _LEAST_OHMS else None


def shunt_values(project: Project, network: Network, volts: float) -> Values | None:
    """Return the value of the ladder's shunt that brings white to ``volts``; none where none does. [Ω]"""
    shunt = analyse(network).shunt
    if shunt is None:
        return None
    # 1 / white grows evenly with the shunt's conductance: two points are the whole line.
    present, less = (
        _white_volts(_revalued(network, _branch_values(network, shunt, ohms)), project.driver, project.load)
        for ohms in (shunt.ohms, 2.0 * shunt.ohms)
    )
    if not 0.0 < present < less:
        return None
    siemens = (1.0 + (1.0 / volts - 1.0 / present) / (1.0 / present - 1.0 / less) / 2.0) / shunt.ohms
    return _branch_values(network, shunt, 1.0 / siemens) if siemens > 0.0 else None


def nearer_the_line(project: Project, network: Network, values: Values) -> bool:
    """Return whether values bring the source nearer to the cable's 75 Ω."""
    before, after = (
        solve_levels(made, project.driver, project.load).source_ohms
        for made in (network, _revalued(network, values))
    )
    return abs(after - _LINE_OHMS) < abs(before - _LINE_OHMS)


def _revalued(network: Network, values: Values) -> Network:
    resistors = (replace(r, ohms=values.get(r.id, r.ohms)) for r in network.resistors)
    return replace(network, resistors=tuple(resistors))


@lru_cache(maxsize=256)
def _solved(network: Network, driver: Driver, load: Load) -> tuple[float, Linearity, bool]:
    """Return white, the linearity, and whether the levels mean anything; several rules ask the same."""
    levels = solve_levels(network, driver, load)
    return float(levels.volts_by_code[-1]), linearity(levels.volts_by_code), is_sound(levels)


@lru_cache(maxsize=256)
def _white_volts(network: Network, driver: Driver, load: Load) -> float:
    """Return the level with every pin at 1, all pins taken together as one; 0 where there is none. [V]"""
    together = NodeId("all pins")
    behind = tuple(
        Resistor(PartId(f"in {pin}"), together, pin, driver.high_ohms or _WIRE_OHMS) for pin in network.pins
    )
    joined = Network((together,), (*network.resistors, *behind), output=network.output)
    levels = solve_levels(joined, replace(driver, high_ohms=0.0, low_ohms=0.0), load)
    return float(levels.volts_by_code[-1]) if is_sound(levels) else 0.0


def _factored(
    project: Project, network: Network, make: Callable[[float], Values], volts: float
) -> Values | None:
    """Find the factor that brings white to ``volts``; none where no factor does.

    A ladder is a source of ``open_volts`` behind a resistance that grows with the factor, so
    ``open_volts / white - 1`` grows with it too, exactly so for pins without resistance.
    """
    bare = replace(network, resistors=tuple(r for r in network.resistors if not _shunts(r, network)))
    open_volts = _white_volts(bare, project.driver, Load(ohms=None))
    if not 0.0 < volts < open_volts:
        return None
    factor = 1.0
    for _ in range(_ROUNDS):
        white = _white_volts(_revalued(network, make(factor)), project.driver, project.load)
        if not 0.0 < white < open_volts:
            return None
        if abs(white - volts) < _CLOSE_VOLTS:
            break
        factor *= (open_volts / volts - 1.0) / (open_volts / white - 1.0)
    return make(factor)


def _even_branches(project: Project, network: Network, volts: float) -> list[tuple[Branch, float]]:
    """Return the branches of a ladder with the values that make it even. [Ω]"""
    ladder = analyse(network)
    driver, load = project.driver, project.load
    shunt = None if ladder.shunt is None else ladder.shunt.ohms
    series = 0.0 if ladder.series is None else ladder.series.ohms
    if ladder.topology in (Topology.WEIGHTED, Topology.SEGMENTED):
        steps = pin_steps(network.bits, network.thermometer)
        legs = ideal_legs(steps, driver, load, shunt_ohms=shunt, series_ohms=series, full_scale_volts=volts)
        return list(zip(ladder.legs, legs, strict=True))
    if ladder.topology is Topology.R2R and ladder.terminator is not None:
        rung, leg = ideal_r2r(
            network.bits, driver, load, shunt_ohms=shunt, series_ohms=series, full_scale_volts=volts
        )
        legs_and_rungs = [*((b, leg) for b in ladder.legs), *((b, rung) for b in ladder.rungs)]
        return [*legs_and_rungs, (ladder.terminator, 2.0 * rung)]
    return []


def _branch_values(network: Network, branch: Branch, ohms: float) -> dict[PartId, float]:
    """Return the values that bring a branch of one or more parts to ``ohms``, in proportion. [Ω]"""
    return {r.id: r.ohms * ohms / branch.ohms for r in network.resistors if r.id in branch.parts}


def _shunts(resistor: Resistor, network: Network) -> bool:
    return {resistor.a, resistor.b} == {network.output, GROUND}
