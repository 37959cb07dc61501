"""The sheet a drawing is made for, and its columns and rows in pixels.

Sizes are written for a base text of 14 px and grow with it. There are two sets of columns, for
a wide sheet and a narrow one; room to spare goes where lines run, and where it is short the
columns shrink to their least widths. A network that still does not fit makes the drawing wider.
"""

from dataclasses import dataclass, field, replace
from itertools import accumulate

from workbench.drawing.faces import Measure

__all__ = ["Columns", "Needs", "Pitch", "Sheet", "fit_columns", "fit_pitch", "least_box"]

DESIGN_BASE = 14.0
WIDE_FROM = 680.0
"""Width from which a sheet takes the wide columns. [design px]"""
SLIM_BELOW = 430.0
"""Width under which only keys, boxes and volts are drawn, as on a projector. [design px]"""
LEAST_PITCH, MOST_PITCH = 52.0, 92.0
SLIM_PITCH = 38.0, 64.0
"""Least and largest row pitch of a slim sheet. [design px]"""
ROOMY_FROM = 72.0
"""Row pitch from which names stand over their boxes, with the colour bands. [design px]"""
TRACK = 14.0
"""Distance of buses that stand beside each other. [design px]"""


@dataclass(frozen=True, slots=True)
class Sheet:
    """The room for a drawing, its text height and how parts are drawn."""

    width: float
    height: float
    base: float
    """Height of the base text. [px]"""
    measure: Measure = field(compare=False)
    zigzag: bool = False
    zoom: float = 1.0
    """How many times its usual size the drawing is; ``base`` has it already. One that is drawn smaller
    keeps the form that it has at its usual size. [1]"""

    @property
    def unit(self) -> float:
        """Return one design pixel. [px]"""
        return self.base / DESIGN_BASE

    @property
    def _usual_unit(self) -> float:
        """Return one design pixel of what is not drawn smaller. [px]"""
        return self.unit / min(self.zoom, 1.0)

    @property
    def wide(self) -> bool:
        """Return whether the sheet takes the wide columns."""
        return self.width >= WIDE_FROM * self._usual_unit

    @property
    def slim(self) -> bool:
        """Return whether only keys, boxes and volts are drawn; the load is then a row as well."""
        return self.width < SLIM_BELOW * self._usual_unit


@dataclass(frozen=True, slots=True)
class Needs:
    """What the contents ask of the columns, apart from their usual widths."""

    boxes: tuple[float, ...]
    """Least width of the boxes right of each rank but the last. [px]"""
    before: tuple[float, ...]
    """Least room before those boxes. [px]"""
    after: tuple[float, ...]
    """Least room after them. [px]"""
    tracks: tuple[int, ...]
    """Buses that stand beside each other at each rank. [1]"""
    gap: float
    """Least room between the last bus and the socket. [px]"""
    cable: bool
    block: float = 0.0
    """Least width of the controller. [px]"""


@dataclass(frozen=True, slots=True)
class Columns:
    """Where everything stands from left to right. [px]"""

    block: tuple[float, float]
    boxes: tuple[tuple[float, float], ...]
    """Left and right of the boxes after each rank but the last."""
    ranks: tuple[float, ...]
    """First bus of each rank; that of the pins is where their currents end."""
    socket: tuple[float, float]
    cable: tuple[float, float]
    monitor: tuple[float, float]
    width: float


@dataclass(frozen=True, slots=True)
class _Span:
    usual: float
    least: float
    stretch: float = 0.0


def _set(sheet: Sheet) -> dict[str, _Span]:
    """Return the usual columns. [design px]"""
    if sheet.wide:
        return {
            "margin": _Span(20, 14),
            "block": _Span(116, 92),
            "current": _Span(164, 128, 0.3),
            "box": _Span(112, 84, 0.1),
            "lead": _Span(62, 30, 0.15),
            "further box": _Span(84, 64),
            "further lead": _Span(16, 12),
            "gap": _Span(106, 20, 0.35),
            "socket": _Span(42, 36),
            "cable": _Span(68, 40, 0.1),
            "monitor": _Span(90, 84),
        }
    if sheet.slim:
        return {
            "margin": _Span(14, 8),
            "block": _Span(18, 18),
            "current": _Span(58, 44, 0.2),
            "box": _Span(82, 70, 0.2),
            "lead": _Span(34, 22, 0.2),
            "further box": _Span(60, 52),
            "further lead": _Span(12, 8),
            "gap": _Span(70, 16, 0.4),
            "socket": _Span(0, 0),
            "cable": _Span(0, 0),
            "monitor": _Span(0, 0),
        }
    return {
        "margin": _Span(14, 10),
        "block": _Span(76, 66),
        "current": _Span(114, 98, 0.3),
        "box": _Span(92, 80, 0.1),
        "lead": _Span(32, 18, 0.15),
        "further box": _Span(66, 56),
        "further lead": _Span(14, 10),
        "gap": _Span(86, 16, 0.35),
        "socket": _Span(36, 32),
        "cable": _Span(0, 0),
        "monitor": _Span(76, 72),
    }


