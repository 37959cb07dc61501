"""Which modes the chooser lists: all, the marked ones, what the monitor takes, what the chip can clock."""

from collections.abc import Callable
from enum import Enum

import msgspec

from workbench.gui.monitor.edid_file import kept_edid
from workbench.gui.settings import FAVOURITES, Settings
from workbench.project.document import MonitorRange
from workbench.timing.edid.ranges import outside
from workbench.timing.edid.values import Limits
from workbench.timing.mode import Mode
from workbench.timing.standards import KNOWN

__all__ = [
    "Filter",
    "favourites",
    "known_limits",
    "limits_of",
    "monitor_modes",
    "own_modes",
    "toggle_favourite",
    "unique",
]

_MOST = 50
"""Modes that can be marked. Our own bound. [1]"""


class Filter(Enum):
    """What is listed: all or the favourites, and of them what passes; the value is the word on the button."""

    ALL = "All"
    FAVOURITES = "Favourites"
    MONITOR = "My monitor takes it"
    CHIP = "My chip clocks it"


def favourites(settings: Settings) -> tuple[Mode, ...]:
    """Return the modes a person marked, in the order of marking; what cannot be read is left out."""
    found = []
    for text in settings.get(FAVOURITES):
        try:
            found.append(msgspec.json.decode(text, type=Mode))
        except msgspec.DecodeError:
            continue
    return tuple(found)


def toggle_favourite(settings: Settings, mode: Mode) -> bool:
    """Mark a mode, or take the mark back; return whether it is marked now."""
    kept = list(favourites(settings))
    marked = mode not in kept
    kept = [*kept, mode][-_MOST:] if marked else [other for other in kept if other != mode]
    settings.set(FAVOURITES, tuple(msgspec.json.encode(other).decode() for other in kept))
    return marked


def limits_of(monitor: MonitorRange) -> Limits:
    """Return an entered range as the limits of an EDID. [Hz]"""
    return Limits(
        monitor.v_min_hz, monitor.v_max_hz, monitor.h_min_hz, monitor.h_max_hz, monitor.max_pixel_clock_hz
    )


def known_limits(settings: Settings, monitor: MonitorRange | None) -> Limits | None:
    """Return what the monitor takes: what the project holds, else what the EDID says; none if neither."""
    if monitor is not None:
        return limits_of(monitor)
    edid = kept_edid(settings)
    return edid.limits if edid and edid.limits and edid.limits.is_whole else None


def own_modes(settings: Settings) -> tuple[Mode, ...]:
    """Return the modes that the monitor's EDID lists; none without one."""
    edid = kept_edid(settings)
    return edid.modes if edid else ()


def monitor_modes(
    settings: Settings, monitor: MonitorRange | None, modes: tuple[Mode, ...] = KNOWN
) -> tuple[Mode, ...] | None:
    """Return the modes a monitor takes: its EDID's own, then those inside its limits.

    None where neither an EDID nor a range is known. Of favourites (any ``modes`` but the tables') only
    these are returned, in their order.
    """
    limits, own = known_limits(settings, monitor), own_modes(settings)
    if not own and limits is None and kept_edid(settings) is None:
        return None
    inside = tuple(mode for mode in modes if mode in own or (limits and not outside(mode, limits)))
    return unique((*own, *inside)) if modes is KNOWN else inside


def unique(
    modes: tuple[Mode, ...], key: Callable[[Mode], object] = lambda mode: (mode.h, mode.v)
) -> tuple[Mode, ...]:
    """Return modes once each, those of equal counts and a clock within 10 kHz taken for one."""
    seen: dict[object, Mode] = {}
    for mode in modes:
        place = key(mode), round(mode.pixel_clock_hz / 20_000), mode.interlaced
        seen.setdefault(place, mode)
    return tuple(seen.values())
