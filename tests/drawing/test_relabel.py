"""Where only values change, the drawing is the one that would be drawn anew."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawing.networks import board, networks, sheet
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import Network
from workbench.drawing import draw
from workbench.drawing.relabel import relabelled

TIDE = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3], series_ohms=33.0, node_farads=30e-12)
VALUES = [0.5, 10.0, 75.0, 510.0, 1.1e3, 267.857, 12345.0, 1e6]


def with_ohms(network: Network, index: int, ohms: float) -> Network:
    parts = list(network.resistors)
    parts[index] = replace(parts[index], ohms=ohms)
    return replace(network, resistors=tuple(parts))


@given(
    st.one_of(networks(12), st.sampled_from([TIDE, r2r(4, 267.0)])),
    st.data(),
    st.sampled_from([400, 540, 800]),
    st.booleans(),
)
@settings(max_examples=150, deadline=None)
def test_it_is_exactly_what_drawing_anew_gives(
    network: Network, data: st.DataObject, width: int, zigzag: bool
) -> None:
    room, around = sheet(width, zigzag=zigzag), board(network.bits)
    if not network.resistors:
        return
    index = data.draw(st.integers(0, len(network.resistors) - 1))
    edited = with_ohms(network, index, data.draw(st.sampled_from(VALUES)))

    same = relabelled(draw(network, around, room), network, edited, room)

    assert same is None or same == draw(edited, around, room)


@pytest.mark.parametrize("ohms", [510.0, 1.1e3, 470.0])
def test_a_step_of_the_series_needs_no_new_layout(ohms: float) -> None:
    room = sheet()
    drawing, edited = draw(TIDE, board(5), room), with_ohms(TIDE, 0, ohms)

    same = relabelled(drawing, TIDE, edited, room)

    assert same is not None
    assert same.wires is drawing.wires
    assert same == draw(edited, board(5), room)


def test_other_parts_are_drawn_anew() -> None:
    fewer = replace(TIDE, resistors=TIDE.resistors[1:])

    assert relabelled(draw(TIDE, board(5), sheet()), TIDE, fewer, sheet()) is None
