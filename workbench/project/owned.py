"""What a board needs of the resistors a person owns."""

from collections import Counter
from dataclasses import dataclass

from workbench.circuit.fit.drawer import Drawer
from workbench.project.document import Channel, Project
from workbench.units import format_quantity

__all__ = ["Need", "missing_words", "needs", "owned_words"]


@dataclass(frozen=True, slots=True)
class Need:
    """Resistors of one value on a board, and how many the drawer holds."""

    ohms: float
    wanted: int
    """On the board, all channels together. [1]"""
    owned: int | None
    """In the drawer; none is as many as wanted. [1]"""

    @property
    def lacking(self) -> int:
        """Return how many more it takes. [1]"""
        return 0 if self.owned is None else max(0, self.wanted - self.owned)


def needs(project: Project, drawer: Drawer) -> tuple[Need, ...]:
    """Return the resistors of all channels by value, the smallest first."""
    wanted = Counter(resistor.ohms for channel in Channel for resistor in project.channels[channel].resistors)
    return tuple(Need(ohms, count, drawer.count_of(ohms)) for ohms, count in sorted(wanted.items()))


def missing_words(project: Project, drawer: Drawer) -> str:
    """Say what the board as it is lacks in the drawer, as ``Missing: 3 × 500 Ω and 1 × 8 kΩ.``"""
    lacking = [need for need in needs(project, drawer) if need.lacking]
    if not lacking:
        return "The drawer has every resistor of this board."
    listed = [f"{need.lacking} × {format_quantity(need.ohms, 'Ω')}" for need in lacking]
    return f"Missing for this board: {', '.join(listed)}."


def owned_words(need: Need) -> str:
    """Return the words of a part's badge: ``12 in the drawer``, ``1 of 3 in the drawer`` or none of it."""
    if need.owned is None:
        return "in the drawer"
    if need.owned == 0:
        return "not in the drawer"
    return f"{need.owned} of {need.wanted} in the drawer" if need.lacking else f"{need.owned} in the drawer"
