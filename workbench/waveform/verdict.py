"""Whether a monitor shows a signal at all, and as what.

A monitor that finds no sync, or rates outside its range, shows nothing or a message; one that
takes the mode for another row of its table shows a shifted, cropped or banded picture. The
reason stands beside the picture, in place of a perfect one.
"""

from dataclasses import dataclass
from enum import Enum
from typing import Protocol

from workbench.timing.figures import simulable
from workbench.timing.mode import Mode
from workbench.timing.offsets import offset_words
from workbench.timing.seen_as import Sighting, seen_as
from workbench.waveform.monitor import Screen
from workbench.waveform.sync import SyncDrive

__all__ = ["SYNC_HIGH_VOLTS", "ScanRange", "Standing", "Verdict", "judge"]

SYNC_HIGH_VOLTS = 2.0
"""What a sync input takes for high, TTL. [V] Display-controller installation guide, sync definition page."""
_SHIFT = 1.0
"""Pixels or lines of shift that are seen. Our own. [1]"""


class Standing(Enum):
    """What is on the screen."""

    SHOWN = "shown"
    SHIFTED = "shifted"
    GUESSED = "not recognised"
    """A panel may show something of it, or only a message: what is shown is a guess, marked as one."""
    ROLLING = "rolling"
    OUT_OF_RANGE = "out of range"
    NO_SIGNAL = "no signal"
    NOT_SIMULATED = "not simulated"

    @property
    def has_picture(self) -> bool:
        """Return whether there is a picture that stands still."""
        return self in (Standing.SHOWN, Standing.SHIFTED, Standing.GUESSED)


class ScanRange(Protocol):
    """What a monitor takes, from its manual or its EDID. [Hz]"""

    @property
    def h_min_hz(self) -> float: ...
    @property
    def h_max_hz(self) -> float: ...
    @property
    def v_min_hz(self) -> float: ...
    @property
    def v_max_hz(self) -> float: ...


@dataclass(frozen=True, slots=True)
class Verdict:
    """What a monitor makes of a signal, before it looks at the colours."""

    standing: Standing
    sentence: str
    """Why, for the user."""
    row: Mode | None = None
    """The row of its table it takes the signal for; none where it finds none."""


def judge(mode: Mode, sync: SyncDrive, screen: Screen, taken: ScanRange | None = None) -> Verdict:
    """Return what a monitor makes of a signal.

    Parameters
    ----------
    mode : Mode
        The signal's true counts and rates.
    sync : SyncDrive
        Levels of the sync lines at the monitor.
    screen : Screen
        A tube follows any rate in its range; a panel needs to know the line's total.
    taken : ScanRange, optional
        What the monitor takes; none if that is not known.
    """
    reason = simulable(mode)
    if reason is not None:
        return Verdict(Standing.NOT_SIMULATED, reason)
    return _without_sync(sync, screen) or _outside(mode, taken) or _placed(seen_as(mode)[0], screen)


def _without_sync(sync: SyncDrive, screen: Screen) -> Verdict | None:
    if sync.h_high_volts < SYNC_HIGH_VOLTS:
        return Verdict(
            Standing.NO_SIGNAL,
            f"H sync reaches {sync.h_high_volts:.2f} V at the monitor and {SYNC_HIGH_VOLTS:.1f} V is needed: "
            "the monitor finds no lines. Lower its series resistor or buffer it from 5 V.",
        )
    if sync.v_high_volts < SYNC_HIGH_VOLTS:
        standing = Standing.ROLLING if screen is Screen.TUBE else Standing.NO_SIGNAL
        return Verdict(
            standing,
            f"V sync reaches {sync.v_high_volts:.2f} V at the monitor and {SYNC_HIGH_VOLTS:.1f} V is needed: "
            "the monitor finds no frames. Lower its series resistor or buffer it from 5 V.",
        )
    return None


def _outside(mode: Mode, taken: ScanRange | None) -> Verdict | None:
    if taken is None:
        return None
    rates = (
        ("line rate", mode.line_rate_hz / 1e3, taken.h_min_hz / 1e3, taken.h_max_hz / 1e3, "kHz"),
        ("field rate", mode.field_rate_hz, taken.v_min_hz, taken.v_max_hz, "Hz"),
    )
    for name, rate, low, high, unit in rates:
        if not low <= rate <= high:
            return Verdict(
                Standing.OUT_OF_RANGE,
                f"The {name} is {rate:.2f} {unit} and the monitor takes {low:.4g} … {high:.4g} {unit}: "
                "choose a mode inside, and never leave a tube on a rate it cannot follow.",
            )
    return None


def _placed(sighting: Sighting, screen: Screen) -> Verdict:
    row = sighting.row
    if not sighting.is_known and screen is Screen.TUBE:
        return Verdict(
            Standing.SHOWN, "No known mode, but a tube follows its rates: size and place are set by hand."
        )
    if not sighting.is_known:
        return Verdict(
            Standing.GUESSED,
            f"No known mode has this line rate and these lines: the nearest is {row.name} "
            f"({offset_words(sighting.line_rate_ppm)}, {sighting.lines_off:+d} lines). A monitor guesses "
            "a size, or shows a message.",
            row,
        )
    shift = sighting.horizontal.shift, sighting.vertical.shift
    total, bands = sighting.mode.h.total, sighting.bands.per_line
    if screen is Screen.PANEL and bands:
        return Verdict(
            Standing.SHIFTED,
            f"Taken for {row.name}, whose line has {row.h.total} pixels and not {total}: soft bands, "
            f"{bands} a line, and another width.",
            row,
        )
    if max(map(abs, shift)) >= _SHIFT:
        return Verdict(
            Standing.SHIFTED,
            f"Taken for {row.name}, but the porches differ: the picture starts {_off(shift[0], 'pixel')} "
            f"and {_off(shift[1], 'line')} away from where the monitor looks.",
            row,
        )
    return Verdict(Standing.SHOWN, f"Taken for {row.name} ({row.source}).", row)


def _off(shift: float, unit: str) -> str:
    count = round(abs(shift))
    return f"{count} {unit}{'' if count == 1 else 's'}"
