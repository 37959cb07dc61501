"""Do the sync lines reach the monitor's logic levels?"""

from collections.abc import Iterator

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.groups import ohms_text
from workbench.checks.limits import SYNC_HIGH
from workbench.checks.measures import Measures
from workbench.project.document import Direction, Project, SyncLine
from workbench.project.edits.sync import set_sync_series
from workbench.units import format_fixed
from workbench.waveform.sync import sync_high_volts

__all__ = ["sync_level"]

_MATCH_OHMS = 47.0
"""A usual series resistor of a sync line, somewhat under a cable's impedance (from memory). [Ω]"""


def sync_level(project: Project, measures: Measures) -> Iterator[Finding]:
    """A high sync line is above the monitor's threshold."""
    for direction, line in ((Direction.HORIZONTAL, project.sync.h), (Direction.VERTICAL, project.sync.v)):
        volts = sync_high_volts(project.driver, line.series_ohms, line.input_ohms)
        if SYNC_HIGH.holds(volts):
            continue
        name = f"{direction.value.upper()} sync"
        yield Finding(
            id="sync-level",
            severity=Severity.FAIL,
            subject=name,
            headline=f"{name} reaches only {format_fixed(volts, 'V', decimals=2)} at the monitor, "
            f"below 2.00 V{_because(line)}.",
            measured=volts,
            unit=SYNC_HIGH.unit,
            low=SYNC_HIGH.low,
            high=SYNC_HIGH.high,
            source=SYNC_HIGH.source,
            why="Under the threshold a monitor sees no sync, or one that comes and goes.",
            remedy_text="A smaller series resistor, or a buffer with a higher supply.",
            remedy=_remedy(project, direction, line),
        )


def _because(line: SyncLine) -> str:
    if line.input_ohms is None:
        return ""
    return f": {ohms_text(line.series_ohms)} in series with an input of {ohms_text(line.input_ohms)}"


def _remedy(project: Project, direction: Direction, line: SyncLine) -> Remedy | None:
    if not SYNC_HIGH.holds(sync_high_volts(project.driver, _MATCH_OHMS, line.input_ohms)):
        return None
    return Remedy(
        f"Use {ohms_text(_MATCH_OHMS)} in the {direction.value.upper()} sync line",
        lambda changed: set_sync_series(changed, direction, _MATCH_OHMS),
    )
