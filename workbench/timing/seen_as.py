"""What a monitor takes a signal for.

No pixel clock comes over the cable. A monitor measures the line rate, the lines of a frame, the
polarities and the lengths of sync, looks for the nearest row of its table, and samples and crops
as that row says. Several rows may look alike; then it can only guess.
"""

from dataclasses import dataclass

from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.sampling import BlackWindow, SoftBands, black_window, soft_bands
from workbench.timing.search import search

__all__ = ["LOCK_PPM", "LOCK_SOURCE", "Placing", "Sighting", "look_alikes", "seen_as"]

LOCK_PPM = 5000.0
"""A rate off by more than 0.5 % is outside what monitors are said to have to take; many still lock.
Known from secondary sources only. [ppm]"""
LOCK_SOURCE = "secondary sources only; the clause of the DMT standard itself was not read"
"""Where :data:`LOCK_PPM` comes from, in words for a person."""
_OF_EDID = "EDID "
"""How the source of a mode begins that a monitor's EDID lists."""
_KNOWN_LINES = 3
"""Most lines by which a frame may differ from a row's and still be taken for it. Our own. [1]"""
_KNOWN_PPM = 20_000.0
"""Most by which a line rate may differ from a row's and still be taken for it. Our own. [ppm]"""
_KNOWN_FIELD_PPM = 50_000.0
"""Most by which a field rate may differ: more than lines and line rate explain together. Our own. [ppm]"""

# What tells rows apart, most telling first; our own weights, in units of 0.5 % of a rate.
_WEIGHT_LINES = 1.0
_WEIGHT_POLARITY = 2.0
_WEIGHT_SCAN = 200.0
_WEIGHT_SYNC = 0.25
_ALIKE = 0.5
"""Rows whose distances differ by less look alike. Our own."""


@dataclass(frozen=True, slots=True)
class Placing:
    """Where the picture lands in what the monitor shows, along one axis, in samples or lines."""

    shift: float
    """How far the picture starts after the shown part does; negative before it. [1]"""
    shown: int
    """Samples or lines the monitor shows. [1]"""
    length: float
    """Samples or lines the picture takes up. [1]"""

    @property
    def cropped_before(self) -> float:
        """Return what is lost at the left or the top. [1]"""
        return max(0.0, -self.shift)

    @property
    def cropped_after(self) -> float:
        """Return what is lost at the right or the bottom. [1]"""
        return max(0.0, self.shift + self.length - self.shown)


@dataclass(frozen=True, slots=True)
class Sighting:
    """A mode taken for a row of the table."""

    mode: Mode
    """The mode that is sent."""
    row: Mode
    """The row it is taken for."""
    distance: float
    """0 where all that a monitor can measure agrees; compares rows, has no unit. [1]"""

    @property
    def line_rate_ppm(self) -> float:
        """Return how far the line rate is from the row's. [ppm]"""
        return (self.mode.line_rate_hz / self.row.line_rate_hz - 1) * 1e6

    @property
    def field_rate_ppm(self) -> float:
        """Return how far the field rate is from the row's. [ppm]"""
        return (self.mode.field_rate_hz / self.row.field_rate_hz - 1) * 1e6

    @property
    def lines_off(self) -> int:
        """Return how many lines more than the row the frame has. [1]"""
        return self.mode.v.total - self.row.v.total

    @property
    def h_polarity_agrees(self) -> bool:
        """Return whether H sync points as the row's does."""
        return self.mode.h.polarity is self.row.h.polarity

    @property
    def v_polarity_agrees(self) -> bool:
        """Return whether V sync points as the row's does."""
        return self.mode.v.polarity is self.row.v.polarity

    @property
    def turned(self) -> tuple[str, ...]:
        """Return which sync pulses point the other way than the row's: ``H``, ``V``, both or none."""
        agree = {"H": self.h_polarity_agrees, "V": self.v_polarity_agrees}
        return tuple(name for name, agrees in agree.items() if not agrees)

    @property
    def is_known(self) -> bool:
        """Return whether a monitor is likely to find the row at all, and not to guess a size."""
        return (
            abs(self.lines_off) <= _KNOWN_LINES
            and abs(self.line_rate_ppm) <= _KNOWN_PPM
            and abs(self.field_rate_ppm) <= _KNOWN_FIELD_PPM
        )

    @property
    def within_lock(self) -> bool:
        """Return whether both rates are inside 0.5 %, where a monitor is said to have to lock."""
        return max(abs(self.line_rate_ppm), abs(self.field_rate_ppm)) <= LOCK_PPM

    @property
    def assumed_total(self) -> int:
        """Return the samples the monitor takes in a whole line. [1]"""
        return self.row.h.total

    @property
    def sampling_clock_hz(self) -> float:
        """Return the monitor's own pixel clock: its line total times the line rate it gets. [Hz]"""
        return self.row.h.total * self.mode.line_rate_hz

    @property
    def bands(self) -> SoftBands:
        """Return the soft bands that a wrong line total brings."""
        return soft_bands(self.mode, self.row.h.total)

    @property
    def black(self) -> BlackWindow:
        """Return when the level of black is taken."""
        return black_window(self.mode, self.row.h.total)

    @property
    def horizontal(self) -> Placing:
        """Return where the picture lands in the line, in the monitor's samples."""
        return _placing(self.mode.h, self.row.h, self.row.h.total / self.mode.h.total)

    @property
    def vertical(self) -> Placing:
        """Return where the picture lands in the frame, in lines."""
        return _placing(self.mode.v, self.row.v, 1.0)


