"""Which names stand in the margin, and where what they name lies."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from workbench.checks.finding import Finding
from workbench.gui.findings.words import finding_sign
from workbench.gui.scanline.content.shown import Shown
from workbench.gui.scanline.lanes.margin import EndName, NamedLevel
from workbench.gui.scanline.lanes.sync_places import in_sync_lane
from workbench.gui.theme import Theme
from workbench.gui.widgets import Sign
from workbench.project.document import Channel
from workbench.waveform.scanline import FULL_SCALE_VOLTS

__all__ = [
    "HeldLevel",
    "TooHigh",
    "colour_ends",
    "named_levels",
    "reaches_white",
    "sync_ends",
    "too_high_of",
]

Height = Callable[[float], float]
"""Turns a level into a height on the screen. [px]"""


@dataclass(frozen=True, slots=True)
class HeldLevel:
    """A code a person holds on the pins, and the level it makes. [V]"""

    code: int
    volts: float


@dataclass(frozen=True, slots=True)
class TooHigh:
    """A white above what a monitor takes, and how much that weighs."""

    channels: tuple[Channel, ...]
    volts: float
    sign: Sign


def too_high_of(findings: Sequence[Finding]) -> TooHigh | None:
    """Return the highest of the whites that a finding calls too high, if there is one."""
    found = [
        TooHigh(finding.channels, finding.measured, finding_sign(finding))
        for finding in findings
        if finding.id == "full-scale"
        and finding.measured is not None
        and finding.high is not None
        and finding.measured > finding.high
    ]
    return max(found, key=lambda white: white.volts, default=None)


def reaches_white(shown: Shown) -> bool:
    """Return whether the even staircase of a line goes up to its last step."""
    ideal = shown.ideal_volts
    return ideal is not None and float(ideal.max()) > FULL_SCALE_VOLTS - 1e-3


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
    height: Height, held: Sequence[HeldLevel], *, ideal: bool, too_high: TooHigh | None
) -> list[NamedLevel]:
    """Return the levels that have a name: the ideal white, held codes, a white that is too high."""
    named = []
    if ideal:
        text = f"{FULL_SCALE_VOLTS:.3f} V"
        named.append(NamedLevel("ideal", text, "dim", height(FULL_SCALE_VOLTS)))
    named += [
        NamedLevel(f"held {level.code}", f"{level.volts:.3f} V", "accent", height(level.volts))
        for level in held
    ]
    if too_high is not None:
        every = len(too_high.channels) == len(Channel)
        name = "all three" if every else ", ".join(channel.value for channel in too_high.channels)
        value, role, y = f"{too_high.volts:.3f} V", too_high.sign.value, height(too_high.volts)
        named.append(NamedLevel(name, value, role, y, note="too high", sign=too_high.sign))
    return named
