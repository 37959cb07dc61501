"""Readings in words."""

from dataclasses import replace

import pytest

from workbench.gui.scanline.content.words import (
    microseconds,
    pointer_words,
    reading_table,
    v_sync_sentence,
    volts,
)
from workbench.timing.mode import Polarity
from workbench.timing.standards import dmt_mode
from workbench.waveform.reading import between, reading_at

MODE = dmt_mode(0x04)


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
        (0, "front porch · pixel 1 of 16 · code 0 0 0"),
        (111, "sync · pixel 96 of 96 · code 0 0 0"),
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
        (123, Polarity.NEGATIVE, "high all line: V sync is active on lines 491 and 492 only"),
        (492, Polarity.NEGATIVE, "low all line: V sync is active on lines 491 and 492"),
        (123, Polarity.POSITIVE, "low all line: V sync is active on lines 491 and 492 only"),
        (491, Polarity.NEGATIVE, ""),
        (493, Polarity.NEGATIVE, ""),
        (1, Polarity.NEGATIVE, "high all line: V sync is active on lines 491 and 492 only"),
    ],
)
def test_v_sync_is_put_into_words_where_it_does_not_change(
    number: int, polarity: Polarity, sentence: str
) -> None:
    mode = replace(MODE, v=replace(MODE.v, polarity=polarity))

    assert v_sync_sentence(mode, number) == sentence


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
