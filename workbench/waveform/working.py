"""Why a pixel looks as it does: the chain from code to light, with this project's own numbers.

With the pins of a code tied to the supply or to ground, any network has three ends: supply, ground
and output. Seen from the output it is one resistance to the supply and one to ground (the load in
it), whatever lies between: a divider. For a weighted ladder these are the legs in parallel.
"""

import math
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
from workbench.units import format_fixed, format_significant
from workbench.waveform.monitor import Screen
from workbench.waveform.pixel import PixelSeen
from workbench.waveform.scanline import Scanline

__all__ = ["ChannelWorking", "PixelWorking", "channel_working", "pixel_working", "working_text"]

_CHANNELS = ("red", "green", "blue")


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
    looks_volts: tuple[float, ...]
    """At the screen: once for a panel, at several instants of the pixel for a tube. [V]"""
    black_volts: float
    """What the monitor takes for black in this line. [V]"""
    full_volts: float = FULL_SCALE_VOLTS
    """Voltage above black that the monitor shows as white. [V]"""

    @property
    def part(self) -> float:
        """Return what the divider leaves of the supply. [1]"""
        return self.loaded_volts / self.supply_volts if self.supply_volts else 0.0

    @property
    def arriving_volts(self) -> float:
        """Return what is looked at, the mean where there are several instants. [V]"""
        return sum(self.looks_volts) / len(self.looks_volts)

    @property
    def shown_volts(self) -> float:
        """Return the voltage above black, as the monitor counts it. [V]"""
        return self.arriving_volts - self.black_volts

    @property
    def light(self) -> float:
        """Return the light of the channel, 0 … 1; of several instants it adds up. [1]"""
        parts = [(volts - self.black_volts) / self.full_volts for volts in self.looks_volts]
        return float(np.mean([light_from_volts(part * FULL_SCALE_VOLTS) for part in parts]))


@dataclass(frozen=True, slots=True)
class PixelWorking:
    """A pixel, step by step."""

    column: int
    scanline: int
    instants_s: tuple[float, ...]
    """When the monitor looks, from the start of the front porch. [s]"""
    screen: Screen
    on_screen: bool
    """Whether a dot of the screen shows it."""
    channels: tuple[ChannelWorking, ChannelWorking, ChannelWorking]

    @property
    def when(self) -> str:
        """Return when the screen looks at the pixel, in words."""
        first, last = (format_fixed(at, "s", prefix="µ") for at in (self.instants_s[0], self.instants_s[-1]))
        if self.screen is Screen.TUBE:
            return f"the spot passes from {first} to {last} after the front porch began"
        return f"sampled {first} after the front porch began"

    @property
    def when_shortly(self) -> str:
        """Return the same where room is short."""
        first, last = (format_fixed(at, "s", prefix="µ") for at in (self.instants_s[0], self.instants_s[-1]))
        return f"{first} … {last} into the line" if self.screen is Screen.TUBE else f"{first} into the line"

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
    seen: PixelSeen,
    *,
    wanted: tuple[int, int, int] | None = None,
) -> PixelWorking:
    """Return why a pixel of a scanline looks as it does.

    Parameters
    ----------
    scanline : Scanline
        The line that is sent.
    column : int
        Column of the picture, ``-h.blanking <= column < h.active``; before 0 is blanking. [1]
    levels : tuple of 3 Levels
        Red, green and blue.
    driver, load
        What drives the pins and what hangs on the output.
    seen : PixelSeen
        What the monitor meets there, by the model that makes its picture.
    wanted : tuple of 3 int, optional
        The colour the picture asks for, sRGB bytes. [1]
    """
    pixel = scanline.mode.h.blanking + column
    red, green, blue = (
        channel_working(
            levels[index],
            driver,
            load,
            int(scanline.codes[index, pixel]),
            wanted=None if wanted is None else wanted[index],
            looks_volts=tuple(seen.volts[index].tolist()),
            black_volts=float(seen.black_volts[index]),
            full_volts=seen.full_volts,
        )
        for index in range(3)
    )
    instants_s = tuple(seen.instants_s.tolist())
    return PixelWorking(column, scanline.number, instants_s, seen.screen, seen.on_screen, (red, green, blue))


def channel_working(
    levels: Levels,
    driver: Driver,
    load: Load,
    code: int,
    *,
    wanted: int | None = None,
    looks_volts: tuple[float, ...] = (),
    black_volts: float = 0.0,
    full_volts: float = FULL_SCALE_VOLTS,
) -> ChannelWorking:
    """Return the chain of one channel; what arrives is the settled level unless given.

    Notes
    -----
    Both resistances follow from the levels: the loaded voltage shares the conductance from the output
    to everything, load and all, between supply and ground.
    """
    known = min(code, len(levels.volts_by_code) - 1)
    loaded, opened = float(levels.volts_by_code[known]), float(levels.open_by_code[known])
    source_ohms = float(levels.source_ohms_by_code[known])
    total = load.siemens + (1.0 / source_ohms if source_ohms > 0.0 else math.inf)
    high = loaded / driver.supply_volts if driver.supply_volts else 0.0
    return ChannelWorking(
        wanted=wanted,
        code=code,
        top=len(levels.volts_by_code) - 1,
        pins=tuple(int(state) for state in levels.states[known]),
        driven_low=driver.zeros is Zeros.DRIVEN,
        supply_volts=driver.supply_volts,
        high_ohms=_ohms(high, total),
        low_ohms=_ohms(1.0 - high, total),
        loaded_volts=loaded,
        open_volts=opened,
        looks_volts=looks_volts or (loaded,),
        black_volts=black_volts,
        full_volts=full_volts,
    )


def _ohms(share: float, siemens: float) -> float | None:
    """Return the resistance of a share of a conductance, or none where the share is only rounding. [Ω]"""
    return 1.0 / (share * siemens) if share > 1e-9 and siemens > 0.0 else None


def working_text(working: PixelWorking) -> str:
    """Return the working as lines of text, for copying and for paper."""
    lines = [f"Column {working.column}, scanline {working.scanline}", working.when]
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
    return [
        *wanted,
        f"code {channel.code} of {channel.top}, pins {''.join(map(str, channel.pins))}, high bit first",
        f"{n_high} high, to {channel.supply_volts:g} V: together {high}",
        f"{n_low} {rest}, and the load: together {low}",
        _divider(channel, high, low),
        *_light(channel),
    ]


def _light(channel: ChannelWorking) -> list[str]:
    black = f"less {channel.black_volts:.3f} V taken for black"
    if len(channel.looks_volts) > 1:
        volts = ", ".join(f"{volts:.3f}" for volts in channel.looks_volts)
        return [
            f"at the tube while the spot passes {volts} V, {black}",
            f"each over {channel.full_volts:.3f} V, kept between 0 and 1, to the power {GAMMA}: "
            f"together light = {channel.light:.3f}",
        ]
    shown = channel.shown_volts / channel.full_volts
    return [
        f"at the monitor when it looks {channel.arriving_volts:.3f} V, {black}",
        f"light = ({shown:.3f}, kept between 0 and 1) to the power {GAMMA} = {channel.light:.3f}",
    ]


def _divider(channel: ChannelWorking, high: str, low: str) -> str:
    result = f"{channel.loaded_volts:.3f} V loaded, {channel.open_volts:.3f} V open"
    if channel.high_ohms is None or channel.low_ohms is None:
        return result
    return f"{channel.supply_volts:g} V × {low} / ({low} + {high}) = {result}"
