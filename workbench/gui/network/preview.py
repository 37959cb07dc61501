"""What a change would do, worked out before it is made."""

from dataclasses import dataclass

import numpy as np

from workbench.checks.groups import is_sound
from workbench.circuit.linearity import EVEN_LSB, Linearity, linearity
from workbench.circuit.response import step_figures
from workbench.circuit.solution import Levels, solve_levels
from workbench.drawing import H_SERIES, V_SERIES
from workbench.errors import EditError
from workbench.gui.network.values import Value
from workbench.project.document import Channel, Project
from workbench.units import format_fixed, format_quantity
from workbench.waveform.sync import sync_high_volts

__all__ = ["Line", "what_would_change"]


@dataclass(frozen=True, slots=True)
class Line:
    """One figure before and after."""

    name: str
    before: str
    after: str
    warn: bool = False


def what_would_change(
    project: Project, channel: Channel, value: Value, new: float | None
) -> tuple[Line, ...]:
    """Return the figures that a new value moves: white and the worst step, or what it is there for.

    There are none where the network has no levels.
    """
    try:
        edited = value.put(project, new)
    except EditError:
        return ()
    if value.part in (H_SERIES, V_SERIES):
        return (_sync_line(project, edited, value),)
    if not all(is_sound(_levels(each, channel)) for each in (project, edited)):
        return ()
    if value.unit == "F":
        return (_edge_line(project, edited, channel),)
    before, after = (linearity(_levels(each, channel).volts_by_code) for each in (project, edited))
    white = Line(
        "white",
        format_fixed(before.full_scale_volts, "", decimals=3),
        format_fixed(after.full_scale_volts, "V", decimals=3),
    )
    return (white, *_worst_step(before, after))


def _levels(project: Project, channel: Channel) -> Levels:
    return solve_levels(project.channels[channel], project.driver, project.load)


def _worst_step(before: Linearity, after: Linearity) -> tuple[Line, ...]:
    """Return the step that is furthest off after the change, and how large it was."""
    if not after.dnl_lsb.size or after.dnl_lsb.shape != before.dnl_lsb.shape:
        return ()
    worst = int(np.abs(after.dnl_lsb).argmax())
    sizes = [f"{1.0 + float(each.dnl_lsb[worst]):.2f}".replace("-", "−") for each in (before, after)]
    warn = abs(float(after.dnl_lsb[worst])) > EVEN_LSB
    return (Line(f"step {worst} to {worst + 1}", sizes[0], f"{sizes[1]} LSB", warn),)


def _edge_line(project: Project, edited: Project, channel: Channel) -> Line:
    rises = [
        step_figures(each.channels[channel], each.driver, each.load, each.cable).rise_s
        for each in (project, edited)
    ]
    before, after = (format_quantity(rise, "s", 2) for rise in rises)
    return Line("edge, 10–90 %", before, after)


def _sync_line(project: Project, edited: Project, value: Value) -> Line:
    def high(each: Project) -> str:
        line = each.sync.h if value.part == H_SERIES else each.sync.v
        volts = sync_high_volts(each.driver, line.series_ohms, line.input_ohms)
        return format_fixed(volts, "V", decimals=2)

    return Line("high at monitor", high(project), high(edited))
