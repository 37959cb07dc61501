"""The frame, line by line, against the scanlines themselves."""

from dataclasses import replace

import numpy as np
import pytest

from workbench.gui.scanline.content.frame import (
    SAMPLES_PER_LINE,
    CodeCounts,
    line_extremes,
    shown_frame,
)
from workbench.picture.cards import card_codes
from workbench.picture.scene import Card, Picture
from workbench.picture.source import card_source
from workbench.timing.mode import Polarity
from workbench.timing.standards import dmt_mode

MODE = dmt_mode(0x04)
BITS = (3, 3, 2)


def counted(picture: Picture) -> CodeCounts:
    counts = CodeCounts(card_source(picture, MODE.h.active, MODE.v.active, BITS))
    counts.count_more(MODE.v.active)
    return counts


def levels() -> list[np.ndarray]:
    return [np.linspace(0, 0.7, 1 << bits) for bits in BITS]


@pytest.mark.parametrize("card", [Card.ALL_CODES, Card.CHANNEL_RAMPS, Card.BORDER])
def test_extremes_are_those_of_every_pixel(card: Card) -> None:
    picture = Picture(card=card)
    codes = card_codes(picture, MODE.h.active, MODE.v.active, BITS)

    for rows, row_codes, volts in zip(counted(picture).counts, codes, levels(), strict=True):
        lowest, highest = line_extremes(rows, volts)
        assert np.allclose(lowest, volts[row_codes].min(axis=1))
        assert np.allclose(highest, volts[row_codes].max(axis=1))


def test_extremes_hold_where_levels_do_not_rise() -> None:
    counts = np.array([[0, 3, 1, 0], [1, 0, 0, 1]])

    lowest, highest = line_extremes(counts, np.array([0.0, 0.5, 0.2, 0.7]))

    assert lowest.tolist() == [0.2, 0.0]
    assert highest.tolist() == [0.5, 0.7]


def test_rows_come_a_few_at_a_time() -> None:
    counts = CodeCounts(card_source(Picture(), MODE.h.active, MODE.v.active, BITS))

    counts.count_more(100)

    assert (counts.rows_done, counts.complete) == (100, False)
    assert counts.counts[0][:100].sum() == 100 * 640
    assert counts.counts[0][100:].sum() == 0


def test_the_frame_starts_with_the_vertical_front_porch() -> None:
    shown = shown_frame(MODE, counted(Picture()), levels(), (3.3, 3.3))

    first = MODE.v.blanking * SAMPLES_PER_LINE
    assert shown.colour_volts.shape == (3, 525 * SAMPLES_PER_LINE)
    assert (shown.colour_volts[:, :first] == 0).all()
    assert np.allclose(shown.colour_volts[:, first:], 0.7)
    assert shown.span_s == pytest.approx(MODE.frame_s)


@pytest.mark.parametrize("polarity", list(Polarity))
def test_v_sync_lasts_its_lines_from_an_h_sync_edge(polarity: Polarity) -> None:
    mode = replace(MODE, v=replace(MODE.v, polarity=polarity))
    shown = shown_frame(mode, counted(Picture()), levels(), (3.3, 3.0))

    high = shown.sync_volts[1] > 1.5
    on = high if polarity is Polarity.POSITIVE else ~high
    assert shown.sync_volts[1].max() == pytest.approx(3.0)
    assert on.sum() == mode.v.sync * SAMPLES_PER_LINE
    start = np.flatnonzero(on)[0] / SAMPLES_PER_LINE - mode.v.front_porch
    assert start == pytest.approx(mode.h.front_porch / mode.h.total, abs=1 / SAMPLES_PER_LINE)


def test_h_sync_comes_once_a_line() -> None:
    shown = shown_frame(MODE, counted(Picture()), levels(), (3.3, 3.3))

    falls = np.flatnonzero(np.diff(shown.sync_volts[0]) < 0)
    assert len(falls) == MODE.v.total


def test_the_code_in_blanking_shows_in_every_line() -> None:
    picture = Picture(card=Card.SOLID, colour=(0.0, 0.0, 0.0), blanking=(7, 0, 0))
    shown = shown_frame(MODE, counted(picture), levels(), (3.3, 3.3))

    assert np.allclose(shown.colour_volts[0], 0.7)
    assert shown.lowest_volts[0, -1] == 0.0
    assert shown.lowest_volts[0, 0] == pytest.approx(0.7)


def test_the_strip_is_the_mean_light_of_each_line() -> None:
    half = Picture(card=Card.STRIPES)
    shown = shown_frame(MODE, counted(half), levels(), (3.3, 3.3))

    # Half of the light is sRGB 188: 1.055 * 0.5 ** (1 / 2.4) - 0.055 of 255.
    assert np.abs(shown.strip[-1].astype(int) - 188).max() <= 1
