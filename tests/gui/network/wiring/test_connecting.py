"""Joining on the drawing, by pointer and by keys alone: one step of the history each time."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication

from tests.gui.gestures import drag
from workbench.circuit.network import GROUND, NodeId, PartId
from workbench.drawing.geometry import Point
from workbench.gui.network.targets import Kind, Target
from workbench.gui.network.wiring.connecting import handles
from workbench.project.document import Channel
from workbench.project.edits.channels import unlink
from workbench.project.edits.networks import find_part, parts_of

Key = Qt.Key
OUT = NodeId("out")


def red(panel):
    return panel._bench.session.project.channels.red


def spot(panel, node: str) -> QPoint:
    at = next(spot.at for spot in panel.canvas.drawing.spots if spot.node == node)
    return pixel(at)


def pixel(at: Point) -> QPoint:
    return QPoint(round(at.x), round(at.y))


def wire_of(panel, pin: int) -> QPoint:
    """Return a place on the wire right of a pin's key."""
    return pixel(panel.canvas.drawing.keys[pin].at.moved(14))


def ends(panel, part: str) -> tuple[NodeId, NodeId]:
    found = find_part(red(panel), PartId(part))
    return found.a, found.b


def choose(panel, part: str) -> None:
    panel._bench.view.choose(PartId(part))


class TestDragging:
    def test_a_drag_from_a_pin_to_ground_puts_a_resistor_in_and_opens_its_field(self, panel) -> None:
        drag(panel.canvas, wire_of(panel, 1), QPoint(250, 300), spot(panel, GROUND))

        assert ends(panel, "R6") == ("bit3", GROUND)
        assert panel.canvas.field.isVisible()
        assert panel._bench.view.chosen == "R6"

    def test_the_value_typed_belongs_to_the_same_step(self, qtbot, panel) -> None:
        before = red(panel)
        drag(panel.canvas, wire_of(panel, 1), QPoint(250, 300), spot(panel, GROUND))

        qtbot.keyClicks(panel.canvas.field, "4k7")
        qtbot.keyClick(panel.canvas.field, Key.Key_Return)

        assert find_part(red(panel), PartId("R6")).ohms == 4700.0
        assert panel._bench.session.undo_label == "Add R6 4.7 kΩ"
        panel._bench.session.undo()
        assert red(panel) == before
        assert not panel._bench.session.can_undo

    def test_escape_in_the_field_takes_the_part_back(self, qtbot, panel) -> None:
        before = red(panel)
        drag(panel.canvas, wire_of(panel, 1), QPoint(250, 300), spot(panel, GROUND))

        qtbot.keyClick(panel.canvas.field, Key.Key_Escape)

        assert red(panel) == before
        assert not panel._bench.session.can_undo

    def test_while_it_is_dragged_the_hint_says_what_letting_go_does(self, qtbot, panel) -> None:
        drag(panel.canvas, wire_of(panel, 0), QPoint(250, 300), spot(panel, "out"), release=False)

        lead = panel.canvas.connecting.lead
        assert (lead.start, lead.over) == ("bit4", OUT)
        qtbot.keyClick(panel.canvas, Key.Key_C)
        assert panel.canvas.connecting.lead.kind.value == "capacitor"
        qtbot.keyClick(panel.canvas, Key.Key_Escape)
        assert panel.canvas.connecting.lead is None
        assert not panel._bench.session.can_undo

    def test_let_go_over_nothing_it_gets_a_node_of_its_own(self, qtbot, panel) -> None:
        drag(panel.canvas, spot(panel, "out"), QPoint(250, 400), QPoint(240, panel.canvas.height() - 2))

        assert ends(panel, "R6") == (OUT, "n1")

    def test_back_where_it_began_it_does_nothing(self, panel) -> None:
        at = wire_of(panel, 0)

        drag(panel.canvas, at, at + QPoint(30, 60), at)

        assert not panel._bench.session.can_undo
        assert panel.canvas.connecting.lead is None

    def test_a_pin_can_be_dragged_from_its_key_and_is_not_forced_by_it(self, panel) -> None:
        key = pixel(panel.canvas.drawing.keys[0].box.centre)

        drag(panel.canvas, key, QPoint(250, 300), spot(panel, GROUND))

        assert ends(panel, "R6") == ("bit4", GROUND)
        assert panel._bench.view.held(Channel.RED) is None

    def test_the_end_of_the_chosen_part_is_dragged_to_another_node(self, panel) -> None:
        choose(panel, "R5")
        (_, _), (_, end) = handles(panel.canvas.drawing.symbol(PartId("R5")))

        drag(panel.canvas, pixel(end), QPoint(300, 500), wire_of(panel, 0))

        assert ends(panel, "R5") == ("bit0", "bit4")
        assert panel._bench.session.undo_label == "Move end b of R5 to bit4"
        assert not panel.canvas.field.isVisible()

    def test_parts_that_stand_around_have_no_ends_to_drag(self, panel) -> None:
        choose(panel, "RH")
        symbol = panel.canvas.drawing.symbol(PartId("RH"))

        drag(panel.canvas, pixel(symbol.b), QPoint(300, 500), spot(panel, "out"))

        assert not panel._bench.session.can_undo