def least_box(sheet: Sheet, *, first: bool) -> float:
    """Return the least width of a box, in the first column or in a further one. [px]"""
    return _set(sheet)["box" if first else "further box"].least * sheet.unit


def fit_columns(sheet: Sheet, needs: Needs) -> Columns:
    """Return the columns for a sheet and what its contents need."""
    unit, usual = sheet.unit, _set(sheet)
    spans: list[_Span] = []

    def add(name: str, need: float = 0.0) -> None:
        span = usual[name]
        least = max(span.least * unit, need)
        spans.append(_Span(max(span.usual * unit, need), least, span.stretch))

    add("margin")
    add("block", needs.block)
    for rank, box in enumerate(needs.boxes):
        first = rank == 0
        tracks = (needs.tracks[rank] - (0 if first else 1)) * TRACK * unit
        add("current" if first else "further lead", needs.before[rank])
        spans.append(_Span(tracks, tracks))
        add("box" if first else "further box", box)
        add("lead" if first else "further lead", needs.after[rank])
    if not needs.boxes:
        add("current")
    last = (needs.tracks[-1] - 1) * TRACK * unit if needs.boxes else 0.0
    spans.append(_Span(last, last))
    # Without a cable its room goes to the figures beside the last bus, and nothing else moves.
    free = 0.0 if needs.cable else usual["cable"].usual * unit
    add("gap", needs.gap)
    spans[-1] = replace(spans[-1], usual=spans[-1].usual + free)
    add("socket")
    if needs.cable:
        add("cable")
    else:
        spans.append(_Span(0, 0))
    add("monitor")
    add("margin")
    return _place(needs, _fitted(spans, sheet.width), sheet.width)


def _fitted(spans: list[_Span], width: float) -> list[float]:
    """Return the widths that fill a sheet, or the least ones where it is too narrow."""
    spare = width - sum(span.usual for span in spans)
    if spare >= 0:
        total = sum(span.stretch for span in spans)
        return [span.usual + spare * span.stretch / total for span in spans]
    give = sum(span.usual - span.least for span in spans)
    part = min(1.0, -spare / give) if give else 0.0
    return [span.usual - part * (span.usual - span.least) for span in spans]


def _place(needs: Needs, widths: list[float], width: float) -> Columns:
    edges = [round(edge) for edge in accumulate(widths, initial=0.0)]
    boxes, ranks = [], []
    place = 2
    for rank in range(len(needs.boxes)):
        if rank == 0:
            ranks.append(edges[place + 1])
        boxes.append((edges[place + 2], edges[place + 3]))
        ranks.append(edges[place + 4])
        place += 4
    if not needs.boxes:
        ranks.append(edges[place + 1])
        place += 1
    socket, cable, monitor = ((edges[i], edges[i + 1]) for i in range(place + 2, place + 5))
    return Columns(
        (edges[1], edges[2]), tuple(boxes), tuple(ranks), socket, cable, monitor, max(edges[-1], width)
    )


@dataclass(frozen=True, slots=True)
class Pitch:
    """Row pitch and the room above, between and below the rows. [px]"""

    row: float
    captions: float
    """Room for the column captions above, none where they are left out."""
    above: float
    """From the top of the controller to the first row."""
    sync: float
    """Further room between the network and the sync lines."""
    below: float
    """From the last row to the foot of the controller."""
    feet: float
    """Room for the captions below."""
    roomy: bool
    """Whether names stand over their boxes."""


def fit_pitch(sheet: Sheet, gaps: float, *, high: float = 0.0) -> Pitch:
    """Return the largest row pitch, of the allowed ones, with which a drawing fits its height.

    Parameters
    ----------
    sheet : Sheet
        The room.
    gaps : float
        Distance from the first to the last row, sync lines with it. [row pitch]
    high : float
        Least room above the first row. [px]
    """
    least, most = (_pitch(sheet, part, high) for part in (0.0, 1.0))
    low, tall = (_height(pitch, gaps) for pitch in (least, most))
    # Two pixels are kept for what rounding adds.
    part = (sheet.height - 2.0 - low) / (tall - low) if tall > low else 1.0
    return _pitch(sheet, min(max(part, 0.0), 1.0), high)


def _pitch(sheet: Sheet, part: float, high: float) -> Pitch:
    """Return the pitch that lies ``part`` of the way (0 … 1) from the least to the largest."""
    least, most = SLIM_PITCH if sheet.slim else (LEAST_PITCH, MOST_PITCH)
    row, unit = least + (most - least) * part, sheet.unit
    captions, feet = (24.0, 28.0) if sheet.wide else (8.0, 12.0)
    return Pitch(
        row * unit,
        captions * unit,
        max((22 + 18 * part) * unit, high),
        (6 + 20 * part) * unit,
        (22 + 18 * part) * unit,
        feet * unit,
        row >= ROOMY_FROM,
    )


def _height(pitch: Pitch, gaps: float) -> float:
    fixed = pitch.captions + pitch.above + pitch.sync + pitch.below + pitch.feet
    return fixed + gaps * pitch.row
