"""The ruler: edges that give and take, and drags that are one step to undo."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from tests.gui.gestures import drag
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.scanline.ruler.line_ruler import moved_edge
from workbench.timing.mode import Axis, Polarity

LINE = Axis(640, 16, 96, 48, Polarity.NEGATIVE)


def counts(axis: Axis) -> tuple[int, int, int, int]:
    return axis.front_porch, axis.sync, axis.back_porch, axis.active


@pytest.mark.parametrize(
    ("edge", "count", "expected"),
    [
        (0, 20, (20, 92, 48, 640)),
        (1, 80, (16, 80, 64, 640)),
        (2, 60, (16, 96, 60, 640)),
        (0, -5, (0, 112, 48, 640)),
        (0, 500, (111, 1, 48, 640)),
        (1, 0, (16, 1, 143, 640)),
        (1, 500, (16, 144, 0, 640)),
        (2, -3, (16, 96, 0, 640)),
    ],
)
def test_an_edge_gives_and_takes(edge: int, count: int, expected: tuple[int, ...]) -> None:
    assert counts(moved_edge(LINE, edge, count)) == expected


def test_the_borders_of_a_standard_are_kept() -> None:
    assert moved_edge(replace(LINE, border=8), 0, 20).border == 8


def test_the_picture_gives_way_where_the_total_is_kept() -> None:
    moved = moved_edge(LINE, 2, 50, keep_total=True)

    assert (moved.back_porch, moved.active, moved.total) == (50, 638, 800)
    assert moved_edge(LINE, 2, 9999, keep_total=True).active == 1


def moves(panel: ScanlinePanel, edge: int, *pixels: int, release: bool = True) -> None:
    """Drag a knob by some pixels of the screen."""
    knob = panel.ruler.knobs[edge]
    start = knob.rect().center()
    drag(knob, start, *(start + QPoint(by, 0) for by in pixels), release=release)


def test_a_drag_changes_the_counts_and_is_one_step(panel: ScanlinePanel) -> None:
    session = panel.bench.session
    before = session.project

    moves(panel, 0, 3, 6, 12)

    moved = session.project.mode.h
    assert moved.front_porch == 16 + round(12 * 800 / panel.plot.places.colour.width())
    assert moved.total == 800
    assert session.undo_label == "Move the end of the front porch"
    session.undo()
    assert session.project == before


def test_two_drags_are_two_steps(panel: ScanlinePanel) -> None:
    session = panel.bench.session

    moves(panel, 0, 6)
    panel.bench.live.refresh()
    first = session.project
    moves(panel, 0, 6)

    session.undo()
    assert session.project == first


def test_escape_takes_a_drag_back(panel: ScanlinePanel) -> None:
    session = panel.bench.session
    before = session.project

    moves(panel, 1, 4, 9, release=False)
    assert session.project != before
    QTest.keyClick(panel.ruler.knobs[1], Qt.Key.Key_Escape)

    assert session.project == before


@pytest.mark.parametrize(
    ("key", "modifier", "by"),
    [
        (Qt.Key.Key_Right, Qt.KeyboardModifier.NoModifier, 1),
        (Qt.Key.Key_Left, Qt.KeyboardModifier.NoModifier, -1),
        (Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier, 8),
    ],
)
def test_arrows_move_an_edge(
    panel: ScanlinePanel, key: Qt.Key, modifier: Qt.KeyboardModifier, by: int
) -> None:
    QTest.keyClick(panel.ruler.knobs[2], key, modifier)

    assert panel.bench.session.project.mode.h.back_porch == 48 + by
    assert panel.bench.session.project.mode.h.active == 640


def test_one_s_own_counts_are_a_mode_of_one_s_own(panel: ScanlinePanel) -> None:
    QTest.keyClick(panel.ruler.knobs[0], Qt.Key.Key_Right)

    assert panel.bench.session.project.mode.source.startswith("custom")


def test_the_knobs_follow_the_counts(panel: ScanlinePanel, qtbot) -> None:
    knob = panel.ruler.knobs[2]
    before = knob.geometry().center().x()

    QTest.keyClick(knob, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    qtbot.waitUntil(lambda: knob.value() == 56)

    assert knob.geometry().center().x() > before
    assert "56 px" in knob.accessibleDescription()


def test_of_a_frame_the_lines_are_moved(panel: ScanlinePanel) -> None:
    panel.choose_preset(Preset.FRAME)

    QTest.keyClick(panel.ruler.knobs[0], Qt.Key.Key_Right)

    v = panel.bench.session.project.mode.v
    assert (v.front_porch, v.sync, v.total) == (11, 1, 525)
    assert panel.bench.session.undo_label == "Move the end of the vertical front porch"


def test_pressing_the_bar_looks_at_that_place_while_zoomed(panel: ScanlinePanel) -> None:
    panel.choose_preset(Preset.PIXELS)
    bar = panel.plot.places.colour

    QTest.mousePress(
        panel.ruler,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
        QPoint(round(bar.left() + 0.75 * bar.width()), 16),
    )

    time = panel.plot.time
    middle_s = (time.first_s + time.last_s) / 2
    assert middle_s == pytest.approx(0.75 * panel.plot.shown.span_s, rel=0.01)


def test_ctrl_keeps_the_total(panel: ScanlinePanel) -> None:
    QTest.keyClick(panel.ruler.knobs[2], Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)

    h = panel.bench.session.project.mode.h
    assert (h.back_porch, h.active, h.total) == (49, 639, 800)
