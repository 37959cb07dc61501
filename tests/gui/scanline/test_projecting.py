"""The scanline panel as a room sees it: large words, all of them whole."""

import itertools
from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF

from workbench.gui.bench import PROJECTOR_PX
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.scanline.content.cursors import Place
from workbench.gui.scanline.content.presets import Preset
from workbench.project.edits.picture import set_scanline

Make = Callable[..., ScanlinePanel]
SIZES = {"1920 × 1080": (1114, 892), "1600 × 900": (928, 712), "1440 × 900": (836, 712)}
"""The panel's size in windows of these sizes. [px]"""


@pytest.fixture(params=list(SIZES.values()), ids=list(SIZES))
def projected(request, make_panel: Make) -> ScanlinePanel:
    """A panel at projector size that the pointer is not on."""
    panel = make_panel(size=request.param)
    panel.bench.project_large(on=True)
    panel.plot.clearFocus()
    return panel


def names(panel: ScanlinePanel) -> list[str]:
    return [named.name for named in panel.plot.area_names.names]


def test_no_text_is_smaller_than_24_pt(projected: ScanlinePanel) -> None:
    type_ = projected.bench.type

    assert min(type_.sans(0.8).pixelSize(), type_.mono(0.8).pixelSize()) >= PROJECTOR_PX
    assert type_.caps().pixelSize() >= PROJECTOR_PX


def test_the_head_says_scanline_and_its_number(projected: ScanlinePanel) -> None:
    head = projected.head

    assert head.title.isVisible() is (projected.width() > 900)
    assert head.title.text() == "scanline"
    assert head.line.isVisible()
    assert head.presets[Preset.FRAME].geometry().right() <= head.width()


@pytest.mark.parametrize("preset", list(Preset))
def test_areas_are_named_whole_and_apart(projected: ScanlinePanel, preset: Preset) -> None:
    projected.choose_preset(preset)

    shown = projected.plot.area_names
    metrics = QFontMetricsF(shown.font)
    assert shown.names
    assert all(n.box.width() >= metrics.horizontalAdvance(n.name) - 1 for n in shown.names)
    assert all(n.box.left() >= 0 and n.box.right() <= projected.width() for n in shown.names)
    for before, after in itertools.pairwise(shown.names):
        assert before.box.right() < after.box.left()


def test_blanking_names_porches_sync_and_picture(projected: ScanlinePanel) -> None:
    projected.choose_preset(Preset.BLANKING)

    assert names(projected) == ["front porch", "sync", "back porch", "active picture"]


def test_a_line_without_picture_says_so(projected: ScanlinePanel, qtbot) -> None:
    projected.bench.apply("Line 500", lambda project: set_scanline(project, 500))

    qtbot.waitUntil(lambda: names(projected)[-1] == "no picture")


def test_at_the_desk_no_area_is_named_twice(panel: ScanlinePanel) -> None:
    assert panel.plot.area_names.box.isEmpty()


def test_nothing_lies_on_the_traces_until_one_points(projected: ScanlinePanel) -> None:
    plot = projected.plot
    assert plot.pointer_card.box.isEmpty()
    assert not projected.readout.isVisible()

    plot.pointed.emit(plot.time.time_s(plot.places.colour.center().x()))

    assert not plot.pointer_card.box.isEmpty()
    plot.pointed.emit(None)
    assert plot.pointer_card.box.isEmpty()


def test_arrow_keys_read_at_the_cursor_until_the_focus_leaves(make_panel: Make, qtbot) -> None:
    panel = make_panel(size=SIZES["1920 × 1080"])
    panel.bench.project_large(on=True)
    panel.plot.setFocus(Qt.FocusReason.MouseFocusReason)
    assert panel.plot.pointer_card.box.isEmpty()

    qtbot.keyClick(panel, Qt.Key.Key_Right)

    assert not panel.plot.pointer_card.box.isEmpty()
    panel.plot.clearFocus()
    panel.looking.place()
    assert panel.plot.pointer_card.box.isEmpty()


@pytest.mark.parametrize("apart_px", [0, 3, 12])
def test_names_of_near_cursors_do_not_cover_each_other(panel: ScanlinePanel, apart_px: int) -> None:
    plot, cursors = panel.plot, panel.looking.cursors
    here = plot.time.time_s(plot.places.colour.center().x())

    cursors.put(Place.HERE, here)
    cursors.put(Place.THERE, here + apart_px * panel.bench.session.project.mode.pixel_s)

    tags = [line.tag for line in plot.lines.values()]
    assert not tags[0].intersects(tags[1])
    for line in plot.lines.values():
        assert line.box.contains(line.tag)


@pytest.mark.parametrize("width", [430, 560, 1120])
def test_names_over_the_strip_are_whole_or_left_out(make_panel: Make, width: int) -> None:
    strip = make_panel(size=(width, 700)).plot.strip
    measure = QFontMetricsF(strip.bench.type.sans(0.86)).horizontalAdvance

    named = strip.names()

    assert len(named) == (8 if width == 1120 else len(named))
    assert all(room >= measure(name) for _, room, name in named)
