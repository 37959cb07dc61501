"""What a check says: a sentence with its limit, source and reason, and what would mend it."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

from workbench.circuit.network import PartId
from workbench.project.document import Channel, Project

__all__ = ["Finding", "Remedy", "Severity"]


class Severity(Enum):
    """How much a finding weighs, heaviest first."""

    FAIL = "fail"
    WARN = "warn"
    INFO = "info"

    @property
    def rank(self) -> int:
        """Return the place in a list that starts with the heaviest. [1]"""
        return tuple(Severity).index(self)


@dataclass(frozen=True, slots=True)
class Remedy:
    """One undoable edit that makes its finding go away."""

    label: str
    """What the button says and what undo will name: "Use 510 Ω for R1"."""
    edit: Callable[[Project], Project]


@dataclass(frozen=True, slots=True)
class Finding:
    """One sentence about the project, and everything behind it."""

    id: str
    """The rule, a stable word for programs: ``full-scale``."""
    severity: Severity
    subject: str
    """What it is about, in words: ``red, green and blue``."""
    headline: str
    """The sentence, with the project's own numbers."""
    measured: float | None
    """What was found, in ``unit``; none where nothing is measured."""
    unit: str
    low: float | None
    """Least permitted value, in ``unit``."""
    high: float | None
    """Greatest permitted value, in ``unit``."""
    source: str
    """Where the limit comes from."""
    why: str
    """Why it matters, or what follows from it."""
    remedy_text: str = ""
    """What to do about it, in words."""
    remedy: Remedy | None = None
    """The same as one edit, where a value can mend it."""
    channels: tuple[Channel, ...] = ()
    """The colour lines it is about; empty where it is about none or about the whole board."""
    parts: tuple[PartId, ...] = ()
    """The parts of those channels it points at."""
    from_memory: bool = False
    """Whether the limit was written down from memory and never read in its source."""

    @property
    def channel(self) -> Channel | None:
        """Return the one channel it is about, none where it is about several or no channel."""
        return self.channels[0] if len(self.channels) == 1 else None
