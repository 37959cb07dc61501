"""What is said while a part is put in: whole, in sight, and on no figure."""

import pytest
from PySide6.QtCore import QPoint, Qt

from workbench.circuit.network import PartId
from workbench.drawing.geometry import Point
from workbench.gui.network.wiring.lead import Lead
from workbench.gui.network.wiring.paint_lead import hint_box
from workbench.project.edits.connecting import End


@pytest.mark.parametrize("width", [440, 540, 600, 800])
@pytest.mark.parametrize("by_keys", [True, False])
def test_the_card_of_a_lead_is_never_cut_by_the_pane(make_panel, width: int, by_keys: bool) -> None:
    canvas = make_panel(width=width, height=600).canvas
    canvas.set_zoom(1.5)
    seen, inks = canvas._seen_of_it(), canvas._inks_at(1.0)
    whole = seen.grown(0.5)
    for spot in canvas.drawing.spots:
        for moved in (None, (PartId("R3"), End.B)):
            lead = Lead(spot.node, spot.at, spot.at, spot.node, moved=moved)
            box, lines = hint_box(lead, inks, seen, by_keys=by_keys)
            if seen.contains(spot.at):
                assert whole.contains(Point(box.left, box.top))
                assert whole.contains(Point(box.right, box.bottom))
            assert "Esc" in lines[-1]


def test_the_pane_follows_a_lead_that_is_led_by_keys(qtbot, make_panel) -> None:
    panel = make_panel(width=600, height=460)
    canvas = panel.canvas
    canvas.set_zoom(1.6)
    panel.zooming.give_room()
    canvas.setFocus()
    canvas.connect_from_here()

    for _ in range(len(canvas.drawing.spots)):
        qtbot.keyClick(canvas, Qt.Key.Key_Tab)
        tip = canvas.connecting.lead.tip
        assert canvas.visibleRegion().contains(QPoint(round(tip.x), round(tip.y)))
