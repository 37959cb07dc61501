"""Does the monitor take these rates, and can the bench show this mode?"""

from collections.abc import Iterator
from dataclasses import dataclass

from workbench.checks.finding import Finding, Severity
from workbench.project.document import MonitorRange
from workbench.timing.figures import simulable
from workbench.timing.mode import Mode
from workbench.units import format_quantity

__all__ = ["interlaced", "monitor_range"]

_ENTRY = "the monitor's range held in the project, from its manual or its EDID"
_DANGER = (
    "A tube monitor's line stage is tuned to its rates and can be damaged by others; "
    "a flat monitor shows no picture."
)
_FAST = "The monitor's maker promises no sharp picture above it."


@dataclass(frozen=True, slots=True)
class _Rate:
    """One rate of a mode against what the monitor takes."""

    id: str
    noun: str
    hz: float
    low: float | None
    high: float | None

    @property
    def fits(self) -> bool:
        return (self.low is None or self.low <= self.hz) and (self.high is None or self.hz <= self.high)


def monitor_range(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """Line rate, field rate and pixel clock lie in the entered range of the monitor."""
    if monitor is None:
        return
    for rate in _rates(mode, monitor):
        if rate.fits:
            continue
        yield Finding(
            id=rate.id,
            severity=Severity.FAIL,
            subject=mode.name,
            headline=f"The {rate.noun} is {_hz(rate.hz)}, {_outside(rate)}.",
            measured=rate.hz,
            unit="Hz",
            low=rate.low,
            high=rate.high,
            source=_ENTRY,
            why=_FAST if rate.id == "pixel-clock" else _DANGER,
            remedy_text="Choose a mode whose rates the monitor takes.",
        )


def interlaced(mode: Mode, monitor: MonitorRange | None) -> Iterator[Finding]:
    """The bench shows progressive modes only, and says so."""
    reason = simulable(mode)
    if reason is None:
        return
    yield Finding(
        id="interlaced",
        severity=Severity.WARN,
        subject=mode.name,
        headline=f"{mode.name} is interlaced: its scanline is not shown.",
        measured=None,
        unit="",
        low=None,
        high=None,
        source="a limit of this program",
        why=reason,
        remedy_text="Choose a progressive mode.",
    )


def _rates(mode: Mode, monitor: MonitorRange) -> tuple[_Rate, ...]:
    return (
        _Rate("line-rate", "line rate", mode.line_rate_hz, monitor.h_min_hz, monitor.h_max_hz),
        _Rate("field-rate", "field rate", mode.field_rate_hz, monitor.v_min_hz, monitor.v_max_hz),
        _Rate("pixel-clock", "pixel clock", float(mode.pixel_clock_hz), None, monitor.max_pixel_clock_hz),
    )


def _outside(rate: _Rate) -> str:
    if rate.low is None or rate.high is None:
        return f"over the {_hz(rate.high or 0.0)} your monitor takes"
    return f"outside the {_hz(rate.low)} … {_hz(rate.high)} your monitor takes"


def _hz(hz: float) -> str:
    return format_quantity(hz, "Hz", 5)
