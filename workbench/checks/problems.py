"""Is there a circuit at all?"""

from collections.abc import Iterator

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import groups, is_sound, join_words
from workbench.checks.measures import Measures
from workbench.circuit.graph import Problem, ProblemKind
from workbench.circuit.network import GROUND, Network, PartId
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import parts_of
from workbench.project.edits.parts import remove_part

__all__ = ["network_problems"]

_USELESS = {ProblemKind.ISLAND, ProblemKind.DEAD_PART}
"""Problems that go when their parts go."""


def network_problems(project: Project, measures: Measures) -> Iterator[Finding]:
    """Pins reach the output, nothing is shorted, no part hangs in the air."""
    for group in groups(project, measures):
        fatal = not is_sound(group.figures.levels)
        for problem in group.figures.levels.problems:
            useless = problem.kind in _USELESS and bool(problem.parts)
            yield Finding(
                id=f"network-{problem.kind.value.replace(' ', '-')}",
                severity=Severity.FAIL if fatal else Severity.WARN,
                subject=group.subject,
                headline=problem.sentence,
                measured=None,
                unit="",
                low=None,
                high=None,
                source="the network itself",
                why="No level can be trusted until the network is mended."
                if fatal
                else "What carries no current does nothing on the board either.",
                remedy_text=_advice(problem, group.network),
                remedy=_take_out(group.channels, problem.parts) if useless else None,
                channels=group.channels,
                parts=problem.parts,
            )


def _advice(problem: Problem, network: Network) -> str:
    """Return what to add or to change, by name."""
    kind, output = problem.kind, network.output
    if kind in _USELESS:
        return "Take the part out, or join its loose end."
    if kind in (ProblemKind.FLOATING_OUTPUT, ProblemKind.UNDRIVEN_OUTPUT):
        why = "capacitors alone pass no level" if network.capacitors and not network.resistors else ""
        return f"Add a resistor from each pin to {output}{': ' * bool(why)}{why}."
    if kind is ProblemKind.DEAD_PIN:
        return f"Add a resistor from {join_words(problem.nodes)} to {output}."
    if kind is ProblemKind.SHORT and output == GROUND:
        return "Take another node than ground as the output."
    if kind is ProblemKind.SHORT:
        return f"Put a resistor between each of these pins and {join_words(problem.nodes)}."
    return _ELSE[kind]


_ELSE = {
    ProblemKind.NO_PINS: "Add a bit, or make a new ladder.",
    ProblemKind.TOO_BIG: "Take out what is too much, or build it as two channels.",
    ProblemKind.BAD_VALUE: "Type a value that can be.",
    ProblemKind.UNSOLVABLE: "Bring the smallest and the largest values nearer together.",
}


def _take_out(channels: tuple[Channel, ...], parts: tuple[PartId, ...]) -> Remedy:
    def edit(project: Project) -> Project:
        for part in parts:
            for channel in channels:
                # Where the channels are linked, one removal is made to all of them.
                if part in {other.id for other in parts_of(project.channels[channel])}:
                    project = remove_part(project, channel, part)
        return project

    return Remedy(f"Take out {join_words(parts)}", edit)
