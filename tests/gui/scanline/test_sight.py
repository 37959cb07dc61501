"""What is in sight: presets and zooms."""

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from tests.gui.scanline.pointing import place_of, seen
from workbench.circuit.network import PartId
from workbench.gui.scanline import ScanlinePanel
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
