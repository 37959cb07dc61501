"""The nearest transition and its samples."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.gui.scanline.content.edges import close_up, nearest_edge, smoothed
from workbench.project.document import Channel
from workbench.waveform.scanline import Scanline


def test_the_nearest_change_of_any_channel_is_found() -> None:
    codes = np.zeros((3, 100), np.intp)
    codes[0, 20:] = 1
    codes[2, 60:] = 1

    assert [nearest_edge(codes, pixel) for pixel in (0, 39, 41, 99)] == [20, 20, 60, 60]


def test_a_plain_line_has_no_edge() -> None:
    assert nearest_edge(np.ones((3, 50), np.intp), 10) is None


def test_the_close_up_starts_before_the_edge(panel) -> None:
    line: Scanline = panel.bench.live.result.scanline

    edge = close_up(line, 320, Channel.GREEN, around_s=40e-9)

    assert edge.times_s[0] < 0 < edge.times_s[-1]
    assert edge.times_s[-1] - edge.times_s[0] == pytest.approx(40e-9, rel=0.05)
    assert edge.volts[0, 0] > 0.7 > 0.1 > edge.volts[0, -1]
    # From yellow to cyan green stays: the figures are of a channel that changes.
    assert edge.channel is Channel.RED


@given(st.lists(st.floats(-1, 1), min_size=2, max_size=30), st.integers(1, 9))
def test_the_smooth_curve_passes_every_sample_and_never_beyond_its_neighbours(
    samples: list[float], parts: int
) -> None:
    values = np.array(samples)

    curve = smoothed(values, parts)

    assert np.allclose(curve[::parts], values)
    pieces = curve[:-1].reshape(-1, parts)
    low, high = np.minimum(values[:-1], values[1:]), np.maximum(values[:-1], values[1:])
    assert (pieces >= low[:, None] - 1e-9).all()
    assert (pieces <= high[:, None] + 1e-9).all()
