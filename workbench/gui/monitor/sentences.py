"""What a monitor makes of a mode, in sentences and rows."""

from workbench.gui.widgets import Sign
from workbench.gui.widgets.figure_table import Column, FigureRow
from workbench.gui.widgets.tip import tip_text
from workbench.timing.mode import Axis, Polarity
from workbench.timing.offsets import ppm_figure
from workbench.timing.seen_as import LOCK_PPM, LOCK_SOURCE, Placing, Sighting, look_alikes

__all__ = ["COLUMNS", "MOST_BANDS", "band_count", "headline", "place_sentences", "seen_rows"]

COLUMNS = (
    Column("row of its table", "1280x768@60RB", right=False, takes_rest=True),
    Column("line, ppm", "−000\u202f000"),
    Column("field, ppm", "−000\u202f000"),
    Column("lines", "−000"),
    Column("H/V", "+/− ≠ +/−"),
    Column("total", "0000"),
)
_MINUS = "\u2212"
_WORDS = {Polarity.NEGATIVE: "negative", Polarity.POSITIVE: "positive"}
MOST_BANDS = 64
"""With more soft bands the whole picture is soft. Our own. [1]"""
_SEEN = 0.5
"""Shift or crop smaller than this is not worth a word. Our own. [px], [lines]"""


def seen_rows(sightings: tuple[Sighting, ...]) -> list[FigureRow]:
    """Return a row for each mode the signal may be taken for; look-alikes are not dim."""
    alike = look_alikes(sightings)
    return [
        FigureRow(
            (
                seen.row.name,
                ppm_figure(seen.line_rate_ppm),
                ppm_figure(seen.field_rate_ppm),
                f"{seen.lines_off:+d}".replace("-", _MINUS) if seen.lines_off else "0",
                _polarities(seen),
                str(seen.assumed_total),
            ),
            seen,
            _row_sign(seen) if seen in alike else None,
            dim=seen not in alike,
            tip=tip_text(seen.row.source, *_doubts(seen)),
        )
        for seen in sightings
    ]


def _row_sign(seen: Sighting) -> Sign:
    if not seen.is_known:
        return Sign.FAILS
    fine = seen.within_lock and seen.h_polarity_agrees and seen.v_polarity_agrees and not seen.bands.per_line
    return Sign.PASSES if fine else Sign.WARNS


def headline(sightings: tuple[Sighting, ...]) -> str:
    """Say what the mode is taken for, what speaks against it, and whether another row looks the same."""
    first, *others = look_alikes(sightings)
    if not first.is_known:
        return f"Not in its table; {first.row.name} is the nearest. It guesses a width, or shows nothing."
    reasons = []
    if first.turned:
        verb = "is" if len(first.turned) == 1 else "are"
        reasons.append(f"{' and '.join(first.turned)} sync {verb} of the other polarity")
    if not first.within_lock:
        reasons.append(f"rates are more than {LOCK_PPM / 1e4:g} % off")
    though = f", though {' and '.join(reasons)}" if reasons else ""
    names = ", ".join(other.row.name for other in others)
    alike = f"; {names} looks the same on the cable" if others else ""
    return f"Taken for {first.row.name}{though}{alike}."


def _doubts(seen: Sighting) -> tuple[str, ...]:
    """Say what a monitor may stumble over in the rates and the polarities."""
    said = [
        f"{name} sync is sent {_WORDS[sent.polarity]}; in {seen.row.name} it is {_WORDS[row.polarity]}."
        for name, sent, row in (("H", seen.mode.h, seen.row.h), ("V", seen.mode.v, seen.row.v))
        if name in seen.turned
    ]
    if said:
        said.append("A monitor may take the signal for another row, shift it or show it at another height.")
    if seen.is_known and not seen.within_lock:
        said.append(
            f"Lines {ppm_figure(seen.line_rate_ppm)} ppm and fields {ppm_figure(seen.field_rate_ppm)} ppm "
            f"off: outside ±{LOCK_PPM:.0f} ppm it need not lock, though many do ({LOCK_SOURCE})."
        )
    return tuple(said)


def place_sentences(seen: Sighting) -> tuple[str, ...]:
    """Say what is doubtful, soft, shifted or cropped, and where black is taken."""
    said = [] if seen.is_known else [f"If it took the signal for {seen.row.name}:"]
    said += _doubts(seen)
    if seen.bands.per_line:
        said.append(
            f"{_soft(seen)}: it samples {seen.assumed_total} times a line, the line has "
            f"{seen.mode.h.total} px."
        )
    else:
        said.append(
            f"Sharp all across: it samples {seen.assumed_total} times a line, in step with the pixels."
        )
    for words in (
        _placed(seen.horizontal, "left", "right", "px"),
        _placed(seen.vertical, "top", "foot", "lines"),
    ):
        said += [words] if words else []
    black = seen.black
    window = f"{black.start_s * 1e6:.3f} … {black.end_s * 1e6:.3f} µs after sync"
    porch = f"{black.back_porch_s * 1e6:.3f} µs"
    said.append(
        f"Black is taken {window}, inside the back porch of {porch}."
        if black.fits
        else f"Black is taken {window}: past the back porch of {porch}, so the picture's left edge shifts it."
    )
    return tuple(said)


def band_count(seen: Sighting) -> str:
    """Return how many soft bands there are."""
    count = len(seen.bands.centres_px)
    if count > MOST_BANDS:
        return "soft everywhere"
    return f"{count or 'no'} soft band{'' if count <= 1 else 's'}"


def _soft(seen: Sighting) -> str:
    """Return where the picture is soft, the first few places named."""
    centres = seen.bands.centres_px
    if not centres or len(centres) > MOST_BANDS:
        return band_count(seen).capitalize()
    places = ", ".join(f"{centre:.0f}" for centre in centres[:4])
    return f"{band_count(seen)} at pixel {places}{' …' if len(centres) > 4 else ''}"


def _placed(placing: Placing, before: str, after: str, unit: str) -> str:
    """Say where the picture lies along one axis; nothing where it lies as it should."""
    words = []
    if abs(placing.shift) > _SEEN:
        direction = f"from the {before}" if placing.shift > 0 else f"past the {before}"
        words.append(f"starts {abs(placing.shift):.1f} {unit} {direction}")
    if placing.cropped_after > _SEEN:
        words.append(f"loses {placing.cropped_after:.1f} {unit} at the {after}")
    return f"The picture {' and '.join(words)} until it is adjusted." if words else ""


def _polarities(seen: Sighting) -> str:
    """Return the row's polarities, and those that are sent where they are others."""
    row, sent = (f"{_sign(mode.h)}/{_sign(mode.v)}" for mode in (seen.row, seen.mode))
    return row if row == sent else f"{row} ≠ {sent}"


def _sign(axis: Axis) -> str:
    return "+" if axis.polarity is Polarity.POSITIVE else _MINUS
