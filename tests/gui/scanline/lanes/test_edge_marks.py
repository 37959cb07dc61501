"""Marks beside an edge: where their words stand, and when they are seen."""

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtWidgets import QApplication

from workbench.circuit.network import Cable, Load
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.scanline.content.cursors import Place
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.scanline.lanes.edge_marks import place_words
from workbench.gui.settings import THEME
from workbench.gui.theme import ThemeName
from workbench.picture.scene import Card
from workbench.project.document import Project

Make = Callable[..., ScanlinePanel]
LANE, GAP = (0.0, 1000.0), 10.0
WIDTHS = (200.0, 100.0, 20.0)
BARS = 240
"""First pixel of the second bar of the demo's test card, from the front porch. [1]"""


def placed(span: tuple[float, float], *taken: float):
    return place_words(span, WIDTHS, LANE, np.array(taken), GAP)


def test_words_stand_within_a_long_line() -> None:
    assert placed((100.0, 400.0)) == (0, 150.0)


def test_words_stand_right_of_a_short_line() -> None:
    assert placed((100.0, 110.0)) == (0, 120.0)


def test_shorter_words_stand_before_the_next_edge() -> None:
    assert placed((100.0, 110.0), 260.0) == (1, 120.0)


def test_words_go_to_the_left_where_the_right_has_no_room() -> None:
    assert placed((900.0, 960.0)) == (0, 690.0)


def test_the_name_alone_stands_where_no_figure_does() -> None:
    assert placed((100.0, 110.0), 60.0, 170.0) == (2, 120.0)


def test_nothing_stands_where_it_would_cover_something() -> None:
    assert placed((100.0, 110.0), 80.0, 130.0) is None


@pytest.fixture
def ghostly(project: Project) -> Project:
    return replace(project, load=Load(ohms=82.0), cable=Cable(10.0))


def close(panel: ScanlinePanel) -> ScanlinePanel:
    """Look at single pixels around the edge to the second bar."""
    panel.looking.cursors.put_on_pixel(Place.HERE, BARS + 1)
    panel.choose_preset(Preset.PIXELS)
    QApplication.processEvents()
    return panel


def test_a_ghost_is_marked_where_it_comes(make_panel: Make, ghostly: Project) -> None:
    plot = close(make_panel(ghostly)).plot

    ghost, settled = plot.edge_marks.placed
    trip_s = 20 / (0.66 * 299_792_458)
    assert ghost.end == pytest.approx(plot.time.x(BARS * ghostly.mode.pixel_s + trip_s), abs=0.01)
    assert ghost.figures.endswith("101.1 ns · 2.5 px")
    assert settled.end > ghost.end
    assert plot.places.colour.contains(plot.edge_marks.box)


def test_words_cover_neither_traces_nor_cursors(make_panel: Make, ghostly: Project) -> None:
    plot = close(make_panel(ghostly)).plot

    here = plot.lines[Place.HERE].stands_at
    edge = plot.time.x(BARS * ghostly.mode.pixel_s)
    for mark in plot.edge_marks.placed:
        assert not any(mark.words_left < x < mark.words_right for x in (here, edge))


def test_without_a_ghost_nothing_is_marked(make_panel: Make, project: Project) -> None:
    assert close(make_panel(project)).plot.edge_marks.placed == ()


def test_an_edit_takes_the_marks_away(make_panel: Make, ghostly: Project) -> None:
    panel = close(make_panel(ghostly))

    panel.bench.session.apply("75 ohm", lambda p: replace(p, load=Load(), cable=None))
    panel.bench.live.refresh()

    assert panel.plot.edge_marks.placed == ()
    assert panel.plot.edge_marks.box.isEmpty()
    assert panel.plot.accessibleDescription() == ""


def test_the_close_up_shows_them_instead(make_panel: Make, ghostly: Project) -> None:
    panel = make_panel(ghostly)

    assert not panel.plot.edge_card.box.isEmpty()
    assert panel.plot.edge_marks.placed == ()
    assert "ghost 2.5 % · 101.1 ns · 2.5 px" in panel.plot.accessibleDescription()


def test_a_frame_has_no_marks(make_panel: Make, ghostly: Project) -> None:
    panel = close(make_panel(ghostly))

    panel.choose_preset(Preset.FRAME)

    assert panel.plot.edge_marks.placed == ()


def test_no_marks_where_words_would_cover_stripes(make_panel: Make, ghostly: Project) -> None:
    stripes = replace(ghostly, picture=replace(ghostly.picture, card=Card.STRIPES))

    plot = close(make_panel(stripes, size=(700, 500))).plot

    edges = [plot.time.x(pixel * ghostly.mode.pixel_s) for pixel in range(160, 800)]
    for mark in plot.edge_marks.placed:
        assert not any(mark.words_left < edge < mark.words_right for edge in edges)


def test_marks_are_painted_in_every_theme(make_panel: Make, ghostly: Project) -> None:
    panel = close(make_panel(ghostly))

    for name in ThemeName:
        panel.bench.settings.set(THEME, name)
        QApplication.processEvents()
        plot = panel.plot
        ghost = plot.edge_marks.placed[0]
        box = plot.edge_marks.box
        picture = plot.viewport().grab().toImage()
        dim = panel.bench.theme.color("dim").rgb()
        column = [picture.pixel(int(ghost.end), y) for y in range(int(box.top()), int(box.bottom()))]
        assert dim in column
