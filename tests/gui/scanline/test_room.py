"""What folds when there is less room."""

import itertools
from collections.abc import Callable

import pytest
from PySide6.QtWidgets import QWidget

from workbench.gui.scanline import ScanlinePanel
from workbench.gui.scanline.content.presets import Preset

Make = Callable[..., ScanlinePanel]


class TestRoom:
    def test_a_wide_panel_reads_on_cards(self, panel: ScanlinePanel) -> None:
        assert panel.plot.readout_card.box.width() > 100
        assert panel.plot.edge_card.box.height() > 100
        assert not panel.readout.isVisible()
        blanking = panel.plot.time.x(panel.bench.session.project.mode.h.blanking / 25_175_000)
        assert panel.plot.readout_card.box.right() < blanking

    def test_a_narrow_one_in_a_line_over_the_strip(self, make_panel: Make) -> None:
        panel = make_panel(size=(740, 680))

        assert panel.readout.isVisible()
        assert panel.plot.readout_card.box.isEmpty()
        assert panel.readout.geometry().bottom() <= panel.plot.y() + panel.plot.places.strip.top()
        assert panel.head.view_menu.isVisible()
        assert not panel.head.fanned.isVisible()

    @pytest.mark.parametrize("width", [420, 560, 740, 900, 1120, 1900])
    def test_the_head_never_needs_more_than_there_is(self, make_panel: Make, width: int) -> None:
        panel = make_panel(size=(width, 600))

        shown = [w for w in panel.head.findChildren(QWidget) if w.isVisible() and w.parent() is panel.head]
        assert max(widget.geometry().right() for widget in shown) <= width
        ordered = sorted(shown, key=lambda widget: widget.x())
        for left, right in itertools.pairwise(ordered):
            assert left.geometry().right() <= right.x()

    def test_what_has_no_room_is_in_the_view_menu(self, make_panel: Make) -> None:
        panel = make_panel(size=(740, 680))
        menu = panel.head.view_menu.menu()

        words = [action.text() for action in menu.actions()]
        assert {"fanned", "ideal", "dashes"} <= set(words)

    def test_a_low_panel_leaves_the_differences_out(self, make_panel: Make) -> None:
        panel = make_panel(size=(1120, 540))

        card = panel.plot.readout_card
        assert not card.form.differences
        assert card.box.bottom() < panel.plot.places.colour.bottom()
        assert panel.plot.edge_card.box.isEmpty()

    def test_on_a_low_narrow_panel_the_readout_stands_for_the_names(self, make_panel: Make) -> None:
        panel = make_panel(size=(740, 370))

        assert panel.readout.isVisible()
        assert panel.readout.y() == panel.plot.y() + panel.plot.places.names.top()

    def test_words_on_a_frame_are_not_written_over_each_other(self, make_panel: Make) -> None:
        panel = make_panel(size=(740, 370))

        panel.choose_preset(Preset.FRAME)

        assert panel.readout.isVisible()
        assert panel.readout.y() == panel.plot.y() + panel.plot.places.names.top()
        assert not panel.plot.strip.named

    def test_zooming_moves_the_readout_and_no_lane(self, make_panel: Make) -> None:
        panel = make_panel()
        lane = panel.plot.places.colour

        panel.zoom(0.5)

        assert panel.readout.isVisible()
        assert panel.readout.y() > panel.ruler.y()
        assert panel.plot.places.colour == lane

    def test_a_very_low_panel_leaves_out_the_words_under_the_ruler(self, make_panel: Make) -> None:
        panel = make_panel(size=(555, 210))

        lane = panel.plot.places.colour
        assert lane.height() >= 30
        assert panel.plot.height() >= 110
        assert all(knob.toolTip() for knob in panel.ruler.knobs)
