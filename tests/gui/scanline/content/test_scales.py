"""Round steps, and time laid over the screen."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.gui.scanline.content.scales import TimeScale, round_step, tick_text, ticks, volts_top


@pytest.mark.parametrize(
    ("span", "room", "least", "step"),
    [
        (31.78, 962, 52, 2.0),
        (0.8, 500, 46, 0.1),
        (0.8, 200, 46, 0.2),
        (16.7, 962, 52, 1.0),
        (0.95, 962, 52, 0.1),
    ],
)
def test_step_is_the_smallest_round_one(span: float, room: float, least: float, step: float) -> None:
    assert round_step(span, room, least) == pytest.approx(step)


@given(st.floats(1e-9, 1e6), st.floats(50, 4000), st.floats(10, 100))
def test_ticks_never_stand_nearer_than_asked(span: float, room: float, least: float) -> None:
    step = round_step(span, room, least)

    assert step * room / span >= least * 0.999 or room < least


def test_ticks_are_multiples_within_the_ends() -> None:
    assert ticks(0.3, 1.1, 0.2) == (0.4, 0.6, 0.8, 1.0)


def test_text_has_the_decimals_of_the_step_and_our_minus() -> None:
    assert [tick_text(value, 0.05) for value in (0.1, -0.05)] == ["0.10", "\u22120.05"]
    assert tick_text(12.0, 2.0) == "12"


@pytest.mark.parametrize(
    ("highest", "top"), [(0.743, 0.8), (0.8, 0.8), (0.82, 1.0), (3.3, 3.5), (42.0, 46.2)]
)
def test_the_lane_follows_a_level_out_of_scale(highest: float, top: float) -> None:
    assert volts_top(highest) == pytest.approx(top)


@given(st.floats(0, 100))
def test_time_and_place_are_inverse(x: float) -> None:
    scale = TimeScale(1e-6, 3e-6, 66.0, 1028.0)

    assert scale.x(scale.time_s(x)) == pytest.approx(x, abs=1e-6)


def test_a_time_out_of_sight_is_clipped_to_the_nearer_end() -> None:
    scale = TimeScale(1e-6, 3e-6, 66.0, 1028.0)

    assert (scale.clipped_x(0.0), scale.clipped_x(9e-6)) == (66.0, 1028.0)
