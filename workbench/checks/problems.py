"""Is there a circuit at all?"""

from collections.abc import Iterator

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import groups, is_sound, join_words
from workbench.checks.measures import Measures
from workbench.circuit.graph import ProblemKind
from workbench.circuit.network import PartId
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
                remedy_text="Take the part out, or join its loose end." if useless else "Mend the network.",
                remedy=_take_out(group.channels, problem.parts) if useless else None,
                channels=group.channels,
                parts=problem.parts,
            )


def _take_out(channels: tuple[Channel, ...], parts: tuple[PartId, ...]) -> Remedy:
    def edit(project: Project) -> Project:
        for part in parts:
            for channel in channels:
                # Where the channels are linked, one removal is made to all of them.
                if part in {other.id for other in parts_of(project.channels[channel])}:
                    project = remove_part(project, channel, part)
        return project

    return Remedy(f"Take out {join_words(parts)}", edit)
