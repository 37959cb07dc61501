"""Edits of the picture."""

import pytest

from workbench.errors import EditError
from workbench.picture.scene import Card
from workbench.project.document import Channel, Project
from workbench.project.edits.picture import (
    set_blanking_code,
    set_card,
    set_colour,
    set_repeats,
    set_scanline,
    set_transfer,
    step_scanline,
)


def test_card_and_colour_change(project: Project) -> None:
    edited = set_colour(set_card(project, Card.SOLID), (0.0, 0.5, 1.0))

    assert (edited.picture.card, edited.picture.colour) == (Card.SOLID, (0.0, 0.5, 1.0))


@pytest.mark.parametrize("part", [-0.1, 1.1, float("nan")])
def test_a_colour_out_of_range_is_refused(project: Project, part: float) -> None:
    with pytest.raises(EditError, match="between 0 and 1"):
        set_colour(project, (0.0, part, 0.0))


def test_pixels_and_lines_repeat_each_for_themselves(project: Project) -> None:
    picture = set_repeats(set_repeats(project, pixels=2), lines=4).picture

    assert (picture.repeat_pixels, picture.repeat_lines) == (2, 4)


@pytest.mark.parametrize("count", [0, 3, -1, 8])
def test_an_odd_repeat_is_refused(project: Project, count: int) -> None:
    with pytest.raises(EditError, match="once, doubled or four times"):
        set_repeats(project, lines=count)


def test_a_code_in_blanking_is_a_channels_own(project: Project) -> None:
    assert set_blanking_code(project, Channel.GREEN, 7).picture.blanking == (0, 7, 0)
    with pytest.raises(EditError, match="green code in blanking lies between 0 and 7, not 8"):
        set_blanking_code(project, Channel.GREEN, 8)


@pytest.mark.parametrize("scanline", [0, -1, 526])
def test_a_scanline_beyond_the_frame_is_refused(project: Project, scanline: int) -> None:
    with pytest.raises(EditError, match=f"640x480@60 has scanlines 1 to 525, not {scanline}"):
        set_scanline(project, scanline)


def test_steps_stop_at_the_frames_ends(project: Project) -> None:
    assert set_scanline(project, 525).scanline == 525
    assert step_scanline(project, 10).scanline == 11
    assert step_scanline(project, -10).scanline == 1
    assert step_scanline(project, 9999).scanline == 525


def test_a_transfer_table_is_taken_and_taken_back(project: Project) -> None:
    bent = set_transfer(project, (0.0, 0.2, 1.0))

    assert bent.picture.transfer == (0.0, 0.2, 1.0)
    assert set_transfer(bent, ()) == project


@pytest.mark.parametrize("table", [(0.5,), (0.0, 1.5), (0.0, float("nan")), (0.0,) * 257])
def test_a_transfer_table_that_is_none_is_refused(project: Project, table: tuple[float, ...]) -> None:
    with pytest.raises(EditError, match="transfer table"):
        set_transfer(project, table)
