"""The edit that takes a choice of values, parts in series and in parallel included."""

from collections.abc import Sequence
from dataclasses import replace

from workbench.circuit.network import Network
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import parts_of, put_networks
from workbench.project.limits import MOST_PARTS

__all__ = ["take_fit"]


def take_fit(project: Project, networks: Sequence[Network]) -> Project:
    """Put fitted networks in, for red, green and blue in this order.

    Linked channels stay linked where the three are alike; a drawer may have too few equal parts
    for that, and then the channels part.
    """
    fitted = dict(zip(Channel, networks, strict=True))
    if any(len(parts_of(network)) > MOST_PARTS for network in fitted.values()):
        raise EditError(f"a channel has at most {MOST_PARTS} parts: choose a fit with fewer")
    linked = project.linked and len(set(fitted.values())) == 1
    return replace(put_networks(replace(project, linked=False), fitted), linked=linked)
