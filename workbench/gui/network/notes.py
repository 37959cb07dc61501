"""A few words beside what a finding is about: beside its part, or at its node."""

from collections.abc import Iterable
from dataclasses import dataclass

from workbench.checks.finding import Finding, Severity
from workbench.circuit.graph import Problem
from workbench.circuit.network import PartId
from workbench.drawing import Drawing
from workbench.drawing.beside import note_place, sign_place
from workbench.drawing.faces import CAPTION
from workbench.drawing.geometry import Point
from workbench.gui.network.inks import Inks
from workbench.project.document import Project

__all__ = ["NodeSign", "Note", "node_signs", "notes"]

SHORT: dict[str, tuple[str, ...]] = {
    "series": ("not made in {series}", "not in {series}"),
    "dissipation": ("over its rating", "too warm"),
    "dnl": ("step off", "uneven"),
    "monotonic": ("a step falls", "falls"),
    "pin-current": ("pin over its limit", "over limit"),
    "network-dead-part": ("has no effect", "no effect"),
    "network-island": ("hangs in the air", "in the air"),
    "network-bad-value": ("cannot be", "bad value"),
}
"""What a rule says in a few words, the longest first."""


@dataclass(frozen=True, slots=True)
class Note:
    """Words beside a part."""

    part: PartId
    at: Point
    words: str
    fails: bool


@dataclass(frozen=True, slots=True)
class NodeSign:
    """A sign at a node that a problem is about."""

    at: Point
    fails: bool


def notes(
    drawing: Drawing, findings: dict[PartId, Finding], project: Project, inks: Inks
) -> tuple[Note, ...]:
    """Return the words beside the parts that were found something about, where there is room."""
    made = []
    for part, finding in findings.items():
        at, room = note_place(drawing, part)
        choices = (words.format(series=project.series.name) for words in SHORT.get(finding.id, ()))
        words = next((each for each in choices if inks.measure(each, CAPTION) <= room), None)
        if words is not None:
            made.append(Note(part, at, words, finding.severity is Severity.FAIL))
    return tuple(made)


def node_signs(drawing: Drawing, problems: Iterable[Problem]) -> tuple[NodeSign, ...]:
    """Return the signs of problems that are about nodes and about no part."""
    signs = []
    for problem in problems:
        for node in () if problem.parts else problem.nodes:
            at = sign_place(drawing, node)
            if at is not None:
                signs.append(NodeSign(at, problem.kind.fatal))
    return tuple(signs)
