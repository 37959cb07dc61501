"""What typing into a cell of the table does to the project."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from workbench.circuit.network import GROUND, NodeId, PartId
from workbench.drawing import H_SERIES
from workbench.errors import QuantityError
from workbench.gui.bench import Bench
from workbench.gui.network.table_rows import Column, Row
from workbench.gui.network.table_rows import Standing as RowStanding
from workbench.gui.network.values import Standing, find_value, read_text
from workbench.project.document import Channel, Direction, Project
from workbench.project.edits.connecting import End, PartKind, add_part, move_end, rename_part
from workbench.project.edits.naming import name_sync_pin
from workbench.project.edits.networks import parts_of
from workbench.project.edits.parts import set_rating, set_tolerance
from workbench.units import format_percent, format_quantity, parse_quantity

__all__ = ["TableEdits"]

GROUND_WORDS = ("ground", "gnd", "0 v")
"""What may be typed for the ground node."""


@dataclass(slots=True)
class TableEdits:
    """Turns typed cells into edits of the drawn channel; refusals are raised as they come."""

    bench: Bench

    def type_in(self, row: Row, column: Column, text: str) -> bool:
        """Type into a cell of a part; return whether the project took it."""
        if column is Column.VALUE:
            return self._value(row.part, text)
        if row.standing is RowStanding.SYNC:
            return self._sync_pin(row.part, text)
        edits: dict[Column, Callable[[PartId, str], bool]] = {
            Column.PART: self._name,
            Column.TOLERANCE: self._tolerance,
            Column.RATING: self._rating,
            Column.FROM: partial(self._node, End.A),
            Column.TO: partial(self._node, End.B),
        }
        return edits[column](row.part, text)

    def make(self, draft: dict[Column, str]) -> PartId | None:
        """Put in the part of a full new row; return its name, none if something is still missing."""
        value, a, b = (draft.get(column, "") for column in (Column.VALUE, Column.FROM, Column.TO))
        if not (value and a and b):
            return None
        name = draft.get(Column.PART, "")
        kind = kind_of(name, value)
        number = parse_quantity(value, "F" if kind is PartKind.CAPACITOR else "Ω")
        start, end, channel = _node(a), _node(b), self._channel
        before = self._names()
        self._apply(
            f"Add a {kind.value}, {start} to {end}",
            lambda p: add_part(
                p, channel, kind, start, end, part=PartId(name) if name else None, value=number
            ),
        )
        return next((part for part in self._names() if part not in before), None)

    @property
    def _channel(self) -> Channel:
        return self.bench.view.channel

    def _names(self) -> list[PartId]:
        return [part.id for part in parts_of(self.bench.session.project.channels[self._channel])]

    def _apply(self, label: str, edit: Callable[[Project], Project]) -> bool:
        before = self.bench.session.project
        self.bench.session.apply(label, edit)
        return self.bench.session.project is not before

    def _value(self, part: PartId, text: str) -> bool:
        project = self.bench.session.project
        value = find_value(project, self._channel, part)
        if value is None:
            return False
        reading = read_text(text, value, project)
        if reading.standing is Standing.REFUSED:
            raise QuantityError(reading.sentence)
        kept = self._apply(value.label(reading.value), lambda p: value.put(p, reading.value))
        if reading.sentence:
            self.bench.notice(f"{reading.sentence} Undo takes it back.", warning=True)
        return kept

    def _tolerance(self, part: PartId, text: str) -> bool:
        tolerance = parse_quantity(text.replace("±", ""), "%", zero=True)
        channel = self._channel
        label = f"{part} ± {format_percent(tolerance)}"
        return self._apply(label, lambda p: set_tolerance(p, channel, part, tolerance))

    def _rating(self, part: PartId, text: str) -> bool:
        watts, channel = parse_quantity(text, "W"), self._channel
        label = f"{part} {format_quantity(watts, 'W')}"
        return self._apply(label, lambda p: set_rating(p, channel, part, watts))

    def _node(self, end: End, part: PartId, text: str) -> bool:
        node, channel = _node(text), self._channel
        label = f"Move end {end.value} of {part} to {node}"
        return self._apply(label, lambda p: move_end(p, channel, part, end, node))

    def _name(self, part: PartId, text: str) -> bool:
        channel = self._channel
        if self._apply(f"Rename {part} to {text.strip()}", lambda p: rename_part(p, channel, part, text)):
            self.bench.live.refresh()
            self.bench.view.choose(PartId(text.strip()))
            return True
        return False

    def _sync_pin(self, part: PartId, text: str) -> bool:
        line = Direction.HORIZONTAL if part == H_SERIES else Direction.VERTICAL
        label = f"Rename the {line.value.upper()} sync pin to {text.strip()}"
        return self._apply(label, lambda p: name_sync_pin(p, line, text))


def kind_of(name: str, value: str) -> PartKind:
    """Return what a new row is, by the letter of its name or the unit of its value."""
    capacitor = name.strip().upper().startswith("C") or value.strip().endswith("F")
    return PartKind.CAPACITOR if capacitor else PartKind.RESISTOR


def _node(text: str) -> NodeId:
    tidy = text.strip()
    return GROUND if tidy.lower() in GROUND_WORDS else NodeId(tidy)
