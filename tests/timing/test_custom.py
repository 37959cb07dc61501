from dataclasses import replace

import pytest

from workbench.errors import TimingError
from workbench.timing.custom import checked, make_mode
from workbench.timing.mode import Axis, Polarity
from workbench.timing.standards import KNOWN, dmt_mode

BASE = dmt_mode(0x04)


def test_names_a_mode_by_size_and_rate() -> None:
    assert make_mode(BASE.h, BASE.v, 25_200_000).name == "640x480@60"
    assert make_mode(BASE.h, BASE.v, 25_000_000).name == "640x480@59.52"
    assert make_mode(BASE.h, BASE.v, 25_000_000, name="mine").name == "mine"


@pytest.mark.parametrize("mode", KNOWN, ids=lambda mode: f"{mode.source} {mode.name}")
def test_every_known_mode_is_possible(mode) -> None:
    assert checked(mode) is mode


@pytest.mark.parametrize(
    ("change", "part"),
    [
        ({"active": 0}, "active is 0; it needs at least 1"),
        ({"sync": 0}, "sync is 0"),
        ({"front_porch": -1}, "front porch is -1"),
        ({"back_porch": -48}, "back porch is -48"),
        ({"active": 8192}, "more than the 8192"),
        ({"sync": 1.5}, "whole number of pixels"),
        ({"sync": True}, "whole number of pixels"),
        ({"border": 17}, "border of 17"),
    ],
)
def test_refuses_impossible_lines(change, part) -> None:
    with pytest.raises(TimingError, match=part):
        make_mode(replace(BASE.h, **change), BASE.v, 25_175_000)


@pytest.mark.parametrize("clock_hz", [0, -1, 1, 99_999, 1_000_000_001, 25.175e6, float("nan"), True])
def test_refuses_impossible_clocks(clock_hz) -> None:
    with pytest.raises(TimingError, match="pixel clock"):
        make_mode(BASE.h, BASE.v, clock_hz)


def test_takes_a_gigahertz_and_the_smallest_line() -> None:
    axis = Axis(1, 0, 1, 0, Polarity.POSITIVE)

    assert make_mode(axis, axis, 1_000_000_000).line_rate_hz == 5e8
