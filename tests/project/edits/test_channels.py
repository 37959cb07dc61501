"""Linking copies one channel over the others; unlinking changes no network."""

from workbench.circuit.ladders import weighted
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import link_channels, unlink
from workbench.project.edits.networks import put_networks
from workbench.project.edits.picture import set_blanking_code


def test_linking_takes_the_source_for_all(project: Project) -> None:
    two_bits = weighted(2, (430.0, 820.0))
    start = set_blanking_code(put_networks(project, {Channel.BLUE: two_bits}), Channel.RED, 7)

    linked = link_channels(start, Channel.BLUE)

    assert [linked.channels[channel] for channel in Channel] == [two_bits] * 3
    assert linked.linked
    assert [len(linked.wiring[channel]) for channel in Channel] == [2, 2, 2]
    assert linked.picture.blanking == (3, 0, 0)


def test_unlinking_keeps_the_networks(project: Project) -> None:
    linked = link_channels(project, Channel.RED)

    apart = unlink(linked)

    assert not apart.linked
    assert apart.channels is linked.channels