class TestKeys:
    def start(self, qtbot, panel, pin: int) -> None:
        panel.canvas.setFocus()
        panel.canvas.go_to(Target(Kind.PIN, pin=pin))
        panel._bench.actions.refresh()
        qtbot.keyClick(panel.canvas, Key.Key_A)

    def test_from_a_pin_to_the_output_by_keys_alone(self, qtbot, panel) -> None:
        self.start(qtbot, panel, 2)
        assert panel.canvas.connecting.lead.start == "bit2"

        qtbot.keyClick(panel.canvas, Key.Key_Right)
        assert panel.canvas.connecting.lead.over == OUT
        qtbot.keyClick(panel.canvas, Key.Key_C)
        qtbot.keyClick(panel.canvas, Key.Key_Return)
        qtbot.keyClicks(panel.canvas.field, "47p")
        qtbot.keyClick(panel.canvas.field, Key.Key_Return)

        added = red(panel).capacitors[-1]
        assert (added.a, added.b, added.farads) == ("bit2", OUT, 47e-12)
        assert panel.canvas.hasFocus()

    def test_tab_visits_every_node_and_g_goes_to_ground(self, qtbot, panel) -> None:
        self.start(qtbot, panel, 0)
        met = set()
        for _ in range(len(panel.canvas.drawing.spots)):
            qtbot.keyClick(panel.canvas, Key.Key_Tab)
            met.add(panel.canvas.connecting.lead.over)

        assert met == {*red(panel).pins, OUT, GROUND}
        qtbot.keyClick(panel.canvas, Key.Key_G)
        assert panel.canvas.connecting.lead.over == GROUND

    def test_n_means_a_new_node(self, qtbot, panel) -> None:
        self.start(qtbot, panel, 0)

        qtbot.keyClick(panel.canvas, Key.Key_N)
        qtbot.keyClick(panel.canvas, Key.Key_Return)

        assert ends(panel, "R6") == ("bit4", "n1")

    def test_e_moves_one_end_and_again_e_the_other(self, qtbot, panel) -> None:
        panel.canvas.setFocus()
        choose(panel, "R1")
        panel._bench.actions.refresh()

        qtbot.keyClick(panel.canvas, Key.Key_E)
        assert panel.canvas.connecting.lead.moved[1].value == "b"
        qtbot.keyClick(panel.canvas, Key.Key_E)
        qtbot.keyClick(panel.canvas, Key.Key_G)
        qtbot.keyClick(panel.canvas, Key.Key_Return)

        assert ends(panel, "R1") == (GROUND, OUT)

    def test_escape_leaves(self, qtbot, panel) -> None:
        self.start(qtbot, panel, 0)

        qtbot.keyClick(panel.canvas, Key.Key_Escape)

        assert panel.canvas.connecting.lead is None
        assert not panel._bench.session.can_undo


def test_a_lead_is_painted_over_the_drawing(qtbot, panel) -> None:
    before = panel.canvas.grab().toImage()
    panel.canvas.connecting.begin(OUT)
    panel.canvas.connecting.key(Key.Key_G)

    assert panel.canvas.grab().toImage() != before


def test_the_clipboard_carries_parts_from_channel_to_channel(qtbot, make_panel, project) -> None:
    panel = make_panel(unlink(project))
    panel.canvas.setFocus()
    choose(panel, "R1")
    panel._bench.actions.refresh()
    qtbot.keyClick(panel.canvas, Key.Key_C, Qt.KeyboardModifier.ControlModifier)
    assert QGuiApplication.clipboard().text().startswith("R1\t500 Ω\t± 1 %\tbit4\tout")

    panel._bench.view.choose_channel(Channel.GREEN)
    qtbot.keyClick(panel.canvas, Key.Key_V, Qt.KeyboardModifier.ControlModifier)

    project = panel._bench.session.project
    assert len(project.channels.green.resistors) == 6
    assert len(project.channels.red.resistors) == 5
    assert panel._bench.session.undo_label == "Paste R1"


