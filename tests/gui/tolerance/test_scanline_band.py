"""The band in the scanline: there while the Tolerance page is open, gone with it."""

import numpy as np
import pytest

from workbench.gui.scanline.content.presets import Preset
from workbench.gui.tolerance.scanline_band import ScanlineBand, runs
from workbench.gui.view_state import CodeBand
from workbench.project.document import Channel
from workbench.project.edits.tolerances import Varied, set_half_width


@pytest.fixture
def band(desk) -> ScanlineBand:
    (found,) = (item for item in desk.window.scanline.plot.items() if isinstance(item, ScanlineBand))
    return found


def open_page(qtbot, desk):
    desk.window.pages.open("tolerance")
    page = desk.window.pages.stack.currentWidget()
    qtbot.waitUntil(lambda: not page.boards.busy and page.boards.of(desk.session.project) is not None)
    return page


def test_the_band_is_there_while_the_page_is_open(qtbot, desk, band):
    assert band.rects() == []

    open_page(qtbot, desk)
    assert band.rects()

    desk.window.pages.fold()
    assert band.rects() == []
    desk.window.pages.open("tolerance")
    assert band.rects()


def test_it_lies_where_boards_lie(qtbot, desk, band):
    page = open_page(qtbot, desk)
    plot, found = desk.window.scanline.plot, page.drawn

    white = min(band.rects(), key=lambda rect: rect.top())

    assert white.top() == pytest.approx(plot.volts_y(float(found.high_by_code[-1])))
    assert white.bottom() == pytest.approx(plot.volts_y(float(found.low_by_code[-1])))


def test_wider_tolerances_widen_it(qtbot, desk, band):
    open_page(qtbot, desk)
    before = max(rect.height() for rect in band.rects())

    desk.session.apply("5 %", lambda p: set_half_width(p, Varied.RESISTORS, 0.05))
    qtbot.waitUntil(lambda: max(rect.height() for rect in band.rects()) > 3 * before)


def test_it_is_seen_behind_the_trace(qtbot, desk, band):
    desk.session.apply("20 %", lambda p: set_half_width(p, Varied.SUPPLY, 0.2))
    open_page(qtbot, desk)
    plot = desk.window.scanline.plot
    widest = max(band.rects(), key=lambda rect: rect.width() * rect.height())
    x = plot.mapFromScene(widest.center()).x()
    heights = range(round(widest.top()) + 2, round(widest.bottom()) - 2)

    with_band = plot.grab().toImage()
    desk.bench.view.show_bands({})
    without = plot.grab().toImage()

    changed = sum(with_band.pixelColor(x, y) != without.pixelColor(x, y) for y in heights)
    assert changed > 15


def test_a_whole_frame_has_none(qtbot, desk, band):
    open_page(qtbot, desk)

    desk.window.scanline.choose_preset(Preset.FRAME)

    assert band.rects() == []


def test_the_band_of_an_earlier_network_is_not_drawn_on_another(qtbot, desk, band):
    open_page(qtbot, desk)
    bands = desk.bench.view.bands
    assert set(bands) == set(Channel)

    desk.bench.view.show_bands({c: CodeBand(b.low_volts[:4], b.high_volts[:4]) for c, b in bands.items()})

    assert band.rects() == []


def test_stretches_of_equal_codes():
    starts, ends = runs(np.array([0, 0, 3, 3, 1]))

    assert (starts.tolist(), ends.tolist()) == ([0, 2, 4], [2, 4, 5])
    assert runs(np.array([], int))[0].tolist() == []
