"""No word of the row under the drawing is cut; what has no room says less."""

import pytest
from PySide6.QtCore import QCoreApplication

from workbench.circuit.network import PartId


def do(panel, verb: str) -> None:
    panel._bench.actions.action(f"network.{verb}").trigger()
    panel._bench.live.refresh()


@pytest.mark.parametrize("width", [460, 540, 600, 640, 720, 800])
@pytest.mark.parametrize("fitted", [(), ("shunt", "series", "capacitor"), ("capacitor",)])
@pytest.mark.parametrize("chosen", [None, "R3"])
@pytest.mark.parametrize("table", [False, True])
def test_every_word_is_whole(make_panel, width: int, fitted, chosen, table: bool) -> None:
    panel = make_panel(width=width)
    for verb in fitted:
        do(panel, verb)
    if table:
        do(panel, "table")
    panel._bench.view.choose(PartId(chosen) if chosen else None)
    QCoreApplication.processEvents()

    row = panel.tools
    shown = [*row.ladder, *row.part, row.table]
    for button in (button for button in shown if button.isVisible()):
        assert button.width() >= button.sizeHint().width(), button.text()
        assert row.rect().contains(button.geometry()), button.text()


def test_two_halves_of_a_shunt_leave_room_for_the_others(make_panel) -> None:
    panel = make_panel(width=600)
    do(panel, "shunt")
    panel._bench.view.choose(PartId("RS"))
    do(panel, "split-parallel")
    panel._bench.view.choose(None)
    QCoreApplication.processEvents()

    words = [button.text() for button in panel.tools.ladder]
    assert words[2] == "● shunt"
    assert "RSa and RSb" in panel.tools.ladder[2].toolTip()
