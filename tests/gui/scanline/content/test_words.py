"""Readings in words."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.gui.scanline.content.words import (
    between_words,
    microseconds,
    pixel_words,
    pointer_words,
    position_words,
    reading_table,
    uneven_words,
    v_sync_sentence,
    volts,
    volts_between,
)
from workbench.timing.mode import Polarity, Region
from workbench.timing.standards import dmt_mode
from workbench.waveform.reading import Reading, between, reading_at

MODE = dmt_mode(0x04)
WHEN = "from H sync of line 491 to H sync of line 493"
EMPTY = Reading(0.0, 0, None, Region.ACTIVE, Region.ACTIVE, (0, 0, 0), (0.0,) * 5)


@pytest.mark.parametrize(
    ("value", "text"), [(0.74312, "0.743"), (-0.0004, "0.000"), (-0.743, "\u22120.743"), (0.0, "0.000")]
)
def test_volts_have_three_decimals_and_our_minus(value: float, text: str) -> None:
    assert volts(value) == text


def test_short_pixels_want_a_fourth_decimal() -> None:
    fast = replace(MODE, pixel_clock_hz=108_000_000)

    assert (microseconds(7.94444e-6, MODE), microseconds(7.94444e-6, fast)) == ("7.944", "7.9444")


@pytest.mark.parametrize(
    ("pixel", "words"),
    [
        (0, "front porch · pixel 0 · code 0 0 0"),
        (111, "sync · pixel 95 · code 0 0 0"),
        (200, "active · pixel 40 · code 31 31 31"),
    ],
)
def test_the_pointer_is_told_region_pixel_and_code(panel, pixel: int, words: str) -> None:
    line = panel.bench.live.result.scanline
    reading = reading_at(line, (pixel + 0.5) * line.mode.pixel_s)

    assert pointer_words(reading, line.mode) == words


@pytest.mark.parametrize(
    ("number", "polarity", "sentence"),
    [
        (123, Polarity.NEGATIVE, f"high all line: V sync is active only {WHEN}"),
        (492, Polarity.NEGATIVE, f"low all line: V sync is active {WHEN}"),
        (123, Polarity.POSITIVE, f"low all line: V sync is active only {WHEN}"),
        (491, Polarity.NEGATIVE, ""),
        (493, Polarity.NEGATIVE, ""),
        (1, Polarity.NEGATIVE, f"high all line: V sync is active only {WHEN}"),
    ],
)
def test_v_sync_is_put_into_words_where_it_does_not_change(
    number: int, polarity: Polarity, sentence: str
) -> None:
    mode = replace(MODE, v=replace(MODE.v, polarity=polarity))

    assert next(iter(v_sync_sentence(mode, number)), "") == sentence


def test_v_sync_that_ends_with_the_frame_is_left_on_its_first_line() -> None:
    mode = replace(MODE, v=replace(MODE.v, back_porch=0))

    assert "to H sync of line 1" in v_sync_sentence(mode, 123)[0]


@pytest.mark.parametrize(
    ("pixel", "words"),
    [
        (15, "pixel 15 of the front porch"),
        (16, "pixel 0 of the sync"),
        (159, "pixel 47 of the back porch"),
        (160, "pixel 0"),
        (799, "pixel 639"),
    ],
)
def test_each_region_counts_its_own_pixels(pixel: int, words: str) -> None:
    assert pixel_words(pixel, MODE) == words


@pytest.mark.parametrize(
    ("here", "there", "told"),
    [
        (539.5, 360.5, ("379", "200", "−179")),
        (539.9, 360.7, ("379.9", "200.7", "−179.2")),
        (539.97, 360.02, ("379.9", "200.0", "−179.9")),
        (20.5, 200.5, ("sync 4", "40", "180")),
        (3.25, 150.5, ("front 3.2", "back 38.5", "147.3")),
    ],
)
def test_pixels_of_the_cursors_and_between_add_up(panel, here: float, there: float, told) -> None:
    line = panel.bench.live.result.scanline
    readings = [reading_at(line, pixel * line.mode.pixel_s) for pixel in (here, there)]

    assert position_words(*readings, line.mode) == told


@given(here=st.floats(0.0, 799.0), there=st.floats(0.0, 799.0))
def test_what_is_told_between_is_what_is_told_of_both_apart(here: float, there: float) -> None:
    volts_at = (0.0004 * here, 0.0, 0.743, 3.3, 0.0)
    first = replace(EMPTY, time_s=here * MODE.pixel_s, pixel=int(here), volts=volts_at)
    second = replace(EMPTY, time_s=there * MODE.pixel_s, pixel=int(there))

    time, _ = between_words(first, second, MODE)

    told = [number(microseconds(reading.time_s, MODE)) for reading in (first, second)]
    assert number(time.removesuffix(" µs")) == pytest.approx(told[1] - told[0], abs=1e-9)
    for low, high, apart in zip(first.volts, second.volts, volts_between(first, second), strict=True):
        assert number(apart) == pytest.approx(number(volts(high)) - number(volts(low)), abs=1e-9)


def number(text: str) -> float:
    return float(text.replace("−", "-"))


def test_the_table_of_readings_has_a_row_for_everything(panel) -> None:
    line = panel.bench.live.result.scanline
    here, there = reading_at(line, 200.5 * line.mode.pixel_s), reading_at(line, 360.5 * line.mode.pixel_s)

    rows = [
        row.split("\t")
        for row in reading_table(here, there, between(line, here, there), line.mode).split("\n")
    ]

    assert {len(row) for row in rows} == {5}
    table = {row[0]: row[2:] for row in rows}
    assert table["time"] == ["7.964", "14.320", "6.356"]
    assert table["pixel"] == ["40", "200", "160"]
    assert table["red code"] == ["31", "0", "\u221231"]


def test_even_pixels_need_no_words() -> None:
    assert uneven_words(MODE, None) == ("", "")


def test_lines_that_differ_are_said_to() -> None:
    short, sentence = uneven_words(MODE, 5.30078125)

    # 1 / (5.30078 * 25.175 MHz) = 7.4937 ns; 800 * 5.30078125 = 4240.625.
    assert short == "uneven pixels ±3.75 ns"
    assert sentence == "Pixels last 5 or 6 system clocks of 7.49 ns; lines differ by one too."
