"""Volts over time: the scanline at the monitor, and what the eye makes of it.

Takes levels and pixel pulses from ``circuit``, counts from ``timing`` and codes from
``picture``; knows no project. Start with :mod:`scanline`; :mod:`kernel` holds the one idea
that makes it quick, :mod:`eye` turns volts into light.
"""

from workbench.waveform.eye import lightness, srgb_from_volts
from workbench.waveform.kernel import Kernel, pixel_kernel
from workbench.waveform.reading import Between, Reading, between, reading_at
from workbench.waveform.scanline import Scanline, line_codes, render_scanline, samples_per_pixel
from workbench.waveform.sync import SyncDrive, sync_high_volts

__all__ = [
    "Between",
    "Kernel",
    "Reading",
    "Scanline",
    "SyncDrive",
    "between",
    "lightness",
    "line_codes",
    "pixel_kernel",
    "reading_at",
    "render_scanline",
    "samples_per_pixel",
    "srgb_from_volts",
    "sync_high_volts",
]
