"""All rules, in the order in which they are asked."""

from collections.abc import Callable, Iterator

from workbench.checks.blanking import black_in_blanking
from workbench.checks.cable import cable_length, ghost
from workbench.checks.currents import all_pins_current, current_limits_missing, dissipation, pin_current
from workbench.checks.edges import glitch, rise_time
from workbench.checks.finding import Finding
from workbench.checks.loads import load, zeros_floating
from workbench.checks.measures import Measures
from workbench.checks.mode_offers import mode_findings
from workbench.checks.preferred import preferred_values
from workbench.checks.problems import network_problems
from workbench.checks.steps import differential_linearity, integral_linearity, monotonic
from workbench.checks.sync import sync_level
from workbench.checks.uneven import uneven_pixels
from workbench.checks.white import channel_mismatch, white_level
from workbench.project.document import Project

__all__ = ["RULES", "run_checks"]

Rule = Callable[[Project, Measures], Iterator[Finding]]

RULES: tuple[Rule, ...] = (
    network_problems,
    load,
    white_level,
    monotonic,
    differential_linearity,
    integral_linearity,
    channel_mismatch,
    zeros_floating,
    pin_current,
    all_pins_current,
    dissipation,
    sync_level,
    black_in_blanking,
    mode_findings,
    uneven_pixels,
    rise_time,
    ghost,
    cable_length,
    glitch,
    preferred_values,
    current_limits_missing,
)


def run_checks(project: Project, measures: Measures) -> tuple[Finding, ...]:
    """Return every finding, failures first, then warnings, then notes.

    Parameters
    ----------
    project : Project
        What the user decided.
    measures : Measures
        What was computed of exactly this project.
    """
    found = [finding for rule in RULES for finding in rule(project, measures)]
    return tuple(sorted(found, key=lambda finding: finding.severity.rank))
