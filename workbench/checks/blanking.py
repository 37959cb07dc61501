"""Is the line black while the monitor takes its black level?"""

from collections.abc import Iterator
from math import ceil

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import join_words, solved_groups
from workbench.checks.limits import BLACK, BLACK_SAMPLING
from workbench.checks.measures import Measures
from workbench.checks.seen import sighting
from workbench.checks.white import luminance
from workbench.project.document import Channel, MonitorRange, Project
from workbench.project.edits.picture import set_blanking_code
from workbench.timing.mode import Mode
from workbench.timing.sampling import BLACK_DELAY, BLACK_LENGTH, black_window
from workbench.units import format_fixed, format_percent

__all__ = ["back_porch", "black_in_blanking"]


def black_in_blanking(project: Project, measures: Measures) -> Iterator[Finding]:
    """Every channel is black outside the active picture."""
    codes = dict(zip(Channel, project.picture.blanking, strict=True))
    lit: dict[Channel, tuple[int, float, float]] = {}
    for group in solved_groups(project, measures):
        for channel in group.channels:
            code = min(codes[channel], group.network.n_codes - 1)
            volts = float(group.figures.levels.volts_by_code[code])
            if not BLACK.holds(volts):
                lit[channel] = (code, volts, group.white_volts)
    if not lit:
        return
    channels = tuple(c for c in Channel if c in lit)
    code, volts, white = max(lit.values(), key=lambda row: row[1])
    kept = luminance(white - volts)
    yield Finding(
        id="black-in-blanking",
        severity=Severity.FAIL,
        subject=join_words(c.value for c in channels),
        headline=f"{join_words(c.value for c in channels).capitalize()} "
        f"{'shows' if len(channels) == 1 else 'show'} code {code} in blanking: "
        f"{format_fixed(volts, 'V')} where black belongs.",
        measured=volts,
        unit=BLACK.unit,
        low=BLACK.low,
        high=BLACK.high,
        source=BLACK.source,
        why="A monitor takes the level of the back porch for black and subtracts it: white sinks to "
        f"{format_percent(kept, 0)} of full brightness and dark tones vanish.",
        remedy_text="Show code 0 in both porches and during sync.",
        remedy=Remedy("Show black in blanking", _blacken) if any(codes.values()) else None,
        channels=channels,
    )


def back_porch(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """The back porch is longer than a receiver's black-level sampling window."""
    found = sighting(mode)
    # The receiver counts its own samples: two for each pixel of a line of half as many.
    total = mode.h.total
    assumed = found.assumed_total if found.is_known else total
    black = black_window(mode, assumed)
    if black.fits:
        return
    pixels, least = mode.h.back_porch, ceil((BLACK_DELAY + BLACK_LENGTH) * total / assumed)
    length = format_fixed(pixels * mode.pixel_s, "s", prefix="µ")
    needed = format_fixed(black.end_s, "s", prefix="µ")
    yield Finding(
        id="back-porch",
        severity=Severity.WARN,
        subject=mode.name,
        headline=f"The back porch is {pixels} px ({length}); one receiver samples black until "
        f"{least} px ({needed}) after sync.",
        measured=float(pixels),
        unit=BLACK_SAMPLING.unit,
        low=float(least),
        high=None,
        source=BLACK_SAMPLING.source,
        why="What it samples past the porch is picture: the brightness of a line then follows its left edge.",
        remedy_text=f"Lengthen the back porch to {least} px or more.",
    )


def _blacken(project: Project) -> Project:
    for channel in Channel:
        project = set_blanking_code(project, channel, 0)
    return project
