"""Values worth offering for a network: few changes before many, a series' values before others.

Nothing is promised here: whoever offers values tries them first, see :func:`first_that`.
"""

from collections.abc import Callable, Iterable, Iterator
from math import floor, log10
from statistics import median

from workbench.checks.finding import Remedy
from workbench.checks.groups import Group, join_words, ohms_text
from workbench.checks.values import (
    Trial,
    Values,
    even_values,
    nearer_the_line,
    one_leg_values,
    scaled_values,
    set_values,
    shunt_values,
    try_values,
)
from workbench.circuit.network import Network, PartId
from workbench.circuit.series import Series, is_in, nearest
from workbench.project.document import Project

__all__ = [
    "changes_text",
    "exact_offers",
    "first_that",
    "series_offers",
    "trials",
    "values_remedy",
    "without_strays",
]

_FACTORS = (1.0, 0.985, 1.015, 0.97, 1.03, 0.95, 1.05)
"""What all values are taken times before the series is asked: each rounds another way, and white has
0.665 … 0.770 V to lie in. [1]"""
_STRAY = 0.08
"""A value this far from the even ladder that the others make is the odd one: two steps of E24. [1]"""
_NAMED = 3
"""Most parts a button names, and most parts with one value that a sentence lists. [1]"""


def series_offers(
    project: Project, network: Network, volts: float, pin: int | None = None
) -> Iterator[Values]:
    """Yield values of the project's series that may mend white or steps.

    Parameters
    ----------
    project, network : Project, Network
        The network to mend, and what drives and loads it.
    volts : float
        Where white shall be. [V]
    pin : int, optional
        The pin whose step is the worst, counted from the first. [1]
    """
    series = project.series
    for values in _few(project, network, volts, pin):
        yield _changed(network, {part: nearest(ohms, series) for part, ohms in values.items()})
    every = list(_every(project, network, volts))
    for factor in _FACTORS:
        for values in every:
            yield _changed(network, {part: nearest(ohms * factor, series) for part, ohms in values.items()})


def exact_offers(
    project: Project, network: Network, volts: float, pin: int | None = None
) -> Iterator[Values]:
    """Yield values to four figures that may mend white or steps; parameters as :func:`series_offers`."""
    for values in (*_few(project, network, volts, pin), *_every(project, network, volts)):
        yield _changed(network, {part: _four_figures(ohms) for part, ohms in values.items()})


def trials(project: Project, network: Network, offers: Iterable[Values]) -> Iterator[Trial]:
    """Yield each offer that changes anything, once, solved."""
    seen = set()
    for values in offers:
        key = frozenset(values.items())
        if values and key not in seen:
            seen.add(key)
            yield try_values(project, network, values)


def first_that(tried: Iterable[Trial], *demands: Callable[[Trial], bool]) -> Trial | None:
    """Return the first sound trial that meets the first demand; where none does, the second, and so on."""
    met: dict[int, Trial] = {}
    for trial in tried:
        if not trial.sound:
            continue
        place = next((i for i, demand in enumerate(demands) if demand(trial)), None)
        if place == 0:
            return trial
        if place is not None:
            met.setdefault(place, trial)
    return met[min(met)] if met else None


def without_strays(project: Project, network: Network, volts: float) -> Values | None:
    """Return the even value of each part that strays from the ladder the others make. [Ω]

    None where no part strays, or too many do to say which ladder was meant.
    """
    even = even_values(project, network, volts)
    if even is None:
        return None
    present = {r.id: r.ohms for r in network.resistors}
    middle = median(present[part] / ohms for part, ohms in even.items())
    meant = {part: ohms * middle for part, ohms in even.items()}
    strays = {part: ohms for part, ohms in meant.items() if abs(present[part] / ohms - 1.0) > _STRAY}
    return strays if 2 * len(strays) < len(even) and strays else None


def values_remedy(group: Group, trial: Trial, series: Series) -> Remedy:
    """Return the edit that sets the values of a trial, named by what really changes."""
    channels, values = group.channels, _changed(group.network, trial.values)
    return Remedy(_label(values, series), lambda project: set_values(project, channels, values))


def changes_text(network: Network, values: Values) -> str:
    """Return what changes, in words: ``R1 to 510 Ω and R4 to 3.9 kΩ``."""
    parts_by_value: dict[float, list[PartId]] = {}
    for part, ohms in _changed(network, values).items():
        parts_by_value.setdefault(ohms, []).append(part)
    return join_words(f"{_parts_text(parts)} to {ohms_text(ohms)}" for ohms, parts in parts_by_value.items())


def _few(project: Project, network: Network, volts: float, pin: int | None) -> Iterator[Values]:
    """Yield changes of the part or the few parts that stand out."""
    if (shunt := shunt_values(project, network, volts)) and nearer_the_line(project, network, shunt):
        yield shunt
    if (strays := without_strays(project, network, volts)) is not None:
        yield strays
    if pin is not None and (leg := one_leg_values(project, network, pin)) is not None:
        yield leg


def _every(project: Project, network: Network, volts: float) -> Iterator[Values]:
    """Yield changes of the whole ladder, as it is but scaled, and made even; last of the shunt."""
    makers = (scaled_values, even_values, shunt_values)
    offers = (make(project, network, volts) for make in makers)
    yield from (values for values in offers if values is not None)


def _changed(network: Network, values: Values) -> Values:
    """Return the values that are other ones than those in place, in the network's order."""
    return {r.id: values[r.id] for r in network.resistors if values.get(r.id, r.ohms) != r.ohms}


def _label(values: Values, series: Series) -> str:
    """Return what the button says: short, since the sentence it stands beside needs the room."""
    kind = f"{series.name} values" if all(is_in(ohms, series) for ohms in values.values()) else "exact values"
    if len(values) == 1:
        part, ohms = next(iter(values.items()))
        return f"Use {ohms_text(ohms)} for {part}"
    if len(values) == 2:
        return f"Use {', '.join(f'{part} {ohms_text(ohms)}' for part, ohms in values.items())}"
    return f"Use {kind} for {', '.join(values) if len(values) <= _NAMED else f'{len(values)} resistors'}"


def _parts_text(parts: list[PartId]) -> str:
    return join_words(parts) if len(parts) <= _NAMED else f"{len(parts)} resistors"


def _four_figures(ohms: float) -> float:
    return round(ohms, 3 - floor(log10(ohms)))
