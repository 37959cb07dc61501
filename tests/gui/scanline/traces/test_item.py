"""What the trace item leaves on the screen."""

import numpy as np
import pyqtgraph as pg
import pytest
from PySide6.QtGui import QColor, QImage

from workbench.gui.scanline.traces import TraceItem, TraceStyle

RED = QColor(255, 0, 0)


@pytest.fixture
def plot(qtbot) -> pg.PlotWidget:
    widget = pg.PlotWidget(background="k")
    widget.hideAxis("left")
    widget.hideAxis("bottom")
    widget.setFixedSize(400, 200)
    qtbot.addWidget(widget)
    widget.getPlotItem().vb.setDefaultPadding(0)
    return widget


def painted(plot: pg.PlotWidget, samples: np.ndarray, style: TraceStyle) -> np.ndarray:
    """Return how red each pixel is, shape (height, width)."""
    item = TraceItem()
    plot.addItem(item, ignoreBounds=True)
    item.set_samples(samples.astype(np.float32), 1.0)
    item.set_styles((style,) * len(samples))
    plot.setRange(xRange=(0, samples.shape[1] - 1), yRange=(-1, 2), padding=0)
    image = plot.grab().toImage().convertToFormat(QImage.Format.Format_RGB32)
    pixels = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), image.width(), 4)
    return pixels[:, :, 2].astype(int)


def test_a_level_line_lies_at_its_height_and_is_two_pixels_thick(plot: pg.PlotWidget) -> None:
    red = painted(plot, np.full((1, 2000), 0.5), TraceStyle(RED, 2.0))

    rows = np.flatnonzero(red[:, 200] > 40)
    assert abs(rows.mean() - 99.5) <= 1.5
    assert 1.8 <= red[:, 200].sum() / 255 <= 2.3


def test_a_drop_moves_the_line_down_by_pixels(plot: pg.PlotWidget) -> None:
    flat = np.full((1, 2000), 0.5)
    true = painted(plot, flat, TraceStyle(RED, 2.0))
    plot.clear()
    dropped = painted(plot, flat, TraceStyle(RED, 2.0, drop=8.0))

    moved = np.average(range(200), weights=dropped[:, 200]) - np.average(range(200), weights=true[:, 200])
    assert moved == pytest.approx(8.0, abs=0.1)


def test_dashes_break_the_level_and_not_the_edge(plot: pg.PlotWidget) -> None:
    step = np.zeros((1, 2000))
    step[0, 1000:] = 1.0

    red = painted(plot, step, TraceStyle(RED, 2.0, dashes=(4.0, 2.0)))

    level = red[125:140, 20:180].max(axis=0)
    assert (level < 30).any()
    assert (level > 200).any()
    edge = red[75:125, 195:205].max(axis=1)
    assert (edge > 120).all()


def test_a_restless_trace_is_a_faint_band_between_two_lines(plot: pg.PlotWidget) -> None:
    stripes = np.tile([0.0, 1.0], 4000)[None]

    red = painted(plot, stripes, TraceStyle(RED, 2.0, band=0.25))

    assert 40 < np.median(red[90:110, 100:300]) < 100
    assert red[:, 200].max() > 200


def test_one_glitch_among_thousands_of_samples_is_drawn(plot: pg.PlotWidget) -> None:
    trace = np.zeros((1, 50_000))
    trace[0, 25_000] = 1.5

    red = painted(plot, trace, TraceStyle(RED, 2.0))

    assert red[60:120, 190:210].max(axis=1).min() > 30


def test_nothing_is_drawn_without_samples(plot: pg.PlotWidget) -> None:
    red = painted(plot, np.zeros((0, 2)), TraceStyle(RED, 2.0))

    assert red.max() == 0
