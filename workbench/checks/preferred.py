"""Can the parts be bought?"""

from collections.abc import Callable, Iterator

from workbench.checks.finding import Finding, Severity
from workbench.checks.groups import Group, groups, is_sound, join_words, ohms_text
from workbench.checks.limits import WHITE, WHITE_VOLTS
from workbench.checks.measures import Measures
from workbench.checks.offers import changes_text, first_that, series_offers, trials, values_remedy
from workbench.checks.values import Trial, Values
from workbench.circuit.linearity import EVEN_LSB, Linearity
from workbench.circuit.network import Resistor
from workbench.circuit.series import Series, is_in, nearest
from workbench.project.document import Project
from workbench.units import format_fixed

__all__ = ["preferred_values"]

_COUNTS = ("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine")
_NAMED = 4
"""Most parts a headline lists. [1]"""


def preferred_values(project: Project, measures: Measures) -> Iterator[Finding]:
    """Every resistor is a value of the chosen series, or one that the person owns."""
    series = project.series

    def there_is(resistor: Resistor) -> bool:
        return is_in(resistor.ohms, series) or measures.owns(resistor.ohms)

    for group in groups(project, measures):
        odd = tuple(r for r in group.network.resistors if not there_is(r))
        if not odd:
            continue
        worst = max(abs(nearest(r.ohms, series) / r.ohms - 1.0) for r in odd)
        trial = _bought(project, group, odd, measures.owns)
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
            remedy_text=_advice(group, trial, series),
            remedy=None if trial is None else values_remedy(group, trial, series),
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


def _bought(
    project: Project, group: Group, odd: tuple[Resistor, ...], owns: Callable[[float], bool]
) -> Trial | None:
    """Return the first values of the series that keep the steps even; else that spoil nothing.

    None where every set of values would turn a step back, or put white outside. What the person owns stays.
    """
    network, series = group.network, project.series
    near = {r.id: nearest(r.ohms, series) for r in odd}
    owned = {r.id for r in network.resistors if owns(r.ohms)}

    def offers() -> Iterator[Values]:
        yield near
        for values in series_offers(project, network, group.white_volts or WHITE_VOLTS):
            yield {**near, **{part: ohms for part, ohms in values.items() if part not in owned}}

    def keeps(trial: Trial) -> bool:
        keeps_white = WHITE.holds(trial.white_volts) or not WHITE.holds(group.white_volts)
        return keeps_white and (trial.linearity.monotonic or not group.figures.linearity.monotonic)

    tried = trials(project, network, offers())
    return first_that(tried, lambda trial: trial.worst_lsb <= EVEN_LSB and keeps(trial), keeps)


def _advice(group: Group, trial: Trial | None, series: Series) -> str:
    if trial is not None:
        return f"Change {changes_text(group.network, trial.values)}; or let two parts stand for one value."
    if is_sound(group.figures.levels):
        kept = f"No values of {series.name} keep white and steps"
        return f"{kept}: take a finer series, or two parts for one value."
    return "Use the nearest values of the series, or two parts for one value."


def _consequence(trial: Trial | None) -> str:
    """Say what white and the worst step become with the values on offer."""
    if trial is None:
        return ""
    values = list(dict.fromkeys(ohms_text(ohms) for ohms in trial.values.values()))
    using = join_words(values) if len(values) <= _NAMED else "the values offered"
    return (
        f" With {using} white is {format_fixed(trial.white_volts, 'V')} and the largest step error is "
        f"{trial.linearity.max_dnl_lsb:.2f} LSB, {_steps_words(trial.linearity)}."
    )


def _steps_words(line: Linearity) -> str:
    if not line.monotonic:
        return "and a step goes down"
    return "so every step still goes up" if line.steps_volts.all() else "so no step goes down"
