"""The steps from a code to the volts at the monitor, a column each of the chain."""

from collections.abc import Callable
from dataclasses import dataclass

from workbench.units import format_fixed, format_significant
from workbench.waveform.working import ChannelWorking

__all__ = ["STEPS", "Step"]


@dataclass(frozen=True, slots=True)
class Step:
    """One column of the chain."""

    head: str
    main: Callable[[ChannelWorking], str]
    below: Callable[[ChannelWorking], str]
    widest: str
    """Text that is as wide as any, in the face of the main line."""
    widest_below: str
    missed: int
    """How much it is missed where room is short; the least missed goes first."""


def _ohms(value: float | None) -> str:
    return "none" if value is None else format_significant(value, "Ω", 4)


def _plain(value: float | None) -> str:
    return "–" if value is None else f"{value:.4g}"


def _high(channel: ChannelWorking) -> str:
    return f"{sum(channel.pins)} to {channel.supply_volts:g} V"


def _low(channel: ChannelWorking) -> str:
    count = len(channel.pins) - sum(channel.pins)
    return f"{count} to 0 V, and the load" if channel.driven_low else f"{count} let go; the load"


def _divider(channel: ChannelWorking) -> str:
    if channel.high_ohms is None or channel.low_ohms is None:
        return "none"
    return f"{_plain(channel.low_ohms)} / {_plain(channel.low_ohms + channel.high_ohms)}"


STEPS = (
    Step(
        "code",
        lambda c: str(c.code),
        lambda c: f"of {c.top}",
        "255",
        "of 255",
        9,
    ),
    Step("pins, high bit first", lambda c: "", lambda c: "", "", "", 8),
    Step("high legs together", lambda c: _ohms(c.high_ohms), _high, "88.88 kΩ", "8 to 3.3 V", 5),
    Step("low legs and the load", lambda c: _ohms(c.low_ohms), _low, "88.88 Ω", "8 to 0 V, and the load", 4),
    Step(
        "divider",
        _divider,
        lambda c: f"of {c.supply_volts:g} V is {100 * c.part:.1f} %",
        "88.88 / 88888",
        "of 3.3 V is 88.8 %",
        3,
    ),
    Step(
        "at the monitor",
        lambda c: format_fixed(c.loaded_volts, "V"),
        lambda c: f"open {format_fixed(c.open_volts, 'V')}",
        "0.888 V",
        "open 3.300 V",
        10,
    ),
)
