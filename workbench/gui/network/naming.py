"""Names typed where they stand: of the controller's pins, and of nodes."""

from PySide6.QtWidgets import QWidget

from workbench.circuit.codes import pin_label
from workbench.circuit.network import GROUND
from workbench.drawing import H_SERIES, V_SERIES, Drawing
from workbench.drawing.geometry import Point, Rect
from workbench.gui.bench import Bench
from workbench.gui.network.name_field import NameField
from workbench.gui.network.targets import Kind, Target, box_of, name_box
from workbench.project.document import Direction
from workbench.project.edits.connecting import rename_node
from workbench.project.edits.naming import name_pin, name_sync_pin

__all__ = ["Naming", "can_rename"]

LINES = {H_SERIES: Direction.HORIZONTAL, V_SERIES: Direction.VERTICAL}


def can_rename(target: Target | None) -> bool:
    """Return whether a target has a name that can be typed over."""
    if target is None or target.node == GROUND:
        return False
    return target.kind in (Kind.PIN, Kind.NAME, Kind.NODE) or target.part in LINES


class Naming:
    """Opens the field for the name of a target, and keeps what is typed."""

    def __init__(self, bench: Bench, canvas: QWidget) -> None:
        self._bench = bench
        self.field = NameField(bench, canvas)

    def open(self, target: Target | None, drawing: Drawing) -> bool:
        """Start typing over the name of a target; return whether it has one here."""
        if target is None or not can_rename(target):
            return False
        if target.kind is Kind.NODE:
            return self._open_node(target, drawing)
        box = name_box(drawing, target)
        if box is None:
            return False
        if target.pin is not None:
            self._open_pin(target.pin, box)
        elif target.part is not None:
            self._open_sync(LINES[target.part], box)
        return True

    def _open_node(self, target: Target, drawing: Drawing) -> bool:
        box, node, channel = box_of(drawing, target), target.node, self._bench.view.channel
        if box is None or node is None:
            return False
        height = 24 * drawing.unit
        place = Rect.around(Point(box.centre.x, box.top + height / 2), 90 * drawing.unit, height)
        self.field.open(
            f"the node {node}", node, place, lambda project, name: rename_node(project, channel, node, name)
        )
        return True

    def _open_pin(self, pin: int, box: Rect) -> None:
        project, channel = self._bench.session.project, self._bench.view.channel
        carried = " ".join(map(str, pin_label(project.channels[channel], pin)))
        self.field.open(
            f"the pin of {carried}",
            project.wiring[channel][pin],
            box,
            lambda project, new: name_pin(project, channel, pin, new),
        )

    def _open_sync(self, line: Direction, box: Rect) -> None:
        wiring = self._bench.session.project.wiring
        name = wiring.h if line is Direction.HORIZONTAL else wiring.v
        self.field.open(
            f"the {line.value.upper()} sync pin",
            name,
            box,
            lambda project, new: name_sync_pin(project, line, new),
        )
