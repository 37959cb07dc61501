"""The card of an open field covers what is least looked at."""

import pytest

from workbench.circuit.network import PartId
from workbench.drawing import LOAD
from workbench.drawing.elements import BlockKind
from workbench.drawing.geometry import Rect
from workbench.gui.network.targets import Kind, Target, box_of


def box(widget) -> Rect:
    geometry = widget.geometry()
    return Rect(geometry.x(), geometry.y(), geometry.width(), geometry.height())


@pytest.mark.parametrize("part", ["R1", "R2", "R3", "R5"])
@pytest.mark.parametrize(("width", "height"), [(540, 560), (800, 860), (1100, 900)])
def test_the_card_leaves_the_field_the_volts_and_the_other_legs_in_sight(
    make_panel, part: str, width: int, height: int
) -> None:
    canvas = make_panel(width=width, height=height).canvas

    canvas.edit(PartId(part))
    canvas.field.setText("510")

    card, drawing = box(canvas.card), canvas.drawing
    volts = box_of(drawing, Target(Kind.NODE, node=drawing.output))
    assert volts is not None
    assert not card.overlaps(volts)
    assert not card.overlaps(box(canvas.field))
    around = {PartId("RH"), PartId("RV"), PartId("C1"), LOAD, PartId(part)}
    legs = [symbol.body for symbol in drawing.symbols if symbol.part not in around]
    assert len(legs) == 4
    assert not any(card.overlaps(leg) for leg in legs)


def test_the_card_stays_where_it_is_while_it_grows(make_panel) -> None:
    canvas = make_panel(width=540, height=560).canvas
    canvas.edit(PartId("R3"))
    before = canvas.card.pos()

    canvas.field.setText("2k2")

    assert canvas.card.height() > 100
    assert canvas.card.pos() == before


@pytest.mark.parametrize("width", [540, 800])
def test_the_field_of_the_load_and_its_frame_lie_inside_the_monitor(make_panel, width: int) -> None:
    canvas = make_panel(width=width).canvas
    monitor, frame = (
        canvas.drawing.block(BlockKind.MONITOR),
        box_of(canvas.drawing, Target(Kind.MONITOR, part=LOAD)),
    )
    assert monitor is not None
    assert frame is not None
    assert frame.grown(5).right <= monitor.right

    canvas.edit(LOAD)

    field = box(canvas.field)
    assert monitor.left <= field.left
    assert field.right <= monitor.right
