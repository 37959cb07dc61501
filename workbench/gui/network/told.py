"""What an edit of the drawn network did, in one sentence: for edits that one key makes."""

from workbench.circuit.network import Capacitor, Network, PartId, Resistor
from workbench.drawing.needs import value_text
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import parts_of

__all__ = ["told"]

MOST_NAMED = 4
"""Parts named in a sentence; of more only their number is said. [1]"""


def told(label: str, before: Project, after: Project, channel: Channel) -> str:
    """Return what an edit named ``label`` did to a channel, and whether the others followed."""
    old, new = before.channels[channel], after.channels[channel]
    added = [f"{part.id} {value_text(part)}" for part in _fresh(new, old)]
    gone = [str(part.id) for part in _fresh(old, new) if part.id not in label.split()]
    words = [*_listed(added), *(f"without {each}" for each in _listed(gone))]
    others = [each for each in Channel if before.channels[each] != after.channels[each]]
    where = "in all three channels" if len(others) == len(Channel) else f"in {channel.value} only"
    return f"{label}: {', '.join((*words, where))}."


def _fresh(one: Network, other: Network) -> list[Resistor | Capacitor]:
    """Return the parts of a network that another one does not have."""
    known: set[PartId] = {part.id for part in parts_of(other)}
    return [part for part in parts_of(one) if part.id not in known]


def _listed(names: list[str]) -> list[str]:
    """Return names as one phrase; none if there are none."""
    if len(names) > MOST_NAMED:
        return [f"{len(names)} parts"]
    return [" and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)] if names else []
