"""The rows of the mode chooser: what fits what is typed, each mode in one line of words and figures."""

from collections.abc import Iterable, Sequence

from workbench.errors import TimingError
from workbench.gui.mode_title import mode_title
from workbench.gui.widgets.choice_list import Row
from workbench.timing.edid.ranges import outside
from workbench.timing.edid.values import Limits
from workbench.timing.figures import simulable
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.search import find_mode, search
from workbench.timing.standards import KNOWN
from workbench.timing.worked_out import worked_out

__all__ = ["HEADS", "chooser_rows", "mode_rows", "names_outright", "place_to_stand", "why_none"]

HEADS = "px × lines in all  H/V     clock MHz   lines kHz"
"""What stands over the figures of :func:`chooser_rows`, in the same face and flush right with them."""
NOT_SIMULATED = "not simulated"
OUTSIDE = "outside your monitor's range"


def mode_rows(text: str) -> list[Row]:
    """Return the modes of the tables that fit a search line, the one it names outright first.

    A size and rate that no table holds is worked out by the formulas.
    """
    found = _in_tables(text, KNOWN)
    return [
        Row(
            mode_title(mode),
            mode.source,
            f"{mode.pixel_clock_hz / 1e6:7.3f} MHz  {mode.line_rate_hz / 1e3:7.3f} kHz",
            mode,
            _refused(mode),
        )
        for mode in found or _worked_out(text)
    ]


def chooser_rows(
    text: str,
    modes: Sequence[Mode] = KNOWN,
    marked: Iterable[Mode] = (),
    limits: Limits | None = None,
) -> list[Row]:
    """Return the rows of the chooser: what fits among some modes, then what the formulas make of it.

    Parameters
    ----------
    marked : iterable of Mode
        The favourites.
    limits : Limits, optional
        What the monitor takes; modes outside say so.
    """
    kept = set(marked)
    whole = modes is KNOWN
    found = [*_in_tables(text, modes), *(_worked_out(text) if whole else ())]
    return [_row(mode, marked=mode in kept, limits=limits) for mode in found]


def place_to_stand(rows: Sequence[Row], text: str, mode: Mode, *, narrowed: bool = False) -> int:
    """Return the row to stand on first, of those that a person could take.

    With something typed it is the first one, which fits best or exactly; else the nearest to the mode
    in force of its size. Where there is none it is the first of a ``narrowed`` list, and of the
    whole one none, minus one, so that nothing is taken unawares.
    """
    free = [place for place, row in enumerate(rows) if not row.refused and not row.dim]
    if text.strip():
        return 0 if names_outright(text) or not free else free[0]
    held = (place for place, row in enumerate(rows) if row.payload == mode)
    near = [(apart, place) for place in free if (apart := _apart(rows[place].payload, mode)) is not None]
    nearest = min(near)[1] if near else free[0] if narrowed and free else -1
    return next(held, nearest)


def _apart(other: object, mode: Mode) -> float | None:
    """Return how unlike a mode of the same size is, in parts of its rates; none for another size."""
    if not isinstance(other, Mode) or (other.h.active, other.v.active) != (mode.h.active, mode.v.active):
        return None
    return (
        abs(other.field_rate_hz / mode.field_rate_hz - 1)
        + abs(other.line_rate_hz / mode.line_rate_hz - 1)
        + abs(other.h.total / mode.h.total - 1)
    )


def _row(mode: Mode, *, marked: bool, limits: Limits | None) -> Row:
    h, v = mode.h, mode.v
    figures = (
        f"{h.total} × {v.total:<4}  {_sign(h)}/{_sign(v)}   {mode.pixel_clock_hz / 1e6:11.3f} "
        f"{mode.line_rate_hz / 1e3:11.3f}"
    )
    excluded = bool(limits and outside(mode, limits))
    notes = (
        (NOT_SIMULATED, mode.interlaced),
        (OUTSIDE, excluded),
        ("favourite", marked),
    )
    note = " · ".join(words for words, said in notes if said)
    return Row(mode_title(mode), mode.source, figures, mode, _refused(mode), note=note, dim=excluded)


def _refused(mode: Mode) -> str:
    return "" if simulable(mode) is None else "interlaced: half-line fields are not simulated"


def _in_tables(text: str, modes: Sequence[Mode]) -> list[Mode]:
    found, named = list(search(text, modes)), _named(text)
    if named is None or named not in modes:
        return found
    return [named, *(mode for mode in found if mode != named)]


def names_outright(text: str) -> bool:
    """Return whether a text is the name of one mode."""
    return _named(text) is not None


def _named(text: str) -> Mode | None:
    """Return the mode of the tables that a text names outright."""
    try:
        return find_mode(text)
    except TimingError:
        return None


def _worked_out(text: str) -> tuple[Mode, ...]:
    """Return what the formulas make of a text; nothing if they can make nothing of it."""
    try:
        return worked_out(text)
    except TimingError:
        return ()


def why_none(text: str) -> str:
    """Return why no table has what is typed and no formula makes it; empty where one does."""
    try:
        worked_out(text)
    except TimingError as reason:
        return str(reason)
    return ""


def _sign(axis: Axis) -> str:
    return "+" if axis.polarity is Polarity.POSITIVE else "\u2212"
