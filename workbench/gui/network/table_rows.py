"""The parts of a channel as rows of text: for the table twin, and for the clipboard."""

from dataclasses import dataclass
from enum import Enum

from workbench.circuit.network import PartId, Resistor
from workbench.drawing import H_SERIES, LOAD, V_SERIES
from workbench.gui.network.values import find_value
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import parts_of
from workbench.units import format_percent, format_quantity

__all__ = ["HEADINGS", "Column", "Row", "Standing", "as_text", "table_rows"]


class Column(Enum):
    """A column of the table; the value is its heading. What makes a part stands side by side."""

    PART = "part"
    VALUE = "value"
    FROM = "from"
    TO = "to"
    TOLERANCE = "tolerance"
    RATING = "rating"


HEADINGS = tuple(column.value for column in Column)


class Standing(Enum):
    """What a row is, and so which of its cells can be typed into."""

    RESISTOR = "resistor"
    CAPACITOR = "capacitor"
    SYNC = "sync"
    LOAD = "load"
    NEW = "new"
    """The last row, in which a part is made by typing it."""

    @property
    def typed(self) -> frozenset[Column]:
        """Return the columns that can be typed into."""
        return _TYPED[self]


_WIRED = frozenset({Column.PART, Column.VALUE, Column.FROM, Column.TO})
_TYPED = {
    Standing.RESISTOR: frozenset(Column),
    Standing.CAPACITOR: _WIRED,
    Standing.SYNC: frozenset({Column.VALUE, Column.FROM}),
    Standing.LOAD: frozenset({Column.VALUE}),
    Standing.NEW: _WIRED,
}


@dataclass(frozen=True, slots=True)
class Row:
    """One part as it stands in the table."""

    part: PartId
    texts: tuple[str, str, str, str, str, str]
    standing: Standing


def table_rows(project: Project, channel: Channel) -> tuple[Row, ...]:
    """Return the parts of a channel and of the board around it."""
    network, rows = project.channels[channel], []
    for part in parts_of(network):
        resistor = isinstance(part, Resistor)
        tolerance = f"± {format_percent(part.tolerance)}" if isinstance(part, Resistor) else ""
        rating = format_quantity(part.rating_watts, "W") if isinstance(part, Resistor) else ""
        texts = (part.id, _text(project, channel, part.id), part.a, part.b, tolerance, rating)
        rows.append(Row(part.id, texts, Standing.RESISTOR if resistor else Standing.CAPACITOR))
    wiring = project.wiring
    around = (
        (H_SERIES, wiring.h, "J1.13", Standing.SYNC),
        (V_SERIES, wiring.v, "J1.14", Standing.SYNC),
        (LOAD, "J1", "ground", Standing.LOAD),
    )
    for name, a, b, standing in around:
        rows.append(Row(name, (name, _text(project, channel, name), a, b, "", ""), standing))
    return tuple(rows)


def as_text(project: Project, channel: Channel) -> str:
    """Return the table with a tab between columns, one part a line."""
    lines = [HEADINGS, *(row.texts for row in table_rows(project, channel))]
    return "\n".join("\t".join(line) for line in lines) + "\n"


def _text(project: Project, channel: Channel, part: PartId) -> str:
    value = find_value(project, channel, part)
    return value.text(value.value) if value is not None else ""
