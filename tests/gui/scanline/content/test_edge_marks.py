"""Which edge is marked, and what is worth a mark."""

from dataclasses import replace

import numpy as np
import pytest

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, Driver, Load
from workbench.circuit.response import step_figures
from workbench.gui.scanline.content.edge_marks import edge_in_sight, edge_marks

PIXEL_S = 40e-9
LADDER = weighted(5, [500.0 * 2**bit for bit in range(5)])


def marks(load: Load, cable: Cable | None, rise_s: float = 2e-9) -> dict[str, tuple[str, ...]]:
    step = step_figures(LADDER, Driver(rise_s=rise_s), load, cable)
    return {mark.name: mark.figures for mark in edge_marks(step, PIXEL_S)}


def test_a_ghost_has_its_size_its_time_and_its_pixels() -> None:
    found = marks(Load(ohms=82.0), Cable(10.0))

    assert found["ghost"] == ("2.5 % · 101.1 ns · 2.5 px", "101.1 ns · 2.5 px", "2.5 px", "")
    assert found["settled"][0].startswith("½ LSB · 10")


def test_a_ghost_that_dips_has_the_minus_of_the_house() -> None:
    assert marks(Load(monitors=2), Cable(2.0))["ghost"][0].startswith("\u221218.")


@pytest.mark.parametrize(
    ("load", "cable"), [(Load(), None), (Load(), Cable(10.0)), (Load(ohms=76.0), Cable(10.0))]
)
def test_nothing_is_marked_where_there_is_nothing_to_see(load: Load, cable: Cable | None) -> None:
    assert marks(load, cable) == {}


def test_what_settles_within_a_pixel_is_not_marked_even_with_a_ghost() -> None:
    assert list(marks(Load(ohms=82.0), Cable(1.0))) == ["ghost"]


def test_an_edge_longer_than_a_pixel_is_marked_without_a_cable() -> None:
    assert list(marks(Load(), None, rise_s=60e-9)) == ["settled"]


CODES = np.zeros((3, 100), np.intp)
CODES[0, 20:], CODES[1, 30:], CODES[0, 60:] = 1, 31, 5


@pytest.mark.parametrize(
    ("cursor", "first", "last", "expected"),
    [
        (22, 0, 99, 20),  # nearest to the cursor
        (22, 25, 99, 30),  # that is out of sight: the first that is large
        (90, 0, 50, 30),  # the one at 20 is small beside it
        (90, 0, 25, 20),  # all there is in sight
        (90, 31, 59, None),
    ],
)
def test_the_edge_at_the_cursor_is_marked_or_the_first_large_one(cursor, first, last, expected) -> None:
    assert edge_in_sight(CODES, cursor, first, last) == expected


def test_a_plain_line_has_none() -> None:
    assert edge_in_sight(np.ones((3, 50), np.intp), 10, 0, 50) is None


def test_a_ghost_is_named_by_the_model() -> None:
    # The same step with another ghost is marked as that one.
    step = step_figures(LADDER, Driver(), Load(ohms=82.0), Cable(10.0))

    (ghost, *_) = edge_marks(replace(step, first_ghost_ratio=0.0999, first_ghost_s=1e-7), PIXEL_S)

    assert ghost.figures[0] == "10.0 % · 100.0 ns · 2.5 px"
    assert ghost.after_s == 1e-7