def test_a_leg_is_copied_and_pasted_as_one_more_bit(panel) -> None:
    panel.canvas.go_to(Target(Kind.PIN, pin=0))
    run(panel, "copy-leg")
    run(panel, "paste")

    assert red(panel).bits == 6
    assert red(panel).resistors[-1].ohms == 500.0


def test_a_leg_is_removed_with_its_pin(panel) -> None:
    choose(panel, "R2")
    run(panel, "remove-leg")

    assert [part.id for part in red(panel).resistors] == ["R1", "R3", "R4", "R5"]
    assert panel._bench.session.undo_label == "Remove the leg of P1"


def test_pasting_other_text_says_so_and_changes_nothing(panel) -> None:
    said = []
    panel._bench.noticed.connect(said.append)
    for text in ("good morning", '{"format": "backporch-parts", "version": 1, "resistors": ['):
        QGuiApplication.clipboard().setText(text)
        run(panel, "paste")

    assert [notice.warning for notice in said] == [True, True]
    assert not panel._bench.session.can_undo


def test_in_series_in_parallel_and_to_ground_by_command(qtbot, panel) -> None:
    choose(panel, "R1")
    run(panel, "series-resistor")
    assert ends(panel, "R6") == ("n1", OUT)
    qtbot.keyClick(panel.canvas.field, Key.Key_Return)

    run(panel, "parallel-capacitor")
    assert set(ends(panel, "C2")) == {"n1", OUT}
    qtbot.keyClick(panel.canvas.field, Key.Key_Return)

    panel.canvas.go_to(Target(Kind.NODE, node=OUT))
    run(panel, "resistor-to-ground")
    assert ends(panel, "R7") == (OUT, GROUND)


def test_a_part_is_duplicated_and_cut(panel) -> None:
    choose(panel, "R3")
    run(panel, "duplicate")
    assert ends(panel, "R6") == ends(panel, "R3")

    run(panel, "cut")
    assert "R6" not in {part.id for part in parts_of(red(panel))}


def run(panel, verb: str) -> None:
    panel._bench.actions.refresh()
    panel._bench.actions.action(f"network.{verb}").trigger()
    panel._bench.live.refresh()


class TestNames:
    def test_a_click_on_a_name_renames_the_pin_in_place(self, qtbot, panel) -> None:
        key = panel.canvas.drawing.keys[1]
        qtbot.mouseClick(panel.canvas, Qt.MouseButton.LeftButton, pos=pixel(Point(36, key.at.y)))

        field = panel.canvas.naming.field
        assert field.text() == "P1"
        field.setText("PA4")
        qtbot.keyClick(field, Key.Key_Return)

        assert panel._bench.session.project.wiring.red[1] == "PA4"
        assert panel._bench.session.undo_label == "Rename P1 to PA4"
        assert not field.isVisible()

    def test_a_name_in_use_is_refused_and_stays_open(self, qtbot, panel) -> None:
        panel.canvas.setFocus()
        panel.canvas.go_to(Target(Kind.PIN, pin=1))
        qtbot.keyClick(panel.canvas, Key.Key_F2)
        field = panel.canvas.naming.field
        field.setText("P0")

        qtbot.keyClick(field, Key.Key_Return)

        assert field.isVisible()
        assert field.property("state") == "fails"
        assert "drives another line already" in field.toolTip()
        qtbot.keyClick(field, Key.Key_Escape)
        assert not panel._bench.session.can_undo

    def test_a_sync_pin_and_a_node_have_names_too(self, qtbot, panel) -> None:
        field = panel.canvas.naming.field
        panel.canvas.rename(Target(Kind.NAME, part=PartId("RH")))
        field.setText("HS")
        qtbot.keyClick(field, Key.Key_Return)
        panel._bench.live.refresh()
        panel.canvas.rename(Target(Kind.NODE, node=OUT))
        field.setText("sum")
        qtbot.keyClick(field, Key.Key_Return)

        assert panel._bench.session.project.wiring.h == "HS"
        assert red(panel).output == "sum"
