"""Edits of the mode: counts stay possible, the scanline stays in the frame."""

from dataclasses import replace

import pytest
from hypothesis import given

from tests.strategies import modes, projects
from workbench.errors import EditError
from workbench.project.document import Direction, Project
from workbench.project.edits.picture import set_scanline
from workbench.project.edits.timing import (
    move_edge,
    set_axis,
    set_counts,
    set_mode,
    set_pixel_clock,
    set_polarity,
    take_plan,
)
from workbench.timing.clock.chip import Chip, Span
from workbench.timing.clock.plan import plan_clock
from workbench.timing.mode import Polarity
from workbench.timing.search import find_mode

H, V = Direction.HORIZONTAL, Direction.VERTICAL


@pytest.mark.parametrize(
    ("scanline", "carried"),
    [(123, 123), (480, 480), (490, 610), (525, 628)],
    ids=["picture", "last line", "in blanking", "last of frame"],
)
def test_the_scanline_is_carried_to_another_mode(project: Project, scanline: int, carried: int) -> None:
    edited = set_mode(set_scanline(project, scanline), find_mode("800x600@60"))

    assert edited.scanline == carried


def test_a_picture_line_stays_in_a_smaller_picture(project: Project) -> None:
    edited = set_mode(set_scanline(project, 480), find_mode("640x400@85"))

    assert edited.scanline == 400


@given(project=projects(), mode=modes())
def test_the_scanline_is_always_in_the_frame(project: Project, mode) -> None:
    assert 1 <= set_mode(project, mode).scanline <= mode.v.total


def test_an_interlaced_mode_is_refused(project: Project) -> None:
    with pytest.raises(EditError, match="is interlaced, which is not simulated here"):
        set_mode(project, find_mode("1024x768@43i"))


def test_own_counts_make_an_own_mode(project: Project) -> None:
    edited = set_counts(project, H, front_porch=24)

    assert edited.mode.h.front_porch == 24
    assert edited.mode.h.total == 808
    assert edited.mode.source == "custom, from VESA DMT 0x04"


def test_counts_put_back_are_the_tables_mode_again(project: Project) -> None:
    narrower = set_counts(project, H, front_porch=3)

    assert narrower.mode.h.border == 0
    assert set_counts(narrower, H, front_porch=16).mode == find_mode("640x480@60")


def test_all_counts_can_be_taken_at_once(project: Project) -> None:
    axis = replace(project.mode.v, active=400, back_porch=113)

    edited = set_axis(project, V, axis)

    assert edited.mode.v == axis
    assert edited.scanline <= 525


def test_a_plan_gives_its_clock(project: Project) -> None:
    chip = Chip(12_000_000, Span(126, 126), (Span(60, 60),), 133_000_000)
    (plan, *_) = plan_clock(project.mode, chip)

    assert take_plan(project, plan).mode.pixel_clock_hz == 25_200_000
    assert take_plan(project, plan).pixel_divider is None


def test_a_plan_with_a_fraction_makes_pixels_uneven_until_the_clock_is_another(project: Project) -> None:
    chip = Chip(12_000_000, Span(11, 11), (Span(1, 1),), 133_000_000, fraction_bits=8)
    plan = next(plan for plan in plan_clock(project.mode, chip) if plan.divider.denominator > 1)

    taken = take_plan(project, plan)

    assert taken.pixel_divider == float(plan.divider)
    assert set_counts(taken, H, back_porch=50).pixel_divider == float(plan.divider)
    assert set_pixel_clock(taken, 25_000_000).pixel_divider is None
    assert set_mode(taken, find_mode("800x600@60")).pixel_divider is None


def test_unchanged_counts_keep_the_mode(project: Project) -> None:
    assert set_counts(project, V, active=480).mode is project.mode
    assert set_pixel_clock(project, 25_175_000).mode is project.mode
    assert set_polarity(project, H, Polarity.NEGATIVE).mode is project.mode


def test_impossible_counts_are_refused(project: Project) -> None:
    with pytest.raises(EditError, match="sync is 0; it needs at least 1"):
        set_counts(project, H, sync=0)
    with pytest.raises(EditError, match="more than the 8192 taken here"):
        set_counts(project, V, active=100_000)
    with pytest.raises(EditError, match=r"outside 100 kHz"):
        set_pixel_clock(project, 1)
    with pytest.raises(EditError, match=r"outside 100 kHz"):
        set_pixel_clock(project, 0)


def test_clock_and_polarity_change(project: Project) -> None:
    edited = set_polarity(set_pixel_clock(project, 25_200_000), V, Polarity.POSITIVE)

    assert edited.mode.pixel_clock_hz == 25_200_000
    assert edited.mode.v.polarity is Polarity.POSITIVE
    assert edited.mode.h == project.mode.h


@pytest.mark.parametrize(
    ("edge", "position", "counts"),
    [
        (0, 20, (20, 92, 48, 640)),
        (0, -5, (0, 112, 48, 640)),
        (0, 500, (111, 1, 48, 640)),
        (1, 100, (16, 84, 60, 640)),
        (1, 0, (16, 1, 143, 640)),
        (2, 150, (16, 96, 38, 650)),
        (2, 9999, (16, 96, 687, 1)),
    ],
)
def test_an_edge_moves_between_its_neighbours(project: Project, edge: int, position: int, counts) -> None:
    h = move_edge(project, H, edge, position).mode.h

    assert (h.front_porch, h.sync, h.back_porch, h.active) == counts
    assert h.total == 800


def test_an_edge_in_its_place_changes_nothing(project: Project) -> None:
    assert move_edge(project, H, 1, 112) is project
    assert move_edge(replace(project), V, 0, 10).mode is project.mode
