"""Wishes read back from the ladders they made."""

import pytest

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load, Network, Resistor
from workbench.circuit.series import Series
from workbench.circuit.solution import solve_levels
from workbench.circuit.wish import LadderWish, Shape, make_ladder, wish_like


@pytest.mark.parametrize("shape", Shape)
@pytest.mark.parametrize("matched", [False, True])
@pytest.mark.parametrize("series", [None, Series.E24])
def test_a_ladder_is_wished_for_again_as_it_was(shape: Shape, matched: bool, series: Series | None) -> None:
    wish = LadderWish(shape, 4, thermometer=3 if shape is Shape.SEGMENTED else 2, matched=matched)
    network = make_ladder(LadderWish(**_fields(wish), series=series), Driver(), Load())

    again = wish_like(network, solve_levels(network, Driver(), Load()).source_ohms)

    assert again == wish


def _fields(wish: LadderWish) -> dict[str, object]:
    return {name: getattr(wish, name) for name in ("shape", "bits", "thermometer", "matched")}


def test_a_shunt_alone_is_no_match() -> None:
    network = weighted(3, (500.0, 1e3, 2e3), shunt_ohms=1e3)

    assert not wish_like(network, solve_levels(network, Driver(), Load()).source_ohms).matched


def test_what_is_no_ladder_is_begun_as_a_weighted_one() -> None:
    network = Network(("bit0", "bit1"), (Resistor("R1", "bit0", "bit1", 1e3),))

    assert wish_like(network, float("nan")) == LadderWish(Shape.WEIGHTED, 2)
