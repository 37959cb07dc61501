"""What hangs between a node and the pointer, or the keys, until it is joined."""

from dataclasses import dataclass, replace

from workbench.circuit.network import NodeId, PartId
from workbench.drawing.geometry import Point
from workbench.project.document import Channel, Project
from workbench.project.edits.connecting import End, PartKind, add_part, move_end
from workbench.project.edits.networks import find_part, parts_of

__all__ = ["Lead", "carry_out", "label", "made_part", "said"]


@dataclass(frozen=True, slots=True)
class Lead:
    """One end is on a node, the other one is looked for."""

    start: NodeId
    """The node of the end that stays."""
    anchor: Point
    """Where that is in the drawing."""
    tip: Point
    """Where the loose end is now."""
    over: NodeId | None = None
    """The node it would be joined to; none for a new one."""
    kind: PartKind = PartKind.RESISTOR
    """What would be put in."""
    moved: tuple[PartId, End] | None = None
    """The end of a part that is moved; none where a part is put in."""

    @property
    def idle(self) -> bool:
        """Return whether both ends are on one node, so that nothing would happen."""
        return self.over == self.start

    def turned(self, kind: PartKind) -> "Lead":
        """Return the lead for the other kind of part; an end that is moved keeps its part."""
        return self if self.moved else replace(self, kind=kind)


def said(lead: Lead) -> str:
    """Return what letting go here would do."""
    if lead.moved:
        part, end = lead.moved
        if lead.idle:
            return f"the other end of {part} is on {lead.start}"
        return f"end {end.value} of {part} → {lead.over or 'a new node'}"
    if lead.idle:
        return f"{lead.kind.value} from {lead.start}: to which node?"
    return f"{lead.kind.value}, {lead.start} → {lead.over or 'a new node'}"


def label(lead: Lead) -> str:
    """Return the words by which undo names what letting go does."""
    goal = lead.over or "a new node"
    if lead.moved:
        return f"Move end {lead.moved[1].value} of {lead.moved[0]} to {goal}"
    return f"Add a {lead.kind.value}, {lead.start} to {goal}"


def carry_out(lead: Lead, project: Project, channel: Channel) -> Project:
    """Return the project with the lead's loose end joined."""
    if lead.moved:
        return move_end(project, channel, *lead.moved, lead.over)
    return add_part(project, channel, lead.kind, lead.start, lead.over)


def made_part(before: Project, after: Project, channel: Channel, lead: Lead) -> PartId | None:
    """Return the part that an edit put in, or the one whose end it moved."""
    if lead.moved:
        return find_part(after.channels[channel], lead.moved[0]).id
    known = {part.id for part in parts_of(before.channels[channel])}
    return next((part.id for part in parts_of(after.channels[channel]) if part.id not in known), None)
