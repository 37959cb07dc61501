from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.errors import TimingError
from workbench.timing.edid.descriptor import descriptor_losses, read_descriptor, write_descriptor
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.standards import CTA, KNOWN, dmt_mode

BASE = dmt_mode(0x04)
POLARITIES = st.sampled_from(Polarity)
H_AXES = st.builds(
    Axis, st.integers(1, 4095), st.integers(0, 1023), st.integers(1, 1023), st.integers(0, 2049), POLARITIES
)
V_AXES = st.builds(
    Axis, st.integers(1, 4095), st.integers(0, 63), st.integers(1, 63), st.integers(0, 3969), POLARITIES
)
CLOCKS = st.integers(10, 0xFFFF).map(lambda steps: steps * 10_000)


def field(axis: Axis) -> Axis:
    return Axis(axis.active * 2, axis.front_porch * 2, axis.sync * 2, axis.back_porch * 2, axis.polarity)


SMALL_V_AXES = st.builds(
    Axis, st.integers(1, 2000), st.integers(0, 63), st.integers(1, 63), st.integers(0, 1900), POLARITIES
)


@given(H_AXES, V_AXES, CLOCKS)
def test_every_mode_that_fits_comes_back(h: Axis, v: Axis, clock_hz: int) -> None:
    read = read_descriptor(write_descriptor(Mode("", "", clock_hz, h, v))).mode

    assert (read.h, read.v, read.pixel_clock_hz, read.interlaced) == (h, v, clock_hz, False)


@given(H_AXES, SMALL_V_AXES, CLOCKS)
def test_interlaced_modes_come_back_by_their_fields(h: Axis, v: Axis, clock_hz: int) -> None:
    mode = Mode("", "", clock_hz, h, field(v), interlaced=True)
    read = read_descriptor(write_descriptor(mode)).mode

    assert (read.h, read.v, read.interlaced) == (mode.h, mode.v, True)
    assert descriptor_losses(mode) == ()


@given(st.tuples(st.integers(0, 4095), st.integers(0, 4095)))
def test_picture_size_comes_back(size_mm: tuple[int, int]) -> None:
    assert read_descriptor(write_descriptor(BASE, size_mm=size_mm)).size_mm == size_mm


@pytest.mark.parametrize(
    "mode", [mode for mode in KNOWN if mode.h.active < 4096], ids=lambda mode: f"{mode.source} {mode.name}"
)
def test_known_modes_come_back_but_for_the_losses_named(mode: Mode) -> None:
    read = read_descriptor(write_descriptor(mode)).mode
    losses = descriptor_losses(mode)

    assert read.h == replace(mode.h, border=0)
    assert read.v == replace(mode.v, border=0) or any("half line" in loss for loss in losses)
    assert (read.pixel_clock_hz == mode.pixel_clock_hz) != any("clock" in loss for loss in losses)
    assert abs(read.pixel_clock_hz - mode.pixel_clock_hz) <= 5_000


def test_25_175_is_stored_as_25_17() -> None:
    assert write_descriptor(BASE)[:2] == bytes.fromhex("d5 09")
    assert descriptor_losses(BASE)[0] == "The pixel clock is stored as 25.17 MHz (−199 ppm)."


@pytest.mark.parametrize(
    ("h", "v", "clock_hz", "part"),
    [
        ({"active": 4096}, {}, 25_000_000, "line's active of 4096 does not fit"),
        ({"back_porch": 4096}, {}, 25_000_000, "line's blanking"),
        ({"front_porch": 1024}, {}, 25_000_000, "line's front porch of 1024"),
        ({"sync": 1024}, {}, 25_000_000, "line's sync of 1024"),
        ({}, {"front_porch": 64}, 25_000_000, "frame's front porch of 64"),
        ({}, {"sync": 64}, 25_000_000, "frame's sync of 64"),
        ({}, {}, 655_360_000, "655.36 MHz does not fit"),
    ],
)
def test_what_does_not_fit_is_named(h, v, clock_hz: int, part: str) -> None:
    mode = Mode("", "", clock_hz, replace(BASE.h, **h), replace(BASE.v, **v))

    with pytest.raises(TimingError, match=part):
        write_descriptor(mode)


def test_odd_lines_of_an_interlaced_mode_are_named() -> None:
    vic_5 = CTA[3]

    with pytest.raises(TimingError, match="frame's sync of 5 lines is odd"):
        write_descriptor(replace(vic_5, v=replace(vic_5.v, sync=5)))


@pytest.mark.parametrize("size_mm", [(4096, 0), (0, -1)])
def test_picture_too_large(size_mm: tuple[int, int]) -> None:
    with pytest.raises(TimingError, match="mm does not fit"):
        write_descriptor(BASE, size_mm=size_mm)


@pytest.mark.parametrize("length", [0, 17, 19])
def test_a_descriptor_has_18_bytes(length: int) -> None:
    with pytest.raises(TimingError, match=f"not {length}"):
        read_descriptor(bytes(length))
