"""Uneven pixels on the screen, to scale."""

from dataclasses import replace

import numpy as np
import pytest

from workbench.gui.scanline.content.presets import Preset


def edges_x(panel):
    return np.array(panel.plot.backdrop._ground.uneven_x)


def test_pixels_of_a_fractional_divider_are_drawn_to_scale(make_panel, project):
    panel = make_panel(replace(project, pixel_divider=2.5))
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
