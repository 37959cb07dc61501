"""Why a pixel looks as it does: the chain from code to light, with this project's own numbers.

With the pins of a code tied to the supply or to ground, any network has three ends: supply, ground
and output. Seen from the output it is one resistance to the supply and one to ground (the load in
it), whatever lies between: a divider. For a weighted ladder these are the legs in parallel.
"""

from dataclasses import dataclass

import numpy as np

from workbench.circuit.network import Driver, Load, Zeros
from workbench.circuit.solution import Levels
from workbench.picture.light import (
    FULL_SCALE_VOLTS,
    GAMMA,
    LUMINANCE_WEIGHTS,
    light_from_volts,
    lightness_from_light,
)
from workbench.timing.sampling import BLACK_DELAY, BLACK_LENGTH
from workbench.units import format_fixed, format_significant
from workbench.waveform.scanline import Scanline

__all__ = ["ChannelWorking", "PixelWorking", "channel_working", "pixel_working", "working_text"]

_CHANNELS = ("red", "green", "blue")
_SAMPLING_INSTANT = 0.75
"""Part of a pixel after which a monitor that is well adjusted looks. Our own. [1]"""


@dataclass(frozen=True, slots=True)
class ChannelWorking:
    """One channel of a pixel, step by step."""

    wanted: int | None
    """What the picture asks for, 0 … 255; none for a test card. [1]"""
    code: int
    top: int
    """The highest code. [1]"""
    pins: tuple[int, ...]
    """State of each pin, most significant first. [1]"""
    driven_low: bool
    """Whether a 0 is driven to ground; otherwise its pin has let go."""
    supply_volts: float
    high_ohms: float | None
    """From the supply to the output through all that is high; none where nothing is. [Ω]"""
    low_ohms: float | None
    """From the output to ground through all that is low, and the load; none without any. [Ω]"""
    loaded_volts: float
    open_volts: float
    arriving_volts: float
    """At the monitor, when it looks. [V]"""
    black_volts: float
    """What the monitor takes for black in this line. [V]"""

    @property
    def part(self) -> float:
        """Return what the divider leaves of the supply. [1]"""
        return self.loaded_volts / self.supply_volts if self.supply_volts else 0.0

    @property
    def shown_volts(self) -> float:
        """Return the voltage above black, as the monitor counts it. [V]"""
        return self.arriving_volts - self.black_volts

    @property
    def light(self) -> float:
        """Return the light of the channel, 0 … 1. [1]"""
        return float(light_from_volts(self.shown_volts))


@dataclass(frozen=True, slots=True)
class PixelWorking:
    """A pixel, step by step."""

    column: int
    scanline: int
    time_s: float
    """When the monitor looks, from the start of the front porch. [s]"""
    channels: tuple[ChannelWorking, ChannelWorking, ChannelWorking]

    @property
    def luminance(self) -> float:
        """Return the luminance, white being 1. [1]"""
        return sum(
            weight * channel.light for weight, channel in zip(LUMINANCE_WEIGHTS, self.channels, strict=True)
        )

    @property
    def lightness(self) -> float:
        """Return L*, 0 … 100. [1]"""
        return float(lightness_from_light(self.luminance))


def pixel_working(
    scanline: Scanline,
    column: int,
    levels: tuple[Levels, Levels, Levels],
    driver: Driver,
    load: Load,
    *,
    wanted: tuple[int, int, int] | None = None,
) -> PixelWorking:
    """Return why a pixel of a scanline looks as it does.

    Parameters
    ----------
    scanline : Scanline
        The line, with its real waveform.
    column : int
        Column of the picture, ``0 <= column < h.active``. [1]
    levels : tuple of 3 Levels
        Red, green and blue.
    driver, load
        What drives the pins and what hangs on the output.
    wanted : tuple of 3 int, optional
        The colour the picture asks for, sRGB bytes. [1]
    """
    samples = scanline.samples_per_pixel
    pixel = scanline.mode.h.blanking + column
    at = min(int((pixel + _SAMPLING_INSTANT) * samples), scanline.volts.shape[1] - 1)
    black = _black_volts(scanline)
    red, green, blue = (
        channel_working(
            levels[index],
            driver,
            load,
            int(scanline.codes[index, pixel]),
            wanted=None if wanted is None else wanted[index],
            arriving_volts=float(scanline.volts[index, at]),
            black_volts=black[index],
        )
        for index in range(3)
    )
    return PixelWorking(column, scanline.number, at * scanline.step_s, (red, green, blue))


