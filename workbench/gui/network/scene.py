"""What is painted over a drawing: figures, what is chosen and pointed at, what was found."""

from dataclasses import dataclass, field

from workbench.checks.finding import Finding, Severity
from workbench.circuit.network import PartId
from workbench.gui.network.badges import Badge
from workbench.gui.network.notes import NodeSign, Note
from workbench.gui.network.shown import Shown
from workbench.gui.network.targets import Target
from workbench.project.document import Channel

__all__ = ["Scene", "findings_by_part"]


@dataclass(frozen=True, slots=True, eq=False)
class Scene:
    """Everything about a drawing that can change without its geometry."""

    channel: Channel
    shown: Shown
    sync_volts: tuple[float, float]
    codes: dict[PartId, tuple[str, ...]] = field(default_factory=dict)
    """Colour code of each resistor that has one."""
    chosen: PartId | None = None
    pointed: PartId | None = None
    edited: PartId | None = None
    """The part whose field is open; its value is not painted under it."""
    made: PartId | None = None
    """The part that was just put in and is typed into for the first time: no value stood there before."""
    focus: Target | None = None
    """What the keys are on, while the drawing has the focus."""
    hover: Target | None = None
    """What the pointer is on."""
    findings: dict[PartId, Finding] = field(default_factory=dict)
    notes: tuple[Note, ...] = ()
    """Words beside parts, where there is room."""
    node_signs: tuple[NodeSign, ...] = ()
    """Signs at nodes that something was found about."""
    badges: tuple[Badge, ...] = ()
    """What the person's drawer holds of the resistors, where there is room."""


def findings_by_part(findings: tuple[Finding, ...], channel: Channel) -> dict[PartId, Finding]:
    """Return the heaviest finding of each part of a channel; notes are not marked."""
    worst: dict[PartId, Finding] = {}
    for finding in findings:
        if finding.severity is Severity.INFO or (finding.channels and channel not in finding.channels):
            continue
        for part in finding.parts:
            if part not in worst or finding.severity.rank < worst[part].severity.rank:
                worst[part] = finding
    return worst
