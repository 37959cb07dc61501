"""Over an open field stands what was there before; over that of a new part nothing does."""

from dataclasses import dataclass, field

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtGui import QPainter, QPixmap

from tests.gui.gestures import drag
from workbench.circuit.network import GROUND, PartId
from workbench.gui.network.inks import Inks
from workbench.gui.network.paint_parts import paint_parts


@dataclass(slots=True)
class HeardInks(Inks):
    """Inks that remember what was written with them."""

    written: list[str] = field(default_factory=list)

    def text(self, painter, text, *rest, **more) -> float:
        self.written.append(text)
        return Inks.text(self, painter, text, *rest, **more)


@pytest.fixture
def written(panel):
    """Return what is written beside the parts now."""

    def look() -> list[str]:
        canvas, bench = panel.canvas, panel._bench
        inks = HeardInks(bench.theme, bench.type, bench.type.base_px / 14.0)
        sheet = QPixmap(canvas.size())
        with QPainter(sheet) as painter:
            paint_parts(painter, canvas.drawing, canvas.scene(), inks)
        return inks.written

    return look


def test_the_value_that_stood_there_is_said(panel, written) -> None:
    panel.canvas.edit(PartId("R1"))

    assert "was 500 Ω" in written()


def test_where_none_stood_none_is_said(qtbot, panel, written) -> None:
    drawing = panel.canvas.drawing
    ground = next(spot.at for spot in drawing.spots if spot.node == GROUND)
    pin = drawing.keys[1].at.moved(14)

    drag(
        panel.canvas,
        QPoint(round(pin.x), round(pin.y)),
        QPoint(250, 300),
        QPoint(round(ground.x), round(ground.y)),
    )

    assert panel.canvas.field.isVisible()
    assert not [text for text in written() if text.startswith("was")]


def test_later_it_is_a_value_like_any_other(qtbot, panel, written) -> None:
    test_where_none_stood_none_is_said(qtbot, panel, written)
    qtbot.keyClicks(panel.canvas.field, "4k7\r")

    panel.canvas.edit(PartId("R6"))

    assert "was 4.7 kΩ" in written()
