"""Which names stand in the margin, and where what they name lies."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from workbench.gui.scanline.content.shown import Shown
from workbench.gui.scanline.lanes.margin import EndName, NamedLevel
from workbench.gui.scanline.lanes.sync_places import in_sync_lane
from workbench.gui.theme import Theme
from workbench.project.document import Channel
from workbench.waveform.scanline import FULL_SCALE_VOLTS

__all__ = ["HeldLevel", "colour_ends", "named_levels", "sync_ends"]

Height = Callable[[float], float]
"""Turns a level into a height on the screen. [px]"""


@dataclass(frozen=True, slots=True)
class HeldLevel:
    """A code a person holds on the pins, and the level it makes. [V]"""

    code: int
    volts: float


def colour_ends(
    theme: Theme, shown: Shown, end: int, height: Height, below: dict[Channel, float]
) -> list[EndName]:
    """Return the names of the colours at sample ``end``, each as far down as it is drawn."""
    levels = zip(Channel, shown.colour_volts[:, end].tolist(), strict=True)
    return [EndName(c.value, theme.channel(c), height(volts) + below[c]) for c, volts in levels]


def sync_ends(theme: Theme, shown: Shown, end: int, height: Height) -> list[EndName]:
    """Return the names of the syncs at sample ``end``."""
    h, v = in_sync_lane(shown.sync_volts[:, end : end + 1], shown.sync_high_volts)[:, 0].tolist()
    return [
        EndName("H sync", theme.color("h_sync"), height(h)),
        EndName("V sync", theme.color("v_sync"), height(v)),
    ]


def named_levels(
    height: Height, held: Sequence[HeldLevel], *, ideal: bool, too_high_volts: float | None
) -> list[NamedLevel]:
    """Return the levels that have a name: the ideal white, held codes, one that leaves the scale."""
    named = []
    if ideal:
        text = f"{FULL_SCALE_VOLTS:.3f} V"
        named.append(NamedLevel("ideal", text, "dim", height(FULL_SCALE_VOLTS)))
    named += [
        NamedLevel(f"held {level.code}", f"{level.volts:.3f} V", "accent", height(level.volts))
        for level in held
    ]
    if too_high_volts is not None:
        text = f"{too_high_volts:.3f} V"
        named.append(NamedLevel("too high", text, "warns", height(too_high_volts), warns=True))
    return named
