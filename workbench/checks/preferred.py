"""Can the parts be bought?"""

from collections.abc import Iterator

from workbench.checks.finding import Finding, Severity
from workbench.checks.groups import Group, groups, join_words, ohms_text
from workbench.checks.limits import WHITE
from workbench.checks.measures import Measures
from workbench.checks.values import EVEN_LSB, Trial, even_values, try_values, values_remedy
from workbench.circuit.network import Resistor
from workbench.circuit.series import Series, is_in, nearest
from workbench.project.document import Project
from workbench.units import format_fixed

__all__ = ["preferred_values"]

_COUNTS = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine")
_NAMED = 4
"""Most parts a headline lists. [1]"""


def preferred_values(project: Project, measures: Measures) -> Iterator[Finding]:
    """Every resistor is a value of the chosen series."""
    series = project.series
    for group in groups(project, measures):
        odd = tuple(r for r in group.network.resistors if not is_in(r.ohms, series))
        if not odd:
            continue
        worst = max(abs(nearest(r.ohms, series) / r.ohms - 1.0) for r in odd)
        trial = _nearest_or_even(project, group, odd)
        yield Finding(
            id="series",
            severity=Severity.WARN,
            subject=group.subject,
            headline=_sentence(group, odd, series),
            measured=100.0 * worst,
            unit="%",
            low=None,
            high=0.0,
            source=f"IEC 60063, {series.name} series",
            why="The board you can build will differ from the drawing." + _consequence(trial),
            remedy_text="Use the nearest values of the series, or two parts for one value.",
            remedy=values_remedy(group.channels, trial, series) if trial.sound else None,
            channels=group.channels,
            parts=tuple(r.id for r in odd),
        )


def _sentence(group: Group, odd: tuple[Resistor, ...], series: Series) -> str:
    count = _COUNTS[len(odd)] if len(odd) < len(_COUNTS) else str(len(odd))
    verb = "value{} is not made" if len(odd) == 1 else "values{} are not made"
    whose = group.of_subject or " of this ladder"
    listed = ", ".join(f"{r.id} {ohms_text(r.ohms)}" for r in odd)
    names = f": {listed}" if len(odd) <= _NAMED else ""
    return f"{count} {verb.format(whose)} in {series.name}{names}."


def _nearest_or_even(project: Project, group: Group, odd: tuple[Resistor, ...]) -> Trial:
    """Return the nearest values of the series; other ones where those would spoil the steps."""
    series, network = project.series, group.network
    trial = try_values(project, network, {r.id: nearest(r.ohms, series) for r in odd})
    if trial.worst_lsb <= EVEN_LSB or (even := even_values(project, network, group.white_volts)) is None:
        return trial
    evened = try_values(project, network, {part: nearest(ohms, series) for part, ohms in even.items()})
    keeps_white = WHITE.holds(evened.white_volts) or not WHITE.holds(trial.white_volts)
    better = evened.sound and evened.worst_lsb < trial.worst_lsb
    return evened if better and keeps_white else trial


def _consequence(trial: Trial) -> str:
    """Say what white and the worst step become with the values on offer."""
    if not trial.sound:
        return ""
    values = list(dict.fromkeys(ohms_text(ohms) for ohms in trial.values.values()))
    using = join_words(values) if len(values) <= _NAMED else "the values offered"
    upward = "so every step still goes up" if trial.linearity.monotonic else "and a step goes down"
    return (
        f" With {using} white is {format_fixed(trial.white_volts, 'V')} and the largest step error is "
        f"{trial.linearity.max_dnl_lsb:.2f} LSB, {upward}."
    )