def channel_working(
    levels: Levels,
    driver: Driver,
    load: Load,
    code: int,
    *,
    wanted: int | None = None,
    arriving_volts: float | None = None,
    black_volts: float = 0.0,
) -> ChannelWorking:
    """Return the chain of one channel; what arrives is the settled level unless given.

    Notes
    -----
    Both resistances follow from the levels: loaded and open voltage give the source resistance at
    this code, and the loaded voltage shares what is left between supply and ground.
    """
    known = min(code, len(levels.volts_by_code) - 1)
    loaded, opened = float(levels.volts_by_code[known]), float(levels.open_by_code[known])
    total = _total_siemens(levels.source_ohms, loaded, opened, load.siemens)
    high = total * loaded / driver.supply_volts if driver.supply_volts else 0.0
    return ChannelWorking(
        wanted=wanted,
        code=code,
        top=len(levels.volts_by_code) - 1,
        pins=tuple(int(state) for state in levels.states[known]),
        driven_low=driver.zeros is Zeros.DRIVEN,
        supply_volts=driver.supply_volts,
        high_ohms=_ohms(high, total),
        low_ohms=_ohms(total - high, total),
        loaded_volts=loaded,
        open_volts=opened,
        arriving_volts=loaded if arriving_volts is None else arriving_volts,
        black_volts=black_volts,
    )


def _total_siemens(source_ohms: float, loaded: float, opened: float, load_siemens: float) -> float:
    """Return the conductance from the output to everything, load and all. [S]"""
    if load_siemens > 0.0 and loaded > 0.0 and opened > loaded:
        return load_siemens * opened / (opened - loaded)
    return load_siemens + (1.0 / source_ohms if source_ohms > 0.0 else 0.0)


def _ohms(siemens: float, total: float) -> float | None:
    """Return a resistance, or none where what is left of the total is only rounding. [Ω]"""
    return 1.0 / siemens if siemens > 1e-9 * total else None


def _black_volts(scanline: Scanline) -> list[float]:
    """Return what a receiver takes for black in this line, red, green, blue. [V]"""
    start = scanline.mode.h.edges[1] + BLACK_DELAY
    samples = scanline.samples_per_pixel
    window = scanline.volts[:3, start * samples : (start + BLACK_LENGTH) * samples]
    if window.shape[1] == 0:
        return [0.0, 0.0, 0.0]
    return [float(volts) for volts in np.mean(window, axis=1)]


def working_text(working: PixelWorking) -> str:
    """Return the working as lines of text, for copying and for paper."""
    when = format_fixed(working.time_s, "s", prefix="µ")
    lines = [f"Column {working.column}, scanline {working.scanline}, at {when}"]
    for name, channel in zip(_CHANNELS, working.channels, strict=True):
        lines += ["", name, *(f"  {line}" for line in _channel_lines(channel))]
    weighted = " + ".join(
        f"{weight:.4f} × {channel.light:.3f}"
        for weight, channel in zip(LUMINANCE_WEIGHTS, working.channels, strict=True)
    )
    lines += [
        "",
        f"luminance = {weighted} = {working.luminance:.3f}",
        f"lightness L* = {working.lightness:.0f} of 100",
    ]
    return "\n".join(lines) + "\n"


def _channel_lines(channel: ChannelWorking) -> list[str]:
    n_high = sum(channel.pins)
    n_low = len(channel.pins) - n_high
    wanted = [] if channel.wanted is None else [f"the picture asks for {channel.wanted} of 255"]
    rest = "driven to 0 V" if channel.driven_low else "let go"
    high = "none" if channel.high_ohms is None else format_significant(channel.high_ohms, "Ω")
    low = "none" if channel.low_ohms is None else format_significant(channel.low_ohms, "Ω")
    shown = channel.shown_volts / FULL_SCALE_VOLTS
    return [
        *wanted,
        f"code {channel.code} of {channel.top}, pins {''.join(map(str, channel.pins))}, high bit first",
        f"{n_high} high, to {channel.supply_volts:g} V: together {high}",
        f"{n_low} {rest}, and the load: together {low}",
        _divider(channel, high, low),
        f"at the monitor when it looks {channel.arriving_volts:.3f} V, "
        f"less {channel.black_volts:.3f} V taken for black",
        f"light = ({shown:.3f}, kept between 0 and 1) to the power {GAMMA} = {channel.light:.3f}",
    ]


def _divider(channel: ChannelWorking, high: str, low: str) -> str:
    result = f"{channel.loaded_volts:.3f} V loaded, {channel.open_volts:.3f} V open"
    if channel.high_ohms is None or channel.low_ohms is None:
        return result
    return f"{channel.supply_volts:g} V × {low} / ({low} + {high}) = {result}"
