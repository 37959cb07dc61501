"""What stands at one moment of a scanline, for the hover readout and the two cursors."""

from dataclasses import dataclass

import numpy as np

from workbench.timing.mode import Region
from workbench.waveform.scanline import Scanline

__all__ = ["Between", "Reading", "between", "reading_at"]


@dataclass(frozen=True, slots=True)
class Reading:
    """A moment of a line, read from the samples themselves."""

    time_s: float
    """Since the start of the front porch. [s]"""
    pixel: int
    """Pixel of the line, from 0 at the start of the front porch. [1]"""
    column: int | None
    """Column of the picture, from 0; none in blanking and on lines outside the picture. [1]"""
    region: Region
    """Part of the line."""
    line_region: Region
    """Part of the frame the line belongs to."""
    codes: tuple[int, int, int]
    """What the pins show: red, green, blue. [1]"""
    volts: tuple[float, float, float, float, float]
    """Red, green, blue, H sync, V sync at the monitor. [V]"""


@dataclass(frozen=True, slots=True)
class Between:
    """From one reading to another: second minus first."""

    seconds: float
    pixels: float
    volts: tuple[float, float, float, float, float]
    codes: tuple[int, int, int]


def reading_at(scanline: Scanline, time_s: float) -> Reading:
    """Return what stands at a time, clipped to the line; volts are interpolated between samples."""
    mode = scanline.mode
    last = scanline.volts.shape[1] - 1
    position = min(max(time_s / scanline.step_s, 0.0), float(last))
    left = min(int(position), max(last - 1, 0))
    pair = scanline.volts[:, left : left + 2].astype(np.float64)
    volts = pair[:, 0] + (pair[:, -1] - pair[:, 0]) * (position - left)
    pixel = scanline.pixel_at(position / scanline.samples_per_pixel)
    region = mode.h.region(pixel)
    line_region = mode.v.region((scanline.number - 1 - mode.v.active) % mode.v.total)
    in_picture = region is Region.ACTIVE and line_region is Region.ACTIVE
    red, green, blue = (int(code) for code in scanline.codes[:, pixel])
    r, g, b, h, v = (float(volt) for volt in volts)
    return Reading(
        time_s=position * scanline.step_s,
        pixel=pixel,
        column=pixel - mode.h.blanking if in_picture else None,
        region=region,
        line_region=line_region,
        codes=(red, green, blue),
        volts=(r, g, b, h, v),
    )


def between(scanline: Scanline, here: Reading, there: Reading) -> Between:
    """Return the differences ``there - here`` of two readings of one line."""
    seconds = there.time_s - here.time_s
    r, g, b, h, v = (later - earlier for earlier, later in zip(here.volts, there.volts, strict=True))
    red, green, blue = (later - earlier for earlier, later in zip(here.codes, there.codes, strict=True))
    return Between(seconds, seconds * scanline.mode.pixel_clock_hz, (r, g, b, h, v), (red, green, blue))
