"""Names are typed over, the keys stay where they were, and it is seen where a part to ground begins."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from workbench.circuit.network import GROUND, PartId
from workbench.gui.network.targets import Kind, Target
from workbench.gui.network.wiring.connecting import handles
from workbench.project.edits.connecting import End

Key = Qt.Key
SHIFT = Qt.KeyboardModifier.ShiftModifier


def red(panel):
    return panel._bench.session.project.channels.red


def rename(qtbot, panel, name: str, *, keep: bool = True) -> None:
    canvas = panel.canvas
    qtbot.keyClick(canvas, Key.Key_F2)
    qtbot.keyClicks(QApplication.focusWidget(), name)
    qtbot.keyClick(QApplication.focusWidget(), Key.Key_Return if keep else Key.Key_Escape)
    QApplication.processEvents()
    panel._bench.live.refresh()


@pytest.mark.parametrize("keep", [True, False], ids=["Enter", "Esc"])
def test_a_pin_s_name_is_typed_over_and_the_keys_stay_on_the_pin(qtbot, panel, keep: bool) -> None:
    canvas, pin = panel.canvas, Target(Kind.PIN, pin=4)
    canvas.setFocus()
    canvas.go_to(pin)
    before = panel._bench.session.project.wiring.red[4]

    rename(qtbot, panel, "mid", keep=keep)

    assert panel._bench.session.project.wiring.red[4] == ("mid" if keep else before)
    assert canvas.hasFocus()
    assert canvas.target == pin
    assert panel._bench.view.chosen is None


def test_after_a_pin_was_named_a_capacitor_goes_to_that_pin(qtbot, panel) -> None:
    canvas = panel.canvas
    canvas.setFocus()
    canvas.go_to(Target(Kind.PIN, pin=4))
    rename(qtbot, panel, "mid")

    qtbot.keyClick(canvas, Key.Key_C, SHIFT)

    added = red(panel).capacitors[-1]
    assert {added.a, added.b} == {red(panel).pins[4], GROUND}


def test_the_end_that_counts_as_here_is_named_and_marked(qtbot, panel) -> None:
    canvas, actions = panel.canvas, panel._bench.actions
    canvas.setFocus()
    panel._bench.view.choose(PartId("R3"))
    actions.refresh()

    assert canvas.node_here() == "out", "the end that leads on, and not the pin's"
    assert actions.action("network.capacitor-to-ground").text() == "Capacitor from out to ground"
    ends = dict(handles(canvas.drawing.symbol(PartId("R3"))))
    picture = canvas.grab().toImage()
    filled = {end: picture.pixelColor(round(at.x), round(at.y)) for end, at in ends.items()}
    accent = panel._bench.theme.color("accent")
    assert filled[End.B] == accent
    assert filled[End.A] != accent

    qtbot.keyClick(canvas, Key.Key_G, SHIFT)
    assert {red(panel).resistors[-1].a, red(panel).resistors[-1].b} == {"out", GROUND}
