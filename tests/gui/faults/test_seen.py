"""With a fault on, strip, picture and working show one and the same colour for a pixel."""

import numpy as np
import pytest

from workbench.bringup.faults import fault_named
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.scanline.lanes.strip import CAPTION, DARK_CAPTION
from workbench.gui.working.looked_at import looked_at
from workbench.picture.light import srgb_bytes
from workbench.project.document import Channel

PIXEL = 280
"""In the second bar, yellow as designed, a good way from its edges."""


def seen_colour(desk) -> list[int]:
    """Return the colour of the pixel as the page *Picture* reckons it."""
    shown = looked_at(desk.bench.live.result, desk.bench)
    assert shown is not None
    return srgb_bytes([channel.light for channel in shown.working.channels]).tolist()


@pytest.mark.parametrize("fault", ["porch-colour", "supply-low", "two-loads", "short-back-porch"])
def test_the_strip_has_the_colour_that_the_picture_has(desk, qtbot, fault) -> None:
    plot = desk.window.scanline.plot
    desk.bench.view.look_at(PIXEL)

    desk.faults.turn(fault_named(fault), on=True, channel=Channel.RED)
    qtbot.waitUntil(lambda: desk.bench.live.result.project is not desk.session.project)

    assert np.abs(plot.shown.strip[PIXEL].astype(int) - seen_colour(desk)).max() <= 2
    assert plot.strip.caption == CAPTION


def test_the_frame_s_strip_takes_off_what_is_taken_for_black(desk) -> None:
    desk.window.scanline.choose_preset(Preset.FRAME)
    plot = desk.window.scanline.plot
    designed = plot.shown.strip.astype(int)

    desk.faults.turn(fault_named("porch-colour"), on=True, channel=Channel.RED)

    counted = slice(plot.shown.unseen, plot.shown.unseen + 1)
    assert plot.shown.strip[counted, 0].mean() < designed[counted, 0].mean() - 30
    assert np.array_equal(plot.shown.strip[counted, 1:], designed[counted, 1:])


def test_where_the_monitor_shows_nothing_the_strip_says_that_it_is_as_sent(desk) -> None:
    desk.faults.turn(fault_named("no-h-sync"), on=True)

    strip = desk.window.scanline.plot.strip
    assert strip.caption == DARK_CAPTION
    desk.faults.end_all()
    assert strip.caption == CAPTION


def test_the_network_shows_the_level_as_the_monitor_s_grey(desk) -> None:
    canvas = desk.window.network.canvas
    desk.bench.view.look_at(PIXEL)
    designed = canvas.shown.lightness

    desk.faults.turn(fault_named("porch-colour"), on=True, channel=Channel.RED)

    # 0.743 V less 0.384 V taken for black: (0.359 / 0.700) ** 2.2 = 0.230, L* 55.
    assert designed == pytest.approx(100.0)
    assert canvas.shown.lightness == pytest.approx(55.0, abs=1.0)
