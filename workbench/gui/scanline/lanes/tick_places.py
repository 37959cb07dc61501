"""Where the ticks of the three axes stand, and what they say."""

from workbench.gui.scanline.content.scales import round_step, tick_text, ticks
from workbench.gui.scanline.lanes.axis import Tick
from workbench.gui.scanline.lanes.sync_places import H_OFFSET

__all__ = ["sync_ticks", "time_ticks", "volt_ticks"]


def volt_ticks(low: float, high: float, room: float, least: float) -> list[Tick]:
    """Return the ticks of the colour lane, from 0 V up; the highest carries the unit.

    Parameters
    ----------
    low, high : float
        Ends of the axis; below 0 V only where the trace goes well below. [V]
    room, least : float
        Length of the axis, and the least distance of two ticks. [px]
    """
    step = round_step(high - low, room, least)
    values = ticks(0.0 if low > -step else low, high, step)
    texts = [tick_text(value, step) for value in values]
    if texts:
        texts[-1] += " V"
    return list(zip(values, texts, strict=True))


def time_ticks(first: float, last: float, room: float, least: float) -> list[Tick]:
    """Return the ticks of the time axis, in its own unit."""
    step = round_step(last - first, room, least)
    return [(value, tick_text(value, step)) for value in ticks(first, last, step)]


def sync_ticks(high_volts: tuple[float, float]) -> list[Tick]:
    """Return the ticks of the sync lane for the levels of a high H and V sync line. [V]"""
    h, v = (f"{volts:.1f}" for volts in high_volts)
    return [(0.0, "0"), (1.0, v), (H_OFFSET, "0"), (H_OFFSET + 1.0, h)]