@dataclass(frozen=True, slots=True)
class _Measured:
    """What a monitor measures of a signal."""

    line_rate_hz: float
    field_rate_hz: float
    lines: int
    polarities: tuple[Polarity, Polarity]
    h_sync_s: float
    v_sync: int
    interlaced: bool


def _measured(mode: Mode) -> _Measured:
    return _Measured(
        mode.line_rate_hz,
        mode.field_rate_hz,
        mode.v.total,
        (mode.h.polarity, mode.v.polarity),
        mode.h.sync * mode.pixel_s,
        mode.v.sync,
        mode.interlaced,
    )


_ROWS = search("")
"""Every known mode once."""
_ROWS_MEASURED = tuple((row, _measured(row)) for row in _ROWS)


def seen_as(mode: Mode, rows: tuple[Mode, ...] = _ROWS, *, most: int = 5) -> tuple[Sighting, ...]:
    """Return the rows a monitor may take a mode for, nearest first.

    Parameters
    ----------
    rows : tuple of Mode
        The monitor's table: every known mode, or those its EDID lists. A mode that itself was read
        from an EDID stands in that monitor's table.
    most : int
        Rows returned. [1]

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> [found.row.name for found in seen_as(find_mode("640x400@70"), most=2)]
    ['640x400@70', '720x400@70']
    """
    sent = _measured(mode)
    table = _ROWS_MEASURED if rows is _ROWS else tuple((row, _measured(row)) for row in rows)
    distances = [(_distance(sent, measured), row) for row, measured in table]
    if mode.source.startswith(_OF_EDID) and min(distances, key=lambda found: found[0])[0] > 0:
        distances.append((0.0, mode))
    nearest = sorted(distances, key=lambda found: found[0])[:most]
    return tuple(Sighting(mode, row, distance) for distance, row in nearest)


def look_alikes(sightings: tuple[Sighting, ...]) -> tuple[Sighting, ...]:
    """Return the first of some sightings and those a monitor cannot tell from it."""
    return tuple(found for found in sightings if found.distance - sightings[0].distance < _ALIKE)


def _distance(sent: _Measured, row: _Measured) -> float:
    """Weigh what a monitor measures: rates, lines, polarities, scan and the lengths of sync."""
    off = abs(sent.line_rate_hz / row.line_rate_hz - 1) + abs(sent.field_rate_hz / row.field_rate_hz - 1)
    turned = sum(here is not there for here, there in zip(sent.polarities, row.polarities, strict=True))
    sync_off = abs(sent.h_sync_s / row.h_sync_s - 1) + abs(sent.v_sync / row.v_sync - 1)
    return (
        off / (LOCK_PPM * 1e-6)
        + _WEIGHT_LINES * abs(sent.lines - row.lines)
        + _WEIGHT_POLARITY * turned
        + _WEIGHT_SCAN * (sent.interlaced is not row.interlaced)
        + _WEIGHT_SYNC * sync_off
    )


def _placing(sent: Axis, row: Axis, samples_a_count: float) -> Placing:
    """Compare where the picture starts and ends after the leading edge of sync."""
    start = (sent.sync + sent.back_porch) * samples_a_count
    return Placing(
        shift=start - (row.sync + row.back_porch), shown=row.active, length=sent.active * samples_a_count
    )
