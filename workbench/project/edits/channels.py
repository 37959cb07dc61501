"""Edits of the three channels together: linking them, and letting each go its own way."""

from dataclasses import replace

from workbench.project.document import Channel, Project
from workbench.project.edits.networks import put_networks

__all__ = ["link_channels", "unlink"]


def link_channels(project: Project, source: Channel) -> Project:
    """Give all channels the network of one, and make later edits to all three."""
    network = project.channels[source]
    return replace(put_networks(project, dict.fromkeys(Channel, network)), linked=True)


def unlink(project: Project) -> Project:
    """Let later edits change one channel only; the networks stay as they are."""
    return replace(project, linked=False)
