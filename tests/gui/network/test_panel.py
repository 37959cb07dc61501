import gc
import weakref

import pytest
import shiboken6
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMenu

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Network, NodeId, PartId
from workbench.gui.network.menus import fill_menu
from workbench.gui.network.panel import NetworkPanel
from workbench.gui.network.table_model import COLUMNS
from workbench.gui.network.table_rows import Column
from workbench.gui.network.targets import Kind, Target
from workbench.project.document import Channel
from workbench.project.edits.channels import unlink
from workbench.project.edits.networks import put_networks

Key = Qt.Key
CONTROL = Qt.KeyboardModifier.ControlModifier


def red(panel) -> Network:
    return panel._bench.session.project.channels.red


def run(panel, verb: str) -> None:
    panel._bench.actions.refresh()
    panel._bench.actions.action(f"network.{verb}").trigger()
    panel._bench.live.refresh()


def choose(panel, part: str) -> None:
    panel._bench.view.choose(PartId(part))


class TestCommands:
    def test_a_bit_comes_and_goes(self, panel) -> None:
        run(panel, "add-bit")
        assert red(panel).bits == 6
        assert len(panel.canvas.drawing.keys) == 6

        run(panel, "remove-bit")
        assert red(panel).bits == 5

    def test_a_resistor_is_split_and_merged_again(self, panel) -> None:
        before = red(panel)
        choose(panel, "R4")

        run(panel, "split-series")
        assert len(panel.canvas.drawing.braces) == 1
        assert panel._bench.view.chosen == PartId("R4a")
        run(panel, "merge")
        assert red(panel) == before

    def test_a_resistor_is_split_in_parallel(self, panel) -> None:
        choose(panel, "R2")

        run(panel, "split-parallel")

        assert [r.ohms for r in red(panel).resistors if r.a == NodeId("bit3")] == [2e3, 2e3]

    @pytest.mark.parametrize(("verb", "part"), [("shunt", "RS"), ("series", "RO")])
    def test_parts_around_the_node_are_put_in_and_taken_away(self, panel, verb: str, part: str) -> None:
        before = red(panel)

        run(panel, verb)
        assert panel.canvas.drawing.symbol(PartId(part)) is not None
        assert panel._bench.session.undo_label.startswith("Add a ")
        run(panel, verb)

        assert red(panel) == before
        assert panel._bench.session.undo_label.startswith("Remove the ")

    def test_the_node_capacitor_of_the_demo_is_taken_away_and_put_in(self, panel) -> None:
        run(panel, "capacitor")
        assert red(panel).capacitors == ()

        run(panel, "capacitor")
        assert [c.farads for c in red(panel).capacitors] == [30e-12]

    def test_the_row_of_tools_says_what_is_fitted_and_what_it_would_do(self, panel) -> None:
        words = [button.text() for button in panel.tools.ladder]
        assert words == ["add bit", "remove bit", "○ add shunt", "○ add output R", "● remove C1"]

        run(panel, "capacitor")
        run(panel, "shunt")

        panel._bench.actions.refresh()
        assert [button.text() for button in panel.tools.ladder[2:]] == [
            "● remove RS",
            "○ add output R",
            "○ add capacitor",
        ]

    def test_a_part_is_removed_and_undo_brings_it_back(self, panel) -> None:
        choose(panel, "R5")

        run(panel, "remove-part")
        assert len(red(panel).resistors) == 4
        assert panel._bench.view.chosen is None
        assert panel._bench.session.undo_label == "Remove R5"
        panel._bench.session.undo()

        assert len(red(panel).resistors) == 5

    def test_what_makes_no_sense_now_is_not_offered(self, panel) -> None:
        action = panel._bench.actions.action
        panel._bench.actions.refresh()
        assert not action("network.split-series").isEnabled()
        assert not action("network.release").isEnabled()

        choose(panel, "C1")
        assert not action("network.split-series").isEnabled()
        assert action("network.remove-part").isEnabled()
        choose(panel, "R1")
        assert action("network.split-series").isEnabled()
        assert not action("network.merge").isEnabled()

    def test_keys_choose_the_drawn_channel(self, qtbot, panel) -> None:
        panel.canvas.setFocus()

        qtbot.keyClick(panel.canvas, Key.Key_3, CONTROL)

        assert panel._bench.view.channel is Channel.BLUE
        assert panel.head.chips[Channel.BLUE].isChecked()

    def test_the_channels_part_and_are_linked_again(self, panel) -> None:
        run(panel, "link")
        assert not panel._bench.session.project.linked
        assert panel.cards.isVisible()

        run(panel, "link")
        assert panel._bench.session.project.linked
        assert not panel.cards.isVisible()

    def test_the_drawing_goes_to_the_clipboard_as_picture_and_text(self, panel) -> None:
        run(panel, "copy-picture")

        data = QGuiApplication.clipboard().mimeData()
        assert data.hasImage()
        assert "R1\t500 Ω" in data.text()


