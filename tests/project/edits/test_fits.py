from dataclasses import replace

import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.fit.fit import find_fit
from workbench.circuit.network import Network, NodeId, PartId, Resistor
from workbench.circuit.series import Series
from workbench.errors import EditError
from workbench.files.project_file import decode, encode
from workbench.project.document import Channel
from workbench.project.edits.fits import take_fit


@pytest.fixture
def linked(project):
    return replace(project, linked=True)


def fit(project, drawer, most_parts):
    networks = [project.channels[channel] for channel in Channel]
    return find_fit(networks, project.driver, project.load, drawer, most_parts=most_parts).candidates[0]


@pytest.mark.parametrize("most_parts", [1, 2])
def test_every_leg_of_a_fit_comes_into_the_project(linked, most_parts):
    candidate = fit(linked, Drawer.of_series(Series.E12), most_parts)

    taken = take_fit(linked, candidate.networks)

    assert tuple(taken.channels[c] for c in Channel) == candidate.networks
    assert taken.linked
    assert decode(encode(taken)) == taken


def test_channels_that_differ_part(linked):
    parts = (OwnedPart(510.0, 2), OwnedPart(470.0, 1), OwnedPart(1000.0, 3), OwnedPart(2000.0, 3))
    candidate = fit(linked, Drawer(parts), 1)

    taken = take_fit(linked, candidate.networks)

    assert not taken.linked
    assert len({taken.channels[c] for c in Channel}) > 1


def test_channels_apart_are_taken_one_by_one(linked):
    apart = replace(linked, linked=False)
    candidate = fit(apart, Drawer.of_series(Series.E6), 1)

    assert not take_fit(apart, candidate.networks).linked


def test_more_parts_than_a_channel_may_have_are_refused(linked):
    many = tuple(Resistor(PartId(f"R{n}"), NodeId("bit0"), NodeId("out"), 1e3) for n in range(201))
    network = Network((NodeId("bit0"),), many)

    with pytest.raises(EditError, match="at most 200 parts"):
        take_fit(linked, [network] * 3)
