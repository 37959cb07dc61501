"""The plans of a mode's clock as rows of a table."""

from workbench.gui.widgets import Sign
from workbench.gui.widgets.figure_table import Column, FigureRow
from workbench.project.document import Project
from workbench.timing.clock.chip import Chip
from workbench.timing.clock.plan import Jitter, Plan, planned_mode
from workbench.timing.clock.words import is_hopeless, jitter_words, lock_words, settings_words
from workbench.timing.offsets import ppm_figure
from workbench.timing.seen_as import LOCK_PPM
from workbench.units import format_quantity

__all__ = ["COLUMNS", "in_use", "plan_rows", "plan_sentence"]

COLUMNS = (
    Column("pixel clock MHz", "000.000000"),
    Column("off, ppm", "−0\u202f000.00"),
    Column("picture", "uneven pixels 00.00 ns", mono=False, right=False, least="uneven pixels"),
    Column("line kHz", "000.0000", spare=1),
    Column("field Hz", "000.0000", spare=2),
    Column("", "in use", mono=False, right=False),
    Column(
        "settings",
        "12 MHz × 126 / 6 / 2 = 126 MHz, / 5",
        right=False,
        takes_rest=True,
        least="12 MHz × 126 / 6",
    ),
)
_SHORT = {Jitter.NONE: "even", Jitter.PIXEL: "uneven pixels", Jitter.LINE: "lines jitter"}


def in_use(project: Project, plan: Plan) -> bool:
    """Return whether a project's pixels come at a plan's clock, to the hertz, and as evenly."""
    same_clock = round(plan.pixel_hz) == project.mode.pixel_clock_hz
    return same_clock and plan.uneven_divider == project.pixel_divider


def plan_rows(project: Project, chip: Chip, plans: tuple[Plan, ...]) -> list[FigureRow]:
    """Return a row for each plan, in the order of the plans."""
    return [_row(project, chip, plan) for plan in plans]


def _row(project: Project, chip: Chip, plan: Plan) -> FigureRow:
    made = planned_mode(project.mode, plan)
    uneven = f" {format_quantity(plan.uneven_s, 's', 3)}" if plan.uneven_s else ""
    cells = (
        f"{float(plan.pixel_hz) / 1e6:.6f}",
        ppm_figure(plan.error_ppm, decimals=2),
        f"{_SHORT[plan.jitter]}{uneven}",
        f"{made.line_rate_hz / 1e3:.4f}",
        f"{made.field_rate_hz:.4f}",
        "in use" if in_use(project, plan) else "",
        settings_words(chip, plan),
    )
    return FigureRow(cells, plan, _sign(plan), tip=plan_sentence(chip, plan))


def _sign(plan: Plan) -> Sign:
    if plan.jitter is Jitter.LINE or is_hopeless(plan):
        return Sign.FAILS
    if plan.jitter is Jitter.PIXEL or abs(plan.error_ppm) > LOCK_PPM:
        return Sign.WARNS
    return Sign.PASSES


def plan_sentence(chip: Chip, plan: Plan) -> str:
    """Return a plan's settings and what they mean for picture and monitor, in a few sentences."""
    first = f"{settings_words(chip, plan)}: {jitter_words(plan)}."
    return f"{first} {lock_words(plan)}".strip()
