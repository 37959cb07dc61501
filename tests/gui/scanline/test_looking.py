"""Cursors, pointer and keys, on a line and on a frame."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from tests.gui.gestures import drag
from tests.gui.scanline.pointing import CTRL, NONE, SHIFT, click, place_of, seen
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.scanline.content.cursors import Place
from workbench.gui.scanline.content.presets import Preset
from workbench.picture.scene import Card, Picture
from workbench.project.document import Channel, Project

Make = Callable[..., ScanlinePanel]


class TestCursors:
    def test_a_click_places_here_and_with_shift_there(self, panel: ScanlinePanel) -> None:
        click(panel, 20e-6)
        click(panel, 25e-6, SHIFT)

        cursors = panel.looking.cursors
        reach_s = 40e-9
        assert cursors.time_s(Place.HERE) == pytest.approx(20e-6, abs=reach_s)
        assert cursors.time_s(Place.THERE) == pytest.approx(25e-6, abs=reach_s)

    def test_here_is_where_the_bench_looks(self, panel: ScanlinePanel) -> None:
        click(panel, 20e-6)

        assert panel.bench.view.pixel == panel.looking.cursors.pixel(Place.HERE)

    def test_it_goes_where_the_bench_is_made_to_look(self, panel: ScanlinePanel) -> None:
        panel.bench.view.look_at(300)

        assert panel.looking.cursors.pixel(Place.HERE) == 300

    def test_a_cursor_is_dragged_by_its_line(self, panel: ScanlinePanel) -> None:
        start = place_of(panel, panel.looking.cursors.time_s(Place.THERE))

        drag(panel.plot.viewport(), start, start + QPoint(20, 0), start + QPoint(100, 0))

        moved = panel.plot.time.time_s(start.x() + 100)
        assert panel.looking.cursors.time_s(Place.THERE) == pytest.approx(moved, abs=40e-9)
        assert seen(panel) == (pytest.approx(0), pytest.approx(800))

    def test_what_stands_at_the_pointer_follows_a_drag(self, panel: ScanlinePanel, monkeypatch) -> None:
        said: list[str] = []
        monkeypatch.setattr(panel.plot.pointer_card, "say", lambda _places, _x, words, *_: said.append(words))
        start = place_of(panel, panel.looking.cursors.time_s(Place.HERE))

        drag(panel.plot.viewport(), start, start + QPoint(20, 0), start + QPoint(100, 0))

        pixel = panel.looking.cursors.pixel(Place.HERE) - panel.bench.session.project.mode.h.blanking
        assert said[-1].startswith(f"active · pixel {pixel} ·")

    def test_the_mouse_puts_it_into_the_middle_of_a_narrow_pixel(self, panel: ScanlinePanel) -> None:
        click(panel, 20.01e-6)

        pixels = panel.looking.cursors.time_s(Place.HERE) * 25_175_000
        assert pixels % 1 == pytest.approx(0.5)

    def test_and_anywhere_in_a_wide_one(self, panel: ScanlinePanel) -> None:
        panel.choose_preset(Preset.PIXELS)
        first_s = panel.plot.time.first_s

        click(panel, first_s + 5.2 / 25_175_000)

        pixels = (panel.looking.cursors.time_s(Place.HERE) - first_s) * 25_175_000
        assert pixels == pytest.approx(5.2, abs=0.05)

    @pytest.mark.parametrize(
        ("key", "keys", "pixels"),
        [
            (Qt.Key.Key_Right, NONE, 1.0),
            (Qt.Key.Key_Left, NONE, -1.0),
            (Qt.Key.Key_Right, SHIFT, 8.0),
            (Qt.Key.Key_Right, CTRL, 1 / 32),
        ],
    )
    def test_arrows_move_it(
        self, panel: ScanlinePanel, key: Qt.Key, keys: Qt.KeyboardModifier, pixels: float
    ) -> None:
        before = panel.looking.cursors.time_s(Place.HERE)

        QTest.keyClick(panel.plot, key, keys)

        moved = panel.looking.cursors.time_s(Place.HERE) - before
        assert moved * 25_175_000 == pytest.approx(pixels)

    def test_a_key_changes_over_to_the_other(self, panel: ScanlinePanel) -> None:
        QTest.keyClick(panel.plot, Qt.Key.Key_X)

        assert panel.looking.cursors.active is Place.THERE

    def test_the_readout_is_that_of_the_samples(self, panel: ScanlinePanel) -> None:
        levels = panel.bench.live.result.channels[Channel.RED].levels.volts_by_code

        readout = panel.looking.readings.readout()

        assert readout.here.codes == (31, 31, 31)
        assert readout.there.codes == (0, 31, 31)
        assert readout.here.volts[0] == pytest.approx(levels[31], abs=1e-4)
        assert readout.between.pixels == pytest.approx(160)
        assert readout.between.volts[0] == pytest.approx(-levels[31], abs=1e-4)

    def test_the_pointer_is_answered_beside_it(self, panel: ScanlinePanel) -> None:
        QTest.mouseMove(panel.plot.viewport(), place_of(panel, 22e-6))
        shown = panel.plot.pointer_card.box

        panel.looking.readings.point(None)

        assert shown.width() > 100
        assert panel.plot.pointer_card.box.isEmpty()


class TestFrame:
    def test_a_click_goes_to_the_scanline(self, panel: ScanlinePanel, qtbot) -> None:
        panel.choose_preset(Preset.FRAME)
        mode = panel.bench.session.project.mode

        click(panel, (mode.v.blanking + 239.5) * mode.line_s)

        assert panel.bench.session.project.scanline == pytest.approx(240, abs=1)

    def test_all_lines_are_counted_without_being_waited_for(
        self, make_panel: Make, project: Project, qtbot
    ) -> None:
        panel = make_panel(replace(project, picture=Picture(card=Card.CHANNEL_RAMPS)))
        panel.choose_preset(Preset.FRAME)

        def blue_shows() -> bool:
            return float(panel.plot.shown.colour_volts[2, -1]) > 0.7

        qtbot.waitUntil(blue_shows, timeout=5000)
        assert panel.plot.shown.colour_volts[0, -1] == 0.0

    def test_arrows_step_the_scanline(self, panel: ScanlinePanel) -> None:
        panel.choose_preset(Preset.FRAME)
        start = panel.bench.session.project.scanline

        QTest.keyClick(panel.plot, Qt.Key.Key_Right, SHIFT)

        assert panel.bench.session.project.scanline == start + 8

    def test_leaving_it_shows_the_line_again(self, panel: ScanlinePanel) -> None:
        panel.choose_preset(Preset.FRAME)
        panel.choose_preset(Preset.LINE)

        assert not panel.plot.shown.whole_frame
        assert seen(panel) == (pytest.approx(0), pytest.approx(800))
