"""Names of stretches, and the pixels that a part moves."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import NodeId, PartId, Resistor
from workbench.gui.scanline.content.areas import line_areas, moved_stretches, stretches
from workbench.gui.scanline.content.parts import pin_of_part
from workbench.picture.source import PictureCodes, card_source
from workbench.project.document import Project


def codes(project: Project) -> PictureCodes:
    return card_source(project.picture, project.mode.h.active, project.mode.v.active, (5, 5, 5))


LADDER = weighted(5, [500, 1000, 2000, 4000, 8000])


@given(st.lists(st.booleans(), max_size=60))
def test_stretches_give_the_line_back(lit: list[bool]) -> None:
    again = np.zeros(len(lit), np.bool_)
    for first, after in stretches(np.array(lit, np.bool_)):
        again[first:after] = True

    assert again.tolist() == lit


def test_the_bars_are_named_where_they_lie(project: Project) -> None:
    areas = {
        area.name: (area.first, area.after)
        for area in line_areas(replace(project, scanline=123), codes(project))
    }

    assert areas["front porch"] == (0, 16)
    assert areas["white"] == (160, 240)
    assert areas["black"] == (720, 800)


def test_a_line_of_the_vertical_blanking_says_so(project: Project) -> None:
    *_, last = line_areas(replace(project, scanline=491), codes(project))

    assert last.name == "vertical sync: no picture"


@pytest.mark.parametrize(("part", "pin"), [("R1", 0), ("R5", 4)])
def test_a_leg_belongs_to_its_pin(part: str, pin: int) -> None:
    assert pin_of_part(LADDER, PartId(part)) == pin


def test_two_resistors_in_series_are_one_leg() -> None:
    half = NodeId("half")
    first = Resistor(PartId("R1a"), LADDER.pins[0], half, 250)
    second = Resistor(PartId("R1b"), half, LADDER.output, 250)
    split = replace(LADDER, resistors=(first, second, *LADDER.resistors[1:]))

    assert [pin_of_part(split, part.id) for part in (first, second)] == [0, 0]


def test_in_an_r_2r_ladder_legs_have_a_pin_and_rungs_serve_several_pins() -> None:
    ladder = r2r(4, 240, 480)
    on_pin = {part.id: {part.a, part.b} & set(ladder.pins) for part in ladder.resistors}

    pins = {part: pin_of_part(ladder, part) for part in on_pin}

    assert sorted(pin for part, pin in pins.items() if on_pin[part]) == [0, 1, 2, 3]
    assert {pin for part, pin in pins.items() if not on_pin[part]} == {None}


def test_an_unknown_part_moves_nothing() -> None:
    assert moved_stretches(LADDER, np.arange(32), PartId("R99")) == []


def test_the_pixels_that_raise_the_pin_are_lit() -> None:
    codes = np.array([0, 16, 31, 15, 16, 0])

    assert moved_stretches(LADDER, codes, PartId("R1")) == [(1, 3), (4, 5)]
