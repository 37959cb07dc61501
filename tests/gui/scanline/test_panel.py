"""The panel as a person uses it."""

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from tests.gui.scanline.pointing import CTRL, click
from workbench.circuit.network import Load, PartId
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.settings import DASHED
from workbench.picture.scene import Card
from workbench.project.document import Channel, Project
from workbench.project.edits.parts import set_value
from workbench.timing.search import find_mode

Make = Callable[..., ScanlinePanel]


class TestScanline:
    def test_typing_a_number_shows_it_and_is_no_change_to_be_saved(self, panel: ScanlinePanel) -> None:
        panel.type_scanline()
        QTest.keyClicks(panel.head.line, "491")
        QTest.keyClick(panel.head.line, Qt.Key.Key_Return)

        assert panel.bench.session.project.scanline == 491
        assert not panel.bench.session.can_undo
        assert not panel.bench.session.dirty

    def test_stepping_is_no_step_to_undo(self, panel: ScanlinePanel, qtbot) -> None:
        session = panel.bench.session
        start = session.project.scanline
        for _ in range(5):
            QTest.keyClick(panel.plot, Qt.Key.Key_PageDown)

        assert session.project.scanline == start + 5
        assert not session.can_undo

    def test_v_sync_is_one_key_away(self, panel: ScanlinePanel, qtbot) -> None:
        QTest.keyClick(panel.plot, Qt.Key.Key_V)

        assert panel.bench.session.project.scanline == 491
        qtbot.waitUntil(lambda: panel.head.line.value() == 491)
        assert panel.plot.shown.sync_volts[1].min() == 0.0

    def test_numbers_go_round_the_frame(self, panel: ScanlinePanel) -> None:
        panel.edits.show_scanline(525)
        panel.edits.step_scanline(1)

        assert panel.bench.session.project.scanline == 1

    def test_a_card_is_chosen_as_an_edit(self, panel: ScanlinePanel) -> None:
        panel.head.card.chosen.emit(list(Card).index(Card.STRIPES))

        assert panel.bench.session.project.picture.card is Card.STRIPES
        assert panel.bench.session.undo_label == "Show card one-pixel stripes"

    @pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)
    def test_a_colour_is_tried_and_taken_back(self, panel: ScanlinePanel, qtbot) -> None:
        panel.choose_card(Card.SOLID)
        before = panel.bench.session.project
        panel.edits.colour_card((1.0, 0.0, 0.0))
        panel.edits.colour_card((0.5, 0.0, 0.0))

        panel.edits.drop()

        assert panel.bench.session.project == before


class TestLook:
    def test_boxes_are_remembered(self, panel: ScanlinePanel) -> None:
        panel.head.dashed.click()

        assert panel.bench.settings.get(DASHED) is False
        assert all(not style.dashes for style in panel.plot.colour.traces.styles)

    def test_the_chosen_channel_lies_true_and_on_top(self, panel: ScanlinePanel) -> None:
        panel.bench.view.choose_channel(Channel.GREEN)

        *_, top = panel.plot.colour.traces.styles
        assert top.color == panel.bench.theme.channel(Channel.GREEN)
        assert top.drop == 0.0

    def test_without_the_fan_all_lie_true(self, panel: ScanlinePanel) -> None:
        panel.head.fanned.click()

        assert [style.drop for style in panel.plot.colour.traces.styles] == [0.0] * 3

    def test_a_part_lights_the_pixels_it_moves(self, panel: ScanlinePanel) -> None:
        panel.bench.view.choose(PartId("R1"))

        assert panel.plot.strip.moved == ((160, 320), (480, 640))

    def test_a_held_code_is_a_level(self, panel: ScanlinePanel) -> None:
        panel.bench.view.hold((Channel.RED,), 22)

        levels = panel.bench.live.result.channels[Channel.RED].levels.volts_by_code
        assert [(held.code, held.volts) for held in panel.plot.held] == [(22, levels[22])]

    def test_the_axis_follows_a_level_out_of_scale(self, make_panel: Make, project: Project) -> None:
        panel = make_panel(replace(project, load=Load(ohms=None)))

        assert panel.plot.top_volts == 3.5
        assert panel.plot.colour.box.viewRange()[1][1] > 3.3

    def test_an_interlaced_mode_is_refused_in_words(self, make_panel: Make, project: Project) -> None:
        panel = make_panel(replace(project, mode=find_mode("1024x768@43i"), scanline=1))

        assert not panel.plot.isVisible()
        assert "interlaced" in panel.refusal.text()


class TestCopy:
    def test_text_and_picture_go_together(self, panel: ScanlinePanel) -> None:
        QTest.keyClick(panel.plot, Qt.Key.Key_C, CTRL)

        data = QGuiApplication.clipboard().mimeData()
        assert data.hasImage()
        assert "front porch\t16\t0.636" in data.text()
        assert "red code\t\t31\t0" in data.text()


class TestOnce:
    def test_an_edit_is_one_fill_of_the_traces(self, panel: ScanlinePanel, monkeypatch) -> None:
        filled = []
        kept = panel.plot.colour.traces.set_samples
        monkeypatch.setattr(
            panel.plot.colour.traces, "set_samples", lambda *args: (filled.append(1), kept(*args))
        )

        for ohms in (480.0, 470.0, 460.0):
            panel.bench.session.apply(
                "R1", lambda p, ohms=ohms: set_value(p, Channel.RED, PartId("R1"), ohms)
            )
        panel.bench.live.refresh()

        assert len(filled) == 1

    def test_showing_the_same_result_again_fills_nothing(self, panel: ScanlinePanel, monkeypatch) -> None:
        result = panel.bench.live.result
        monkeypatch.setattr(panel.plot.colour.traces, "set_samples", None)

        panel.show_result(result.project, result)

    def test_looking_around_edits_and_computes_nothing(self, panel: ScanlinePanel) -> None:
        revision, result = panel.bench.session.revision, panel.bench.live.result

        click(panel, 20e-6)
        panel.choose_preset(Preset.PIXELS)
        panel.zoom(0.5)
        QTest.keyClick(panel.plot, Qt.Key.Key_Right)
        panel.bench.view.choose_channel(Channel.BLUE)

        assert panel.bench.session.revision == revision
        assert panel.bench.live.result is result


class TestAccess:
    def test_everything_with_a_focus_has_a_name(self, panel: ScanlinePanel) -> None:
        focusable = [
            widget
            for widget in panel.findChildren(QWidget)
            if widget.focusPolicy() & Qt.FocusPolicy.TabFocus and widget.isVisible()
        ]
        nameless = [
            type(widget).__name__
            for widget in focusable
            if not (widget.accessibleName() or getattr(widget, "text", str)())
        ]
        assert len(focusable) > 8
        assert not nameless

    def test_commands_have_names_and_keys_of_their_own(self, panel: ScanlinePanel) -> None:
        specs = panel.action_specs()

        keys = [str(spec.shortcut) for spec in specs if spec.shortcut]
        assert len({spec.id for spec in specs}) == len(specs)
        assert len(set(keys)) == len(keys)
        assert {"scanline.line", "scanline.frame", "scanline.v_sync", "scanline.copy"} <= {
            s.id for s in specs
        }
