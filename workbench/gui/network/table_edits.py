"""What typing into a cell of the table does to the project."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from workbench.circuit.network import GROUND, NodeId, PartId
from workbench.drawing import H_SERIES
from workbench.errors import EditError, QuantityError
from workbench.gui.bench import Bench
from workbench.gui.network.table_rows import Column, Row
from workbench.gui.network.table_rows import Standing as RowStanding
from workbench.gui.network.values import Standing, find_value, read_text
from workbench.project.document import Channel, Direction, Project
from workbench.project.edits.connecting import End, PartKind, add_part, move_end, rename_part
from workbench.project.edits.naming import name_sync_pin
from workbench.project.edits.networks import parts_of
from workbench.project.edits.parts import set_rating, set_tolerance
from workbench.project.limits import FARADS, OHMS, check_name
from workbench.units import format_percent, format_quantity, parse_quantity

__all__ = ["TableEdits"]

SMALL = re.compile(r"F\s*$|\d\s*[pnuµμ]\d*\s*$")
"""What only a capacitance ends with: farads, or a prefix that no resistance has."""
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
        """Put in the part of a full new row; return its name, none if something is still missing.

        Raises
        ------
        WorkbenchError
            If a cell can be no value or no name, whether or not the row is full.
        """
        name, value = draft.get(Column.PART, ""), draft.get(Column.VALUE, "")
        kind = kind_of(name, value)
        number = _new_value(kind, value) if value else None
        before = self._names()
        if name in before:
            raise EditError(f"there is a part {name} already: choose another name")
        ends = [_node(draft[column]) for column in (Column.FROM, Column.TO) if draft.get(column)]
        if number is None or len(ends) < len(End):
            return None
        (start, end), channel = ends, self._channel
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
    """Return what a new row is: by the letter of its name, else by the unit or prefix of its value.

    Nobody puts in picoohms, so a value in p, n or µ without a unit is a capacitance.
    """
    letter = name.strip()[:1].upper()
    small = letter != PartKind.RESISTOR.letter and SMALL.search(value) is not None
    capacitor = letter == PartKind.CAPACITOR.letter or small
    return PartKind.CAPACITOR if capacitor else PartKind.RESISTOR


def _new_value(kind: PartKind, text: str) -> float:
    """Return the value of a part that is made, or raise an error that says what it cannot be."""
    if kind is PartKind.CAPACITOR:
        return FARADS.check(parse_quantity(text, "F"), "a new capacitor")
    return OHMS.check(parse_quantity(text, "Ω"), "a new resistor")


def _node(text: str) -> NodeId:
    tidy = text.strip()
    return GROUND if tidy.lower() in GROUND_WORDS else NodeId(check_name(tidy, "the node's name"))
