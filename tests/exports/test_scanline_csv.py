"""The scanline as a table is the scanline that is plotted, digit for digit."""

import csv
import io

import numpy as np
import pytest

from tests.exports.boards import solved
from workbench.exports.scanline_csv import scanline_csv


@pytest.fixture(scope="module")
def result():
    return solved(scanline=491)


@pytest.fixture(scope="module")
def rows(result):
    return list(csv.reader(io.StringIO(scanline_csv(result).decode())))


def test_header_is_the_contract(rows):
    assert ",".join(rows[0]) == "time_s,red_v,green_v,blue_v,hsync_v,vsync_v"


def test_samples_read_back_exactly(result, rows):
    table = np.array(rows[1:], dtype=np.float64)

    np.testing.assert_array_equal(table[:, 1:].T.astype(np.float32), result.scanline.volts)
    np.testing.assert_array_equal(table[:, 0], result.scanline.times_s)


def test_figures_do_not_follow_how_numpy_is_set_to_print(result):
    plain = scanline_csv(result)

    with np.printoptions(precision=2, legacy="1.13"):
        assert scanline_csv(result) == plain


def test_time_starts_at_the_front_porch_and_syncs_fall_together_16_pixels_later(rows):
    table = np.array(rows[1:], dtype=np.float64)
    low = table[(table[:, 4] < 1.65).argmax(), 0], table[(table[:, 5] < 1.65).argmax(), 0]

    assert table[0, 0] == 0.0
    # 16 px of 39.72 ns, and half of the 2 ns ramp; a sample is 1.24 ns.
    assert low == pytest.approx([16 / 25.175e6 + 1e-9] * 2, abs=1.3e-9)
