"""What is in sight: presets and zooms."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from tests.gui.gestures import drag
from tests.gui.scanline.pointing import place_of, seen, turn_wheel
from workbench.circuit.network import PartId
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.scanline.content.cursors import Place
from workbench.gui.scanline.content.presets import Preset
from workbench.project.document import Channel
from workbench.project.edits.parts import set_value
from workbench.timing.search import find_mode


class TestSight:
    @pytest.mark.parametrize(
        ("preset", "first", "last"),
        [(Preset.LINE, 0, 800), (Preset.BLANKING, 0, 320), (Preset.PIXELS, 188, 212)],
    )
    def test_presets_bring_their_stretch(
        self, panel: ScanlinePanel, preset: Preset, first: int, last: int
    ) -> None:
        panel.head.presets[preset].click()

        assert seen(panel) == (pytest.approx(first), pytest.approx(last))
        assert [p for p, button in panel.head.presets.items() if button.isChecked()] == [preset]

    def test_the_wheel_zooms_about_the_pointer_and_marks_no_preset(self, panel: ScanlinePanel, qtbot) -> None:
        box = panel.plot.colour.box
        box.scaleBy((0.5, 1.0), center=box.mapSceneToView(place_of(panel, 10e-6).toPointF()))

        first, last = seen(panel)
        assert last - first == pytest.approx(400)
        assert panel.preset is None
        assert not any(button.isChecked() for button in panel.head.presets.values())

    def test_keys_zoom_and_bring_the_line_back(self, panel: ScanlinePanel) -> None:
        QTest.keyClick(panel.plot, Qt.Key.Key_Plus)
        near = seen(panel)
        QTest.keyClick(panel.plot, Qt.Key.Key_Minus)
        QTest.keyClick(panel.plot, Qt.Key.Key_Plus)
        QTest.keyClick(panel.plot, Qt.Key.Key_0)

        assert near[1] - near[0] == pytest.approx(400)
        assert seen(panel) == (pytest.approx(0), pytest.approx(800))

    def test_no_zoom_leaves_the_line(self, panel: ScanlinePanel) -> None:
        for _ in range(30):
            panel.zoom(0.5)
        closest = seen(panel)
        for _ in range(30):
            panel.zoom(2.0)

        assert closest[1] - closest[0] == pytest.approx(2.0)
        assert seen(panel) == (pytest.approx(0), pytest.approx(800))

    def test_the_stretch_stays_when_a_value_changes(self, panel: ScanlinePanel, qtbot) -> None:
        panel.choose_preset(Preset.PIXELS)
        before = seen(panel)

        panel.bench.session.apply("R1", lambda p: set_value(p, Channel.RED, PartId("R1"), 470.0))
        panel.bench.live.refresh()

        assert seen(panel) == (pytest.approx(before[0]), pytest.approx(before[1]))

    def test_another_mode_is_shown_whole(self, panel: ScanlinePanel) -> None:
        panel.bench.session.apply("Mode", lambda p: replace(p, mode=find_mode("800x600@60")))
        panel.bench.live.refresh()

        assert seen(panel) == (pytest.approx(0), pytest.approx(1056))

    def test_the_wheel_shows_less_and_more(self, panel: ScanlinePanel) -> None:
        place = place_of(panel, 10e-6)

        turn_wheel(panel, place, 120)
        near = seen(panel)
        turn_wheel(panel, place, -120)

        assert near[1] - near[0] == pytest.approx(800 / 1.25, rel=1e-3)
        under = (10e-6 / panel.plot.shown.count_s - near[0]) / (near[1] - near[0])
        assert under == pytest.approx(10e-6 / panel.plot.shown.span_s, abs=2e-3)
        assert seen(panel) == (pytest.approx(0, abs=0.1), pytest.approx(800, abs=0.1))

    def test_a_drag_beside_the_cursors_moves_the_stretch(self, panel: ScanlinePanel) -> None:
        panel.choose_preset(Preset.BLANKING)
        cursors = panel.looking.cursors
        before = cursors.time_s(Place.HERE)
        start = place_of(panel, 4e-6)

        drag(panel.plot.viewport(), start, start - QPoint(30, 0), start - QPoint(120, 0))

        first, last = seen(panel)
        assert last - first == pytest.approx(320)
        assert first == pytest.approx(120 * 320 / panel.plot.places.colour.width(), rel=0.05)
        assert cursors.time_s(Place.HERE) == before

    def test_a_double_click_brings_the_preset_back(self, panel: ScanlinePanel) -> None:
        panel.choose_preset(Preset.BLANKING)
        panel.zoom(0.25)

        viewport, left = panel.plot.viewport(), Qt.MouseButton.LeftButton
        place = place_of(panel, panel.plot.time.first_s + 0.5e-6)
        QTest.mouseDClick(viewport, left, Qt.KeyboardModifier.NoModifier, place)
        QTest.mouseRelease(viewport, left, Qt.KeyboardModifier.NoModifier, place)

        assert seen(panel) == (pytest.approx(0), pytest.approx(320))
