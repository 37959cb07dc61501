"""Uneven pixels on the screen, to scale."""

from dataclasses import replace

import numpy as np
import pytest

from workbench.gui.scanline.content.edges import close_up
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.tolerance.scanline_band import ScanlineBand
from workbench.gui.view_state import CodeBand
from workbench.picture.scene import Card
from workbench.project.document import Channel
from workbench.project.edits.picture import set_card

UNEVEN = 2.5
"""Pixels of 2 and of 3 system clocks in turn: every second edge is early by a fifth of a pixel."""


def passing_s(edge):
    """Return when the close-up of red passes half of its white. [s]"""
    way = 1 if edge.volts[0, -1] > edge.volts[0, 0] else -1
    return float(np.interp(0.371, edge.volts[0, ::way], edge.times_s[::way]))


def edges_x(panel):
    return np.array(panel.plot.backdrop._ground.uneven_x)


def test_pixels_of_a_fractional_divider_are_drawn_to_scale(make_panel, project):
    panel = make_panel(replace(project, pixel_divider=UNEVEN))
    assert len(edges_x(panel)) == 0

    panel.choose_preset(Preset.PIXELS)

    widths = np.diff(edges_x(panel))
    pixel = panel.plot.time.x(project.mode.pixel_s) - panel.plot.time.x(0.0)
    assert len(widths) >= 10
    assert widths == pytest.approx(np.where(widths > pixel, 1.2, 0.8) * pixel, rel=1e-6)
    assert {bool(wide) for wide in widths > pixel} == {True, False}


def test_even_pixels_have_no_marks(make_panel):
    panel = make_panel()

    panel.choose_preset(Preset.PIXELS)

    assert len(edges_x(panel)) == 0


def test_the_strip_and_the_ideal_change_where_the_trace_does(make_panel, project):
    panel = make_panel(replace(set_card(project, Card.STRIPES), pixel_divider=UNEVEN))
    panel.choose_preset(Preset.PIXELS)
    strip, image = panel.plot.places.strip, panel.plot.grab().toImage()
    lane = panel.plot.places.colour
    inside = edges_x(panel)[(edges_x(panel) > lane.left() + 20) & (edges_x(panel) < lane.right() - 20)]
    scale = image.width() / panel.plot.width()

    # Four pixels beside an edge on either side: an even edge would be six away from it.
    greys = [
        [
            image.pixelColor(round((x + by) * scale), round(strip.center().y() * scale)).lightness()
            for x in inside
        ]
        for by in (-4, 4)
    ]
    assert len(inside) >= 10
    assert np.abs(np.diff(greys, axis=0)).min() > 150
    shown, trace = panel.plot.shown, panel.plot.shown.ideal_volts[0]
    jumps = np.flatnonzero(np.diff(trace)) + 1
    starts = shown.starts[np.abs(shown.starts[:, None] - jumps * shown.step_s / shown.count_s).argmin(axis=0)]
    assert jumps * shown.step_s / shown.count_s == pytest.approx(starts, abs=1 / 32)


def test_the_head_says_how_uneven_pixels_are(make_panel, project):
    panel = make_panel(replace(project, pixel_divider=UNEVEN))

    # A clock of 1 / (2.5 * 25.175 MHz) = 15.89 ns.
    assert panel.head.uneven.isVisible()
    assert panel.head.uneven.text() == "uneven pixels ±7.94 ns"
    assert panel.head.uneven.toolTip() == "Pixels last 2 or 3 system clocks of 15.9 ns; all lines are alike."

    panel.show_result(project, panel.bench.live.result)
    assert not panel.head.uneven.isVisible()


@pytest.mark.parametrize("width", [1120, 900, 740, 620, 500])
def test_the_head_folds_to_its_width_with_the_word_too(make_panel, project, width):
    panel = make_panel(replace(project, pixel_divider=UNEVEN), size=(width, 600))

    assert panel.head._needed() <= width or panel.head.title.isHidden()
    assert panel.head.uneven.isVisible() == (width > 700)


def test_the_close_up_counts_from_where_the_edge_really_is(make_panel, project):
    line = make_panel(
        replace(set_card(project, Card.STRIPES), pixel_divider=UNEVEN)
    ).bench.live.result.scanline

    # Half of 0.743 V is passed as long after an edge on the even grid as after an early one.
    passed_s = [passing_s(close_up(line, pixel, Channel.RED, around_s=40e-9)) for pixel in (300, 301)]

    assert line.starts[301] == pytest.approx(300.8)
    assert passed_s[1] == pytest.approx(passed_s[0], abs=0.1e-9)


def test_the_band_of_boards_changes_where_the_trace_does(desk):
    desk.session.apply("Uneven", lambda p: replace(set_card(p, Card.STRIPES), pixel_divider=UNEVEN))
    desk.bench.live.refresh()
    plot = desk.window.scanline.plot
    desk.window.scanline.choose_preset(Preset.PIXELS)
    (band,) = (item for item in plot.items() if isinstance(item, ScanlineBand))
    desk.bench.view.show_bands({Channel.RED: CodeBand(np.zeros(32), np.full(32, 0.1))})

    lefts = np.array([rect.left() for rect in band.rects()])[1:-1]

    assert len(lefts) > 10
    marks = np.array(plot.backdrop._ground.uneven_x)
    assert np.abs(lefts[:, None] - marks).min(axis=1).max() < 1e-6
