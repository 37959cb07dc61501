"""Faults of timing and sync: clock, counts, polarity, weak sync lines, adjustment."""

from dataclasses import replace

from workbench.bringup.faults.record import NOT_NAMED, Fault, Setup, in_project
from workbench.picture.scene import Card
from workbench.project.document import Channel, Direction, Project
from workbench.project.edits.picture import set_card
from workbench.project.edits.sync import set_sync_input, set_sync_series
from workbench.project.edits.timing import set_counts, set_pixel_clock, set_polarity
from workbench.timing.mode import Axis, Polarity

__all__ = ["TIMING_FAULTS"]

_FRACTION = 5.28125
"""System clocks a pixel, of about 133 MHz at 640x480@60: 169 for 32 pixels. Our own. [1]"""
_NOT_DRIVEN_OHMS = 1e5
_SYNC_INPUT_OHMS = 1e3
"""A monitor's sync input, as in the usual example of a weak line. Common practice, no source. [Ω]"""


def _clock(factor: float, project: Project) -> Project:
    """Change the system clock behind the pixels; the divider stays."""
    other = set_pixel_clock(project, round(project.mode.pixel_clock_hz * factor))
    return replace(other, pixel_divider=project.pixel_divider)


def _turned(axis: Axis) -> Polarity:
    return Polarity.NEGATIVE if axis.polarity is Polarity.POSITIVE else Polarity.POSITIVE


def _polarity(project: Project) -> Project:
    project = set_polarity(project, Direction.HORIZONTAL, _turned(project.mode.h))
    return set_polarity(project, Direction.VERTICAL, _turned(project.mode.v))


def _sync(series_ohms: float, line: Direction, project: Project) -> Project:
    return set_sync_input(set_sync_series(project, line, series_ohms), line, _SYNC_INPUT_OHMS)


def _longer_line(project: Project) -> Project:
    """Add to the front porch, and to the clock, so that the line rate stays."""
    h = project.mode.h
    more = max(1, h.total // 50)
    longer = set_counts(project, Direction.HORIZONTAL, front_porch=h.front_porch + more)
    return _clock((h.total + more) / h.total, longer)


def _short_porch(project: Project) -> Project:
    h = project.mode.h
    less = max(0, h.back_porch - 8)
    return set_counts(
        project, Direction.HORIZONTAL, back_porch=h.back_porch - less, front_porch=h.front_porch + less
    )


def _one_line_more(project: Project) -> Project:
    return set_counts(project, Direction.VERTICAL, back_porch=project.mode.v.back_porch + 1)


def _adjusted_on_plain(setup: Setup, channel: Channel) -> Setup:
    monitor = replace(setup.monitor, auto_adjust=True, phase=0.04)
    return replace(setup, project=set_card(setup.project, Card.SOLID), monitor=monitor)


TIMING_FAULTS = (
    Fault(
        "half-rate",
        "Clock divided once too often",
        monitor="Out of range, or nothing.",
        instrument="Half the line rate and half the field rate.",
        check="Count H and V.",
        mend="Set the divider right.",
        put=in_project(lambda project: _clock(0.5, project)),
    ),
    Fault(
        "round-clock",
        "Clock 0.7 % low",
        monitor="Mostly right; some monitors shift it, few refuse it.",
        instrument="Line and field rate 0.7 % low, as with 25.0 MHz for 25.175 MHz.",
        check="Rates in ppm; 5000 ppm is what monitors are said to have to take.",
        mend="A clock nearer to the mode's: 25.2 MHz is 993 ppm off.",
        put=in_project(lambda project: _clock(25.0 / 25.175, project)),
    ),
    Fault(
        "fractional-divider",
        "Pixels cut by a fractional divider",
        monitor="Pixels of two widths; on fine detail a panel takes the pixel beside here and there.",
        instrument="Pixels last 5 or 6 system clocks: at 25.175 MHz they differ by 7.5 ns, 19 % of a pixel.",
        check="One-pixel stripes: how long each of many pixels lasts.",
        mend="A system clock that is a whole multiple of the pixel clock.",
        put=in_project(lambda project: replace(project, pixel_divider=_FRACTION)),
    ),
    Fault(
        "longer-line",
        "Line total not the monitor's",
        monitor="A panel shows soft vertical bands, and the width is off.",
        instrument="Rates right, counts not.",
        check="Stripes one pixel wide: as many bands a line as the totals differ.",
        mend="Use the line total of the standard mode.",
        put=in_project(_longer_line),
        source="a receiver's data sheet: it samples a line by the total it believes in; bands follow",
    ),
    Fault(
        "short-back-porch",
        "Back porch shorter than the black window",
        monitor="The brightness of lines follows the colour at their left edge.",
        instrument="The picture starts less than 29 pixels after H sync.",
        check="Length of the back porch against the window in which black is sampled.",
        mend="Give the back porch what the front porch has too much.",
        put=in_project(_short_porch),
        source="a receiver's registers: it samples black for 20 px, 9 px after H sync",
    ),
    Fault(
        "polarity",
        "Sync polarities turned over",
        monitor="Another height or mode name; often shifted.",
        instrument="Mean of the sync lines low where it should be high.",
        check="Mean of H and V on a meter.",
        mend="Turn both syncs over.",
        put=in_project(_polarity),
        source="an article on how multi-rate monitors find the mode, and a projector's service manual",
    ),
    Fault(
        "line-too-many",
        "A line too many in the frame",
        monitor="A row lower; on old monitors it rolls.",
        instrument="One H sync more for each V sync.",
        check="Count H for each V.",
        mend="The limit of the line counter.",
        put=in_project(_one_line_more),
    ),
    Fault(
        "weak-h-sync",
        "H sync through 330 Ω into 1 kΩ",
        monitor="Mostly right; tears now and then.",
        instrument="H sync reaches 2.48 V, where 2.0 V is needed.",
        check="A scope at the far end.",
        mend="A buffer from 5 V and about 47 Ω.",
        put=in_project(lambda project: _sync(330.0, Direction.HORIZONTAL, project)),
        source=NOT_NAMED,
    ),
    Fault(
        "no-h-sync",
        "H sync not driven",
        monitor="No signal, standby.",
        instrument="H stays at one level.",
        check="Mean of H on a meter.",
        mend="Configure the pin as an output; mend the wire.",
        put=in_project(lambda project: _sync(_NOT_DRIVEN_OHMS, Direction.HORIZONTAL, project)),
    ),
    Fault(
        "no-v-sync",
        "V sync not driven",
        monitor="A tube rolls, a panel finds no signal.",
        instrument="V stays at one level.",
        check="Mean of V on a meter.",
        mend="Configure the pin as an output; mend the wire.",
        put=in_project(lambda project: _sync(_NOT_DRIVEN_OHMS, Direction.VERTICAL, project)),
    ),
    Fault(
        "adjusted-on-plain",
        "Monitor adjusted on a plain colour",
        monitor="Soft, or too bright, after it was adjusted.",
        instrument="Nothing wrong.",
        check="A checkerboard, then adjust again.",
        mend="Adjust on a checkerboard inside a white border.",
        put=_adjusted_on_plain,
        source=NOT_NAMED,
    ),
)