class TestTable:
    def test_the_table_takes_the_place_of_the_drawing_and_gives_it_back(self, panel) -> None:
        run(panel, "table")
        assert panel.table.isVisible()
        assert not panel.canvas.isVisible()

        run(panel, "table")
        assert panel.canvas.isVisible()

    def test_it_stays_in_step_with_the_drawing(self, panel) -> None:
        run(panel, "table")
        model = panel.table.parts
        run(panel, "add-bit")

        drawn = {symbol.part for symbol in panel.canvas.drawing.symbols}
        assert {part for row in range(model.rowCount()) if (part := model.part(row))} == drawn

    def test_a_value_typed_there_is_drawn_here(self, panel) -> None:
        run(panel, "table")
        model = panel.table.parts
        row = model.row_of(PartId("R1"))

        assert model.setData(model.index(row, 1), "470")
        panel._bench.live.refresh()

        symbol = panel.canvas.drawing.symbol(PartId("R1"))
        assert symbol.value.text == "470 Ω"
        assert model.data(model.index(row, 1)) == "470 Ω"

    def test_tolerance_and_rating_are_typed_there_too(self, panel) -> None:
        run(panel, "table")
        model = panel.table.parts
        row = model.row_of(PartId("R2"))

        model.setData(model.index(row, COLUMNS.index(Column.TOLERANCE)), "± 5 %")
        model.setData(model.index(row, COLUMNS.index(Column.RATING)), "125m")
        resistor = red(panel).resistors[1]

        assert (resistor.tolerance, resistor.rating_watts) == (0.05, 0.125)

    def test_what_is_refused_is_said_and_changes_nothing(self, panel) -> None:
        run(panel, "table")
        said = []
        panel._bench.noticed.connect(said.append)
        model = panel.table.parts

        assert not model.setData(model.index(0, 1), "4k7k")

        assert "4k7" in said[0].text
        assert red(panel).resistors[0].ohms == 500.0

    def test_the_chosen_part_is_the_current_row_and_the_other_way_round(self, panel) -> None:
        run(panel, "table")
        choose(panel, "R3")
        assert panel.table.currentIndex().row() == panel.table.parts.row_of(PartId("R3"))

        panel.table.selectRow(0)
        assert panel._bench.view.chosen == PartId("R1")

    def test_the_model_is_sound(self, panel, qtmodeltester) -> None:
        qtmodeltester.check(panel.table.parts)

    def test_capacitors_and_the_board_have_no_tolerance_to_type(self, panel) -> None:
        model = panel.table.parts
        for part in ("C1", "RH", "load"):
            index = model.index(model.row_of(PartId(part)), COLUMNS.index(Column.TOLERANCE))
            assert not model.flags(index) & Qt.ItemFlag.ItemIsEditable


class TestRoom:
    @pytest.mark.parametrize("width", [540, 800, 1000])
    def test_the_drawing_fills_the_width_without_scrolling(self, qtbot, make_panel, width: int) -> None:
        panel = make_panel(width=width)

        qtbot.waitUntil(lambda: not panel.scroller.horizontalScrollBar().isVisible())
        assert panel.canvas.width() == width

    def test_a_low_panel_leaves_out_buttons_and_figures_but_not_what_they_do(self, make_panel) -> None:
        low = make_panel(height=560)

        assert not low.figures.isVisible()
        assert not low.tools.isVisible()
        assert low.head.change.isVisible()

    def test_eight_bits_fit_the_window_at_1280_by_800(self, qtbot, make_panel, project) -> None:
        network = weighted(8, [500.0 * 2**i for i in range(8)])
        wide = put_networks(unlink(project), dict.fromkeys(Channel, network))

        panel = make_panel(wide, 540, 676)

        qtbot.waitUntil(lambda: not panel.scroller.verticalScrollBar().isVisible())
        assert panel.cards.isVisible()
        assert panel.canvas.drawing.pitch >= 52

    def test_what_does_not_fit_scrolls_by_rows_and_the_keys_stay_in_sight(
        self, qtbot, make_panel, project
    ) -> None:
        network = weighted(8, [500.0 * 2**i for i in range(8)])
        panel = make_panel(put_networks(project, dict.fromkeys(Channel, network)), 540, 360)
        bar = panel.scroller.verticalScrollBar()
        assert bar.isVisible()
        assert bar.singleStep() == round(panel.canvas.drawing.pitch)

        choose(panel, "R8")

        box = panel.canvas.drawing.symbol(PartId("R8")).body
        assert bar.value() <= box.top
        assert box.bottom <= bar.value() + panel.scroller.viewport().height()

    def test_a_projector_gets_keys_boxes_and_volts(self, make_panel) -> None:
        panel = make_panel(width=664, height=900)

        panel._bench.project_large(on=True)

        assert panel.canvas.drawing.blocks == ()
        assert not panel.tools.isVisible()


class TestMenu:
    def menu(self, panel, target: Target | None) -> list[str]:
        menu = QMenu()
        fill_menu(menu, panel._bench.actions, target, panel.canvas, panel.pins, panel._bench.live.result)
        return [action.text() for action in menu.actions() if action.text()]

    def test_a_pin_can_be_forced(self, panel) -> None:
        texts = self.menu(panel, Target(Kind.PIN, pin=0))

        assert texts[:3] == ["Force to 1", "Force to 0", "Let it float"]
        assert "Add a bit" in texts

    def test_a_part_can_be_edited_split_and_removed(self, panel) -> None:
        choose(panel, "R1")

        texts = self.menu(panel, Target(Kind.PART, part=PartId("R1")))

        assert texts[0] == "Edit the chosen value"
        assert {"Split in series", "Split in parallel", "Remove R1", "Copy the network as text"} <= set(texts)


def test_a_broken_network_is_drawn_and_says_nothing_false(make_panel, project) -> None:
    broken = put_networks(project, dict.fromkeys(Channel, Network((), ())))

    panel = make_panel(broken)

    assert not panel.canvas.shown.solved
    assert panel.canvas.shown.loaded_volts == 0.0


def test_a_closed_panel_is_gone(make_bench, qtbot) -> None:
    bench = make_bench()
    panel = NetworkPanel(bench)
    gone = weakref.ref(panel)

    panel.deleteLater()
    del panel
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    bench.deleteLater()
    del bench
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()

    assert gone() is None or not shiboken6.isValid(gone())
